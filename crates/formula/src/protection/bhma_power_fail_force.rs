//! Force by hand without power, by the rule for low-energy pedestrian doors.

use super::customary::pounds_force;
use super::limit::{LimitVerdict, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Force;

quantity::words! {
    /// What is done by hand without power.
    pub enum HandMove {
        /// Releasing the latch.
        Latch = "release the latch",
        /// Setting the leaf in motion.
        Start = "set in motion",
        /// Opening the leaf all the way.
        Open = "open fully",
    }
}

formula! {
    /// Whether a leaf can be released and moved by hand without power, by the rule for low-energy pedestrian doors.
    ///
    /// No rule for the hand force on a powered vehicle gate could be read: this one is for doors and serves as a
    /// yardstick of what anybody can do. A larger force may still suit trained people; write down who can.
    pub struct BhmaPowerFailForce = "bhma-power-fail-force" in Protection {
        /// What is done by hand.
        act ("–"): HandMove,
        /// Force that it takes.
        force ("F"): Force,
    }
    gives
    /// How a hand force stands to the yardstick.
    pub struct PowerFailForce {
        /// Greatest force.
        limit ("Fmax"): Force,
        /// Force to spare; below zero where it takes more.
        spare ("Fmax − F"): Force,
        /// Whether the yardstick is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "release the latch: 15 lbf\nset in motion: 30 lbf\nopen fully: 15 lbf"
    valid "Low-energy swing doors for pedestrians, measured 1 in from the latch edge; a yardstick for gates."
    source { work: "ANSI/BHMA A156.19-1997", clause: "4.6", evidence: Seen, seen: "a public excerpt of the standard" }
    by power_fail
}

fn power_fail(leaf: &BhmaPowerFailForce) -> Result<PowerFailForce, OutOfReach> {
    not_negative("force", leaf.force, "20 lbf")?;
    let pounds = match leaf.act {
        HandMove::Latch | HandMove::Open => 15.0,
        HandMove::Start => 30.0,
    };
    let limit = pounds_force(pounds);
    Ok(PowerFailForce {
        limit,
        spare: limit - leaf.force,
        verdict: verdict(is_at_most(leaf.force, limit)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn limit(act: HandMove) -> f64 {
        let force = Force::from_base(0.0);
        BhmaPowerFailForce { act, force }
            .evaluate()
            .unwrap()
            .limit
            .base()
    }

    proptest! {
        #[test]
        fn starting_may_take_more_than_going_on(force in 0.0..300.0) {
            let kept = |act| {
                let leaf = BhmaPowerFailForce { act, force: Force::from_base(force) };
                leaf.evaluate().unwrap().verdict == LimitVerdict::Kept
            };
            prop_assert!(!kept(HandMove::Open) || kept(HandMove::Start));
        }
    }

    #[test]
    fn a_force_below_zero_is_refused() {
        assert!(limit(HandMove::Start) > limit(HandMove::Open));
        let leaf = BhmaPowerFailForce {
            act: HandMove::Open,
            force: Force::from_base(-1.0),
        };
        assert_eq!(leaf.evaluate().unwrap_err().input, "force");
    }
}
