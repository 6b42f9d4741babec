//! The world of a walk test with a leaf that rises: an arm, a leaf that pivots upward, a leaf that is lifted.

use super::super::body::Body;
use super::super::control::{Controller, Limits};
use super::super::device::{Beam, Direction, ForceSensing, Scanner};
use super::super::swing::{Heft, LeafEdge, Measured, Toward};
use super::super::world::{Common, THROUGH, at_least_zero, positive};
use crate::Plan;
use formula::OutOfReach;
use quantity::{ForcePerLength, Length, Quantity as _, Ratio};
use std::f64::consts::TAU;

/// A leaf that rises. Its middle is at y = 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RisingLeaf {
    /// It turns about a level pivot line across the gate line: a barrier's arm, a leaf that pivots upward.
    Turning(TurningLeaf),
    /// It is lifted straight up.
    Lifting(LiftingLeaf),
}

/// A leaf that turns in the upright plane of the gate line. Closed, it lies level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurningLeaf {
    /// Where the pivot line is along the gate line.
    pub pivot: Length,
    /// Height of the pivot line.
    pub height: Length,
    /// Where it points when it is closed.
    pub toward: Toward,
    /// From the pivot line to where it begins, along the leaf; below zero where it reaches behind the pivot line.
    pub heel: Length,
    /// From the pivot line to the free end, along the leaf.
    pub length: Length,
    /// From the pivot line down to its underside when it is closed; below zero where that is above the pivot line.
    pub below: Length,
    /// From the pivot line up to its top when it is closed.
    pub above: Length,
    /// Thickness across the gate line.
    pub thickness: Length,
}

/// A leaf that is lifted straight up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LiftingLeaf {
    /// Its end at the smaller x.
    pub from: Length,
    /// Its end at the greater x.
    pub to: Length,
    /// Height of its underside when it is closed.
    pub closed: Length,
    /// From its underside to its top.
    pub tall: Length,
    /// Thickness across the gate line.
    pub thickness: Length,
}

/// The way of the leaf in one direction.
#[derive(Debug, Clone, Copy)]
pub struct RisingPass {
    /// Closing ends with the leaf down.
    pub direction: Direction,
    /// How it moves: along the arc of its free end where it turns.
    pub plan: Plan,
}

/// Everything that a walk test of a leaf that rises knows.
#[derive(Debug, Clone)]
pub struct RisingWorld {
    /// The leaf.
    pub leaf: RisingLeaf,
    /// Its ways; one for each direction.
    pub passes: Vec<RisingPass>,
    /// Beams.
    pub beams: Vec<Beam>,
    /// Fields.
    pub scanners: Vec<Scanner>,
    /// Contact edges along its underside, all on leaf 0; `from` and `to` count along the leaf, from the pivot line or from
    /// its end at the smaller x. Their heights are not used: the underside is where the leaf is.
    pub edges: Vec<LeafEdge>,
    /// The drive's own sensing, where it counts.
    pub drive: Option<ForceSensing>,
    /// Force for each unit of length that a body is pressed by the bare leaf, at its stiffest place.
    pub bare_stiffness: ForcePerLength,
    /// The controller.
    pub controller: Controller,
    /// What a touch may do.
    pub limits: Limits,
    /// The people.
    pub bodies: Vec<Body>,
    /// Greatest sideways slant of a path: sideways over forward.
    pub greatest_slant: Ratio,
    /// What moves with the leaf, where it is known: it can press no harder than by its energy and push.
    pub heft: Option<Heft>,
    /// Forces that were measured on the leaf, all on leaf 0: they count instead of those that are worked out.
    pub measured: Vec<Measured>,
    /// From where to where along the gate line a housing stands at the pivot: nobody is in it.
    pub housing: Option<(Length, Length)>,
}

impl RisingWorld {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        self.leaf.check()?;
        Common {
            slant: (self.greatest_slant, THROUGH),
            stiffness: self.bare_stiffness,
            bodies: &self.bodies,
            plans: self.passes.iter().map(|pass| &pass.plan).collect(),
            seeing: (&self.beams, &self.scanners),
            drive: self.drive.as_ref(),
            controller: &self.controller,
            limits: &self.limits,
        }
        .check()?;
        self.edges.iter().try_for_each(|edge| edge.check(1))?;
        self.heft.iter().try_for_each(Heft::check)?;
        self.measured.iter().try_for_each(|one| one.check(1))?;
        self.passes.iter().try_for_each(|pass| self.check_way(pass))
    }

    fn check_way(&self, pass: &RisingPass) -> Result<(), OutOfReach> {
        let first = self.passes[0].plan.travel;
        if (pass.plan.travel - first).abs() > first * 1e-9 {
            return Err(OutOfReach::new(
                "travel",
                "the leaf goes as far when it opens as when it closes",
            ));
        }
        match self.leaf {
            RisingLeaf::Turning(leaf)
                if (pass.plan.travel / leaf.length).base() > 0.25 * TAU + 1e-9 =>
            {
                Err(OutOfReach::new(
                    "travel",
                    "a leaf that rises turns by a quarter turn at most",
                ))
            }
            _ => Ok(()),
        }
    }
}

impl RisingLeaf {
    fn check(&self) -> Result<(), OutOfReach> {
        match self {
            Self::Turning(leaf) => {
                positive("length", leaf.length)?;
                positive("thickness", leaf.thickness)?;
                at_least_zero("height", leaf.height)?;
                if !leaf.pivot.base().is_finite() {
                    return Err(OutOfReach::new("pivot", "the pivot line is at a place"));
                }
                if leaf.heel.base().is_nan()
                    || leaf.heel >= leaf.length
                    || leaf.heel.abs() > leaf.length
                {
                    return Err(OutOfReach::new(
                        "heel",
                        "the leaf begins nearer to the pivot line than it ends",
                    ));
                }
                let tall = leaf.above + leaf.below;
                if !(tall.base() > 0.0 && tall.base().is_finite()) || leaf.below > leaf.height {
                    return Err(OutOfReach::new(
                        "below",
                        "the leaf is above the ground, and its top above its underside",
                    ));
                }
                Ok(())
            }
            Self::Lifting(leaf) => {
                positive("tall", leaf.tall)?;
                positive("thickness", leaf.thickness)?;
                at_least_zero("closed", leaf.closed)?;
                let wide = leaf.to - leaf.from;
                if wide.base() > 0.0 && wide.base().is_finite() {
                    Ok(())
                } else {
                    Err(OutOfReach::new(
                        "to",
                        "the leaf ends beyond where it begins",
                    ))
                }
            }
        }
    }
}
