//! How a hill or a cliff speeds the wind up, by EN 1991-1-4.

use super::asce7_topographic_factor::CrestSide;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// Shape of the ground.
    pub enum OrographicFeature {
        /// Hill or ridge: the ground falls off behind the crest.
        Hill = "hill",
        /// Cliff or escarpment: the ground stays high behind the crest.
        Cliff = "cliff",
    }
}

formula! {
    /// Orography factor of EN 1991-1-4 for a site near a crest.
    ///
    /// It raises the mean wind; the pressure goes nearly with its square. Slopes of less than 1 in 20 count as flat, and
    /// from 0.3 on a slope grows no worse. It is greatest near the ground, where gates are.
    pub struct En1991OrographyFactor = "en1991-orography-factor" in Wind {
        /// Shape of the ground.
        feature ("–"): OrographicFeature,
        /// Height of the feature.
        height ("H"): Length,
        /// Length of the slope that faces the wind, from its foot to the crest.
        upwind_length ("Lu"): Length,
        /// Length of the slope behind the crest of a hill; of a cliff any length, which has no effect.
        downwind_length ("Ld"): Length,
        /// On which side of the crest the site lies.
        side ("–"): CrestSide,
        /// Distance of the site from the crest.
        distance ("x"): Length,
        /// Height above the ground at the site.
        above_ground ("z"): Length,
    }
    gives
    /// Orography factor with its parts.
    pub struct En1991Orography {
        /// Slope that faces the wind.
        slope ("Φ"): Ratio,
        /// Effective length of that slope.
        effective_length ("Le"): Length,
        /// Orographic location factor.
        location ("s"): Ratio,
        /// Orography factor.
        factor ("co"): Ratio,
    }
    formula "Φ = H / Lu; Le = Lu, from Φ = 0.3 on H / 0.3\nco = 1 below Φ = 0.05, 1 + 2 · s · Φ up to 0.3, 1 + 0.6 · s above\nζ = z / Le\nbefore the crest: s = A · e^(−B · x / Lu), A = 0.1552 · ζ⁴ − 0.8575 · ζ³ + 1.8133 · ζ² − 1.9115 · ζ + 1.0124, B = 0.3542 · ζ² − 1.0577 · ζ + 2.6456\nbehind a hill's: s = A · e^(B · x / Ld), B = −0.3056 · ζ² + 1.0212 · ζ − 1.7637\nbehind a cliff's: s = A · l² + B · l + C, l = log(x / Le), and with L = log ζ, ζ not below 0.1:\nA = −1.3420 · L³ − 0.8222 · L² + 0.4609 · L − 0.0791\nB = −1.0196 · L³ − 0.8910 · L² + 0.5343 · L − 0.1156\nC = 0.8030 · L³ + 0.4236 · L² − 0.5738 · L + 0.1606; from the crest to x / Le = 0.1 straight between"
    valid "Single hills and cliffs. From 1.5 · Lu before the crest, 2 · Ld behind that of a hill or 3.5 · Le behind that of a cliff, and above z = 2 · Le the wind is that of flat ground."
    source { work: "EN 1991-1-4:2005", clause: "A.3 (equations A.1 to A.9)", evidence: Seen, seen: "the polynomials in the source text of two public programs, which agree; in both the slope behind a hill is measured by Lu, where the standard as recalled has Ld; the standard itself was not at hand" }
    by orography
}

/// Slope below which the ground counts as flat.
const FLAT: f64 = 0.05;
/// Slope from which it grows no worse.
const STEEP: f64 = 0.3;
/// Distance behind the crest of a cliff, in effective lengths, from which its own expression holds.
const BRINK: f64 = 0.1;

fn orography(site: &En1991OrographyFactor) -> Result<En1991Orography, OutOfReach> {
    check(site)?;
    let slope = site.height.base() / site.upwind_length.base();
    let effective = if slope >= STEEP {
        site.height.base() / STEEP
    } else {
        site.upwind_length.base()
    };
    let location = location(site, effective).max(0.0);
    let factor = if slope < FLAT {
        1.0
    } else {
        1.0 + 2.0 * location * slope.min(STEEP)
    };
    Ok(En1991Orography {
        slope: Ratio::from_base(slope),
        effective_length: Length::from_base(effective),
        location: Ratio::from_base(location),
        factor: Ratio::from_base(factor),
    })
}

