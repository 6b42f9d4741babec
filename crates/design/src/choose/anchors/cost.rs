//! What a set of anchors costs, with its adhesive.

use crate::asking::Asking;
use crate::check::anchor::glue::order;
use quantity::UnitSystem;
use site::{Anchor, AnchorKind, Price};

/// Price of the anchors of a set; nothing where the entry lacks a price, or an adhesive anchor what its adhesive costs.
pub(super) fn cost(anchor: &Anchor) -> Option<Price> {
    let rods = anchor.price?.times(anchor.count?)?;
    if anchor.kind != Some(AnchorKind::Adhesive) {
        return Some(rods);
    }
    let mut asking = Asking::new(UnitSystem::Si);
    let need = order(&mut asking, anchor).ok()??;
    rods.plus(anchor.cartridge_price?.times(need.cartridges)?)
}
