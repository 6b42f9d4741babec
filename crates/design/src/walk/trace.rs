//! One walk as a row of pictures: where the leaf's edge and the body are, each hundredth of a second. `docs/trace.md` tells
//! every key.

use super::told::{Event, Told};
use super::{GateWalk, Seed};
use quantity::{Quantity as _, Time};
use serde::Serialize;
use sim::walk::{AnyWorld, Frame, Pose, RisingLeaf, Scenario, Spot, Way};

/// One walk for drawing. Lengths are in meters, times in seconds since the leaf started; x runs along the closed leaf from
/// its latching side, y into the property, z up.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trace {
    /// What makes the walk again.
    pub seed: Seed,
    /// The gate.
    pub gate: String,
    /// Which way the leaf moves: closing, opening.
    pub leaf_moves: String,
    /// Half the thickness of the leaf.
    pub leaf_half_thickness: f64,
    /// Heights of its underside and top when it is closed.
    pub leaf_heights: [f64; 2],
    /// Where an arm, or a leaf that pivots upward, turns: x and z.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turns_about: Option<[f64; 2]>,
    /// From which x to which x the housing of an arm's drive stands; nobody is there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub housing: Option<[f64; 2]>,
    /// The body.
    pub body: String,
    /// Its upright cylinders: ahead of its middle, to its right, radius, bottom, top.
    pub cylinders: Vec<[f64; 5]>,
    /// The direction in which it faces, as x and y of length one.
    pub faces: [f64; 2],
    /// The walk in words.
    pub told: Told,
    /// What happens when.
    pub events: Vec<Event>,
    /// The touch; missing where nobody is touched.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub touch: Option<TraceTouch>,
    /// The pictures, one each 0.01 s.
    pub frames: Vec<TraceFrame>,
}

/// A touch.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TraceTouch {
    /// Which of the cylinders is touched, by its place from zero.
    pub cylinder: usize,
    /// x and y of the middle of that cylinder.
    pub at: [f64; 2],
    /// Where a leaf that rises and the body meet: x and z.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub meets: Option<[f64; 2]>,
    /// Where all are at that very moment.
    pub frame: TraceFrame,
}

/// One picture.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TraceFrame {
    /// Time.
    pub time: f64,
    /// x of the edge of a leaf that slides that goes ahead; its middle is at y = 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge: Option<f64>,
    /// The corners of each leaf that swings, as x and y.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub from_above: Vec<[[f64; 2]; 4]>,
    /// The corners of a leaf that rises, as x and z; its middle is at y = 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_the_road: Option<[[f64; 2]; 4]>,
    /// How far an arm, or a leaf that pivots upward, is turned up from level, in degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turned_up: Option<f64>,
    /// x and y of the body's middle.
    pub body: [f64; 2],
}

impl GateWalk<'_> {
    /// One walk for drawing; nothing where it cannot be worked.
    pub fn trace(&self, seed: Seed) -> Option<Trace> {
        let scenario = self.scenario(seed).ok()?;
        let world = &self.lowered.world;
        let body = world.bodies().get(scenario.body)?;
        let step = Time::from_base(0.01);
        let account = self.walk.account(&scenario, step).ok()?;
        let told = self.told(seed);
        let (half, heights) = section(world)?;
        let parts = body.parts.iter();
        let cylinders = parts.map(|part| {
            let sizes = [part.ahead, part.aside, part.radius, part.bottom, part.top];
            sizes.map(quantity::Quantity::base)
        });
        let turns_about = turns_about(world);
        let frame = |frame: &Frame| picture(frame, turns_about.is_some());
        let touch = account.outcome.touch.zip(account.at_touch.as_ref());
        let meets = account.meets.map(plain);
        Some(Trace {
            seed,
            gate: self.name().to_owned(),
            leaf_moves: self.moving(&scenario).to_owned(),
            leaf_half_thickness: half,
            leaf_heights: heights,
            turns_about,
            housing: housing(world),
            body: body.name.clone(),
            cylinders: cylinders.collect(),
            faces: faces(&scenario),
            events: told.events.clone(),
            told,
            touch: touch.map(|(touch, at)| TraceTouch {
                cylinder: touch.part,
                at: plain(touch.at),
                meets,
                frame: frame(at),
            }),
            frames: account.frames.iter().map(frame).collect(),
        })
    }
}

/// The direction in which a body faces.
fn faces(scenario: &Scenario) -> [f64; 2] {
    let slant = scenario.slant.base();
    let length = (1.0 + slant * slant).sqrt();
    let way = if scenario.way == Way::In { 1.0 } else { -1.0 };
    [slant / length, way / length]
}

/// Half the thickness of a leaf, and the heights of its underside and top when it is closed.
fn section(world: &AnyWorld) -> Option<(f64, [f64; 2])> {
    let (thickness, low, high) = match world {
        AnyWorld::Sliding(world) => (world.leaf.thickness, world.leaf.bottom, world.leaf.top),
        AnyWorld::Swinging(world) => {
            let leaf = world.leaves.first()?;
            (leaf.thickness, leaf.bottom, leaf.top)
        }
        AnyWorld::Rising(world) => match world.leaf {
            RisingLeaf::Turning(leaf) => (
                leaf.thickness,
                leaf.height - leaf.below,
                leaf.height + leaf.above,
            ),
            RisingLeaf::Lifting(leaf) => (leaf.thickness, leaf.closed, leaf.closed + leaf.tall),
        },
    };
    Some((0.5 * thickness.base(), [low.base(), high.base()]))
}

/// Where a leaf that turns upward turns.
fn turns_about(world: &AnyWorld) -> Option<[f64; 2]> {
    match world {
        AnyWorld::Rising(world) => match world.leaf {
            RisingLeaf::Turning(leaf) => Some([leaf.pivot.base(), leaf.height.base()]),
            RisingLeaf::Lifting(_) => None,
        },
        _ => None,
    }
}

fn housing(world: &AnyWorld) -> Option<[f64; 2]> {
    match world {
        AnyWorld::Rising(world) => world.housing.map(|(from, to)| [from.base(), to.base()]),
        _ => None,
    }
}

fn plain(spot: Spot) -> [f64; 2] {
    [spot.x.base(), spot.y.base()]
}

fn picture(frame: &Frame, turns: bool) -> TraceFrame {
    let corners = |leaf: &[Spot; 4]| leaf.map(plain);
    let (edge, from_above, from_the_road) = match &frame.leaf {
        Pose::Edge(edge) => (Some(edge.base()), Vec::new(), None),
        Pose::Above(leaves) => (None, leaves.iter().map(corners).collect(), None),
        Pose::Front(leaf) => (None, Vec::new(), Some(corners(leaf))),
    };
    TraceFrame {
        time: frame.time.base(),
        edge,
        from_above,
        turned_up: from_the_road.filter(|_| turns).map(|leaf| turned_up(&leaf)),
        from_the_road,
        body: plain(frame.body),
    }
}

/// How far the first side of an outline, from the heel to the free end, is turned up from level (degrees).
fn turned_up(leaf: &[[f64; 2]; 4]) -> f64 {
    let [[from, low], [to, high], ..] = *leaf;
    (high - low).atan2((to - from).abs()).to_degrees()
}
