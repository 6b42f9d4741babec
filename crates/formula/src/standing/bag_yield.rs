//! Concrete that a bag of dry mix gives.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Quantity as _, Volume, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Weight of a bag of dry concrete mix, as sold.
    pub enum Bag {
        /// 40 lb, 18 kg.
        Forty = "40 lb",
        /// 50 lb, 23 kg.
        Fifty = "50 lb",
        /// 60 lb, 27 kg.
        Sixty = "60 lb",
        /// 80 lb, 36 kg.
        Eighty = "80 lb",
    }
}

formula! {
    /// Concrete that a bag of dry mix gives, by its weight.
    ///
    /// The label of the bag prevails; mixes for setting posts dry and high-strength mixes differ a little.
    pub struct BagYield = "bag-yield" in Standing {
        /// Weight of the bag as sold.
        bag ("–"): Bag,
    }
    gives
    /// Yield of a bag.
    pub struct YieldOfBag {
        /// Concrete that one bag gives.
        volume ("Vb"): Volume,
    }
    formula "Vb from the table"
    valid "Bags of 40, 50, 60 and 80 lb of ordinary concrete mix; for another, take the volume that stands on it."
    source { work: "labels of bagged concrete", clause: "0.15 ft³ for each 20 lb", evidence: Seen, seen: "two calculators of concrete that quote the labels" }
    by bag_yield
}

static YIELDS: Stored = LazyLock::new(|| Table::read(include_str!("bag_yield.toml")));

/// Cubic meters in a cubic foot.
const CUBIC_FOOT: f64 = 0.3048 * 0.3048 * 0.3048;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn bag_yield(bag: &BagYield) -> Result<YieldOfBag, OutOfReach> {
    let table = Table::of(&YIELDS)?;
    table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(bag.bag.word()))
        .and_then(|row| row.get(1).and_then(Cell::number))
        .map(|volume| YieldOfBag {
            volume: Volume::from_base(volume * CUBIC_FOOT),
        })
        .ok_or_else(|| OutOfReach::new("bag", "the table has no yield for this bag"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_bag_gives_the_same_for_its_weight() {
        let pounds = [40.0, 50.0, 60.0, 80.0];
        for (bag, pounds) in Bag::ALL.iter().zip(pounds) {
            let volume = BagYield { bag: *bag }.evaluate().unwrap().volume.base() / CUBIC_FOOT;
            assert!((volume - 0.0075 * pounds).abs() < 1e-12);
        }
    }
}
