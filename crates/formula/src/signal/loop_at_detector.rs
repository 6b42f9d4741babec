//! What arrives at the detector of what a vehicle does to a loop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Inductance, Quantity as _, Ratio};

formula! {
    /// Inductance that a detector sees with the lead-in in series, and what is left there of a vehicle's share.
    ///
    /// The share falls as the loop is a smaller part of the whole, which is why a lead-in is kept short or a loop given another
    /// turn. The frequency of the tuned circuit rises by about half of the share.
    pub struct LoopAtDetector = "loop-at-detector" in Signal {
        /// Inductance of the loop.
        inductance ("L"): Inductance,
        /// Inductance of its lead-in.
        lead_in ("Ll"): Inductance,
        /// Share of the loop's inductance that a vehicle takes.
        share ("S"): Ratio,
    }
    gives
    /// What the detector sees.
    pub struct AtDetector {
        /// Inductance of both.
        total ("Lt"): Inductance,
        /// Share of both that the vehicle takes.
        share_left ("St"): Ratio,
        /// How far the frequency rises.
        rise ("Δf / f"): Ratio,
    }
    formula "Lt = L + Ll\nSt = S · L / Lt\nΔf / f = 1 / √(1 − St) − 1"
    valid "Lead-ins whose capacitance does not count: a few hundred feet."
    source { work: "inductances in series; frequency of a tuned circuit", clause: "", evidence: Physics, seen: "worked again in another program, see the cases; the FHWA Traffic Detector Handbook, 2006, appendix E, says that the lead-in cuts the height of detection" }
    by at_detector
}

fn at_detector(at: &LoopAtDetector) -> Result<AtDetector, OutOfReach> {
    positive("inductance", at.inductance, "120 µH")?;
    not_negative("lead_in", at.lead_in, "10 µH")?;
    not_negative("share", at.share, "1 %")?;
    if at.share.base() >= 1.0 {
        return Err(OutOfReach::new(
            "share",
            "a vehicle takes a part of the inductance, such as 1 %",
        ));
    }
    let total = at.inductance + at.lead_in;
    let share_left = at.share * (at.inductance / total);
    Ok(AtDetector {
        total,
        share_left,
        rise: Ratio::from_base((1.0 - share_left.base()).powf(-0.5) - 1.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(lead_in: f64, share: f64) -> LoopAtDetector {
        LoopAtDetector {
            inductance: Inductance::from_base(100e-6),
            lead_in: Inductance::from_base(lead_in),
            share: Ratio::from_base(share),
        }
    }

    proptest! {
        #[test]
        fn a_longer_lead_in_leaves_less(lead_in in 0.0..100e-6, share in 1e-4..0.2) {
            let near = at(lead_in, share).evaluate().unwrap();
            let far = at(lead_in + 10e-6, share).evaluate().unwrap();
            prop_assert!(far.share_left < near.share_left && near.share_left.base() <= share);
            prop_assert!(near.rise.base() > near.share_left.base() / 2.0);
        }
    }

    #[test]
    fn a_vehicle_that_takes_all_is_refused() {
        assert_eq!(at(0.0, 1.0).evaluate().unwrap_err().input, "share");
        assert_eq!(at(-1e-6, 0.1).evaluate().unwrap_err().input, "lead_in");
    }
}
