//! What a source can give, for good and for a moment.

use crate::asking::{Asking, read};
use crate::circuit::{Circuits, Source};
use crate::outcome::Halt;
use quantity::Current;

/// Current that a source gives for a moment: what its data sheet says, else what it gives for good.
pub(super) fn momentary<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    source: usize,
) -> Result<Current, Halt> {
    match circuits.sources[source] {
        Source::Supply(supply) => {
            let peak =
                asking.read_if_there(&supply.origin, "peak_current", supply.peak_current.as_ref());
            match peak {
                Some(peak) => Ok(peak),
                None => read!(asking, supply.rated_current),
            }
        }
        Source::Battery(battery) => read!(asking, battery.fault_current),
    }
}
