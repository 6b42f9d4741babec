//! Pressure of moving air that is brought to rest.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, MassDensity, Pressure, Quantity as _, Velocity};

formula! {
    /// Pressure of a wind that is brought to rest, and what it would press on a face at full measure.
    ///
    /// No shape, height, ground or gust is counted: the codes of practice multiply this pressure by coefficients, and a
    /// see-through leaf takes less, a flat leaf somewhat more than this.
    pub struct WindPressureOfSpeed = "wind-pressure-of-speed" in Wind {
        /// Speed of the wind at the height of the leaf.
        speed ("v"): Velocity,
        /// Density of the air: 1.2 kg/m³ at sea level and 20 °C, 1.25 kg/m³ by EN 1991-1-4.
        density ("ρ"): MassDensity,
        /// Area that the wind meets.
        area ("A"): Area,
    }
    gives
    /// Pressure of a wind.
    pub struct WindPressure {
        /// Pressure of the wind.
        pressure ("q"): Pressure,
        /// Force on the area at that pressure.
        force ("F"): Force,
    }
    formula "q = ½ · ρ · v²\nF = q · A"
    valid "Air well below the speed of sound; no coefficient of shape."
    source { work: "Bernoulli's equation", clause: "", evidence: Physics, seen: "a table of wind speeds and pressures on an engineering handbook page agrees" }
    by wind_pressure
}

fn wind_pressure(wind: &WindPressureOfSpeed) -> Result<WindPressure, OutOfReach> {
    if !(0.0..=150.0).contains(&wind.speed.base()) {
        return Err(OutOfReach::new(
            "speed",
            "give a wind from 0 to 150 m/s, such as 35 mph",
        ));
    }
    positive("density", wind.density, "1.2 kg/m³")?;
    not_negative("area", wind.area, "120 ft²")?;
    let pressure = Pressure::from_base(0.5 * wind.density.base() * wind.speed.base().powi(2));
    Ok(WindPressure {
        pressure,
        force: pressure * wind.area,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(speed: f64) -> Result<WindPressure, OutOfReach> {
        WindPressureOfSpeed {
            speed: Velocity::from_base(speed),
            density: MassDensity::from_base(1.2),
            area: Area::from_base(10.0),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn twice_the_speed_is_four_times_the_pressure(speed in 0.1..70.0) {
            let ratio = at(2.0 * speed).unwrap().force.base() / at(speed).unwrap().force.base();
            prop_assert!((ratio - 4.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_speed_below_zero_is_refused() {
        assert_eq!(at(-1.0).unwrap_err().input, "speed");
    }
}
