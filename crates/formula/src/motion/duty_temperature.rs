//! How warm a motor gets that runs and rests by turns.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Quantity as _, Ratio, Temperature, TemperatureDifference, Time};

formula! {
    /// Highest temperature of a motor that runs and rests by turns, once the turns have gone on for long.
    ///
    /// The motor is one body that warms and cools by an exponential law. Its losses go with the square of the load. The
    /// temperature rise at the rated load and the two time constants come from the data sheet, or from a run with a
    /// thermometer on the case; a standing motor with a fan of its own cools more slowly than it warms.
    pub struct DutyTemperature = "duty-temperature" in Motion {
        /// Temperature of the air.
        ambient ("T0"): Temperature,
        /// Rise over the air at the rated load, after running for long.
        rated_rise ("θr"): TemperatureDifference,
        /// Load while running, as a share of the rated load.
        load ("x"): Ratio,
        /// Time of running in each turn.
        running_time ("t1"): Time,
        /// Time of rest in each turn.
        resting_time ("t2"): Time,
        /// Time constant of warming.
        heating_constant ("τ1"): Time,
        /// Time constant of cooling at rest.
        cooling_constant ("τ2"): Time,
    }
    gives
    /// How warm a motor gets.
    pub struct MotorTemperature {
        /// Rise that it would reach if it ran without rest.
        steady_rise ("θs"): TemperatureDifference,
        /// Highest rise in each turn.
        peak_rise ("θp"): TemperatureDifference,
        /// Highest temperature in each turn.
        peak_temperature ("Tp"): Temperature,
    }
    formula "θs = θr · x²\nθp = θs · (1 − e^(−t1/τ1)) / (1 − e^(−t1/τ1 − t2/τ2))\nTp = T0 + θp"
    valid "One body of even temperature; the winding of a real motor runs ahead of its case within a turn."
    source { work: "first-order heating and cooling of a body, as in texts on electric drives", clause: "periodic intermittent duty", evidence: Physics, seen: "the differential equation C · dθ/dt = P − A · θ and its solution over one period" }
    by duty_temperature
}

fn duty_temperature(motor: &DutyTemperature) -> Result<MotorTemperature, OutOfReach> {
    positive("rated_rise", motor.rated_rise, "80 K")?;
    not_negative("load", motor.load, "90 %")?;
    positive("running_time", motor.running_time, "20 s")?;
    not_negative("resting_time", motor.resting_time, "60 s")?;
    positive("heating_constant", motor.heating_constant, "20 min")?;
    positive("cooling_constant", motor.cooling_constant, "30 min")?;
    let warming = motor.running_time.base() / motor.heating_constant.base();
    let cooling = motor.resting_time.base() / motor.cooling_constant.base();
    let steady = motor.rated_rise.base() * motor.load.base().powi(2);
    // 1 − e^(−x) keeps its digits for the short turns of a gate.
    let peak = steady * (-warming).exp_m1() / (-warming - cooling).exp_m1();
    Ok(MotorTemperature {
        steady_rise: TemperatureDifference::from_base(steady),
        peak_rise: TemperatureDifference::from_base(peak),
        peak_temperature: Temperature::from_base(motor.ambient.base() + peak),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn motor(load: f64, running: f64, resting: f64) -> DutyTemperature {
        DutyTemperature {
            ambient: Temperature::from_base(308.15),
            rated_rise: TemperatureDifference::from_base(80.0),
            load: Ratio::from_base(load),
            running_time: Time::from_base(running),
            resting_time: Time::from_base(resting),
            heating_constant: Time::from_base(1200.0),
            cooling_constant: Time::from_base(1800.0),
        }
    }

    proptest! {
        #[test]
        fn rest_cools_and_load_warms(load in 0.1..2.0, running in 1.0..600.0, resting in 0.0..600.0) {
            let base = motor(load, running, resting).evaluate().unwrap();
            prop_assert!(base.peak_rise.base() <= base.steady_rise.base() + 1e-9);
            let warmer = motor(load + 0.01, running, resting).evaluate().unwrap();
            let cooler = motor(load, running, resting + 1.0).evaluate().unwrap();
            prop_assert!(base.peak_rise < warmer.peak_rise && base.peak_rise > cooler.peak_rise);
        }
    }

    #[test]
    fn a_motor_without_a_time_constant_is_refused() {
        let wrong = DutyTemperature {
            heating_constant: Time::from_base(0.0),
            ..motor(1.0, 20.0, 20.0)
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "heating_constant");
    }
}
