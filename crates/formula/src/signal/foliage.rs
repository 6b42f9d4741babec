//! The range within which the foliage formulas were measured.

use crate::OutOfReach;
use quantity::{Frequency, Length, Quantity as _};

/// Deepest foliage of both measured formulas, in meters.
const DEEPEST: f64 = 400.0;

/// Frequency in hertz and depth in meters, within 200 MHz to 95 GHz and up to 400 m.
pub(super) fn within(frequency: Frequency, depth: Length) -> Result<(f64, f64), OutOfReach> {
    let (f, d) = (frequency.base(), depth.base());
    if !(2e8..=95e9).contains(&f) {
        return Err(OutOfReach::new(
            "frequency",
            "it was measured from 200 MHz to 95 GHz",
        ));
    }
    if !(0.0..=DEEPEST).contains(&d) {
        return Err(OutOfReach::new(
            "depth",
            "it was measured through up to 400 m of foliage; give the length of the way inside the trees",
        ));
    }
    Ok((f, d))
}
