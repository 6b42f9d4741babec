//! The world of a walk test with leaves that swing.

use super::super::body::Body;
use super::super::control::{Controller, Limits};
use super::super::device::{Beam, ContactEdge, Direction, ForceSensing, Scanner, Spot};
use super::super::world::{Common, at_least_zero, positive};
use super::press::{Heft, Measured};
use crate::Plan;
use formula::OutOfReach;
use quantity::{ForcePerLength, Length, Quantity as _, Ratio, Time};
use std::f64::consts::TAU;

/// Where a closed leaf points, seen from its hinge line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Toward {
    /// Toward smaller x: toward the latching side.
    Smaller,
    /// Toward greater x.
    Greater,
}

/// Where a leaf swings when it opens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Opens {
    /// Into the property: toward greater y.
    Inward,
    /// Toward the road: toward smaller y.
    Outward,
}

/// A leaf that swings about an upright hinge line, as a prism. Closed, it lies along x.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwingLeaf {
    /// Hinge line.
    pub pivot: Spot,
    /// Where it points when it is closed.
    pub toward: Toward,
    /// Where it swings when it opens.
    pub opens: Opens,
    /// From the hinge line to where the leaf begins, along the leaf; below zero where it reaches behind the hinge line.
    pub heel: Length,
    /// From the hinge line to the free end, along the leaf.
    pub length: Length,
    /// From the hinge line to the middle of the leaf's thickness, across it; above zero on the side to which it opens.
    pub offset: Length,
    /// Thickness.
    pub thickness: Length,
    /// Height of its underside.
    pub bottom: Length,
    /// Height of its top.
    pub top: Length,
}

/// How one leaf moves in a pass.
#[derive(Debug, Clone, Copy)]
pub struct Turn {
    /// Plan along the arc of its free end, which is its length from the hinge line: its travel is the angle times that.
    pub plan: Plan,
    /// How long after the start of the pass it starts.
    pub delay: Time,
}

/// The way of all leaves in one direction.
#[derive(Debug, Clone)]
pub struct SwingPass {
    /// Closing ends with every leaf along x, opening begins there.
    pub direction: Direction,
    /// The turns of the leaves, in their order.
    pub turns: Vec<Turn>,
}

/// An upright face that stays where it is: of a wall, a pillar, a post, a parked thing. It reaches as high as people do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Face {
    /// One end.
    pub from: Spot,
    /// The other end.
    pub to: Spot,
}

/// A contact edge along a stretch of a leaf, on the side that goes ahead in the direction that it guards: at the free end
/// where the stretch ends there, along the face, or along the underside where its heights are low.
#[derive(Debug, Clone, PartialEq)]
pub struct LeafEdge {
    /// Which leaf, by its place in the list.
    pub leaf: usize,
    /// Where it begins, from the hinge line along the leaf.
    pub from: Length,
    /// Where it ends, from the hinge line along the leaf.
    pub to: Length,
    /// What it is. Its numbers are those where it is touched.
    pub edge: ContactEdge,
}

/// Everything that a walk test of leaves that swing knows.
///
/// Speeds, distances and braking of plans and of the controller are along the arc of the free end; the force of the drive's
/// sensing is that at the free end, and grows toward the hinge line as one over the distance.
#[derive(Debug, Clone)]
pub struct SwingWorld {
    /// One leaf or two.
    pub leaves: Vec<SwingLeaf>,
    /// Their ways; one for each direction.
    pub passes: Vec<SwingPass>,
    /// What stands around and may have a body between it and a leaf.
    pub faces: Vec<Face>,
    /// Beams.
    pub beams: Vec<Beam>,
    /// Fields.
    pub scanners: Vec<Scanner>,
    /// Contact edges on the leaves.
    pub edges: Vec<LeafEdge>,
    /// The drive's own sensing, where it counts.
    pub drive: Option<ForceSensing>,
    /// Force for each unit of length that a body is pressed by a bare leaf, at the stiffest place of the leaf.
    pub bare_stiffness: ForcePerLength,
    /// The controller; it stops all leaves at once.
    pub controller: Controller,
    /// What a touch may do.
    pub limits: Limits,
    /// The people.
    pub bodies: Vec<Body>,
    /// Greatest sideways slant of a path: sideways over forward. The angles within it come equally often.
    pub greatest_slant: Ratio,
    /// What moves with each leaf, in their order, where it is known: it can press no harder than by its energy and push.
    pub hefts: Vec<Heft>,
    /// Forces that were measured on the leaves: they count instead of those that are worked out.
    pub measured: Vec<Measured>,
}

