//! A vehicle as it rolls: units one behind the other, each with an axle that follows what pulls it.

use super::MOST;
use crate::plan::above_zero;
use formula::OutOfReach;
use quantity::{Angle, Length, Quantity as _};

/// The body of a unit, seen from above a rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// How far it reaches ahead of the point that is pulled or steered; below zero where it begins behind that point.
    pub ahead: Length,
    /// How far it reaches behind the axle.
    pub behind: Length,
    /// Its width, mirrors included.
    pub width: Length,
    /// Its underside above the ground: lower things pass beneath it.
    pub underside: Length,
}

/// A vehicle, a turntable or a trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unit {
    /// From the point that is pulled or steered back to its axle, or to the middle of a group of axles.
    pub wheelbase: Length,
    /// Its body; none for a bare turntable.
    pub body: Option<Body>,
    /// Width over its tires.
    pub over_tires: Length,
    /// How far behind its axle the next unit hangs; below zero ahead of the axle.
    pub hitch: Length,
    /// Widest angle that it can make with the unit ahead of it; none where nothing limits it.
    pub widest: Option<Angle>,
}

/// Units one behind the other; the first one steers.
#[derive(Debug, Clone, PartialEq)]
pub struct Rig {
    /// The units, front to rear.
    pub units: Vec<Unit>,
    /// Radius of the circle of the middle of the front axle at full lock.
    pub least_radius: Length,
}

impl Rig {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        if self.units.is_empty() || self.units.len() > MOST {
            return Err(OutOfReach::new(
                "units",
                "a rig has one to four units: a truck, a turntable, two trailers",
            ));
        }
        for unit in &self.units {
            unit.check()?;
        }
        let first = self.units.first().map_or(0.0, |unit| unit.wheelbase.base());
        if self.least_radius.base().is_finite() && self.least_radius.base() > first {
            return Ok(());
        }
        Err(OutOfReach::new(
            "least_radius",
            "the circle of the front axle is larger than the wheelbase",
        ))
    }

    /// Greatest speed of a point of each unit's body for one of the middle of the front axle.
    pub(super) fn speeds(&self) -> [f64; MOST] {
        let mut speeds = [0.0; MOST];
        let mut pulled = 1.0;
        for (speed, unit) in speeds.iter_mut().zip(&self.units) {
            let wheelbase = unit.wheelbase.base();
            let reach = unit.body.map_or(wheelbase, |body| {
                let long = (wheelbase + body.ahead.base()).max(body.behind.base());
                long.hypot(body.width.base().max(unit.over_tires.base()) / 2.0)
            });
            *speed = pulled * 1.0_f64.hypot(reach / wheelbase);
            pulled *= 1.0_f64.hypot(unit.hitch.base() / wheelbase);
        }
        speeds
    }

    /// The sine of the angle between front wheels and body at full lock.
    pub(super) fn lock(&self) -> f64 {
        let wheelbase = self.units.first().map_or(0.0, |unit| unit.wheelbase.base());
        wheelbase / self.least_radius.base()
    }
}

impl Unit {
    fn check(&self) -> Result<(), OutOfReach> {
        above_zero("wheelbase", self.wheelbase)?;
        above_zero("over_tires", self.over_tires)?;
        if !self.hitch.base().is_finite() {
            return Err(OutOfReach::new("hitch", "the next unit hangs at a place"));
        }
        let Some(body) = self.body else {
            return Ok(());
        };
        above_zero("width", body.width)?;
        let long = self.wheelbase + body.ahead + body.behind;
        if long.base().is_finite() && long.base() > 0.0 && body.underside.base().is_finite() {
            return Ok(());
        }
        Err(OutOfReach::new(
            "ahead",
            "a body ends behind where it begins",
        ))
    }
}
