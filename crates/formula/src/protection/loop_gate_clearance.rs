//! How far a loop stays from the moving metal of a gate.

use super::customary::feet;
use super::limit::{LimitVerdict, is_at_least, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use crate::table::{Stored, Table};
use quantity::Length;
use std::sync::LazyLock;

formula! {
    /// Least distance from a loop to the moving metal of a gate, so that the gate does not call itself a vehicle.
    ///
    /// Grows with the length of the loop along the gate. A length between two rows counts as the longer one. Take the
    /// nearest place that the leaf, its tail or an arm reaches anywhere in the travel.
    pub struct LoopGateClearance = "loop-gate-clearance" in Protection {
        /// Length of the loop along the gate.
        length ("A"): Length,
        /// Distance from the loop to the nearest moving metal.
        distance ("d"): Length,
    }
    gives
    /// How a loop's distance stands to the gate.
    pub struct LoopClearance {
        /// Least distance.
        least ("C"): Length,
        /// Distance to spare; below zero where the loop is too near.
        spare ("d − C"): Length,
        /// Whether it is far enough.
        verdict ("–"): LimitVerdict,
    }
    formula "C from the table"
    valid "Loops up to 21 ft long; two loops on either side of a sliding gate may come nearer where the detector's instructions say how to connect them."
    source { work: "instructions of a vehicle detector, 2017", clause: "", evidence: Seen, seen: "the printed table (address withheld)" }
    by clearance
}

static CLEARANCES: Stored = LazyLock::new(|| Table::read(include_str!("loop_gate_clearance.toml")));

fn clearance(at: &LoopGateClearance) -> Result<LoopClearance, OutOfReach> {
    positive("length", at.length, "8 ft")?;
    not_negative("distance", at.distance, "4 ft")?;
    let table = Table::of(&CLEARANCES)?;
    let rows = table
        .numbers("length")
        .into_iter()
        .zip(table.numbers("clearance"));
    let least = rows
        .into_iter()
        .find(|(longest, _)| is_at_most(at.length, feet(*longest)))
        .map(|(_, least)| feet(least))
        .ok_or_else(|| {
            OutOfReach::new(
                "length",
                "the table ends at 21 ft; divide the loop or use the detector's own figure",
            )
        })?;
    Ok(LoopClearance {
        least,
        spare: at.distance - least,
        verdict: verdict(is_at_least(at.distance, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn least(feet: f64) -> Result<Length, OutOfReach> {
        let at = LoopGateClearance {
            length: Length::from_base(feet * 0.3048),
            distance: Length::from_base(1.0),
        };
        at.evaluate().map(|found| found.least)
    }

    proptest! {
        #[test]
        fn a_longer_loop_never_comes_nearer(feet in 0.5..21.0, share in 0.1..1.0) {
            prop_assert!(least(feet * share).unwrap() <= least(feet).unwrap());
        }
    }

    #[test]
    fn a_very_long_loop_is_refused() {
        assert_eq!(least(25.0).unwrap_err().input, "length");
    }
}
