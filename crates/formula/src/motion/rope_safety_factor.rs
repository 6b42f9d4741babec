//! Breaking strength of ropes or chains over what they carry.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Mass, Quantity as _, Ratio};

formula! {
    /// Breaking strength of the ropes or chains that carry a leaf, over the load on them.
    ///
    /// Ropes that share a load seldom share it evenly: ask with one rope to see what is left when the other goes.
    pub struct RopeSafetyFactor = "rope-safety-factor" in Motion {
        /// Mass that hangs from them.
        mass ("m"): Mass,
        /// Acceleration upward at the start, not below zero.
        acceleration ("a"): Acceleration,
        /// Breaking strength of one rope or chain with its end fittings.
        strength ("S"): Force,
        /// How many share the load.
        count ("z"): u32,
    }
    gives
    /// What ropes have in hand.
    pub struct RopesInHand {
        /// Load on all of them.
        load ("W"): Force,
        /// Breaking strength over load.
        factor ("ν"): Ratio,
    }
    formula "W = m · (g + a)\nν = z · S / W"
    valid "New ropes on a straight pull; bending over small drums, wear, rust and an end fitting weaker than its rope take from it. Standard gravity, 9.80665 m/s²."
    source { work: "definition of the safety factor of ropes; Newton's second law", clause: "", evidence: Physics, seen: "a rope maker's page on design factors (address withheld): least breaking force over the load expected" }
    by rope_safety_factor
}

fn rope_safety_factor(ropes: &RopeSafetyFactor) -> Result<RopesInHand, OutOfReach> {
    positive("mass", ropes.mass, "640 lb")?;
    not_negative("acceleration", ropes.acceleration, "0.5 ft/s²")?;
    positive("strength", ropes.strength, "2000 lbf")?;
    if ropes.count == 0 {
        return Err(OutOfReach::new("count", "give at least one rope or chain"));
    }
    let gravity = Acceleration::from_base(GRAVITY);
    let load: Force = ropes.mass * (gravity + ropes.acceleration);
    Ok(RopesInHand {
        load,
        factor: Ratio::from_base(f64::from(ropes.count) * ropes.strength.base() / load.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn ropes(count: u32, acceleration: f64) -> RopeSafetyFactor {
        RopeSafetyFactor {
            mass: Mass::from_base(290.0),
            acceleration: Acceleration::from_base(acceleration),
            strength: Force::from_base(9000.0),
            count,
        }
    }

    proptest! {
        #[test]
        fn a_rope_less_and_a_harder_start_leave_less(count in 2_u32..8, acceleration in 0.0..5.0, more in 0.001..5.0) {
            let now = ropes(count, acceleration).evaluate().unwrap().factor;
            prop_assert!(ropes(count - 1, acceleration).evaluate().unwrap().factor < now);
            prop_assert!(ropes(count, acceleration + more).evaluate().unwrap().factor < now);
        }
    }

    #[test]
    fn no_rope_is_refused() {
        assert_eq!(ropes(0, 0.0).evaluate().unwrap_err().input, "count");
    }
}
