//! Everything that a test with one vehicle knows.

use super::detector::Detector;
use super::leaf::Leaf;
use super::outline::Outline;
use crate::plan::{above_zero, not_below_zero};
use formula::OutOfReach;
use quantity::{Acceleration, Length, Quantity as _, Time, Velocity};

/// How the leaf moves, at its leading or free end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    /// Its greatest speed.
    pub cruise_speed: Velocity,
    /// How fast it gets to that speed.
    pub acceleration: Acceleration,
    /// Its braking on a report.
    pub stopping: Acceleration,
    /// From the output of a detector to the start of braking.
    pub reaction: Time,
}

/// Where vehicles drive across the gate line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lane {
    /// Where the middle of a vehicle is when it keeps to the middle of the lane.
    pub middle: Length,
    /// How far its middle may be to either side of that.
    pub play: Length,
}

/// A gate, what watches it, and one vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct World {
    /// How the leaf closes.
    pub leaf: Leaf,
    /// How it moves.
    pub motion: Motion,
    /// What sees vehicles.
    pub detectors: Vec<Detector>,
    /// Where vehicles drive.
    pub lane: Lane,
    /// The vehicle.
    pub outline: Outline,
}

/// Everything is taken worse than it is by this length: what stands in the way reaches farther, what is seen less far.
pub(super) const SLACK: f64 = 1e-3;

impl Motion {
    /// Time from rest until it has gone a way; the slow-down before its end would only make it later.
    pub(super) fn time_after(&self, way: f64) -> f64 {
        let (speed, rate) = (self.cruise_speed.base(), self.acceleration.base());
        if way <= speed * speed / (2.0 * rate) {
            (2.0 * way / rate).sqrt()
        } else {
            speed / (2.0 * rate) + way / speed
        }
    }

    /// Its speed after a way from rest.
    pub(super) fn speed_after(&self, way: f64) -> f64 {
        let (speed, rate) = (self.cruise_speed.base(), self.acceleration.base());
        speed.min((2.0 * rate * way).sqrt())
    }

    /// How far it has gone from rest after a time.
    pub(super) fn way_after(&self, time: f64) -> f64 {
        let (speed, rate) = (self.cruise_speed.base(), self.acceleration.base());
        let gaining = speed / rate;
        if time <= gaining {
            0.5 * rate * time * time
        } else {
            speed * (time - gaining / 2.0)
        }
    }

    /// A leaf that was told to stop so long ago stands, from whatever speed it braked.
    pub(super) fn warning(&self) -> f64 {
        self.reaction.base() + self.cruise_speed.base() / self.stopping.base()
    }
}

impl World {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        above_zero("cruise_speed", self.motion.cruise_speed)?;
        above_zero("acceleration", self.motion.acceleration)?;
        above_zero("stopping", self.motion.stopping)?;
        not_below_zero("reaction", self.motion.reaction)?;
        not_below_zero("play", self.lane.play)?;
        if !self.lane.middle.base().is_finite() {
            return Err(OutOfReach::new("middle", "the lane is at a place"));
        }
        self.leaf.check()?;
        self.outline.check()?;
        self.detectors.iter().try_for_each(Detector::check)
    }

    /// The outermost places of the middle of the vehicle.
    pub(super) fn middles(&self) -> (f64, f64) {
        let (middle, play) = (self.lane.middle.base(), self.lane.play.base());
        (middle - play, middle + play)
    }
}
