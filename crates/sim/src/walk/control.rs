//! What the controller does with a report, and what a touch may do.

use super::world::{at_least_zero, positive};
use formula::OutOfReach;
use quantity::{Acceleration, Force, Length, Time, Velocity};

/// What the leaf does when something is reported.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Answer {
    /// It stops and stays there.
    Stop,
    /// It stops, and runs back.
    Reverse {
        /// Time that it stands before it starts back.
        pause: Time,
        /// Speed of the way back.
        speed: Velocity,
        /// Length of the way back; never beyond where it started.
        distance: Length,
    },
}

/// The controller.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Controller {
    /// From the output of a device to the start of braking.
    pub reaction: Time,
    /// Braking.
    pub stopping: Acceleration,
    /// What it does.
    pub answer: Answer,
}

/// What a touch may do: the limits of force, as EN 12453 words them, and how far a body may be squeezed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Gap before the moving edge, up to and with which the lower limit holds.
    pub crushing_gap: Length,
    /// Greatest force in a gap up to that.
    pub crushing_force: Force,
    /// Greatest force in a wider gap.
    pub open_force: Force,
    /// Force that may remain after the first time.
    pub lasting_force: Force,
    /// Time from the touch until the force is down to that.
    pub lasting_after: Time,
    /// Force that may remain after the second time.
    pub rest_force: Force,
    /// Time from the touch until the force is down to that.
    pub rest_after: Time,
    /// How far a body with something fixed behind it may be squeezed before it counts as trapped.
    pub squeeze: Length,
}

impl Controller {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("reaction", self.reaction)?;
        positive("stopping", self.stopping)?;
        match self.answer {
            Answer::Stop => Ok(()),
            Answer::Reverse {
                pause,
                speed,
                distance,
            } => {
                at_least_zero("pause", pause)?;
                positive("speed", speed)?;
                at_least_zero("distance", distance)
            }
        }
    }
}

impl Limits {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("crushing_gap", self.crushing_gap)?;
        positive("crushing_force", self.crushing_force)?;
        positive("open_force", self.open_force)?;
        positive("lasting_force", self.lasting_force)?;
        positive("lasting_after", self.lasting_after)?;
        positive("rest_force", self.rest_force)?;
        positive("rest_after", self.rest_after)?;
        positive("squeeze", self.squeeze)?;
        if self.open_force < self.crushing_force || self.lasting_force < self.rest_force {
            return Err(OutOfReach::new(
                "open_force",
                "the limits fall: open, crushing; lasting, at rest",
            ));
        }
        Ok(())
    }
}
