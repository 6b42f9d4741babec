//! Peak velocity pressure of the wind by EN 1991-1-4.

use crate::OutOfReach;
use quantity::{Length, Pressure, Quantity as _, Ratio, Velocity};

quantity::words! {
    /// Terrain category of EN 1991-1-4.
    pub enum Terrain {
        /// Sea, or coast exposed to the open sea.
        Category0 = "0",
        /// Lakes, or flat ground with hardly any vegetation.
        CategoryI = "I",
        /// Low vegetation and single obstacles twenty heights apart.
        CategoryII = "II",
        /// Regular vegetation or buildings: villages, suburbs, woods.
        CategoryIII = "III",
        /// Town, at least 15 % covered with buildings above 15 m.
        CategoryIV = "IV",
    }
}

formula! {
    /// Peak velocity pressure at a height above ground, by the recommended values of EN 1991-1-4.
    ///
    /// Below the least height of the terrain category the pressure at that height holds. Air weighs 1.25 kg/m³ and the
    /// turbulence factor is 1, as recommended; national annexes may set both, and other formulas.
    pub struct En1991PeakVelocityPressure = "en1991-peak-velocity-pressure" in Wind {
        /// Fundamental basic wind speed of the place: a ten-minute mean at 10 m in category II, once in fifty years.
        fundamental_speed ("vb,0"): Velocity,
        /// Directional factor: 1 unless the national annex says otherwise.
        direction_factor ("cdir"): Ratio,
        /// Season factor: 1 for what stands all year.
        season_factor ("cseason"): Ratio,
        /// Probability factor: 1 for once in fifty years.
        probability_factor ("cprob"): Ratio,
        /// Terrain category upwind.
        terrain ("–"): Terrain,
        /// Orography factor: 1 on flat ground.
        orography_factor ("co"): Ratio,
        /// Height above ground at which the pressure is wanted.
        height ("z"): Length,
    }
    gives
    /// Peak velocity pressure with what leads to it.
    pub struct En1991PeakPressure {
        /// Basic wind speed.
        basic_speed ("vb"): Velocity,
        /// Basic velocity pressure.
        basic_pressure ("qb"): Pressure,
        /// Terrain factor.
        terrain_factor ("kr"): Ratio,
        /// Roughness factor.
        roughness_factor ("cr"): Ratio,
        /// Mean wind speed at the height.
        mean_speed ("vm"): Velocity,
        /// Turbulence intensity at the height.
        turbulence ("Iv"): Ratio,
        /// Peak velocity pressure.
        pressure ("qp"): Pressure,
    }
    formula "vb = cdir · cseason · cprob · vb,0\nqb = ½ · ρ · vb²\nkr = 0.19 · (z0 / 0.05 m)^0.07\ncr = kr · ln(z / z0), z not below zmin\nvm = cr · co · vb\nIv = 1 / (co · ln(z / z0))\nqp = (1 + 7 · Iv) · ½ · ρ · vm²\nz0, zmin: 0: 0.003 m, 1 m; I: 0.01, 1; II: 0.05, 2; III: 0.3, 5; IV: 1.0, 10"
    valid "Heights up to 200 m; recommended values, before any national annex."
    source { work: "EN 1991-1-4:2005+A1:2010", clause: "4.2 to 4.5 (equations 4.1 to 4.10, table 4.1)", evidence: Seen, seen: "published calculations; formulas and table 4.1 in the source text of several public libraries, which agree" }
    by peak_velocity_pressure
}

/// Density of air that the standard recommends, in kg/m³.
const AIR: f64 = 1.25;
/// Roughness length of category II, in meters.
const ROUGHNESS_II: f64 = 0.05;

/// Roughness length and least height of a category, in meters (table 4.1).
fn roughness(terrain: Terrain) -> (f64, f64) {
    match terrain {
        Terrain::Category0 => (0.003, 1.0),
        Terrain::CategoryI => (0.01, 1.0),
        Terrain::CategoryII => (0.05, 2.0),
        Terrain::CategoryIII => (0.3, 5.0),
        Terrain::CategoryIV => (1.0, 10.0),
    }
}

fn peak_velocity_pressure(
    wind: &En1991PeakVelocityPressure,
) -> Result<En1991PeakPressure, OutOfReach> {
    check(wind)?;
    let (length, least) = roughness(wind.terrain);
    let logarithm = (wind.height.base().max(least) / length).ln();
    let basic_speed = wind.fundamental_speed
        * wind.direction_factor
        * wind.season_factor
        * wind.probability_factor;
    let terrain_factor = 0.19 * (length / ROUGHNESS_II).powf(0.07);
    let roughness_factor = terrain_factor * logarithm;
    let mean_speed = basic_speed * roughness_factor * wind.orography_factor;
    let turbulence = 1.0 / (wind.orography_factor.base() * logarithm);
    Ok(En1991PeakPressure {
        basic_speed,
        basic_pressure: dynamic_pressure(basic_speed),
        terrain_factor: Ratio::from_base(terrain_factor),
        roughness_factor: Ratio::from_base(roughness_factor),
        mean_speed,
        turbulence: Ratio::from_base(turbulence),
        pressure: (1.0 + 7.0 * turbulence) * dynamic_pressure(mean_speed),
    })
}

fn dynamic_pressure(speed: Velocity) -> Pressure {
    Pressure::from_base(0.5 * AIR * speed.base().powi(2))
}

fn check(wind: &En1991PeakVelocityPressure) -> Result<(), OutOfReach> {
    if !(0.0..=100.0).contains(&wind.fundamental_speed.base()) {
        return Err(OutOfReach::new(
            "fundamental_speed",
            "give the fundamental basic wind speed of the place, such as 26 m/s",
        ));
    }
    if !(0.0..=200.0).contains(&wind.height.base()) {
        return Err(OutOfReach::new(
            "height",
            "give a height above ground from 0 to 200 m, such as 2 m",
        ));
    }
    if !(1.0..=2.0).contains(&wind.orography_factor.base()) {
        return Err(OutOfReach::new(
            "orography_factor",
            "give 1 for flat ground; over a hill or cliff it is more, up to about 1.6",
        ));
    }
    let factors = [
        ("direction_factor", wind.direction_factor),
        ("season_factor", wind.season_factor),
        ("probability_factor", wind.probability_factor),
    ];
    match factors
        .iter()
        .find(|(_, factor)| !(0.3..=2.0).contains(&factor.base()))
    {
        Some((input, _)) => Err(OutOfReach::new(
            input,
            "give 1, or the factor of the national annex, near 1",
        )),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(terrain: Terrain, height: f64) -> En1991PeakPressure {
        let one = Ratio::from_base(1.0);
        En1991PeakVelocityPressure {
            fundamental_speed: Velocity::from_base(26.0),
            direction_factor: one,
            season_factor: one,
            probability_factor: one,
            terrain,
            orography_factor: one,
            height: Length::from_base(height),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn pressure_never_falls_with_height(low in 0.0..190.0, more in 0.0..10.0) {
            for terrain in Terrain::ALL {
                prop_assert!(at(*terrain, low).pressure <= at(*terrain, low + more).pressure);
            }
        }

        #[test]
        fn rougher_ground_lowers_the_pressure(height in 10.0..200.0) {
            for pair in Terrain::ALL.windows(2) {
                prop_assert!(at(pair[0], height).pressure > at(pair[1], height).pressure);
            }
        }
    }
}
