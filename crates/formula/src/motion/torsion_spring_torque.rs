//! Torque of torsion springs on the shaft of an arm that turns up.

use super::vertical_pivot_torque::turns_up;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Quantity as _, Ratio, Torque};
use std::f64::consts::TAU;

formula! {
    /// Torque with which torsion springs lift an arm at an angle, where they are wound about its pivot.
    ///
    /// They unwind by as much as the arm rises, and go slack once they are unwound; a slack spring lifts nothing.
    pub struct TorsionSpringTorque = "torsion-spring-torque" in Motion {
        /// Torque that one spring gains with each turn.
        torque_per_turn ("k"): Torque,
        /// Turns that each is wound with the arm closed.
        turns_closed ("n0"): Ratio,
        /// How many springs.
        count ("z"): u32,
        /// Angle of the arm above its level, closed position.
        angle ("θ"): Angle,
    }
    gives
    /// Torque of torsion springs.
    pub struct TorsionSpringTorques {
        /// Turns left in each spring.
        turns ("n"): Ratio,
        /// Torque with which they lift.
        torque ("Ms"): Torque,
    }
    formula "n = n0 − θ / 360°, not below zero\nMs = z · k · n"
    valid "Springs wound about the pivot itself, no gearing between; friction between their coils left out."
    source { work: "linear torsion spring", clause: "", evidence: Physics, seen: "Hooke's law for a spring that is wound" }
    by torsion_spring_torque
}

fn torsion_spring_torque(spring: &TorsionSpringTorque) -> Result<TorsionSpringTorques, OutOfReach> {
    positive("torque_per_turn", spring.torque_per_turn, "20 lbf·ft")?;
    not_negative("turns_closed", spring.turns_closed, "4")?;
    turns_up("angle", spring.angle)?;
    springs(spring.count)?;
    let turns = (spring.turns_closed.base() - spring.angle.base() / TAU).max(0.0);
    Ok(TorsionSpringTorques {
        turns: Ratio::from_base(turns),
        torque: spring.torque_per_turn * f64::from(spring.count) * turns,
    })
}

/// Refuses no spring at all.
pub(super) fn springs(count: u32) -> Result<(), OutOfReach> {
    if count > 0 {
        return Ok(());
    }
    Err(OutOfReach::new("count", "give at least one spring"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn spring(turns: f64, angle: f64) -> TorsionSpringTorque {
        TorsionSpringTorque {
            torque_per_turn: Torque::from_base(30.0),
            turns_closed: Ratio::from_base(turns),
            count: 2,
            angle: Angle::from_base(angle),
        }
    }

    proptest! {
        #[test]
        fn it_never_lifts_more_as_the_arm_rises(turns in 0.0..6.0, angle in -0.7..2.2, more in 0.0..0.1) {
            let (low, high) = (spring(turns, angle), spring(turns, angle + more));
            let (low, high) = (low.evaluate().unwrap(), high.evaluate().unwrap());
            prop_assert!(high.torque <= low.torque);
            prop_assert!(high.torque.base() >= 0.0);
        }
    }

    #[test]
    fn no_spring_and_no_such_angle_are_refused() {
        let none = TorsionSpringTorque {
            count: 0,
            ..spring(3.0, 0.2)
        };
        assert_eq!(none.evaluate().unwrap_err().input, "count");
        assert_eq!(spring(3.0, 3.0).evaluate().unwrap_err().input, "angle");
    }
}
