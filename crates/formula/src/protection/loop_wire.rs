//! Wire of a loop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Wire that a rectangular loop takes, with its lead-in.
    ///
    /// Both wires of the lead-in are one run with the loop, without a splice; twisting six turns to the foot takes a
    /// little more than the straight length counted here.
    pub struct LoopWire = "loop-wire" in Protection {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
        /// Number of turns.
        turns ("N"): u32,
        /// Length of the lead-in from the loop to the detector.
        lead_in ("ll"): Length,
    }
    gives
    /// Wire of a loop.
    pub struct WireOfLoop {
        /// Wire in the slot.
        slot ("ls"): Length,
        /// Wire in all.
        wire ("l"): Length,
    }
    formula "ls = 2 · (A + B) · N\nl = ls + 2 · ll"
    valid "Rectangular loops of one wire; cut with some to spare."
    source { work: "perimeter of a rectangle", clause: "", evidence: Physics, seen: "the table of wire in a gate-operator manual agrees (address withheld)" }
    by wire
}

fn wire(run: &LoopWire) -> Result<WireOfLoop, OutOfReach> {
    positive("length", run.length, "8 ft")?;
    positive("width", run.width, "4 ft")?;
    not_negative("lead_in", run.lead_in, "50 ft")?;
    if run.turns == 0 {
        return Err(OutOfReach::new(
            "turns",
            "a loop has at least one turn; give a number such as 4",
        ));
    }
    let slot = (run.length + run.width) * 2.0 * f64::from(run.turns);
    Ok(WireOfLoop {
        slot,
        wire: slot + Length::from_base(2.0 * run.lead_in.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(length: f64, width: f64, turns: u32) -> LoopWire {
        LoopWire {
            length: Length::from_base(length),
            width: Length::from_base(width),
            turns,
            lead_in: Length::from_base(10.0),
        }
    }

    proptest! {
        #[test]
        fn a_loop_may_be_turned_around(length in 0.5..10.0, width in 0.5..10.0, turns in 1_u32..7) {
            let (one, other) = (run(length, width, turns), run(width, length, turns));
            let (one, other) = (one.evaluate().unwrap(), other.evaluate().unwrap());
            prop_assert!((one.wire - other.wire).base().abs() < 1e-9);
            prop_assert!(one.slot < one.wire);
        }
    }

    #[test]
    fn no_turn_is_refused() {
        assert_eq!(run(2.0, 1.0, 0).evaluate().unwrap_err().input, "turns");
    }
}
