//! Least cover over a buried conduit.

use super::ConduitKind;
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// What lies above a buried conduit.
    pub enum CoverPlace {
        /// Lawn, beds, gravel that no vehicle uses, and whatever the other words leave out.
        Open = "open ground",
        /// A trench below 2 in of concrete.
        ThinConcrete = "under 2 in of concrete",
        /// An outside slab of 4 in or more, without vehicles, that reaches 6 in beyond the conduit.
        Slab = "under a slab of 4 in without vehicles",
        /// Streets, roads, alleys, driveways and places where vehicles park.
        Lane = "street, lane or parking",
        /// The drive of a one-family or two-family dwelling, used for nothing else.
        DwellingDrive = "drive of a dwelling",
    }
}

formula! {
    /// Least cover over a conduit in the ground: from its top to the finished surface.
    ///
    /// Frost, vehicles heavier than a road's, and digging by others ask for more; this is what protects whoever digs next.
    pub struct LeastCover = "least-cover" in Ways {
        /// What the conduit is made of.
        kind ("–"): ConduitKind,
        /// What lies above it.
        place ("–"): CoverPlace,
    }
    gives
    /// Cover of a conduit.
    pub struct CoverNeeded {
        /// Least cover.
        least ("h"): Length,
    }
    formula "h from the table"
    valid "Rigid metal and rigid PVC conduit with circuits up to 1000 V. Shallower low-voltage columns are left out: they cover little of what a gate has."
    source { work: "NFPA 70 (NEC)", clause: "table 300.5", evidence: Seen, seen: "code reader's page on underground installations that retells the table" }
    by least_cover
}

static TABLE: Stored = LazyLock::new(|| Table::read(include_str!("least_cover.toml")));

const INCH: f64 = 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn least_cover(conduit: &LeastCover) -> Result<CoverNeeded, OutOfReach> {
    let column = match conduit.kind {
        ConduitKind::Rmc => 1,
        ConduitKind::Pvc40 | ConduitKind::Pvc80 => 2,
        ConduitKind::Emt => {
            return Err(OutOfReach::new(
                "kind",
                "the table has no thin-walled tubing in the ground; bury rigid metal or PVC conduit",
            ));
        }
    };
    let row = Table::of(&TABLE)?
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(conduit.place.word()));
    match row.and_then(|row| row.get(column)).and_then(Cell::number) {
        Some(inches) => Ok(CoverNeeded {
            least: Length::from_base(inches * INCH),
        }),
        None => Err(OutOfReach::new("place", "the table has no such place")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn inches(kind: ConduitKind, place: CoverPlace) -> f64 {
        let needed = LeastCover { kind, place }.evaluate().unwrap();
        needed.least.base() / INCH
    }

    #[test]
    fn metal_never_lies_deeper_than_plastic_and_a_lane_asks_for_most() {
        for place in CoverPlace::ALL {
            assert!(inches(ConduitKind::Rmc, *place) <= inches(ConduitKind::Pvc40, *place));
            for kind in [ConduitKind::Rmc, ConduitKind::Pvc80] {
                assert!(inches(kind, *place) <= inches(kind, CoverPlace::Lane));
            }
        }
    }

    #[test]
    fn tubing_is_refused() {
        let tubing = LeastCover {
            kind: ConduitKind::Emt,
            place: CoverPlace::Open,
        };
        assert_eq!(tubing.evaluate().unwrap_err().input, "kind");
    }
}
