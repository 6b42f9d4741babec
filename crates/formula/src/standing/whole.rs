//! Rounding an amount up to whole pieces.

use crate::OutOfReach;

/// The smallest whole number that is no less, a last-digit excess left out.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the range is looked at first"
)]
pub(super) fn whole_number_up(input: &'static str, amount: f64) -> Result<u32, OutOfReach> {
    let up = (amount - 1e-9 * amount.abs()).ceil();
    if (0.0..=1e6).contains(&up) {
        return Ok(up as u32);
    }
    Err(OutOfReach::new(
        input,
        "this leads to more than a million pieces; look at the units",
    ))
}
