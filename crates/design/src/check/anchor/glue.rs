//! How much adhesive the holes of a set take.

use crate::asking::Asking;
use crate::figure::Print;
use crate::outcome::Halt;
use formula::standing::{AdhesiveNeed, AdhesiveOrder};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Ratio};
use site::Anchor;

static WASTE: Source = Source {
    work: "a quarter more adhesive than the gaps hold, and one nozzle for a set of anchors",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "usual",
};

/// Share of adhesive that is wasted.
const WASTED: f64 = 0.25;

/// Adhesive and cartridges, where the sizes of holes and cartridge are known.
pub(crate) fn order<'s>(
    asking: &mut Asking<'s>,
    anchor: &'s Anchor,
) -> Result<Option<AdhesiveNeed>, Halt> {
    let origin = &anchor.origin;
    let cartridge = asking.read_if_there(origin, "cartridge", anchor.cartridge.as_ref());
    let hole = asking.read_if_there(origin, "hole_diameter", anchor.hole_diameter.as_ref());
    let rod = asking.read_if_there(origin, "diameter", anchor.diameter.as_ref());
    let depth = asking.read_if_there(origin, "hole_depth", anchor.hole_depth.as_ref());
    let loss = asking.read_if_there(origin, "nozzle_loss", anchor.nozzle_loss.as_ref());
    let (Some(cartridge), Some(hole), Some(rod), Some(depth), Some(count)) =
        (cartridge, hole, rod, depth, anchor.count)
    else {
        return Ok(None);
    };
    asking.rest_on(&WASTE);
    asking
        .work(&AdhesiveOrder {
            holes: count,
            hole_diameter: hole,
            rod_diameter: rod,
            depth,
            waste: Ratio::from_base(WASTED),
            nozzles: 1,
            nozzle_loss: loss.unwrap_or_default(),
            cartridge,
        })
        .map(Some)
}

/// The order as the end of a sentence.
pub(super) fn ordered(print: Print, need: Option<AdhesiveNeed>) -> String {
    let Some(need) = need else {
        return String::new();
    };
    let cartridges = match need.cartridges {
        1 => "1 cartridge".to_owned(),
        more => format!("{more} cartridges"),
    };
    format!(
        "; the holes take {} of adhesive with waste, {cartridges}",
        print.q(need.total)
    )
}
