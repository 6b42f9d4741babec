//! Least number of means of entrapment protection by kind of gate, as recalled.

use super::gate_kind::{GateKind, TravelDirection};
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::Word as _;
use std::sync::LazyLock;

formula! {
    /// Least number of means of entrapment protection by kind of gate and direction, recalled and not verified.
    ///
    /// The table is known from memory only. It may warn; it never passes a gate. Notes recalled with it: a swinging
    /// leaf with no place that catches in one direction needs one means there and two in the other; a barrier arm that
    /// does not come nearer than 2 ft to anything rigid needs none.
    pub struct EntrapmentProtectionRecalled = "entrapment-protection-recalled" in Protection {
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Direction of travel.
        direction ("–"): TravelDirection,
    }
    gives
    /// Recalled number of means in one direction.
    pub struct RecalledCount {
        /// Independent means of protection recalled for this direction.
        means ("n"): u32,
    }
    formula "n from the table"
    valid "Operators made after 1 August 2018, United States. Look the table up before anything rests on it."
    source { work: "UL 325, in force 1 August 2018", clause: "table 32.1 (recalled number)", evidence: Memory, seen: "not seen; the row of sliding gates agrees with a quoted summary of DASMA Technical Data Sheet 353" }
    by recalled
}

static COUNTS: Stored =
    LazyLock::new(|| Table::read(include_str!("entrapment_protection_recalled.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn recalled(side: &EntrapmentProtectionRecalled) -> Result<RecalledCount, OutOfReach> {
    let table = Table::of(&COUNTS)?;
    let cells = table
        .column("gate")
        .zip(table.column(side.direction.word()));
    cells
        .filter(|(gate, _)| gate.words() == Some(side.gate.word()))
        .find_map(|(_, count)| whole(count))
        .map(|means| RecalledCount { means })
        .ok_or_else(|| {
            OutOfReach::new(
                "gate",
                "the recalled table has no row for this kind of gate",
            )
        })
}

/// A small whole number of the table.
fn whole(cell: &Cell) -> Option<u32> {
    let number = cell.number()?;
    (0..=9).find(|count| (f64::from(*count) - number).abs() < 1e-9)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::{Entrapment, EntrapmentProtectionCount};

    #[test]
    fn every_kind_has_a_row_that_asks_no_more_than_the_seen_rule() {
        for gate in GateKind::ALL {
            let seen = EntrapmentProtectionCount {
                gate: *gate,
                entrapment: Entrapment::Possible,
            };
            for direction in TravelDirection::ALL {
                let recalled = EntrapmentProtectionRecalled {
                    gate: *gate,
                    direction: *direction,
                };
                assert!(recalled.evaluate().unwrap().means <= seen.evaluate().unwrap().means);
            }
        }
    }
}
