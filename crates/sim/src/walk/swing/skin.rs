//! What a leaf that turns feels of a body, and how soft it is there: by how far from the hinge line it is touched.
//!
//! All numbers of its motion are those of the free end. A touch nearer to the hinge line moves less by the share of the
//! distances; the drive feels it less by the same share.

use super::super::device::Direction;
use super::super::harm::{Feel, Spring};
use super::press::{Heft, Measured, Press};
use super::world::{LeafEdge, SwingWorld};
use crate::walk::body::Body;
use crate::walk::device::ForceSensing;
use quantity::Quantity as _;

/// Nearer to the hinge line than this share of the leaf nothing changes any more.
const NEAREST: f64 = 1e-3;

/// A contact edge in plain numbers.
#[derive(Debug, Clone, Copy)]
struct Strip {
    from: f64,
    to: f64,
    bottom: f64,
    top: f64,
    pressed: f64,
    response: f64,
    spring: Spring,
}

/// What feels, on one leaf in one direction.
#[derive(Debug, Clone)]
pub(in super::super) struct Skin {
    length: f64,
    bare: f64,
    strips: Vec<Strip>,
    /// Force at the free end, and delay.
    drive: Vec<(f64, f64)>,
    /// Lower and upper end of each cylinder of each body.
    heights: Vec<Vec<(f64, f64)>>,
    /// How hard the leaf can press, and how hard on its way back.
    pub press: Press,
    pub press_back: Press,
}

/// What is known of a world that a skin needs.
pub(in super::super) struct Covered<'a> {
    pub length: f64,
    pub bare: f64,
    pub edges: Vec<&'a LeafEdge>,
    pub drive: Option<&'a ForceSensing>,
    pub bodies: &'a [Body],
    /// Edges feel what touches them at any height.
    pub any_height: bool,
    pub heft: Option<&'a Heft>,
    pub measured: Vec<&'a Measured>,
}

impl Skin {
    pub(super) fn new(world: &SwingWorld, direction: Direction, leaf: usize) -> Self {
        let on_it = world.edges.iter().filter(|edge| edge.leaf == leaf);
        Self::over(
            &Covered {
                length: world.leaves[leaf].length.base(),
                bare: world.bare_stiffness.base(),
                edges: on_it.collect(),
                drive: world.drive.as_ref(),
                bodies: &world.bodies,
                any_height: false,
                heft: world.hefts.get(leaf),
                measured: world
                    .measured
                    .iter()
                    .filter(|one| one.leaf == leaf)
                    .collect(),
            },
            direction,
        )
    }

    pub(in super::super) fn over(covered: &Covered, direction: Direction) -> Self {
        let edges = covered.edges.iter();
        let strips = edges
            .filter(|edge| edge.edge.guards == direction)
            .map(|edge| strip(edge, covered.any_height));
        let drive = covered.drive.iter();
        let drive = drive.filter(|drive| drive.guards.contains(&direction));
        let heights = covered.bodies.iter().map(|body| {
            let parts = body.parts.iter();
            parts
                .map(|part| (part.bottom.base(), part.top.base()))
                .collect()
        });
        Self {
            length: covered.length,
            bare: covered.bare,
            strips: strips.collect(),
            drive: drive
                .map(|drive| (drive.force.base(), drive.response.base()))
                .collect(),
            heights: heights.collect(),
            press: press(covered, direction),
            press_back: press(covered, direction.other()),
        }
    }

    /// Distance from the hinge line that goes a share of the way of the free end.
    pub(in super::super) fn far(&self, share: f64) -> f64 {
        share * self.length
    }

    /// Share of the way of the free end that a place at a distance from the hinge line goes.
    pub(in super::super) fn share(&self, distance: f64) -> f64 {
        (distance / self.length).max(NEAREST)
    }

    /// The bare leaf.
    pub(in super::super) fn bare(&self) -> Spring {
        Spring {
            soft: self.bare,
            way: 0.0,
            hard: self.bare,
        }
    }

    /// What feels a cylinder that is touched so far along the leaf, as seen from the free end: ways are those that the
    /// free end goes, and the spring gives the force of the touch over the way of the free end.
    pub(in super::super) fn feel(
        &self,
        body: usize,
        part: usize,
        along: f64,
        share: f64,
        ahead: bool,
    ) -> Feel {
        let (bottom, top) = self.heights[body][part];
        let mut spring = None;
        let mut after = Vec::new();
        let felt = |strip: &&Strip| {
            (strip.from..=strip.to).contains(&along) && top > strip.bottom && bottom < strip.top
        };
        for strip in self.strips.iter().filter(|_| ahead).filter(felt) {
            after.push((strip.pressed / share, strip.response));
            spring.get_or_insert(strip.spring);
        }
        let spring = spring.unwrap_or(self.bare());
        for (force, response) in &self.drive {
            after.push((spring.pressed(force / share) / share, *response));
        }
        Feel {
            spring: Spring {
                soft: spring.soft * share,
                way: spring.way / share,
                hard: spring.hard * share,
            },
            after,
        }
    }
}

/// What may feel a touch that is known within bounds.
#[derive(Debug, Clone)]
pub(in super::super) struct Within {
    /// The springs that the touch may meet, each over its own way.
    pub springs: Vec<Spring>,
    /// For each device that surely feels it, how far the free end goes on at most before it does, and its delay.
    pub after: Vec<(f64, f64)>,
}

impl Skin {
    /// What may feel a touch between two places along the leaf that goes at least such a share of the free end's way.
    pub(in super::super) fn within(
        &self,
        (body, part): (usize, usize),
        along: (f64, f64),
        share: f64,
        ahead: bool,
    ) -> Within {
        let (bottom, top) = self.heights[body][part];
        let mut within = Within {
            springs: Vec::new(),
            after: Vec::new(),
        };
        let mut covered = false;
        for strip in &self.strips {
            let apart = along.1 < strip.from || along.0 > strip.to;
            if apart || top <= strip.bottom || bottom >= strip.top {
                continue;
            }
            let sure = ahead && along.0 >= strip.from && along.1 <= strip.to;
            if !covered {
                within.springs.push(strip.spring);
            }
            covered = covered || sure;
            if sure {
                within.after.push((strip.pressed / share, strip.response));
            }
        }
        if !covered {
            within.springs.push(self.bare());
        }
        for (force, response) in &self.drive {
            let pressed = |spring: &Spring| spring.pressed(force / share) / share;
            let most = within.springs.iter().map(pressed).fold(0.0, f64::max);
            within.after.push((most, *response));
        }
        within
    }
}

fn press(covered: &Covered, direction: Direction) -> Press {
    Press::new(covered.heft, covered.measured.iter().copied(), direction)
}

fn strip(edge: &LeafEdge, any_height: bool) -> Strip {
    let of = &edge.edge;
    let pressed = of.actuation_travel.base();
    let (bottom, top) = if any_height {
        (f64::NEG_INFINITY, f64::INFINITY)
    } else {
        (of.bottom.base(), of.top.base())
    };
    Strip {
        from: edge.from.base(),
        to: edge.to.base(),
        bottom,
        top,
        pressed,
        response: of.response.base(),
        spring: Spring {
            soft: of.stiffness.base(),
            way: pressed + of.soft_travel.base(),
            hard: of.hard_stiffness.base(),
        },
    }
}
