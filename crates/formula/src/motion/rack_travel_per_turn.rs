//! Travel of a rack.

use super::rack_force_from_torque::pitch_diameter;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{AngularVelocity, Length, Quantity as _, Velocity};

formula! {
    /// Travel of a rack for each turn of its pinion, and its speed.
    pub struct RackTravelPerTurn = "rack-travel-per-turn" in Motion {
        /// Module of the teeth: pitch diameter over the number of teeth.
        module ("m"): Length,
        /// Teeth of the pinion.
        teeth ("z"): u32,
        /// Turning speed of the pinion.
        turning_speed ("ω"): AngularVelocity,
    }
    gives
    /// Travel of a rack.
    pub struct RackTravel {
        /// Travel for each turn.
        travel_per_turn ("p"): Length,
        /// Speed of the rack.
        speed ("v"): Velocity,
    }
    formula "p = π · m · z\nv = ω · m · z / 2"
    valid "6 teeth or more."
    source { work: "gear geometry", clause: "", evidence: Physics, seen: "circumference of the pitch circle" }
    by rack_travel_per_turn
}

fn rack_travel_per_turn(pinion: &RackTravelPerTurn) -> Result<RackTravel, OutOfReach> {
    let diameter = pitch_diameter(pinion.module, pinion.teeth)?;
    not_negative("turning_speed", pinion.turning_speed, "60 rpm")?;
    Ok(RackTravel {
        travel_per_turn: diameter * std::f64::consts::PI,
        speed: Velocity::from_base(pinion.turning_speed.base() * diameter.base() / 2.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        /// In one second at one turn a second the rack goes one turn's travel.
        #[test]
        fn travel_and_speed_agree(module in 0.001..0.01, teeth in 6_u32..60) {
            let gives = RackTravelPerTurn {
                module: Length::from_base(module),
                teeth,
                turning_speed: AngularVelocity::from_base(std::f64::consts::TAU),
            }
            .evaluate()
            .unwrap();
            prop_assert!((gives.speed.base() - gives.travel_per_turn.base()).abs() < 1e-12);
        }
    }

    #[test]
    fn a_module_of_nothing_is_refused() {
        let wrong = RackTravelPerTurn {
            module: Length::from_base(0.0),
            teeth: 20,
            turning_speed: AngularVelocity::from_base(1.0),
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "module");
    }
}
