//! Velocity pressure of the wind by ASCE 7-22.

use super::exposure::{
    Exposure, PowerLaw, check_directionality, check_topography, elevation_factor,
    stagnation_pressure,
};
use crate::OutOfReach;
use quantity::{Length, Pressure, Quantity as _, Ratio, Velocity};

formula! {
    /// Pressure that the design wind would bring to rest against, by ASCE 7-22.
    ///
    /// This edition keeps the directionality factor out of the velocity pressure and applies it to the force. Both
    /// are given: compare `directed_pressure`, not `pressure`, with an older edition, and use it for forces.
    pub struct Asce722VelocityPressure = "asce7-22-velocity-pressure" in Wind {
        /// Basic wind speed of the place and risk category: a three-second gust at 33 ft in open country.
        basic_speed ("V"): Velocity,
        /// Exposure category of the ground upwind.
        exposure ("–"): Exposure,
        /// Height above ground at which the pressure is wanted.
        height ("z"): Length,
        /// Topographic factor: 1 on flat ground.
        topographic_factor ("Kzt"): Ratio,
        /// Directionality factor: 0.85 for walls, signs and fences.
        directionality_factor ("Kd"): Ratio,
        /// Height of the ground above the sea; 0 ft is on the safe side on land above it.
        ground_elevation ("ze"): Length,
    }
    gives
    /// Velocity pressure with its factors, by ASCE 7-22.
    pub struct Asce722Pressure {
        /// Velocity pressure exposure coefficient.
        exposure_coefficient ("Kz"): Ratio,
        /// Ground elevation factor.
        elevation_factor ("Ke"): Ratio,
        /// Velocity pressure, directionality left out.
        pressure ("qz"): Pressure,
        /// Velocity pressure times the directionality factor, for forces.
        directed_pressure ("Kd·qz"): Pressure,
    }
    formula "Kz = 2.41 · (z / zg)^(2/α), z not below 15 ft\nB: α = 7.5, zg = 3280 ft; C: 9.8, 2460 ft; D: 11.5, 1935 ft\nKe = e^(−0.0000362 · ze/ft)\nqz = 0.00256 · Kz · Kzt · Ke · (V/mph)² psf"
    valid "Heights from the ground to the gradient height of the exposure; strength-level wind speeds of the ASCE 7-22 maps."
    source { work: "ASCE 7-22", clause: "26.9, 26.10 (equation 26.10-1, table 26.10-1 note 1)", evidence: Seen, seen: "the constants in the source text of two public libraries, which agree (a third prints 7.0 for α of exposure B, which misses the printed 0.57 at 15 ft); the standard itself was not at hand" }
    by velocity_pressure
}

/// Power law of ASCE 7-22, table 26.10-1 note 1 with table 26.11-1.
const LAW: PowerLaw = PowerLaw {
    factor: 2.41,
    constants: [(7.5, 3280.0), (9.8, 2460.0), (11.5, 1935.0)],
};

fn velocity_pressure(wind: &Asce722VelocityPressure) -> Result<Asce722Pressure, OutOfReach> {
    check_topography(wind.topographic_factor)?;
    check_directionality(wind.directionality_factor)?;
    let exposure = LAW.coefficient(wind.exposure, wind.height)?;
    let elevation = elevation_factor(wind.ground_elevation)?;
    let pressure = stagnation_pressure(wind.basic_speed)?
        * exposure
        * wind.topographic_factor.base()
        * elevation;
    Ok(Asce722Pressure {
        exposure_coefficient: Ratio::from_base(exposure),
        elevation_factor: Ratio::from_base(elevation),
        pressure: Pressure::from_base(pressure),
        directed_pressure: Pressure::from_base(pressure * wind.directionality_factor.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(exposure: Exposure, feet: f64) -> Asce722Pressure {
        Asce722VelocityPressure {
            basic_speed: Velocity::from_base(50.0),
            exposure,
            height: Length::from_base(feet * 0.3048),
            topographic_factor: Ratio::from_base(1.0),
            directionality_factor: Ratio::from_base(0.85),
            ground_elevation: Length::from_base(0.0),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn pressure_never_falls_with_height(low in 0.0..1800.0, more in 0.0..90.0) {
            for exposure in Exposure::ALL {
                prop_assert!(at(*exposure, low).pressure <= at(*exposure, low + more).pressure);
            }
        }
    }
}
