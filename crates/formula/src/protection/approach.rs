//! What the minimum distances share: millimeters, approach speeds, refusals.

use crate::OutOfReach;
use quantity::{Length, Quantity as _, Time};

/// Speed of a hand, in mm/s.
pub(super) const HAND: f64 = 2000.0;
/// Speed of a walking body, in mm/s.
pub(super) const WALK: f64 = 1600.0;

/// A number of millimeters.
pub(super) fn millimeters(number: f64) -> Length {
    Length::from_base(number / 1000.0)
}

/// A length in millimeters.
pub(super) fn in_millimeters(length: Length) -> f64 {
    length.base() * 1000.0
}

/// The time from actuation to the end of the danger, in seconds.
pub(super) fn stopping_seconds(time: Time) -> Result<f64, OutOfReach> {
    if (0.0..=60.0).contains(&time.base()) {
        return Ok(time.base());
    }
    Err(OutOfReach::new(
        "stopping_time",
        "give the whole time from actuation of the sensor until the leaf stands, up to 60 s, such as 300 ms",
    ))
}
