//! Tension after a bend in a conduit.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, Quantity as _, Ratio};

formula! {
    /// Tension after pulling a cable around a bend: each degree multiplies what was there before.
    ///
    /// The cable's own weight within the bend is left out; it counts only where the tension before the bend is very low.
    pub struct PullBend = "pull-bend" in Ways {
        /// Tension before the bend.
        tension ("T₁"): Force,
        /// Angle of the bend.
        angle ("φ"): Angle,
        /// Friction between cable and conduit.
        friction ("µ"): Ratio,
        /// Weight correction factor.
        weight_correction ("w"): Ratio,
    }
    gives
    /// Tension after a bend.
    pub struct BendPull {
        /// How many times as large the tension becomes.
        multiplier ("k"): Ratio,
        /// Tension after the bend.
        tension_after ("T₂"): Force,
    }
    formula "k = e^(w · µ · φ)\nT₂ = k · T₁"
    valid "Bends with the tension well above the cable's own weight in the bend; friction that does not grow with pressure."
    source { work: "IEEE 1185, ICEA", clause: "capstan relation", evidence: Seen, seen: "a trunk-cable conduit construction manual, pages 68-71 (address withheld: a maker's name is in it)" }
    by pull_bend
}

fn pull_bend(bend: &PullBend) -> Result<BendPull, OutOfReach> {
    not_negative("tension", bend.tension, "10 lbf")?;
    not_negative("angle", bend.angle, "90°")?;
    not_negative("friction", bend.friction, "0.35")?;
    positive("weight_correction", bend.weight_correction, "1")?;
    let multiplier =
        (bend.weight_correction.base() * bend.friction.base() * bend.angle.base()).exp();
    let tension_after = bend.tension * multiplier;
    if !multiplier.is_finite() || !tension_after.base().is_finite() {
        return Err(OutOfReach::new(
            "angle",
            "no cable is pulled around such a bend; check angle and friction",
        ));
    }
    Ok(BendPull {
        multiplier: Ratio::from_base(multiplier),
        tension_after,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bend(tension: f64, angle: f64) -> PullBend {
        PullBend {
            tension: Force::from_base(tension),
            angle: Angle::from_base(angle),
            friction: Ratio::from_base(0.35),
            weight_correction: Ratio::from_base(1.1),
        }
    }

    proptest! {
        #[test]
        fn two_bends_pull_like_one_of_both_angles(tension in 0.0..500.0, one in 0.0..3.0, other in 0.0..3.0) {
            let first = bend(tension, one).evaluate().unwrap().tension_after;
            let second = bend(first.base(), other).evaluate().unwrap().tension_after;
            let together = bend(tension, one + other).evaluate().unwrap().tension_after;
            prop_assert!((second.base() - together.base()).abs() <= 1e-9 * (1.0 + together.base()));
        }
    }
}
