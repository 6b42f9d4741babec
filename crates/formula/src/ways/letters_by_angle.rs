//! How tall letters have to be to appear under a given angle.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _};

formula! {
    /// Height of a letter that an eye at a distance sees under an angle.
    ///
    /// Good young eyes in good light just read 5 minutes of arc. For labels in poor light and for eyes that are no longer
    /// young, three to four times that is asked for.
    pub struct LettersByAngle = "letters-by-angle" in Ways {
        /// Distance from the eye.
        distance ("d"): Length,
        /// Angle under which the letter appears; 20 minutes of arc are 0.3333°.
        angle ("α"): Angle,
    }
    gives
    /// Letters of that height.
    pub struct LetterHeight {
        /// Height of a capital letter.
        height ("h"): Length,
    }
    formula "h = 2 · d · tan(α / 2)"
    valid "Letters seen square on; angles above nothing and below 90°."
    source { work: "geometry of the eye chart", clause: "", evidence: Physics, seen: "a retelling of how an eye chart is drawn: liquisearch.com/snellen_chart/2020_or_66_vision" }
    by letters_by_angle
}

fn letters_by_angle(letters: &LettersByAngle) -> Result<LetterHeight, OutOfReach> {
    positive("distance", letters.distance, "18 in")?;
    positive("angle", letters.angle, "0.33°")?;
    if letters.angle.base() >= std::f64::consts::FRAC_PI_2 {
        return Err(OutOfReach::new(
            "angle",
            "a letter is seen under less than 90°",
        ));
    }
    Ok(LetterHeight {
        height: Length::from_base(
            2.0 * letters.distance.base() * (letters.angle.base() / 2.0).tan(),
        ),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn height(distance: f64, degrees: f64) -> f64 {
        let letters = LettersByAngle {
            distance: Length::from_base(distance),
            angle: Angle::from_base(degrees.to_radians()),
        };
        letters.evaluate().unwrap().height.base()
    }

    proptest! {
        #[test]
        fn twice_as_far_needs_twice_the_height(distance in 0.05..50.0, degrees in 0.01..80.0) {
            let (near, far) = (height(distance, degrees), height(2.0 * distance, degrees));
            prop_assert!((far - 2.0 * near).abs() < 1e-9 * far);
        }
    }

    #[test]
    fn nothing_and_a_right_angle_are_refused() {
        let refused = |distance, degrees: f64| {
            let letters = LettersByAngle {
                distance: Length::from_base(distance),
                angle: Angle::from_base(degrees.to_radians()),
            };
            letters.evaluate().unwrap_err().input
        };
        assert_eq!(refused(0.0, 1.0), "distance");
        assert_eq!(refused(1.0, 0.0), "angle");
        assert_eq!(refused(1.0, 90.0), "angle");
    }
}
