//! Least cover over buried wiring by the National Electrical Code.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Word as _};

quantity::words! {
    /// Where wiring is buried.
    pub enum BuriedPlace {
        /// Where nothing below applies.
        Elsewhere = "anywhere else",
        /// In a trench under 2 in of concrete.
        UnderConcrete = "under 2 in of concrete",
        /// Under an outdoor slab of 4 in on which no vehicles go.
        UnderSlab = "under a slab of 4 in without vehicles",
        /// Under streets, roads, driveways and parking lots.
        UnderTraffic = "under streets, roads, driveways and parking lots",
        /// Under the driveway of one or two dwellings, used by them alone.
        UnderDwellingDrive = "under the driveway of a dwelling",
    }
}

quantity::words! {
    /// How wiring is buried.
    pub enum BuriedWiring {
        /// Cable laid in the soil.
        Direct = "direct burial",
        /// Rigid or intermediate metal conduit.
        RigidMetal = "rigid metal conduit",
        /// Plastic conduit listed for burial.
        Plastic = "plastic conduit",
        /// Residential branch circuit of 120 V and 20 A at the most, with ground-fault protection.
        GroundFault = "20 A with ground-fault protection",
    }
}

formula! {
    /// Least cover over buried wiring.
    ///
    /// Cover runs from the top of cable or conduit to the finished surface. Where frost heaves, where a plow or a post hole
    /// digger comes, or under a gate's footing, deeper is better than the table.
    pub struct NecBurialCover = "nec-burial-cover" in Power {
        /// Where it is buried.
        place ("–"): BuriedPlace,
        /// How it is buried.
        wiring ("–"): BuriedWiring,
    }
    gives
    /// Cover that is asked for.
    pub struct BurialCover {
        /// Least cover.
        cover ("h"): Length,
    }
    formula "h: table 300.5"
    valid "Up to 1000 V. Low voltage of irrigation and landscape lighting has a column of its own, which a gate may not use; rock under the trench has an exception."
    source { work: "NFPA 70 (NEC)", clause: "table 300.5", evidence: Seen, seen: "up.codes/s/underground-installations" }
    by nec_burial_cover
}

static COVER: Stored = Stored::new(|| Table::read(include_str!("nec_burial_cover.toml")));

/// An inch in meters.
const INCH: f64 = 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_burial_cover(wiring: &NecBurialCover) -> Result<BurialCover, OutOfReach> {
    let table = Table::of(&COVER)?;
    table
        .column("place")
        .zip(table.column(wiring.wiring.word()).filter_map(Cell::number))
        .find(|(place, _)| place.words() == Some(wiring.place.word()))
        .map(|(_, inches)| BurialCover {
            cover: Length::from_base(inches * INCH),
        })
        .ok_or_else(|| OutOfReach::new("place", "the table lacks this place"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn better_conduit_never_asks_for_more_and_every_cell_is_there() {
        for place in BuriedPlace::ALL.iter().copied() {
            let of = |wiring| NecBurialCover { place, wiring }.evaluate().unwrap().cover;
            assert!(of(BuriedWiring::RigidMetal) <= of(BuriedWiring::Plastic));
            assert!(of(BuriedWiring::Plastic) <= of(BuriedWiring::Direct));
            assert!(of(BuriedWiring::GroundFault) <= of(BuriedWiring::Direct));
        }
    }
}
