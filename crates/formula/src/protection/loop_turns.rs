//! Turns of a loop by its perimeter.

use super::customary::feet;
use super::limit::{is_at_least, is_at_most};
use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Stored, Table};
use quantity::Length;
use std::sync::LazyLock;

formula! {
    /// Number of turns of a rectangular loop by its perimeter.
    ///
    /// Sources differ by a turn: one guideline's own example takes three where its table has four, and both work where
    /// the detector tunes to the loop with its lead-in. A perimeter between two rows counts to the larger one.
    pub struct LoopTurns = "loop-turns" in Protection {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
    }
    gives
    /// Turns of a loop.
    pub struct TurnsOfLoop {
        /// Perimeter.
        perimeter ("P"): Length,
        /// Number of turns.
        turns ("N"): u32,
    }
    formula "P = 2 · (A + B)\nN from the table"
    valid "Rectangular loops with a perimeter from 6 ft on, for common vehicle detectors."
    source { work: "guideline for driveway loops", clause: "", evidence: Seen, seen: "the printed table (address withheld)" }
    by turns
}

static TURNS: Stored = LazyLock::new(|| Table::read(include_str!("loop_turns.toml")));

fn turns(at: &LoopTurns) -> Result<TurnsOfLoop, OutOfReach> {
    positive("length", at.length, "8 ft")?;
    positive("width", at.width, "4 ft")?;
    let perimeter = (at.length + at.width) * 2.0;
    if !is_at_least(perimeter, feet(6.0)) {
        return Err(OutOfReach::new(
            "length",
            "the table begins at a perimeter of 6 ft; a smaller loop is made to the detector's own instructions",
        ));
    }
    let table = Table::of(&TURNS)?;
    let rows = table.numbers("to").into_iter().zip(table.numbers("turns"));
    let turns = rows
        .into_iter()
        .find(|(longest, _)| is_at_most(perimeter, feet(*longest)))
        .map_or(2.0, |(_, turns)| turns);
    Ok(TurnsOfLoop {
        perimeter,
        turns: (1..=9)
            .find(|count| f64::from(*count) >= turns)
            .unwrap_or(9),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn at(length: f64, width: f64) -> LoopTurns {
        LoopTurns {
            length: Length::from_base(length * 0.3048),
            width: Length::from_base(width * 0.3048),
        }
    }

    proptest! {
        #[test]
        fn a_larger_loop_never_has_more_turns(length in 1.5..60.0, width in 1.5..60.0, more in 0.0..50.0) {
            let (small, large) = (at(length, width), at(length + more, width));
            let (small, large) = (small.evaluate().unwrap(), large.evaluate().unwrap());
            prop_assert!(large.turns <= small.turns);
        }
    }

    #[test]
    fn a_tiny_loop_is_refused() {
        assert_eq!(at(1.0, 1.0).evaluate().unwrap_err().input, "length");
    }
}
