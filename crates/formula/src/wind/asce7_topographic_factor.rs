//! How a ridge, an escarpment or a hill speeds the wind up, by ASCE 7.

use super::exposure::Exposure;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// Shape of the ground.
    pub enum TopographicFeature {
        /// Long rise that falls off on the far side.
        Ridge = "ridge",
        /// Long rise to high ground: bluff, bank, edge of a plateau.
        Escarpment = "escarpment",
        /// Round hill.
        Hill = "hill",
    }
}

quantity::words! {
    /// On which side of the crest the site lies.
    pub enum CrestSide {
        /// The wind reaches the site before the crest.
        Upwind = "upwind",
        /// The wind reaches the site behind the crest.
        Downwind = "downwind",
    }
}

formula! {
    /// Topographic factor of ASCE 7 for a site near a crest.
    ///
    /// It raises the velocity pressure, twofold and more at the crest of a steep ridge. The code asks for it where the
    /// feature stands alone, rises at least 15 ft (exposure C or D) or 60 ft (B), is twice as high as what lies
    /// around, and the site is in its upper half or near its crest; elsewhere the factor is 1. It is greatest near the
    /// ground, where gates are.
    pub struct Asce7TopographicFactor = "asce7-topographic-factor" in Wind {
        /// Shape of the ground.
        feature ("–"): TopographicFeature,
        /// Exposure category of the ground upwind.
        exposure ("–"): Exposure,
        /// Height of the feature above the ground upwind.
        height ("H"): Length,
        /// Distance upwind of the crest to where the ground is half as high.
        half_length ("Lh"): Length,
        /// On which side of the crest the site lies.
        side ("–"): CrestSide,
        /// Distance of the site from the crest.
        distance ("x"): Length,
        /// Height above the ground at the site.
        above_ground ("z"): Length,
    }
    gives
    /// Topographic factor with its parts.
    pub struct Asce7Topography {
        /// Shape of the feature and greatest speed-up.
        shape ("K1"): Ratio,
        /// Distance from the crest.
        fading ("K2"): Ratio,
        /// Height above the ground.
        height_fading ("K3"): Ratio,
        /// Topographic factor.
        factor ("Kzt"): Ratio,
    }
    formula "K1 = k · H / Lh; ridge k = 1.30, 1.45, 1.55 in B, C, D; escarpment 0.75, 0.85, 0.95; hill 0.95, 1.05, 1.15\nK2 = 1 − x / (μ · Lh), not below 0; μ = 1.5, downwind of an escarpment 4\nK3 = e^(−γ · z / Lh); γ = 3 for a ridge, 2.5 for an escarpment, 4 for a hill\nH / Lh above 0.5: taken as 0.5 in K1, and Lh as 2 · H in K2 and K3\nKzt = (1 + K1 · K2 · K3)²"
    valid "H / Lh of 0.2 and more: the code counts less steep ground as flat."
    source { work: "ASCE 7-16 and 7-22", clause: "26.8 (figure 26.8-1)", evidence: Seen, seen: "constants and attenuation factors in the source text of two public programs, which agree; the table of K1 in a third; the standard itself was not at hand" }
    by topographic_factor
}

/// Least steepness that the code counts.
const LEAST_STEEPNESS: f64 = 0.2;
/// Steepness from which a feature grows no worse.
const STEEPEST: f64 = 0.5;

fn topographic_factor(site: &Asce7TopographicFactor) -> Result<Asce7Topography, OutOfReach> {
    check(site)?;
    let steepness = (site.height.base() / site.half_length.base()).min(STEEPEST);
    let length = site.half_length.base().max(site.height.base() / STEEPEST);
    let shape = shape(site.feature, site.exposure) * steepness;
    let fading = (1.0 - site.distance.base() / (reach(site) * length)).max(0.0);
    let decay = match site.feature {
        TopographicFeature::Ridge => 3.0,
        TopographicFeature::Escarpment => 2.5,
        TopographicFeature::Hill => 4.0,
    };
    let height_fading = (-decay * site.above_ground.base() / length).exp();
    Ok(Asce7Topography {
        shape: Ratio::from_base(shape),
        fading: Ratio::from_base(fading),
        height_fading: Ratio::from_base(height_fading),
        factor: Ratio::from_base((1.0 + shape * fading * height_fading).powi(2)),
    })
}

/// K1 over H / Lh.
fn shape(feature: TopographicFeature, exposure: Exposure) -> f64 {
    let [b, c, d] = match feature {
        TopographicFeature::Ridge => [1.30, 1.45, 1.55],
        TopographicFeature::Escarpment => [0.75, 0.85, 0.95],
        TopographicFeature::Hill => [0.95, 1.05, 1.15],
    };
    match exposure {
        Exposure::B => b,
        Exposure::C => c,
        Exposure::D => d,
    }
}

/// How far the speed-up reaches, in half-lengths.
fn reach(site: &Asce7TopographicFactor) -> f64 {
    match (site.feature, site.side) {
        (TopographicFeature::Escarpment, CrestSide::Downwind) => 4.0,
        _ => 1.5,
    }
}

fn check(site: &Asce7TopographicFactor) -> Result<(), OutOfReach> {
    positive("height", site.height, "40 ft")?;
    positive("half_length", site.half_length, "100 ft")?;
    not_negative("distance", site.distance, "50 ft")?;
    not_negative("above_ground", site.above_ground, "6 ft")?;
    if site.height.base() < LEAST_STEEPNESS * site.half_length.base() * (1.0 - 1e-9) {
        return Err(OutOfReach::new(
            "half_length",
            "the code counts ground that rises less than 1 in 5 over this length as flat: the factor is 1",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(feature: TopographicFeature, height: f64, distance: f64, above: f64) -> Asce7Topography {
        Asce7TopographicFactor {
            feature,
            exposure: Exposure::C,
            height: Length::from_base(height),
            half_length: Length::from_base(50.0),
            side: CrestSide::Downwind,
            distance: Length::from_base(distance),
            above_ground: Length::from_base(above),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn it_fades_with_distance_and_height_down_to_one(
            height in 10.0..60.0, distance in 0.0..300.0, above in 0.0..50.0
        ) {
            for feature in TopographicFeature::ALL {
                let here = at(*feature, height, distance, above).factor;
                prop_assert!(here.base() >= 1.0 && here.base() < 3.2);
                prop_assert!(at(*feature, height, distance + 5.0, above).factor <= here);
                prop_assert!(at(*feature, height, distance, above + 2.0).factor <= here);
            }
        }

        #[test]
        fn a_steeper_feature_is_never_milder_at_its_crest(height in 10.0..60.0) {
            for feature in TopographicFeature::ALL {
                prop_assert!(
                    at(*feature, height, 0.0, 2.0).factor <= at(*feature, height + 1.0, 0.0, 2.0).factor
                );
            }
        }
    }

    #[test]
    fn gentle_ground_is_refused() {
        let gentle = Asce7TopographicFactor {
            feature: TopographicFeature::Ridge,
            exposure: Exposure::C,
            height: Length::from_base(9.0),
            half_length: Length::from_base(50.0),
            side: CrestSide::Upwind,
            distance: Length::from_base(0.0),
            above_ground: Length::from_base(2.0),
        };
        assert_eq!(gentle.evaluate().unwrap_err().input, "half_length");
    }
}
