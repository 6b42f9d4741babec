//! What the two trolleys of a cantilever slide gate carry.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Length, Mass, Quantity as _, Ratio};

formula! {
    /// Loads on the front and rear trolleys of a cantilever slide gate, at one position of its travel.
    ///
    /// The front trolley is the one next to the opening. Distances are counted ahead of it, toward the latching side,
    /// above zero, and behind it below zero; they change by the travel as the leaf moves. While the center of gravity is
    /// ahead of the front trolley the leaf lifts the rear one, whose load is then below zero: that pull upward loads the
    /// rail, the trolley and its anchors just the same. A person who climbs on the tip adds to both.
    pub struct CantileverGateRollers = "cantilever-gate-rollers" in Leaf {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Distance of the center of gravity ahead of the front trolley; below zero behind it.
        center_ahead ("a"): Length,
        /// Distance between the two trolleys.
        spacing ("b"): Length,
        /// Weight at the tip: a person who climbs, or 0.
        tip_load ("P"): Force,
        /// Distance of the tip ahead of the front trolley; below zero behind it.
        tip_ahead ("c"): Length,
    }
    gives
    /// Loads on two trolleys.
    pub struct RollerLoads {
        /// Weight of the leaf.
        weight ("W"): Force,
        /// Load on the front trolley, below zero where the leaf lifts it.
        front ("Vf"): Force,
        /// Load on the rear trolley, below zero where the leaf lifts it.
        rear ("Vr"): Force,
        /// Greatest pull upward on a trolley.
        uplift ("U"): Force,
        /// Greatest push downward on a trolley.
        push ("V"): Force,
        /// Sum of the loads, up or down, over the weight and the load at the tip.
        load_factor ("k"): Ratio,
    }
    formula "W = m · g\nVf = (W · (b + a) + P · (b + c)) / b\nVr = −(W · a + P · c) / b\nU = max(0, −Vf, −Vr), V = max(Vf, Vr)\nk = (|Vf| + |Vr|) / (W + P)"
    valid "Two trolleys, each a single pivot; level travel; a leaf that does not rack. Standard gravity, 9.80665 m/s²."
    source { work: "statics: moments about each trolley", clause: "", evidence: Physics, seen: "moment balance worked by hand and by a beam solver" }
    by loads
}

/// Standard gravity in meters per second squared.
const GRAVITY: f64 = 9.806_65;

fn loads(gate: &CantileverGateRollers) -> Result<RollerLoads, OutOfReach> {
    positive("mass", gate.mass, "800 lb")?;
    positive("spacing", gate.spacing, "5 ft")?;
    not_negative("tip_load", gate.tip_load, "200 lbf")?;
    let weight: Force = gate.mass * Acceleration::from_base(GRAVITY);
    let over = |distance: Length| distance.base() / gate.spacing.base();
    let (center, tip) = (over(gate.center_ahead), over(gate.tip_ahead));
    let front = weight * (1.0 + center) + gate.tip_load * (1.0 + tip);
    let rear = -(weight * center + gate.tip_load * tip);
    let lower = front.base().min(rear.base());
    let sum = front.base().abs() + rear.base().abs();
    Ok(RollerLoads {
        weight,
        front,
        rear,
        uplift: Force::from_base((-lower).max(0.0)),
        push: Force::from_base(front.base().max(rear.base())),
        load_factor: Ratio::from_base(sum / (weight + gate.tip_load).base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn gate(mass: f64, ahead: f64, spacing: f64, tip: f64) -> CantileverGateRollers {
        CantileverGateRollers {
            mass: Mass::from_base(mass),
            center_ahead: Length::from_base(ahead),
            spacing: Length::from_base(spacing),
            tip_load: Force::from_base(tip),
            tip_ahead: Length::from_base(ahead + 3.0),
        }
    }

    proptest! {
        #[test]
        fn the_trolleys_carry_what_there_is(mass in 50.0..2000.0, ahead in -5.0..5.0, spacing in 0.5..5.0, tip in 0.0..2000.0) {
            let loads = gate(mass, ahead, spacing, tip).evaluate().unwrap();
            let carried = (loads.front + loads.rear).base();
            prop_assert!((carried - loads.weight.base() - tip).abs() < 1e-6 * carried.abs());
            prop_assert!(loads.load_factor.base() > 1.0 - 1e-9);
        }

        #[test]
        fn a_climber_ahead_lifts_the_rear_more(mass in 50.0..2000.0, ahead in 0.0..4.0, spacing in 0.5..5.0, tip in 1.0..2000.0) {
            let bare = gate(mass, ahead, spacing, 0.0).evaluate().unwrap();
            let climbed = gate(mass, ahead, spacing, tip).evaluate().unwrap();
            prop_assert!(climbed.uplift > bare.uplift && climbed.push > bare.push);
        }

        #[test]
        fn trolleys_further_apart_carry_less(mass in 50.0..2000.0, ahead in 0.1..4.0, spacing in 0.5..4.0) {
            let near = gate(mass, ahead, spacing, 0.0).evaluate().unwrap();
            let far = gate(mass, ahead, spacing + 0.5, 0.0).evaluate().unwrap();
            prop_assert!(far.push < near.push && far.uplift < near.uplift);
        }
    }

    #[test]
    fn trolleys_at_one_place_are_refused() {
        assert_eq!(
            gate(300.0, 1.0, 0.0, 0.0).evaluate().unwrap_err().input,
            "spacing"
        );
    }
}
