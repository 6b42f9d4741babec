//! What the controller wants of a leaf.

use formula::OutOfReach;
use quantity::{Acceleration, ForcePerLength, Length, Quantity, Time, Velocity};

/// How the controller moves the leaf from rest to its stop.
#[derive(Debug, Clone, Copy)]
pub struct Plan {
    /// Distance from rest to where it should stand.
    pub travel: Length,
    /// Running speed.
    pub cruise_speed: Velocity,
    /// Acceleration of the soft start.
    pub acceleration: Acceleration,
    /// Deceleration of the slow-down and of the last stop.
    pub deceleration: Acceleration,
    /// Distance before the stop at which the slow-down begins.
    pub set_point: Length,
    /// Creep speed.
    pub creep_speed: Velocity,
}

/// Something in the way, and what the controller does about it.
#[derive(Debug, Clone, Copy)]
pub struct Obstacle {
    /// Distance from rest at which the leaf meets it.
    pub at: Length,
    /// Force with which it pushes back for each unit of length that it is pushed in.
    pub stiffness: ForcePerLength,
    /// Time from the contact to the start of braking.
    pub reaction_time: Time,
    /// Braking.
    pub stopping_deceleration: Acceleration,
    /// Time that the leaf stands before it starts back.
    pub pause: Time,
    /// Speed of the way back.
    pub reverse_speed: Velocity,
    /// Length of the way back.
    pub reverse_distance: Length,
}

impl Plan {
    pub(crate) fn check(&self) -> Result<(), OutOfReach> {
        above_zero("travel", self.travel)?;
        above_zero("cruise_speed", self.cruise_speed)?;
        above_zero("acceleration", self.acceleration)?;
        above_zero("deceleration", self.deceleration)?;
        above_zero("set_point", self.set_point)?;
        above_zero("creep_speed", self.creep_speed)?;
        if self.set_point > self.travel {
            return Err(OutOfReach::new(
                "set_point",
                "the slow-down begins within the travel",
            ));
        }
        if self.creep_speed > self.cruise_speed {
            return Err(OutOfReach::new(
                "creep_speed",
                "the creep is not faster than the running speed",
            ));
        }
        Ok(())
    }

    /// Speed that the plan gets up to where nothing hinders it.
    pub(crate) fn peak(&self) -> f64 {
        let before = (self.travel - self.set_point).base();
        let meeting = (2.0 * self.acceleration.base() * before).sqrt();
        self.cruise_speed
            .base()
            .min(meeting.max(self.creep_speed.base()))
    }

    /// Where the last stop begins.
    pub(crate) fn limit(&self) -> f64 {
        self.travel.base() - self.creep_speed.base().powi(2) / (2.0 * self.deceleration.base())
    }
}

impl Obstacle {
    pub(crate) fn check(&self) -> Result<(), OutOfReach> {
        above_zero("stopping_deceleration", self.stopping_deceleration)?;
        above_zero("reverse_speed", self.reverse_speed)?;
        not_below_zero("at", self.at)?;
        not_below_zero("stiffness", self.stiffness)?;
        not_below_zero("reaction_time", self.reaction_time)?;
        not_below_zero("pause", self.pause)?;
        not_below_zero("reverse_distance", self.reverse_distance)
    }
}

pub(crate) fn above_zero<Q: Quantity>(input: &'static str, value: Q) -> Result<(), OutOfReach> {
    if value.base() > 0.0 && value.base().is_finite() {
        Ok(())
    } else {
        Err(OutOfReach::new(input, "this is above zero"))
    }
}

pub(crate) fn not_below_zero<Q: Quantity>(input: &'static str, value: Q) -> Result<(), OutOfReach> {
    if value.base() >= 0.0 && value.base().is_finite() {
        Ok(())
    } else {
        Err(OutOfReach::new(input, "this is not below zero"))
    }
}
