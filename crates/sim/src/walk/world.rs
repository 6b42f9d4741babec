//! The world of a walk test: leaf, its ways, devices, people.

use super::body::Body;
use super::control::{Controller, Limits};
use super::device::{Beam, ContactEdge, Direction, ForceSensing, Scanner};
use super::reach::Catch;
use crate::Plan;
use formula::OutOfReach;
use quantity::{ForcePerLength, Length, Quantity, Ratio};

/// The leaf as a prism.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaf {
    /// Thickness across the gate line; its middle is at y = 0.
    pub thickness: Length,
    /// Height of its underside.
    pub bottom: Length,
    /// Height of its top.
    pub top: Length,
}

/// The way of a sliding leaf in one direction.
#[derive(Debug, Clone, Copy)]
pub struct Pass {
    /// Closing moves toward smaller x, opening toward greater x.
    pub direction: Direction,
    /// How it moves.
    pub plan: Plan,
    /// Where the edge that goes ahead stands before it starts.
    pub edge: Length,
    /// The fixed face that it moves toward; none where nothing stands there.
    pub opposing: Option<Length>,
}

/// Everything that a walk test knows.
#[derive(Debug, Clone)]
pub struct World {
    /// The leaf.
    pub leaf: Leaf,
    /// Its ways; one for each direction.
    pub passes: Vec<Pass>,
    /// Beams.
    pub beams: Vec<Beam>,
    /// Fields.
    pub scanners: Vec<Scanner>,
    /// Contact edges on the leaf.
    pub edges: Vec<ContactEdge>,
    /// The drive's own sensing, where it counts.
    pub drive: Option<ForceSensing>,
    /// Force for each unit of length that a body is pressed by the bare leaf.
    pub bare_stiffness: ForcePerLength,
    /// The controller.
    pub controller: Controller,
    /// What a touch may do.
    pub limits: Limits,
    /// The people.
    pub bodies: Vec<Body>,
    /// What holds an arm that reaches through the leaf.
    pub catches: Vec<Catch>,
    /// Greatest sideways slant of a path: sideways over forward.
    pub greatest_slant: Ratio,
}

/// Greatest slant of a path through a gate whose leaf stays in the gate line, and what is said beyond it.
pub(super) const THROUGH: (f64, &str) = (
    10.0,
    "a path goes through the gate, not along it: at most 10",
);

/// What every world has, whatever its leaf.
pub(super) struct Common<'a> {
    /// Greatest slant, the greatest that it may be, and what is said beyond that.
    pub slant: (Ratio, (f64, &'static str)),
    pub stiffness: ForcePerLength,
    pub bodies: &'a [Body],
    /// Plans of every pass, and of every leaf in it.
    pub plans: Vec<&'a Plan>,
    pub seeing: (&'a [Beam], &'a [Scanner]),
    pub drive: Option<&'a ForceSensing>,
    pub controller: &'a Controller,
    pub limits: &'a Limits,
}

impl Common<'_> {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        positive("bare_stiffness", self.stiffness)?;
        let (slant, (most, why)) = self.slant;
        at_least_zero("greatest_slant", slant)?;
        if slant.base() > most {
            return Err(OutOfReach::new("greatest_slant", why));
        }
        if self.bodies.is_empty() || self.plans.is_empty() {
            return Err(OutOfReach::new(
                "bodies",
                "a walk test has people and a way of the leaf: nothing is safe because nobody was asked about",
            ));
        }
        self.controller.check()?;
        self.limits.check()?;
        self.bodies.iter().try_for_each(Body::check)?;
        for plan in &self.plans {
            plan.check()?;
            if self.controller.stopping < plan.deceleration {
                return Err(OutOfReach::new(
                    "stopping",
                    "a stop on a report is at least as hard as the slow-down of the plan",
                ));
            }
        }
        let (beams, scanners) = self.seeing;
        if beams.len() + scanners.len() > 16 {
            return Err(OutOfReach::new(
                "beams",
                "at most 16 beams and fields together",
            ));
        }
        beams.iter().try_for_each(Beam::check)?;
        scanners.iter().try_for_each(Scanner::check)?;
        self.drive.into_iter().try_for_each(ForceSensing::check)
    }
}

impl World {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        positive("thickness", self.leaf.thickness)?;
        at_least_zero("bottom", self.leaf.bottom)?;
        if self.leaf.top <= self.leaf.bottom || !self.leaf.top.base().is_finite() {
            return Err(OutOfReach::new(
                "top",
                "the top of the leaf is above its bottom",
            ));
        }
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
        self.catches.iter().try_for_each(Catch::check)?;
        self.edges.iter().try_for_each(ContactEdge::check)?;
        self.passes.iter().try_for_each(Self::check_way)
    }

    fn check_way(pass: &Pass) -> Result<(), OutOfReach> {
        if !pass.edge.base().is_finite() {
            return Err(OutOfReach::new("edge", "the edge is at a place"));
        }
        let left = pass.room_at_end();
        if left.is_nan() || left < -1e-9 {
            return Err(OutOfReach::new(
                "opposing",
                "the leaf stops before what it moves toward, or at it",
            ));
        }
        Ok(())
    }
}

impl Pass {
    /// Sign of the local axis: ahead of the edge is toward smaller local places.
    pub(super) fn sign(&self) -> f64 {
        match self.direction {
            Direction::Closing => 1.0,
            Direction::Opening => -1.0,
        }
    }

    /// Where the edge stands at the end.
    pub(super) fn edge_at_end(&self) -> f64 {
        self.edge.base() - self.sign() * self.plan.travel.base()
    }

    /// Room between the edge at the end and what is opposite; without end where nothing is.
    pub(super) fn room_at_end(&self) -> f64 {
        self.opposing.map_or(f64::INFINITY, |face| {
            self.sign() * (self.edge_at_end() - face.base())
        })
    }
}

pub(super) fn positive<Q: Quantity>(input: &'static str, value: Q) -> Result<(), OutOfReach> {
    crate::plan::above_zero(input, value)
}

pub(super) fn at_least_zero<Q: Quantity>(input: &'static str, value: Q) -> Result<(), OutOfReach> {
    crate::plan::not_below_zero(input, value)
}
