//! A leaf that swings, in its own plain numbers: mirrored so that every motion turns counterclockwise about zero.

use super::super::course::{Control, Course};
use super::super::profile::Profile;
use super::super::prove::span::Span;
use super::contact::{Slab, Swung};
use super::room::Side;
use super::skin::Skin;
use super::world::{Face, Opens, SwingLeaf, SwingWorld, Toward, Turn};
use crate::walk::device::Direction;
use formula::OutOfReach;
use quantity::Quantity as _;

/// Where a leaf turns, and how the plan is turned to see it go counterclockwise.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    x: f64,
    y: f64,
    along: f64,
    across: f64,
}

impl Frame {
    fn new(leaf: &SwingLeaf, direction: Direction) -> Self {
        let opens = match leaf.opens {
            Opens::Inward => 1.0,
            Opens::Outward => -1.0,
        };
        Self {
            x: leaf.pivot.x.base(),
            y: leaf.pivot.y.base(),
            along: match leaf.toward {
                Toward::Greater => 1.0,
                Toward::Smaller => -1.0,
            },
            across: match direction {
                Direction::Opening => opens,
                Direction::Closing => -opens,
            },
        }
    }

    /// A place of the plan as the leaf sees it.
    pub(super) fn sees(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.along * (x - self.x), self.across * (y - self.y))
    }

    /// A place of the plan as the leaf sees it, within bounds.
    pub(super) fn sees_span(&self, x: Span, y: Span) -> (Span, Span) {
        ((x - self.x) * self.along, (y - self.y) * self.across)
    }

    /// A direction of the plan as the leaf sees it.
    pub(super) fn turns(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.along * x, self.across * y)
    }

    pub(super) fn turns_span(&self, (x, y): (Span, Span)) -> (Span, Span) {
        (x * self.along, y * self.across)
    }

    /// What the leaf sees, in the plan.
    pub(super) fn shows(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (self.x + self.along * x, self.y + self.across * y)
    }
}

/// One leaf in one pass.
#[derive(Debug, Clone)]
pub(super) struct Wing {
    pub frame: Frame,
    /// Its shape and the angle at which it starts.
    pub swung: Swung,
    pub profile: Profile,
    pub unhindered: Course,
    pub control: Control,
    pub delay: f64,
    pub skin: Skin,
    /// What stands around, as it sees it.
    pub sides: Vec<Side>,
    /// For each body the cylinders in its height.
    pub touchable: Vec<Vec<usize>>,
}

impl Wing {
    pub(super) fn new(
        world: &SwingWorld,
        direction: Direction,
        at: usize,
        turn: &Turn,
    ) -> Result<Self, OutOfReach> {
        let leaf = &world.leaves[at];
        let profile = Profile::new(&turn.plan)?;
        let frame = Frame::new(leaf, direction);
        let length = leaf.length.base();
        let (start, turned) = match direction {
            Direction::Opening => (0.0, 1.0),
            Direction::Closing => (-profile.travel / length, -1.0),
        };
        let (middle, half) = (turned * leaf.offset.base(), 0.5 * leaf.thickness.base());
        let slab = Slab {
            from: leaf.heel.base(),
            to: length,
            low: middle - half,
            high: middle + half,
        };
        let sides = world.faces.iter().map(|face| seen(&frame, face)).collect();
        let bodies = world.bodies.iter();
        let touchable = bodies.map(|body| body.within(leaf.bottom, leaf.top));
        let wing = Self {
            frame,
            swung: Swung::new(slab, length, start),
            unhindered: Course::unhindered(&profile),
            control: Control::new(&world.controller, turn.plan.acceleration.base()),
            delay: turn.delay.base(),
            skin: Skin::new(world, direction, at),
            profile,
            sides,
            touchable: touchable.collect(),
        };
        if wing.runs_into_a_face() {
            return Err(OutOfReach::new(
                "faces",
                "no face is in the way of a leaf, nor in its post",
            ));
        }
        Ok(wing)
    }

    /// When all of its motion is over, from the start of the pass.
    pub(super) fn end(&self) -> f64 {
        self.delay + self.profile.end
    }

    /// The sides of the leaf at a place of its way, in the plan.
    pub(super) fn corners(&self, place: f64) -> [(f64, f64); 4] {
        self.swung
            .corners(place)
            .map(|corner| self.frame.shows(corner))
    }

    /// Whether the leaf cuts a face in some place of its way.
    fn runs_into_a_face(&self) -> bool {
        (0..=32).any(|step| {
            let place = self.profile.travel * f64::from(step) / 32.0;
            self.sides
                .iter()
                .any(|side| self.swung.cuts(place, side, 1e-6))
        })
    }
}

fn seen(frame: &Frame, face: &Face) -> Side {
    let spot = |spot: crate::walk::device::Spot| frame.sees((spot.x.base(), spot.y.base()));
    Side::new(spot(face.from), spot(face.to))
}
