//! Velocity pressure of the wind by ASCE 7-16.

use super::exposure::{
    Exposure, PowerLaw, check_directionality, check_topography, elevation_factor,
    stagnation_pressure,
};
use crate::OutOfReach;
use quantity::{Length, Pressure, Quantity as _, Ratio, Velocity};

formula! {
    /// Pressure that the design wind would bring to rest against, by ASCE 7-16.
    ///
    /// The directionality factor is part of the pressure in this edition; in ASCE 7-22 it is applied to the force.
    /// For a wall or a leaf the height is that of its top.
    pub struct Asce716VelocityPressure = "asce7-16-velocity-pressure" in Wind {
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
    /// Velocity pressure with its factors, by ASCE 7-16.
    pub struct Asce716Pressure {
        /// Velocity pressure exposure coefficient.
        exposure_coefficient ("Kz"): Ratio,
        /// Ground elevation factor.
        elevation_factor ("Ke"): Ratio,
        /// Velocity pressure, directionality included.
        pressure ("qz"): Pressure,
    }
    formula "Kz = 2.01 · (z / zg)^(2/α), z not below 15 ft\nB: α = 7.0, zg = 1200 ft; C: 9.5, 900 ft; D: 11.5, 700 ft\nKe = e^(−0.0000362 · ze/ft)\nqz = 0.00256 · Kz · Kzt · Kd · Ke · (V/mph)² psf"
    valid "Heights from the ground to the gradient height of the exposure; strength-level wind speeds of the ASCE 7-10 and 7-16 maps."
    source { work: "ASCE 7-16", clause: "26.9, 26.10 (equation 26.10-1, table 26.10-1 note 1)", evidence: Seen, seen: "constants in a published sign calculation to ASCE 7-10 and in public source text; the standard itself was not at hand" }
    by velocity_pressure
}

/// Power law of ASCE 7-16, table 26.10-1 note 1 with table 26.11-1.
const LAW: PowerLaw = PowerLaw {
    factor: 2.01,
    constants: [(7.0, 1200.0), (9.5, 900.0), (11.5, 700.0)],
};

fn velocity_pressure(wind: &Asce716VelocityPressure) -> Result<Asce716Pressure, OutOfReach> {
    check_topography(wind.topographic_factor)?;
    check_directionality(wind.directionality_factor)?;
    let exposure = LAW.coefficient(wind.exposure, wind.height)?;
    let elevation = elevation_factor(wind.ground_elevation)?;
    let factors = wind.topographic_factor.base() * wind.directionality_factor.base();
    Ok(Asce716Pressure {
        exposure_coefficient: Ratio::from_base(exposure),
        elevation_factor: Ratio::from_base(elevation),
        pressure: Pressure::from_base(
            stagnation_pressure(wind.basic_speed)? * exposure * factors * elevation,
        ),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::table::Table;
    use proptest::prelude::*;

    fn at(exposure: Exposure, feet: f64) -> Asce716Pressure {
        Asce716VelocityPressure {
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

    /// The printed table is rounded by its makers from the formula, and for the lower rows not always the near way.
    #[test]
    fn agrees_with_the_printed_table() {
        let table = Table::read(include_str!("asce7_16_exposure_coefficient.toml")).unwrap();
        for exposure in Exposure::ALL {
            let printed = table.numbers(quantity::Word::word(*exposure));
            for (feet, printed) in table.numbers("height").into_iter().zip(printed) {
                let ours = at(*exposure, feet).exposure_coefficient.base();
                assert!(
                    (ours - printed).abs() <= 0.0075,
                    "{exposure} {feet}: {ours}"
                );
            }
        }
    }

    proptest! {
        #[test]
        fn pressure_never_falls_with_height(low in 0.0..600.0, more in 0.0..90.0) {
            for exposure in Exposure::ALL {
                prop_assert!(at(*exposure, low).pressure <= at(*exposure, low + more).pressure);
            }
        }

        #[test]
        fn more_open_ground_never_lowers_the_pressure(feet in 0.0..600.0) {
            prop_assert!(at(Exposure::B, feet).pressure < at(Exposure::C, feet).pressure);
            prop_assert!(at(Exposure::C, feet).pressure < at(Exposure::D, feet).pressure);
        }
    }
}
