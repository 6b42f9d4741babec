//! What each offer costs: its price by the length, or the metal in it where prices are missing. Never some by one and some
//! by the other.

use super::offer::Spot;
use crate::figure::Print;
use formula::power::metal_area;
use quantity::{Quantity as _, Ratio, Volume};
use site::{Cable, Price};

/// What every offer costs.
#[derive(Debug, Clone)]
pub(crate) struct Costs {
    /// For each spot and offer.
    pub(crate) each: Vec<Vec<u64>>,
    by: By,
}

#[derive(Debug, Clone, Copy)]
enum By {
    /// In hundredths of the currency of this price.
    Price(Price),
    /// In cubic millimeters.
    Metal,
}

impl Costs {
    /// By price, where every offer has one in the same currency; by metal elsewhere.
    pub(super) fn of(spots: &[Spot]) -> Self {
        let prices = each(spots, price);
        let mut known = prices.iter().flatten().copied().flatten();
        let first = known.next();
        let alike = |price: Option<Price>| {
            let (price, first) = (price?, first?);
            price.plus(first).map(|_| price.hundredths())
        };
        let costs = prices.iter().map(|offers| {
            let offers = offers.iter().copied().map(alike);
            offers.collect::<Option<Vec<u64>>>()
        });
        match (costs.collect(), first) {
            (Some(each), Some(first)) => Self {
                each,
                by: By::Price(first),
            },
            _ => Self::by_metal(spots),
        }
    }

    /// By the metal of all cores.
    pub(crate) fn by_metal(spots: &[Spot]) -> Self {
        Self {
            each: each(spots, metal),
            by: By::Metal,
        }
    }

    pub(super) fn is_by_price(&self) -> bool {
        matches!(self.by, By::Price(_))
    }

    /// A cost as a person reads it.
    pub(super) fn shown(&self, cost: u64, print: Print) -> String {
        match self.by {
            By::Price(price) => price.of_hundredths(cost).to_string(),
            By::Metal => print.q(Volume::from_base(super::bound::whole(cost) * 1e-9)),
        }
    }
}

fn each<T>(spots: &[Spot], of: impl Fn(&Cable) -> T) -> Vec<Vec<T>> {
    let offers = |spot: &Spot| spot.offers.iter().map(&of).collect();
    spots.iter().map(offers).collect()
}

/// Price of a cable over its length.
fn price(cable: &Cable) -> Option<Price> {
    let length = cable.length.as_ref()?.nominal();
    let sold = cable.price_length.as_ref()?.nominal();
    let share = length.base() / sold.base();
    cable.price?.share(Ratio::from_base(share))
}

/// Metal of all cores of a cable over its length, in cubic millimeters; nothing where size, cores or length are missing.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cable on a site holds far less than 2^53 mm³ of metal, and none less than nothing"
)]
fn metal(cable: &Cable) -> u64 {
    let area = cable.size.map_or(0.0, |size| metal_area(size).base());
    let length = cable
        .length
        .as_ref()
        .map_or(0.0, |one| one.nominal().base());
    let cores = f64::from(cable.cores.unwrap_or(2));
    (area * length * cores * 1e9).round() as u64
}

/// The lines that make costs out of metal into costs by price.
pub(super) fn missing(spots: &[Spot]) -> Vec<String> {
    let mut lines = Vec::new();
    for offer in spots.iter().flat_map(|spot| &spot.offers) {
        if offer.price.is_none() || offer.price_length.is_none() {
            let of = match &offer.part {
                Some(part) => format!("the entry {part} of the parts file"),
                None => format!("cable {}", offer.id),
            };
            let line = format!(
                "in {of}: price = \"95.00 USD\" and price_length = \"100 ft\", as your dealer asks"
            );
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}
