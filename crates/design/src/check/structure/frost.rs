//! How deep the bottom of a pad or a beam lies, against frost.

use crate::asking::{Asking, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::standing::FootingBottom;
use quantity::{Length, Quantity as _};
use site::{Foundation, Site};

/// The bottom of a pad or a beam against frost, or against the least depth of any footing where water drains from it.
pub(crate) fn bottom<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Comparison, Halt> {
    let depth = read!(asking, foundation.depth);
    let frost = if foundation.drained == Some(true) {
        Ok(Length::from_base(0.0))
    } else {
        read!(asking, site.climate?.frost_depth)
    };
    let top = match &foundation.at {
        Some(at) => asking.position(&foundation.origin, "at", Some(at))?[2],
        None => Length::from_base(0.0),
    };
    let (depth, frost_depth) = (depth?, frost?);
    let below = Length::from_base((depth - top).base().max(0.0));
    let asked = asking.work(&FootingBottom {
        load_depth: Length::from_base(0.0),
        frost_depth,
        bottom: below,
    })?;
    Ok(Comparison::at_most(
        Labeled::new(
            "least depth of the bottom, for frost and at all",
            asked.least,
        ),
        Labeled::new("depth of the bottom below the surface", below),
    ))
}
