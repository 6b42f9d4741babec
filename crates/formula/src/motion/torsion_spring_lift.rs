//! Force with which torsion springs on drums lift a leaf.

use super::torsion_spring_torque::springs;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Quantity as _, Ratio, Torque};
use std::f64::consts::TAU;

formula! {
    /// Force with which torsion springs lift a leaf that hangs from ropes on drums, at a height of its travel.
    ///
    /// The springs unwind by a turn for each circumference of the drum that the leaf has risen, and lift less and less
    /// on the way; a spring that is unwound lifts nothing. With straight drums the balance is right at one height only.
    pub struct TorsionSpringLift = "torsion-spring-lift" in Motion {
        /// Torque that one spring gains with each turn.
        torque_per_turn ("k"): Torque,
        /// Turns that each is wound with the leaf down.
        turns_closed ("n0"): Ratio,
        /// How many springs.
        count ("z"): u32,
        /// Radius at which the rope leaves the drum.
        drum_radius ("R"): Length,
        /// Height by which the leaf has risen.
        rise ("h"): Length,
    }
    gives
    /// Force of torsion springs on drums.
    pub struct SpringLift {
        /// Turns left in each spring.
        turns ("n"): Ratio,
        /// Torque on the shaft.
        torque ("Ms"): Torque,
        /// Force with which they lift.
        lift ("Fs"): Force,
    }
    formula "n = n0 − h / (2π · R), not below zero\nMs = z · k · n\nFs = Ms / R"
    valid "Straight drums on the springs' shaft, no gearing between; a drum whose radius changes along the rope is asked at the radius of this height only. Friction left out."
    source { work: "linear torsion spring and statics", clause: "", evidence: Physics, seen: "Hooke's law for a spring that is wound; moment about the shaft" }
    by torsion_spring_lift
}

fn torsion_spring_lift(spring: &TorsionSpringLift) -> Result<SpringLift, OutOfReach> {
    positive("torque_per_turn", spring.torque_per_turn, "20 lbf·ft")?;
    not_negative("turns_closed", spring.turns_closed, "8")?;
    springs(spring.count)?;
    positive("drum_radius", spring.drum_radius, "3 in")?;
    not_negative("rise", spring.rise, "7 ft")?;
    let unwound = spring.rise.base() / (TAU * spring.drum_radius.base());
    let turns = (spring.turns_closed.base() - unwound).max(0.0);
    let torque = spring.torque_per_turn.base() * f64::from(spring.count) * turns;
    Ok(SpringLift {
        turns: Ratio::from_base(turns),
        torque: Torque::from_base(torque),
        lift: Force::from_base(torque / spring.drum_radius.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn spring(rise: f64) -> TorsionSpringLift {
        TorsionSpringLift {
            torque_per_turn: Torque::from_base(8.0),
            turns_closed: Ratio::from_base(8.0),
            count: 2,
            drum_radius: Length::from_base(0.06),
            rise: Length::from_base(rise),
        }
    }

    proptest! {
        #[test]
        fn the_lift_is_what_the_springs_give_up_in_energy(rise in 0.01..2.9) {
            // Energy of one wound spring: ½ · k · n · 2π · n; there are two.
            let energy = |rise: f64| TAU * 8.0 * spring(rise).evaluate().unwrap().turns.base().powi(2);
            let step = 1e-5;
            let slope = (energy(rise - step) - energy(rise + step)) / (2.0 * step);
            let lift = spring(rise).evaluate().unwrap().lift.base();
            prop_assert!((slope - lift).abs() < 1e-3, "{slope} {lift}");
        }
    }

    #[test]
    fn an_unwound_spring_lifts_nothing_and_a_drum_has_a_radius() {
        assert!(spring(4.0).evaluate().unwrap().lift.base().abs() < 1e-12);
        let flat = TorsionSpringLift {
            drum_radius: Length::from_base(0.0),
            ..spring(1.0)
        };
        assert_eq!(flat.evaluate().unwrap_err().input, "drum_radius");
    }
}
