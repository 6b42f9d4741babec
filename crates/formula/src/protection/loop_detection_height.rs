//! How high above its wire a loop sees a vehicle.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Height up to which a loop in the ground sees the metal of a vehicle, against the clearance of the chassis.
    ///
    /// About two thirds of the shorter side; reinforcing steel near the wire and a long lead-in take from it. A high
    /// chassis, a trailer's drawbar or the bed of a lorry can pass over a narrow loop unseen. A loop sees metal: it never
    /// counts as protection of people. One chart has four fifths instead; the smaller figure is taken, and the longest
    /// and highest vehicle is driven over it to prove it.
    pub struct LoopDetectionHeight = "loop-detection-height" in Protection {
        /// Shorter side of the loop.
        short_side ("b"): Length,
        /// Height of the vehicle's metal above the wire at its highest place.
        clearance ("z"): Length,
    }
    gives
    /// How high a loop sees.
    pub struct LoopHeight {
        /// Height up to which the loop sees.
        height ("h"): Length,
        /// Height to spare; below zero where the vehicle can pass unseen.
        spare ("h − z"): Length,
        /// Whether the vehicle is seen.
        verdict ("–"): LimitVerdict,
    }
    formula "h = 2/3 · b"
    valid "Rectangular loops without reinforcing steel near, with a detector at a middle setting."
    source { work: "instructions of several detectors, and guideline pages for driveway loops", clause: "", evidence: Seen, seen: "three worked examples that agree (addresses withheld)" }
    by detection_height
}

fn detection_height(at: &LoopDetectionHeight) -> Result<LoopHeight, OutOfReach> {
    positive("short_side", at.short_side, "4 ft")?;
    not_negative("clearance", at.clearance, "18 in")?;
    let height = Length::from_base(at.short_side.base() * 2.0 / 3.0);
    Ok(LoopHeight {
        height,
        spare: height - at.clearance,
        verdict: verdict(is_at_least(height, at.clearance)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(side: f64, clearance: f64) -> LoopDetectionHeight {
        LoopDetectionHeight {
            short_side: Length::from_base(side),
            clearance: Length::from_base(clearance),
        }
    }

    proptest! {
        #[test]
        fn a_wider_loop_never_sees_less(side in 0.3..3.0, more in 0.0..1.0, clearance in 0.0..2.0) {
            let (narrow, wide) = (at(side, clearance), at(side + more, clearance));
            prop_assert!(narrow.evaluate().unwrap().height <= wide.evaluate().unwrap().height);
        }
    }

    #[test]
    fn no_loop_is_refused() {
        assert_eq!(at(0.0, 0.5).evaluate().unwrap_err().input, "short_side");
    }
}
