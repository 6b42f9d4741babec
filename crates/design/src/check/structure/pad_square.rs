//! The smallest square pad that would hold where one does not.

use super::pad_loads::{PadLoad, Way};
use super::pad_stability::{FACTOR, Pad};
use crate::asking::Asking;
use formula::standing::PadSmallest;
use quantity::{Force, Length, Quantity as _, Ratio};

/// Side of the smallest square pad of this thickness that holds.
pub(super) fn smallest(
    asking: &mut Asking<'_>,
    pad: &Pad,
    (hardest, strongest): (&Way<'_>, &PadLoad),
) -> Option<Length> {
    let soil = pad.sliding?;
    let side = |load: &PadLoad| PadSmallest {
        thickness: pad.depth,
        density: pad.density,
        weight_on_top: Force::from_base(0.0),
        force: load.force,
        height: load.height + pad.depth,
        moment: load.moment,
        friction: soil.friction,
        cohesion: soil.cohesion,
        allowed: pad.bearing,
        safety: Ratio::from_base(FACTOR),
    };
    let one = asking
        .work_if_in_reach(&side(hardest.load))
        .map(|one| one.side);
    let other = asking
        .work_if_in_reach(&side(strongest))
        .map(|one| one.side);
    match (one, other) {
        (Some(one), Some(other)) if one < other => Some(other),
        (one, other) => one.or(other),
    }
}
