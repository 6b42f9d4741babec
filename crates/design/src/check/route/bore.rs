//! How wide a conduit is inside, and which cables run through it.

use crate::asking::{Asking, Wants, pick};
use crate::outcome::Halt;
use formula::ways::{ConduitBore, ConduitKind, TradeSize};
use quantity::{Length, Word as _};
use site::{Cable, Conduit, Site};

/// Inside diameter: as written, else that of the trade size.
pub(crate) fn bore<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Length, Halt> {
    if let Some(bore) = asking.read_if_there(&conduit.origin, "bore", conduit.bore.as_ref()) {
        return Ok(bore);
    }
    let kind = pick!(asking, conduit.kind);
    let size = match &conduit.trade_size {
        Some(size) => Ok(size),
        None => asking.lack(&conduit.origin, "trade_size", Wants::Written("\"1-1/4\"")),
    };
    let words = (
        ConduitKind::from_word(kind?.word()),
        TradeSize::from_word(size?.as_str()),
    );
    let (Some(kind), Some(trade_size)) = words else {
        return asking.refuse(
            "this trade size is not in the table of conduits; write its inside diameter as `bore`",
        );
    };
    Ok(asking.work(&ConduitBore { kind, trade_size })?.diameter)
}

/// The cables that run through a conduit.
pub(crate) fn cables_in<'s>(
    site: &'s Site,
    conduit: &'s Conduit,
) -> impl Iterator<Item = &'s Cable> {
    site.cable
        .iter()
        .filter(|cable| cable.route.contains(&conduit.id))
}
