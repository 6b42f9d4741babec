//! What sees or feels a person: beams, fields, contact edges, the drive itself.

use super::world::{at_least_zero, positive};
use formula::OutOfReach;
use quantity::{Force, ForcePerLength, Length, Quantity as _, Time};

/// A direction of motion of the leaf.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Direction {
    /// While the gate opens.
    Opening,
    /// While the gate closes.
    Closing,
}

impl Direction {
    pub(super) fn other(self) -> Self {
        match self {
            Self::Opening => Self::Closing,
            Self::Closing => Self::Opening,
        }
    }
}

/// A place in the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// Along the closed leaf from its latching side.
    pub x: Length,
    /// Into the property.
    pub y: Length,
}

impl Spot {
    pub(crate) fn is_finite(self) -> bool {
        self.x.base().is_finite() && self.y.base().is_finite()
    }
}

/// A light beam from end to end. A body cuts it where it covers the whole width of the beam.
#[derive(Debug, Clone, PartialEq)]
pub struct Beam {
    /// Directions of motion in which it acts.
    pub guards: Vec<Direction>,
    /// One end.
    pub from: Spot,
    /// The other end.
    pub to: Spot,
    /// Height of its middle.
    pub height: Length,
    /// Its width, that has to be covered.
    pub diameter: Length,
    /// From the cut to the change of its output.
    pub response: Time,
}

/// A field: of a scanner that looks over an area, or a curtain where it has two corners.
///
/// A body is seen where it reaches into the field by the smallest object that is surely seen.
#[derive(Debug, Clone, PartialEq)]
pub struct Scanner {
    /// Directions of motion in which it acts.
    pub guards: Vec<Direction>,
    /// Corners of the field in plan, around a shape without dents; one with dents is several fields.
    pub corners: Vec<Spot>,
    /// Height of its lower side; of a level field, its height.
    pub bottom: Length,
    /// Height of its upper side; of a level field, its height.
    pub top: Length,
    /// Smallest object that it surely sees.
    pub smallest_object: Length,
    /// From the presence to the change of its output.
    pub response: Time,
}

/// A contact edge at the end of the leaf that goes ahead.
#[derive(Debug, Clone, PartialEq)]
pub struct ContactEdge {
    /// The direction of motion in which it goes ahead.
    pub guards: Direction,
    /// Height of its lower end.
    pub bottom: Length,
    /// Height of its upper end.
    pub top: Length,
    /// How far it is pressed before it reports.
    pub actuation_travel: Length,
    /// From the actuation to the change of its output.
    pub response: Time,
    /// Force for each unit of length that it is pressed, as long as it is soft.
    pub stiffness: ForcePerLength,
    /// Travel left in it after it has reported.
    pub soft_travel: Length,
    /// Force for each further unit of length once it is pressed flat.
    pub hard_stiffness: ForcePerLength,
}

/// The drive that feels what it pushes against.
#[derive(Debug, Clone, PartialEq)]
pub struct ForceSensing {
    /// Directions of motion in which it acts.
    pub guards: Vec<Direction>,
    /// Force at the edge of the leaf at which it reports.
    pub force: Force,
    /// From that force to the change of its output.
    pub response: Time,
}

impl Beam {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("height", self.height)?;
        at_least_zero("diameter", self.diameter)?;
        at_least_zero("response", self.response)?;
        let apart = self.from != self.to;
        if self.from.is_finite() && self.to.is_finite() && apart {
            Ok(())
        } else {
            Err(OutOfReach::new("to", "a beam has two ends that lie apart"))
        }
    }
}

impl Scanner {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("bottom", self.bottom)?;
        at_least_zero("smallest_object", self.smallest_object)?;
        at_least_zero("response", self.response)?;
        if self.top.base() < self.bottom.base() || !self.top.base().is_finite() {
            return Err(OutOfReach::new("top", "the top is not below the bottom"));
        }
        if self.corners.len() < 2 || !self.corners.iter().all(|corner| corner.is_finite()) {
            return Err(OutOfReach::new("corners", "a field has 2 corners or more"));
        }
        if self.has_dents() {
            return Err(OutOfReach::new(
                "corners",
                "the field has a dent, or a corner twice: write it as several fields without dents",
            ));
        }
        Ok(())
    }

    /// Whether going around it turns both ways, or not once around.
    fn has_dents(&self) -> bool {
        let at = |i: usize| {
            let corner = self.corners[i % self.corners.len()];
            (corner.x.base(), corner.y.base())
        };
        if self.corners.len() == 2 {
            return self.corners[0] == self.corners[1];
        }
        let mut turned = 0.0;
        let mut ways = (false, false);
        for i in 0..self.corners.len() {
            let ((ax, ay), (bx, by), (cx, cy)) = (at(i), at(i + 1), at(i + 2));
            let (ux, uy, vx, vy) = (bx - ax, by - ay, cx - bx, cy - by);
            let cross = ux * vy - uy * vx;
            ways = (ways.0 || cross > 0.0, ways.1 || cross < 0.0);
            turned += cross.atan2(ux * vx + uy * vy);
            if ux.abs() + uy.abs() <= 0.0 {
                return true;
            }
        }
        ways == (true, true) || (turned.abs() - std::f64::consts::TAU).abs() > 0.1
    }
}

impl ContactEdge {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("bottom", self.bottom)?;
        at_least_zero("actuation_travel", self.actuation_travel)?;
        at_least_zero("response", self.response)?;
        at_least_zero("soft_travel", self.soft_travel)?;
        positive("stiffness", self.stiffness)?;
        positive("hard_stiffness", self.hard_stiffness)?;
        if self.top > self.bottom && self.top.base().is_finite() {
            Ok(())
        } else {
            Err(OutOfReach::new("top", "the top is above the bottom"))
        }
    }
}

impl ForceSensing {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        positive("force", self.force)?;
        at_least_zero("response", self.response)
    }
}
