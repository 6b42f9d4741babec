//! How long a rolling bearing lasts.

use super::bearing_kind::{BearingKind, RATED_REVOLUTIONS};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{AngularVelocity, Force, Quantity as _, Ratio, Time};
use std::f64::consts::TAU;

formula! {
    /// Life of a rolling bearing that nine in ten reach.
    ///
    /// It is the life until the metal tires, with clean grease and sound seals. Water, grit and standing still in one
    /// place end most gate bearings sooner.
    pub struct BearingLife = "bearing-life" in Life {
        /// Basic dynamic load rating of the bearing.
        rating ("C"): Force,
        /// Equivalent load on the bearing.
        load ("P"): Force,
        /// What rolls inside it.
        bearing ("–"): BearingKind,
        /// Turning speed.
        speed ("n"): AngularVelocity,
    }
    gives
    /// Life of a rolling bearing.
    pub struct BearingLives {
        /// Revolutions that nine in ten reach.
        revolutions ("L10"): Ratio,
        /// Hours of turning that nine in ten reach.
        time ("L10h"): Time,
    }
    formula "L10 = 10⁶ · (C / P)^p; p = 3 for balls, 10/3 for rollers\nL10h = L10 / n"
    valid "Loads up to half the rating; above that the races take dents."
    source { work: "ISO 281", clause: "basic rating life", evidence: Seen, seen: "http://bearing-analysis.info/bearing-life-according-to-iso-281; worked examples of two textbooks" }
    by bearing_life
}

fn bearing_life(bearing: &BearingLife) -> Result<BearingLives, OutOfReach> {
    let revolutions = revolutions(bearing.rating, bearing.load, bearing.bearing)?;
    positive("speed", bearing.speed, "30 rpm")?;
    Ok(BearingLives {
        revolutions: Ratio::from_base(revolutions),
        time: Time::from_base(revolutions * TAU / bearing.speed.base()),
    })
}

/// Revolutions that nine in ten bearings reach.
pub(super) fn revolutions(
    rating: Force,
    load: Force,
    bearing: BearingKind,
) -> Result<f64, OutOfReach> {
    positive("rating", rating, "2000 lbf")?;
    positive("load", load, "300 lbf")?;
    // Equal to the rating is the definition of it, and so allowed.
    if load > rating {
        return Err(OutOfReach::new(
            "load",
            "the load is above the rating of the bearing: it does not roll long enough to count",
        ));
    }
    Ok(RATED_REVOLUTIONS * (rating.base() / load.base()).powf(bearing.exponent()))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn life(load: f64, bearing: BearingKind) -> Result<BearingLives, OutOfReach> {
        BearingLife {
            rating: Force::from_base(10_000.0),
            load: Force::from_base(load),
            bearing,
            speed: AngularVelocity::from_base(3.0),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn half_the_load_lasts_eight_times_as_long(load in 1.0..10_000.0) {
            let whole = life(load, BearingKind::Ball).unwrap().revolutions.base();
            let half = life(load / 2.0, BearingKind::Ball).unwrap().revolutions.base();
            prop_assert!((half / whole - 8.0).abs() < 1e-9);
        }

        #[test]
        fn rollers_outlast_balls_of_the_same_rating(load in 1.0..9_999.0) {
            prop_assert!(life(load, BearingKind::Ball).unwrap().time < life(load, BearingKind::Roller).unwrap().time);
        }
    }

    #[test]
    fn a_load_above_the_rating_is_refused() {
        assert_eq!(life(10_001.0, BearingKind::Ball).unwrap_err().input, "load");
    }
}
