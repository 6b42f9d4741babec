//! Inductance of a loop by the guide of the trade.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Inductance, Length, Quantity as _};

formula! {
    /// Inductance of a rectangular loop in the ground, as guides for driveway loops reckon it.
    ///
    /// A rule for the site: it knows neither the wire nor the shape. Against the sum over all turns it comes out some five
    /// to fifteen percent low for usual loops, and high for a small loop of many turns; `loop-inductance` has that sum.
    pub struct LoopGuideInductance = "loop-guide-inductance" in Signal {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
        /// Number of turns.
        turns ("N"): u32,
    }
    gives
    /// What the guide gives.
    pub struct GuideInductance {
        /// Perimeter.
        perimeter ("P"): Length,
        /// Inductance of the loop without its lead-in.
        inductance ("L"): Inductance,
    }
    formula "P = 2 · (A + B)\nL = P · (N² + N) / 4, with P in ft and L in µH"
    valid "Rectangular loops of one to about six turns without steel near."
    source { work: "guideline for driveway loops, and a chart of loop characteristics", clause: "", evidence: Seen, seen: "guideline page in a gate-kit manual and a printed chart of nineteen sizes, which agree (addresses withheld)" }
    by guide
}

/// The guide's perimeter is in feet and its inductance in microhenries.
const PER_FOOT: f64 = 1e-6 / 0.3048;

fn guide(at: &LoopGuideInductance) -> Result<GuideInductance, OutOfReach> {
    positive("length", at.length, "8 ft")?;
    positive("width", at.width, "4 ft")?;
    if at.turns == 0 {
        return Err(OutOfReach::new(
            "turns",
            "a loop has at least one turn; give a number such as 4",
        ));
    }
    let perimeter = (at.length + at.width) * 2.0;
    let turns = f64::from(at.turns);
    Ok(GuideInductance {
        perimeter,
        inductance: Inductance::from_base(
            perimeter.base() * PER_FOOT * (turns * turns + turns) / 4.0,
        ),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(length: f64, width: f64, turns: u32) -> LoopGuideInductance {
        LoopGuideInductance {
            length: Length::from_base(length),
            width: Length::from_base(width),
            turns,
        }
    }

    proptest! {
        #[test]
        fn another_turn_always_adds(length in 0.3..20.0, width in 0.3..20.0, turns in 1_u32..8) {
            let (few, more) = (at(length, width, turns), at(length, width, turns + 1));
            prop_assert!(few.evaluate().unwrap().inductance < more.evaluate().unwrap().inductance);
        }
    }

    #[test]
    fn no_turn_and_no_side_are_refused() {
        assert_eq!(at(2.0, 1.0, 0).evaluate().unwrap_err().input, "turns");
        assert_eq!(at(0.0, 1.0, 3).evaluate().unwrap_err().input, "length");
    }
}