fn location(site: &En1991OrographyFactor, effective: f64) -> f64 {
    let (x, height) = (site.distance.base(), site.above_ground.base() / effective);
    let before = x / site.upwind_length.base();
    let behind_hill = x / site.downwind_length.base();
    let behind_cliff = x / effective;
    if height >= 2.0 {
        return 0.0;
    }
    match (site.side, site.feature) {
        (CrestSide::Upwind, _) if before < 1.5 => at_crest(height) * (-rise(height) * before).exp(),
        (CrestSide::Downwind, OrographicFeature::Hill) if behind_hill < 2.0 => {
            at_crest(height) * (fall(height) * behind_hill).exp()
        }
        (CrestSide::Downwind, OrographicFeature::Cliff) if behind_cliff < BRINK => {
            let (crest, brink) = (at_crest(height), on_the_plateau(height, BRINK));
            crest + (brink - crest) * behind_cliff / BRINK
        }
        (CrestSide::Downwind, OrographicFeature::Cliff) if behind_cliff < 3.5 => {
            on_the_plateau(height, behind_cliff)
        }
        _ => 0.0,
    }
}

/// A of the equations, ζ given.
fn at_crest(height: f64) -> f64 {
    polynomial(height, &[0.1552, -0.8575, 1.8133, -1.9115, 1.0124])
}

fn rise(height: f64) -> f64 {
    polynomial(height, &[0.3542, -1.0577, 2.6456])
}

fn fall(height: f64) -> f64 {
    polynomial(height, &[-0.3056, 1.0212, -1.7637])
}

fn on_the_plateau(height: f64, distance: f64) -> f64 {
    let lift = height.max(0.1).log10();
    let coefficients = [
        polynomial(lift, &[-1.3420, -0.8222, 0.4609, -0.0791]),
        polynomial(lift, &[-1.0196, -0.8910, 0.5343, -0.1156]),
        polynomial(lift, &[0.8030, 0.4236, -0.5738, 0.1606]),
    ];
    polynomial(distance.log10(), &coefficients)
}

/// A polynomial by its coefficients, the highest power first.
fn polynomial(x: f64, coefficients: &[f64]) -> f64 {
    coefficients
        .iter()
        .fold(0.0, |sum, coefficient| sum * x + coefficient)
}

fn check(site: &En1991OrographyFactor) -> Result<(), OutOfReach> {
    positive("height", site.height, "20 m")?;
    positive("upwind_length", site.upwind_length, "100 m")?;
    positive("downwind_length", site.downwind_length, "100 m")?;
    not_negative("distance", site.distance, "50 m")?;
    not_negative("above_ground", site.above_ground, "2 m")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(feature: OrographicFeature, height: f64, distance: f64, above: f64) -> f64 {
        let site = En1991OrographyFactor {
            feature,
            height: Length::from_base(height),
            upwind_length: Length::from_base(100.0),
            downwind_length: Length::from_base(100.0),
            side: if distance < 0.0 {
                CrestSide::Upwind
            } else {
                CrestSide::Downwind
            },
            distance: Length::from_base(distance.abs()),
            above_ground: Length::from_base(above),
        };
        site.evaluate().unwrap().factor.base()
    }

    proptest! {
        #[test]
        fn it_stays_between_flat_ground_and_the_steepest_crest(
            height in 1.0..80.0, distance in -200.0..400.0, above in 0.0..100.0
        ) {
            for feature in OrographicFeature::ALL {
                let factor = at(*feature, height, distance, above);
                prop_assert!((1.0..=1.65).contains(&factor), "{factor}");
            }
        }

        #[test]
        fn it_grows_toward_the_crest(height in 5.0..80.0, distance in -149.0..-1.0, above in 0.0..100.0) {
            let feature = OrographicFeature::Cliff;
            prop_assert!(at(feature, height, distance, above) <= at(feature, height, distance + 1.0, above));
        }

        #[test]
        fn a_hill_fades_behind_its_crest(height in 5.0..80.0, distance in 0.0..190.0) {
            let feature = OrographicFeature::Hill;
            prop_assert!(at(feature, height, distance, 2.0) >= at(feature, height, distance + 1.0, 2.0));
        }
    }

    #[test]
    fn the_expressions_meet_at_the_crest_and_at_the_brink() {
        for feature in OrographicFeature::ALL {
            let step = at(*feature, 20.0, 1e-9, 2.0) - at(*feature, 20.0, -1e-9, 2.0);
            assert!(step.abs() < 1e-6, "{feature}");
        }
        let cliff = OrographicFeature::Cliff;
        assert!((at(cliff, 20.0, 9.999_999, 2.0) - at(cliff, 20.0, 10.0, 2.0)).abs() < 1e-6);
    }

    #[test]
    fn gentle_ground_is_flat_and_no_height_is_refused() {
        assert!((at(OrographicFeature::Hill, 4.9, 0.0, 2.0) - 1.0).abs() < 1e-12);
        let none = En1991OrographyFactor {
            feature: OrographicFeature::Hill,
            height: Length::from_base(0.0),
            upwind_length: Length::from_base(100.0),
            downwind_length: Length::from_base(100.0),
            side: CrestSide::Upwind,
            distance: Length::from_base(0.0),
            above_ground: Length::from_base(2.0),
        };
        assert_eq!(none.evaluate().unwrap_err().input, "height");
    }
}