impl SwingLeaf {
    fn check(&self) -> Result<(), OutOfReach> {
        positive("thickness", self.thickness)?;
        positive("length", self.length)?;
        at_least_zero("bottom", self.bottom)?;
        if self.top <= self.bottom || !self.top.base().is_finite() {
            return Err(OutOfReach::new(
                "top",
                "the top of the leaf is above its bottom",
            ));
        }
        if self.heel.base().is_nan() || self.heel >= self.length || self.heel.abs() > self.length {
            return Err(OutOfReach::new(
                "heel",
                "the leaf begins nearer to the hinge line than it ends",
            ));
        }
        if self.offset.base().is_nan() || self.offset.abs() > self.length {
            return Err(OutOfReach::new(
                "offset",
                "the leaf is nearer to the hinge line than it is long",
            ));
        }
        if self.pivot.is_finite() {
            Ok(())
        } else {
            Err(OutOfReach::new("pivot", "the hinge line is at a place"))
        }
    }
}

impl SwingWorld {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        if self.leaves.is_empty() || self.leaves.len() > 2 {
            return Err(OutOfReach::new("leaves", "a gate swings one leaf or two"));
        }
        self.leaves.iter().try_for_each(SwingLeaf::check)?;
        let turns = self.passes.iter().flat_map(|pass| &pass.turns);
        Common {
            slant: (self.greatest_slant, (1000.0, "at most 1000")),
            stiffness: self.bare_stiffness,
            bodies: &self.bodies,
            plans: turns.map(|turn| &turn.plan).collect(),
            seeing: (&self.beams, &self.scanners),
            drive: self.drive.as_ref(),
            controller: &self.controller,
            limits: &self.limits,
        }
        .check()?;
        self.check_ways()?;
        self.check_devices()
    }

    fn check_ways(&self) -> Result<(), OutOfReach> {
        for pass in &self.passes {
            if pass.turns.len() != self.leaves.len() {
                return Err(OutOfReach::new("turns", "each leaf has one turn in a pass"));
            }
            for ((turn, first), leaf) in pass
                .turns
                .iter()
                .zip(&self.passes[0].turns)
                .zip(&self.leaves)
            {
                at_least_zero("delay", turn.delay)?;
                let angle = (turn.plan.travel / leaf.length).base();
                if angle > 0.5 * TAU {
                    return Err(OutOfReach::new(
                        "travel",
                        "a leaf turns by half a turn at most",
                    ));
                }
                if ((turn.plan.travel - first.plan.travel) / leaf.length)
                    .base()
                    .abs()
                    > 1e-9
                {
                    return Err(OutOfReach::new(
                        "travel",
                        "a leaf turns as far when it opens as when it closes",
                    ));
                }
            }
        }
        Ok(())
    }

    fn check_devices(&self) -> Result<(), OutOfReach> {
        for face in &self.faces {
            if !(face.from.is_finite() && face.to.is_finite()) || face.from == face.to {
                return Err(OutOfReach::new(
                    "faces",
                    "a face has two ends that lie apart",
                ));
            }
        }
        for edge in &self.edges {
            edge.check(self.leaves.len())?;
        }
        self.hefts.iter().try_for_each(Heft::check)?;
        self.measured
            .iter()
            .try_for_each(|measured| measured.check(self.leaves.len()))
    }
}

impl LeafEdge {
    pub(in super::super) fn check(&self, leaves: usize) -> Result<(), OutOfReach> {
        if self.leaf >= leaves {
            return Err(OutOfReach::new("leaf", "an edge is on one of the leaves"));
        }
        let apart = self.to - self.from;
        if !(apart.base() > 0.0 && apart.base().is_finite()) {
            return Err(OutOfReach::new("to", "an edge ends beyond where it begins"));
        }
        self.edge.check()
    }
}
