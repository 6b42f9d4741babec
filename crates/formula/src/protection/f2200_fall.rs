//! How far a gate may fall when its supporting hardware lets go, by ASTM F2200.

use super::limit::{LimitVerdict, verdict};
use crate::OutOfReach;
use quantity::{Angle, Quantity as _};

formula! {
    /// Whether a gate that comes off its supporting hardware is kept from falling farther than 45° from upright.
    ///
    /// Falling gates are the commonest cause of deaths at gates in one national record. The 45° limit does not make a
    /// gate safe to stand under: a leaf at 45° reaches as far out as it reaches up. The European standard asks that no
    /// single fault lets a gate fall at all.
    pub struct F2200Fall = "f2200-fall" in Protection {
        /// Angle from upright at which posts, guides or catches hold the loose leaf.
        angle ("α"): Angle,
    }
    gives
    /// How far a loose gate may fall.
    pub struct FallRule {
        /// Greatest angle.
        limit ("αmax"): Angle,
        /// Angle to spare; below zero where it falls farther.
        spare ("αmax − α"): Angle,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "α ≤ 45°"
    valid "Powered vehicle gates, United States."
    source { work: "ASTM F2200", clause: "general requirements", evidence: Seen, seen: "gate-operator manuals from 2005 to 2018 that reprint the provisions (addresses withheld); the standard itself was not at hand" }
    by fall_rule
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn fall_rule(leaf: &F2200Fall) -> Result<FallRule, OutOfReach> {
    let upright_to_flat = 0.0..=std::f64::consts::FRAC_PI_2 + 1e-9;
    if !upright_to_flat.contains(&leaf.angle.base()) {
        return Err(OutOfReach::new(
            "angle",
            "give the angle from upright, from 0° to 90°; 90° where nothing holds the leaf",
        ));
    }
    let limit = Angle::from_base(std::f64::consts::FRAC_PI_4);
    let spare = limit - leaf.angle;
    Ok(FallRule {
        limit,
        spare,
        verdict: verdict(spare.base() >= -1e-9),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(degrees: f64) -> F2200Fall {
        F2200Fall {
            angle: Angle::from_base(degrees.to_radians()),
        }
    }

    proptest! {
        #[test]
        fn only_up_to_45_degrees(degrees in 0.0..90.0) {
            let kept = leaf(degrees).evaluate().unwrap().verdict == LimitVerdict::Kept;
            prop_assert_eq!(kept, degrees <= 45.0);
        }
    }

    #[test]
    fn past_flat_is_refused() {
        assert_eq!(leaf(120.0).evaluate().unwrap_err().input, "angle");
    }
}
