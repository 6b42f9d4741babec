//! Least radius of a bend in a conduit.

use super::TradeSize;
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// How a bend was made.
    pub enum BendMade {
        /// By a one-shot or full-shoe bender.
        OneShot = "one shot or full shoe",
        /// By any other means; factory sweeps of PVC and bends by heat are held to it here.
        Other = "other",
    }
}

formula! {
    /// Least radius of a bend in a conduit, to its center line.
    ///
    /// The cables in it may ask for more: fiber, coaxial cable and data cable have least radii of their own.
    pub struct ConduitBend = "conduit-bend" in Ways {
        /// Trade size of the conduit.
        trade_size ("–"): TradeSize,
        /// How the bend was made.
        made ("–"): BendMade,
    }
    gives
    /// Bend of a conduit.
    pub struct BendNeeded {
        /// Least radius to the center line.
        least_radius ("R"): Length,
    }
    formula "R from the table"
    valid "Conduit made to the US standards, trade sizes 1/2 to 4."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9 table 2", evidence: Seen, seen: "public scan of the tables of chapter 9" }
    by conduit_bend
}

static TABLE: Stored = LazyLock::new(|| Table::read(include_str!("conduit_bend.toml")));

const INCH: f64 = 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn conduit_bend(bend: &ConduitBend) -> Result<BendNeeded, OutOfReach> {
    let column = match bend.made {
        BendMade::OneShot => 1,
        BendMade::Other => 2,
    };
    let row = Table::of(&TABLE)?
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(bend.trade_size.word()));
    match row.and_then(|row| row.get(column)).and_then(Cell::number) {
        Some(inches) => Ok(BendNeeded {
            least_radius: Length::from_base(inches * INCH),
        }),
        None => Err(OutOfReach::new("trade_size", "the table has no such size")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn the_table_has_every_size_and_rises() {
        let table = Table::of(&TABLE).unwrap();
        let sizes: Vec<&str> = table.column("trade_size").filter_map(Cell::words).collect();
        assert_eq!(sizes, TradeSize::WORDS);
        for column in ["one_shot_or_full_shoe", "other_bends"] {
            let radii = table.numbers(column);
            assert!(radii.windows(2).all(|two| two[0] < two[1]), "{column}");
        }
    }

    #[test]
    fn a_bender_with_a_shoe_may_bend_tighter() {
        for trade_size in TradeSize::ALL {
            let radius = |made| {
                let trade_size = *trade_size;
                let bend = ConduitBend { trade_size, made }.evaluate().unwrap();
                bend.least_radius
            };
            assert!(radius(BendMade::OneShot) <= radius(BendMade::Other));
        }
    }
}
