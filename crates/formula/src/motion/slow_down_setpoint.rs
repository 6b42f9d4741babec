//! Where the slow-down is set.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{
    Acceleration, Length, Quantity as _, TemperatureDifference, ThermalExpansion, Time, Velocity,
};

formula! {
    /// Distance before the stop at which the slow-down must begin, so that a leaf creeps into its stop in every weather.
    ///
    /// The leaf runs on at full speed until the controller acts, brakes to creep speed, and creeps at least the wanted
    /// way with its last stop. What the limit strays and what the leaf grows between the day of setting and the
    /// hottest or coldest day is added.
    pub struct SlowDownSetpoint = "slow-down-setpoint" in Motion {
        /// Running speed.
        cruise_speed ("v"): Velocity,
        /// Creep speed.
        creep_speed ("vc"): Velocity,
        /// Deceleration of the slow-down, as a value above zero.
        deceleration ("b"): Acceleration,
        /// Time from the limit's report to the start of braking.
        reaction_time ("tr"): Time,
        /// Way wanted at creep speed, last stop included.
        creep_distance ("dc"): Length,
        /// How far the limit strays from one travel to the next.
        repeatability ("r"): Length,
        /// Length of the leaf or rack between the limit's mark and the stop.
        moving_length ("L"): Length,
        /// How much its metal grows for each degree.
        expansion ("α"): ThermalExpansion,
        /// Temperature away from that of the day of setting, as a value not below zero.
        temperature_change ("ΔT"): TemperatureDifference,
    }
    gives
    /// Where the slow-down must begin.
    pub struct SetPoint {
        /// Way at full speed until the braking begins.
        reaction_distance ("sr"): Length,
        /// Way of braking to creep speed.
        braking_distance ("sb"): Length,
        /// Growth or shrinkage of the metal.
        growth ("g"): Length,
        /// Least distance before the stop at which the slow-down begins.
        set_point ("ds"): Length,
    }
    formula "sr = v · tr\nsb = (v² − vc²) / 2b\ng = α · L · ΔT\nds = sr + sb + dc + r + g"
    valid "Constant deceleration; growth of one metal in one direction."
    source { work: "motion with constant acceleration; linear expansion", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by slow_down_setpoint
}

fn slow_down_setpoint(run: &SlowDownSetpoint) -> Result<SetPoint, OutOfReach> {
    positive("cruise_speed", run.cruise_speed, "1 ft/s")?;
    not_negative("creep_speed", run.creep_speed, "3 in/s")?;
    positive("deceleration", run.deceleration, "0.5 ft/s²")?;
    not_negative("reaction_time", run.reaction_time, "100 ms")?;
    not_negative("creep_distance", run.creep_distance, "6 in")?;
    not_negative("repeatability", run.repeatability, "1/4 in")?;
    not_negative("moving_length", run.moving_length, "20 ft")?;
    not_negative("expansion", run.expansion, "11.7 µm/(m·K)")?;
    not_negative("temperature_change", run.temperature_change, "60 Δ°F")?;
    if run.creep_speed > run.cruise_speed {
        return Err(OutOfReach::new(
            "creep_speed",
            "the creep is not faster than the running speed",
        ));
    }
    let reaction_distance: Length = run.cruise_speed * run.reaction_time;
    let squares = run.cruise_speed.base().powi(2) - run.creep_speed.base().powi(2);
    let braking_distance = Length::from_base(squares / (2.0 * run.deceleration.base()));
    let strain = run.expansion.base() * run.temperature_change.base();
    let growth = run.moving_length * strain;
    Ok(SetPoint {
        reaction_distance,
        braking_distance,
        growth,
        set_point: reaction_distance
            + braking_distance
            + run.creep_distance
            + run.repeatability
            + growth,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(speed: f64, kelvin: f64) -> SlowDownSetpoint {
        SlowDownSetpoint {
            cruise_speed: Velocity::from_base(speed),
            creep_speed: Velocity::from_base(0.05),
            deceleration: Acceleration::from_base(0.2),
            reaction_time: Time::from_base(0.1),
            creep_distance: Length::from_base(0.15),
            repeatability: Length::from_base(0.005),
            moving_length: Length::from_base(6.0),
            expansion: ThermalExpansion::from_base(11.7e-6),
            temperature_change: TemperatureDifference::from_base(kelvin),
        }
    }

    proptest! {
        #[test]
        fn faster_or_hotter_begins_earlier(speed in 0.05..1.0, kelvin in 0.0..60.0) {
            let base = run(speed, kelvin).evaluate().unwrap().set_point;
            prop_assert!(base < run(speed + 0.01, kelvin).evaluate().unwrap().set_point);
            prop_assert!(base < run(speed, kelvin + 1.0).evaluate().unwrap().set_point);
        }
    }

    #[test]
    fn a_creep_faster_than_the_run_is_refused() {
        assert_eq!(run(0.04, 0.0).evaluate().unwrap_err().input, "creep_speed");
    }
}
