//! How surely a rolling bearing reaches a wanted life.

use super::bearing_kind::{BearingKind, RATED_REVOLUTIONS};
use super::bearing_life::revolutions;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{AngularVelocity, Force, Quantity as _, Ratio, Time};
use std::f64::consts::TAU;

formula! {
    /// Share of bearings that reach a wanted life, and the rating that would be needed for another share.
    ///
    /// Lives of bearings scatter: one in ten fails before the life in the catalog, one in a hundred before about a fifth
    /// of it. Where one bearing holds a leaf up, ask for more than nine in ten.
    pub struct BearingReliability = "bearing-reliability" in Life {
        /// Basic dynamic load rating of the bearing.
        rating ("C10"): Force,
        /// Equivalent load on the bearing, shocks included.
        load ("F"): Force,
        /// What rolls inside it.
        bearing ("–"): BearingKind,
        /// Wanted time of turning.
        wanted ("L"): Time,
        /// Turning speed.
        speed ("n"): AngularVelocity,
        /// Share that is to reach it.
        share ("R"): Ratio,
    }
    gives
    /// Reliability of a rolling bearing.
    pub struct BearingChance {
        /// Share that reaches the wanted life with this rating.
        reliability ("R(L)"): Ratio,
        /// Rating with which the asked share reaches it.
        needed_rating ("C"): Force,
    }
    formula "xD = L · n / 10⁶ revolutions\nR(L) = e^(−((x − 0.02) / 4.439)^1.483), x = xD / (C10 / F)^p, 1 below x = 0.02\nC = F · (xD / (0.02 + 4.439 · (ln 1/R)^(1 / 1.483)))^(1 / p)\np = 3 for balls, 10/3 for rollers"
    valid "Shares from 50 % to 99.9 %; loads up to the rating."
    source { work: "Mechanical Engineering Design (McGraw-Hill), rolling bearings, three-number Weibull law", clause: "", evidence: Seen, seen: "worked answers: scribd document 41269722" }
    by reliability
}

/// Least life over rated life, spread and shape of the law.
const LEAST: f64 = 0.02;
/// Spread of the law.
const SPREAD: f64 = 4.439;
/// Shape of the law.
const SHAPE: f64 = 1.483;

fn reliability(bearing: &BearingReliability) -> Result<BearingChance, OutOfReach> {
    let reached = revolutions(bearing.rating, bearing.load, bearing.bearing)?;
    positive("wanted", bearing.wanted, "2000 h")?;
    positive("speed", bearing.speed, "30 rpm")?;
    let share = bearing.share.base();
    if !(0.5..=0.999).contains(&share) {
        return Err(OutOfReach::new(
            "share",
            "give a share from 50 % to 99.9 %, such as 90 %",
        ));
    }
    let wanted = bearing.wanted.base() * bearing.speed.base() / TAU;
    let beyond_least = ((wanted / reached - LEAST) / SPREAD).max(0.0);
    let allowed = LEAST + SPREAD * (-share.ln()).powf(1.0 / SHAPE);
    let times = (wanted / RATED_REVOLUTIONS / allowed).powf(1.0 / bearing.bearing.exponent());
    Ok(BearingChance {
        reliability: Ratio::from_base((-beyond_least.powf(SHAPE)).exp()),
        needed_rating: bearing.load * times,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn chance(rating: f64, share: f64) -> Result<BearingChance, OutOfReach> {
        BearingReliability {
            rating: Force::from_base(rating),
            load: Force::from_base(1000.0),
            bearing: BearingKind::Ball,
            wanted: Time::from_base(3.6e7),
            speed: AngularVelocity::from_base(30.0),
            share: Ratio::from_base(share),
        }
        .evaluate()
    }

    proptest! {
        /// The two outputs undo each other.
        #[test]
        fn the_needed_rating_gives_the_asked_share(share in 0.5..0.999) {
            let needed = chance(8000.0, share).unwrap().needed_rating.base();
            let reached = chance(needed, share).unwrap().reliability.base();
            prop_assert!((reached - share).abs() < 1e-9);
        }

        #[test]
        fn a_stronger_bearing_is_surer(rating in 1000.0..9000.0) {
            let (weak, strong) = (chance(rating, 0.9).unwrap(), chance(rating * 1.1, 0.9).unwrap());
            prop_assert!(weak.reliability <= strong.reliability);
        }
    }

    #[test]
    fn certainty_is_refused() {
        assert_eq!(chance(8000.0, 1.0).unwrap_err().input, "share");
    }
}
