//! Inside diameter and area of conduits by trade size.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Area, Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// What a conduit is made of.
    pub enum ConduitKind {
        /// Electrical metallic tubing.
        Emt = "EMT",
        /// Rigid metal conduit.
        Rmc = "RMC",
        /// Rigid PVC, schedule 40.
        Pvc40 = "PVC-40",
        /// Rigid PVC, schedule 80.
        Pvc80 = "PVC-80",
    }
}

quantity::words! {
    /// Trade size of a conduit: a name, not a measured inch.
    pub enum TradeSize {
        /// 1/2.
        Half = "1/2",
        /// 3/4.
        ThreeQuarters = "3/4",
        /// 1.
        One = "1",
        /// 1-1/4.
        OneAndQuarter = "1-1/4",
        /// 1-1/2.
        OneAndHalf = "1-1/2",
        /// 2.
        Two = "2",
        /// 2-1/2.
        TwoAndHalf = "2-1/2",
        /// 3.
        Three = "3",
        /// 3-1/2.
        ThreeAndHalf = "3-1/2",
        /// 4.
        Four = "4",
    }
}

formula! {
    /// Inside diameter and area of a conduit by its trade size.
    ///
    /// The trade size is a name: a 1 in conduit measures between 0.94 and 1.06 in inside, by its kind.
    pub struct ConduitBore = "conduit-bore" in Ways {
        /// What the conduit is made of.
        kind ("–"): ConduitKind,
        /// Its trade size.
        trade_size ("–"): TradeSize,
    }
    gives
    /// Bore of a conduit.
    pub struct Bore {
        /// Inside diameter.
        diameter ("D"): Length,
        /// Inside area, 100 %.
        area ("A"): Area,
    }
    formula "D and A from the table"
    valid "Conduit made to the US standards, trade sizes 1/2 to 4."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9 table 4", evidence: Seen, seen: "public retellings of the table; each table file says which" }
    by bore
}

static EMT: Stored = LazyLock::new(|| Table::read(include_str!("conduit_bore_emt.toml")));
static RMC: Stored = LazyLock::new(|| Table::read(include_str!("conduit_bore_rmc.toml")));
static PVC_40: Stored = LazyLock::new(|| Table::read(include_str!("conduit_bore_pvc_40.toml")));
static PVC_80: Stored = LazyLock::new(|| Table::read(include_str!("conduit_bore_pvc_80.toml")));

const INCH: f64 = 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn bore(conduit: &ConduitBore) -> Result<Bore, OutOfReach> {
    let table = table_of(conduit.kind)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(conduit.trade_size.word()));
    let number = |place: usize| row.and_then(|row| row.get(place)).and_then(Cell::number);
    match (number(1), number(2)) {
        (Some(inches), Some(square_inches)) => Ok(Bore {
            diameter: Length::from_base(inches * INCH),
            area: Area::from_base(square_inches * INCH * INCH),
        }),
        _ => Err(OutOfReach::new(
            "trade_size",
            "the table has no such size for this kind of conduit; measure the bore instead",
        )),
    }
}

fn table_of(kind: ConduitKind) -> Result<&'static Table, OutOfReach> {
    Table::of(match kind {
        ConduitKind::Emt => &EMT,
        ConduitKind::Rmc => &RMC,
        ConduitKind::Pvc40 => &PVC_40,
        ConduitKind::Pvc80 => &PVC_80,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use std::f64::consts::FRAC_PI_4;

    #[test]
    fn every_table_has_every_size_rises_and_agrees_with_the_circle() {
        for kind in ConduitKind::ALL {
            let table = table_of(*kind).unwrap();
            let sizes: Vec<&str> = table.column("trade_size").filter_map(Cell::words).collect();
            assert_eq!(sizes, TradeSize::WORDS, "{kind}");
            let diameters = table.numbers("internal_diameter");
            assert!(diameters.windows(2).all(|two| two[0] < two[1]), "{kind}");
            for (diameter, area) in diameters.iter().zip(table.numbers("area")) {
                assert!(
                    (FRAC_PI_4 * diameter * diameter - area).abs() < 0.0006,
                    "{kind} {diameter}"
                );
            }
        }
    }

    #[test]
    fn a_thicker_wall_leaves_less_room() {
        for trade_size in TradeSize::ALL {
            let area = |kind| {
                ConduitBore {
                    kind,
                    trade_size: *trade_size,
                }
                .evaluate()
                .unwrap()
                .area
            };
            assert!(area(ConduitKind::Pvc80) < area(ConduitKind::Pvc40));
        }
    }
}
