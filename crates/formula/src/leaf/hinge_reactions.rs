//! What the hinges of a swing leaf carry.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Length, Mass, Quantity as _, Ratio};

formula! {
    /// Loads on the hinges of a leaf that hangs from an upright line: its weight, the couple that keeps it from
    /// tipping, and the wind.
    ///
    /// One hinge commonly carries the whole weight, since no two are set to share it. The couple pulls the upper hinge
    /// toward the leaf and pushes the lower one away, whatever the angle of the leaf. Wind square to the leaf is held at
    /// the hinge line and at one place more, the drive or the latch: where that is near the hinges they feel much more
    /// than the wind itself. The share says how much of it the worse hinge takes.
    pub struct HingeReactions = "hinge-reactions" in Leaf {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Distance of the center of gravity from the hinge line.
        center ("r"): Length,
        /// Distance between the lowest and the highest hinge.
        spacing ("h"): Length,
        /// Weight at the free end: a person who climbs, or 0.
        tip_load ("P"): Force,
        /// Distance of the free end from the hinge line.
        tip ("L"): Length,
        /// Wind square to the leaf.
        wind ("Fw"): Force,
        /// Distance of the wind's middle from the hinge line.
        wind_at ("rw"): Length,
        /// Distance from the hinge line at which the leaf is held against the wind.
        held_at ("a"): Length,
        /// Share of the hinge line's wind that the worse hinge takes: a half where the wind's middle is half-way between.
        wind_share ("s"): Ratio,
    }
    gives
    /// Loads on hinges.
    pub struct HingeLoads {
        /// Weight on one hinge that carries it all.
        weight ("V"): Force,
        /// Pull on the upper hinge and push on the lower, in the plane of the leaf.
        couple ("H"): Force,
        /// Wind on the hinge line.
        wind_on_line ("Hw"): Force,
        /// Force across the pin of the worse hinge, couple and wind together.
        side ("R"): Force,
    }
    formula "V = m · g + P\nH = (m · g · r + P · L) / h\nHw = |Fw · (1 − rw / a)|\nR = √(H² + (s · Hw)²)"
    valid "A stiff leaf on two hinges that count, the line upright within a few degrees. Standard gravity, 9.80665 m/s²."
    source { work: "statics: moments about the lower hinge, and about the hinge line", clause: "", evidence: Physics, seen: "moment balances worked by hand and by solving the equations of balance" }
    by reactions
}

/// Standard gravity in meters per second squared.
const GRAVITY: f64 = 9.806_65;

fn reactions(leaf: &HingeReactions) -> Result<HingeLoads, OutOfReach> {
    check(leaf)?;
    let weight: Force = leaf.mass * Acceleration::from_base(GRAVITY);
    let over = |lever: Length, of: Length| lever.base() / of.base();
    let couple =
        weight * over(leaf.center, leaf.spacing) + leaf.tip_load * over(leaf.tip, leaf.spacing);
    let on_line = (leaf.wind.base() * (1.0 - over(leaf.wind_at, leaf.held_at))).abs();
    let side = couple.base().hypot(on_line * leaf.wind_share.base());
    Ok(HingeLoads {
        weight: weight + leaf.tip_load,
        couple,
        wind_on_line: Force::from_base(on_line),
        side: Force::from_base(side),
    })
}

fn check(leaf: &HingeReactions) -> Result<(), OutOfReach> {
    positive("mass", leaf.mass, "300 lb")?;
    not_negative("center", leaf.center, "6 ft")?;
    positive("spacing", leaf.spacing, "5 ft")?;
    not_negative("tip_load", leaf.tip_load, "200 lbf")?;
    not_negative("tip", leaf.tip, "12 ft")?;
    not_negative("wind", leaf.wind, "400 lbf")?;
    not_negative("wind_at", leaf.wind_at, "6 ft")?;
    positive("held_at", leaf.held_at, "2 ft")?;
    not_negative("wind_share", leaf.wind_share, "0.6")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(mass: f64, spacing: f64, held_at: f64) -> HingeReactions {
        HingeReactions {
            mass: Mass::from_base(mass),
            center: Length::from_base(1.5),
            spacing: Length::from_base(spacing),
            tip_load: Force::from_base(0.0),
            tip: Length::from_base(3.0),
            wind: Force::from_base(800.0),
            wind_at: Length::from_base(1.5),
            held_at: Length::from_base(held_at),
            wind_share: Ratio::from_base(0.5),
        }
    }

    proptest! {
        #[test]
        fn hinges_further_apart_feel_less(mass in 20.0..800.0, spacing in 0.3..3.0) {
            let near = leaf(mass, spacing, 0.5).evaluate().unwrap();
            let far = leaf(mass, spacing + 0.2, 0.5).evaluate().unwrap();
            prop_assert!(far.couple < near.couple && far.side < near.side);
        }

        /// Hinge line and the place that holds the leaf balance the wind and its moment about the hinge line.
        #[test]
        fn the_wind_is_balanced(mass in 20.0..800.0, held_at in 0.1..3.0) {
            let loads = leaf(mass, 1.2, held_at).evaluate().unwrap();
            let holder = 800.0 * 1.5 / held_at;
            prop_assert!((loads.wind_on_line.base() - (800.0 - holder).abs()).abs() < 1e-6);
        }

        #[test]
        fn the_side_force_is_never_less_than_the_couple(mass in 20.0..800.0, held_at in 0.1..3.0) {
            let loads = leaf(mass, 1.2, held_at).evaluate().unwrap();
            prop_assert!(loads.side >= loads.couple);
        }
    }

    #[test]
    fn a_leaf_held_at_its_hinges_is_refused() {
        assert_eq!(
            leaf(100.0, 1.2, 0.0).evaluate().unwrap_err().input,
            "held_at"
        );
    }
}
