//! What is dug too near a footing.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::Foundation;

/// Widths of a footing within which a bank, a trench or an old footing takes its soil away.
const WIDTHS: f64 = 3.0;

/// No bank, trench or old footing is near enough to matter.
pub(super) fn beside<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    width: Length,
) -> Result<(), Halt> {
    let distance = asking.read_if_there(
        &foundation.origin,
        "bank_distance",
        foundation.bank_distance.as_ref(),
    );
    let Some(distance) = distance else {
        return Ok(());
    };
    let height = read!(asking, foundation.bank_height)?;
    if distance.base() < (width * WIDTHS).base().max(height.base()) {
        return asking.refuse(
            "a bank, a trench or an old footing is nearer than three widths of this footing, or nearer than it is high: the soil there does not hold as the formula has it, and an engineer must work it",
        );
    }
    Ok(())
}
