//! Counterweight that balances an arm at one angle.

use super::slope::GRAVITY;
use super::vertical_pivot_torque::turns_up;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Mass, Quantity as _, Torque};

formula! {
    /// Mass of the counterweight that balances an arm about its level pivot at one angle.
    ///
    /// With the centers of arm and counterweight on one line through the pivot it balances at every angle. Where they
    /// are not on one line, or where springs help, it balances at this angle only; look at both ends of the travel too.
    pub struct CounterweightBalance = "counterweight-balance" in Motion {
        /// Mass of the arm with everything on it, counterweight left out.
        mass ("m"): Mass,
        /// Distance of its center of gravity ahead of the pivot.
        center_along ("r"): Length,
        /// Height of its center of gravity above the pivot with the arm closed, below zero under it.
        center_up ("e"): Length,
        /// Angle above the level, closed position.
        angle ("θ"): Angle,
        /// Torque with which springs lift at this angle; zero for none.
        spring_torque ("Ms"): Torque,
        /// Distance of the counterweight's center from the pivot.
        counterweight_radius ("rc"): Length,
        /// By how much the counterweight's line is turned upward from the arm's line drawn on beyond the pivot.
        offset_angle ("δ"): Angle,
    }
    gives
    /// Counterweight that balances.
    pub struct BalancingMass {
        /// Torque that is left for the counterweight.
        torque_left ("M"): Torque,
        /// Mass that balances.
        counterweight_mass ("mc"): Mass,
    }
    formula "M = m · g · (r · cos θ − e · sin θ) − Ms\nmc = M / (g · rc · cos(θ − δ))"
    valid "An angle at which the counterweight has a lever arm, and an arm that is not lifted by its springs alone. Standard gravity, 9.80665 m/s²."
    source { work: "statics", clause: "", evidence: Physics, seen: "moments about the pivot" }
    by counterweight_balance
}

/// Least share of its radius that the counterweight must have as its lever arm.
const LEAST_LEVER: f64 = 0.05;

fn counterweight_balance(arm: &CounterweightBalance) -> Result<BalancingMass, OutOfReach> {
    positive("mass", arm.mass, "30 lb")?;
    positive("counterweight_radius", arm.counterweight_radius, "14 in")?;
    not_negative("spring_torque", arm.spring_torque, "90 lbf·ft")?;
    turns_up("angle", arm.angle)?;
    let lever = (arm.angle - arm.offset_angle).base().cos();
    if lever < LEAST_LEVER {
        return Err(OutOfReach::new(
            "angle",
            "the counterweight stands straight above or below the pivot at this angle and balances nothing",
        ));
    }
    let (sine, cosine) = arm.angle.base().sin_cos();
    let center = arm.center_along.base() * cosine - arm.center_up.base() * sine;
    let left = arm.mass.base() * GRAVITY * center - arm.spring_torque.base();
    if left < 0.0 {
        return Err(OutOfReach::new(
            "spring_torque",
            "the arm rises at this angle without a counterweight; no mass beyond the pivot balances it",
        ));
    }
    let mass = left / (GRAVITY * arm.counterweight_radius.base() * lever);
    Ok(BalancingMass {
        torque_left: Torque::from_base(left),
        counterweight_mass: Mass::from_base(mass),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::VerticalPivotTorque;
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::{Acceleration, Pressure};

    fn arm(angle: f64, spring: f64) -> CounterweightBalance {
        CounterweightBalance {
            mass: Mass::from_base(14.0),
            center_along: Length::from_base(1.9),
            center_up: Length::from_base(0.05),
            angle: Angle::from_base(angle),
            spring_torque: Torque::from_base(spring),
            counterweight_radius: Length::from_base(0.4),
            offset_angle: Angle::from_base(0.1),
        }
    }

    proptest! {
        #[test]
        fn with_that_mass_nothing_is_unbalanced(angle in -0.5..1.3, spring in 0.0..40.0) {
            let given = arm(angle, spring);
            let mass = given.evaluate().unwrap().counterweight_mass;
            let torque = VerticalPivotTorque {
                mass: given.mass,
                center_along: given.center_along,
                center_up: given.center_up,
                reach: Length::from_base(4.0),
                depth: Length::from_base(0.1),
                angle: given.angle,
                counterweight_mass: mass,
                counterweight_radius: given.counterweight_radius,
                offset_angle: given.offset_angle,
                spring_torque: given.spring_torque,
                wind_pressure: Pressure::from_base(0.0),
                wind_width: Length::from_base(0.1),
                acceleration: Acceleration::from_base(0.0),
            };
            prop_assert!(torque.evaluate().unwrap().unbalanced.base().abs() < 1e-9);
        }
    }

    #[test]
    fn what_cannot_be_balanced_is_refused() {
        assert_eq!(arm(1.65, 0.0).evaluate().unwrap_err().input, "angle");
        assert_eq!(
            arm(0.2, 900.0).evaluate().unwrap_err().input,
            "spring_torque"
        );
    }
}
