//! A round or square footing in the ground against a push from the side, by the pole formula.

use super::soil::lateral;
use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use formula::standing::{PostEmbedmentFree, PostEmbedmentHeld};
use quantity::{Force, Length, PressurePerDepth, Quantity as _, Ratio};
use site::{Foundation, Id, Origin, Site};

/// The foundation of that name.
pub(crate) fn named<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (origin, name): (&'s Origin, Option<&'s Id>),
) -> Result<&'s Foundation, Halt> {
    let found = name.and_then(|name| site.foundation.iter().find(|one| one.id == *name));
    match found {
        Some(foundation) => Ok(foundation),
        None => asking.lack(origin, "foundation", Wants::Written("\"footing-1\"")),
    }
}

/// Width of a footing as the pole formula counts it: its diameter, or the diagonal of the square on its shorter side.
pub(crate) fn width<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
) -> Result<Length, Halt> {
    if foundation.diameter.is_some() || foundation.length.is_none() {
        return read!(asking, foundation.diameter);
    }
    let length = read!(asking, foundation.length);
    let width = read!(asking, foundation.width);
    let (length, width) = (length?, width?);
    let shorter = if length < width { length } else { width };
    Ok(shorter * std::f64::consts::SQRT_2)
}

/// Depth that a footing needs against a push of daily use at a height above the ground.
pub(crate) fn depth_needed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    (force, height): (Force, Length),
) -> Result<Length, Halt> {
    let width = width(asking, foundation);
    let lateral = lateral(asking, site);
    let (width, lateral) = (width?, lateral?);
    pole_depth(asking, foundation, (force, height), (width, lateral))
}

/// Depth that a push asks of a footing of that width in that soil.
pub(super) fn pole_depth<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    (force, height): (Force, Length),
    (width, lateral): (Length, PressurePerDepth),
) -> Result<Length, Halt> {
    // Twice the bearing only where 1/2 in of movement does no harm.
    let may_move = foundation.may_move == Some(true);
    let lateral_factor = Ratio::from_base(if may_move { 2.0 } else { 1.0 });
    if foundation.held_at_grade == Some(true) {
        let held = PostEmbedmentHeld {
            force,
            height,
            width,
            lateral,
            lateral_factor,
        };
        return asking.work(&held).map(|needs| needs.depth);
    }
    let free = PostEmbedmentFree {
        force,
        height,
        width,
        lateral,
        lateral_factor,
    };
    asking.work(&free).map(|needs| needs.depth)
}
