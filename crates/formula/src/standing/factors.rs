//! Refusals and conversions that the anchor calculations share.

use super::concrete::{INCH, POUND, within};
use crate::OutOfReach;
use quantity::{Area, Force, Quantity as _, Ratio};

/// Refuses a strength reduction factor that is none.
pub(super) fn reduction(factor: Ratio) -> Result<(), OutOfReach> {
    within(
        "reduction",
        factor,
        0.3,
        1.0,
        "give the strength reduction factor, such as 0.7, or 1 for the nominal strength",
    )
}

/// Refuses a factor for lightweight concrete that is none.
pub(super) fn lightweight(factor: Ratio) -> Result<(), OutOfReach> {
    within(
        "lightweight_factor",
        factor,
        0.5,
        1.0,
        "give 1 for normal-weight concrete; lightweight has less",
    )
}

/// Refuses a number of anchors in a row that is none.
pub(super) fn in_a_row(input: &'static str, count: u32) -> Result<(), OutOfReach> {
    if (1..=20).contains(&count) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "give the number of anchors in the row, from 1 to 20",
    ))
}

/// A number of pounds-force as a force.
pub(super) fn pounds(number: f64) -> Force {
    Force::from_base(number * POUND)
}

/// A number of square inches as an area.
pub(super) fn square_inches(number: f64) -> Area {
    Area::from_base(number * INCH * INCH)
}

/// An area in square inches.
pub(super) fn in_square_inches(area: Area) -> f64 {
    area.base() / (INCH * INCH)
}
