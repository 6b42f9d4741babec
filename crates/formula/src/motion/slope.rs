//! Slope of the travel, and weight on it.

use crate::OutOfReach;
use quantity::{Acceleration, Quantity as _, Ratio};

/// Standard acceleration of gravity, in m/s² (definition).
pub(super) const GRAVITY: f64 = 9.80665;

/// Steepest slope that a calculation of travel takes: one in two.
const STEEPEST: f64 = 0.5;

/// A slope as the sine and cosine of its angle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Incline {
    /// Rise over the length along the slope; above zero when the leaf climbs.
    pub(super) sine: f64,
    /// Run over the length along the slope.
    pub(super) cosine: f64,
}

impl Incline {
    /// The incline of a slope given as rise over run, above zero when the leaf climbs.
    pub(super) fn of(slope: Ratio) -> Result<Self, OutOfReach> {
        let rise = slope.base();
        if !(-STEEPEST..=STEEPEST).contains(&rise) {
            return Err(OutOfReach::new(
                "slope",
                "give rise over run, from −0.5 (steep downhill) to 0.5 (steep uphill), such as 1 in 100",
            ));
        }
        let length = rise.hypot(1.0);
        Ok(Self {
            sine: rise / length,
            cosine: 1.0 / length,
        })
    }

    /// Gravity along the slope, above zero when it holds the leaf back.
    pub(super) fn gravity_along(self) -> Acceleration {
        Acceleration::from_base(GRAVITY * self.sine)
    }
}
