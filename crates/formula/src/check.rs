//! Refusals that calculations share.

use crate::OutOfReach;
use quantity::Quantity;

/// Refuses a value below zero.
pub(crate) fn not_negative<Q: Quantity>(
    input: &'static str,
    value: Q,
    example: &str,
) -> Result<(), OutOfReach> {
    if value.base() >= 0.0 {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        format!("this is not below zero; give a value such as {example}, or 0"),
    ))
}

/// Refuses a value that is zero or below.
pub(crate) fn positive<Q: Quantity>(
    input: &'static str,
    value: Q,
    example: &str,
) -> Result<(), OutOfReach> {
    if value.base() > 0.0 {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        format!("this is above zero; give a value such as {example}"),
    ))
}
