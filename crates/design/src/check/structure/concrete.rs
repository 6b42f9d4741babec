//! The concrete that a new footing takes, in bags where bags are sold by the pound.

use crate::asking::{Asking, read};
use crate::figure::Print;
use crate::outcome::Halt;
use formula::standing::{Bag, BagYield, HoleConcrete};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio, Volume};
use site::{CodeBasis, Foundation, Site};
use std::f64::consts::PI;

/// Share added for waste and ragged holes.
const WASTE: f64 = 0.1;

static RAGGED: Source = Source {
    work: "a tenth more concrete for waste and ragged holes",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "rule of thumb of the trade",
};

/// Concrete to order.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order {
    volume: Volume,
    /// Bags of 80 lb; none where bags are sold otherwise.
    bags: Option<u32>,
}

impl Order {
    pub(super) fn words(self, print: Print) -> String {
        let bags = self
            .bags
            .map_or_else(String::new, |bags| format!(", or {bags} bags of 80 lb"));
        format!(
            " It takes {} of concrete, a tenth for waste in it{bags}.",
            print.q(self.volume)
        )
    }
}

/// Concrete for a footing that is not there yet.
pub(super) fn order<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Option<Order>, Halt> {
    if foundation.existing == Some(true) {
        return Ok(None);
    }
    let depth = read!(asking, foundation.depth);
    let diameter = as_round(asking, foundation);
    asking.rest_on(&RAGGED);
    let bag = asking.work(&BagYield { bag: Bag::Eighty })?.volume;
    let gives = asking.work(&HoleConcrete {
        holes: 1,
        diameter: diameter?,
        depth: depth?,
        displaced: Volume::from_base(0.0),
        waste: Ratio::from_base(WASTE),
        bag_yield: bag,
    })?;
    Ok(Some(Order {
        volume: gives.total,
        bags: (site.site.code_basis == CodeBasis::Us).then_some(gives.bags),
    }))
}

/// Diameter of the round hole that is as wide as the footing.
fn as_round<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<Length, Halt> {
    if foundation.length.is_none() && foundation.width.is_none() {
        return read!(asking, foundation.diameter);
    }
    let length = read!(asking, foundation.length);
    let width = read!(asking, foundation.width);
    let area = length?.base() * width?.base();
    Ok(Length::from_base((4.0 * area / PI).sqrt()))
}
