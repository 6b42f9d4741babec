//! How tall the letters of a sign are for the distance at which it is read.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Whether a sign's letters are tall enough to be read from where people stand or drive.
    ///
    /// One inch of letter for each 30 ft: the ratio of the road-sign manual since 2009, for drivers with reduced sight;
    /// older text had 40 ft. It counts the height of capital letters, with good contrast and light. At dusk, for old
    /// eyes or at a slant, take more.
    pub struct SignLetterHeight = "sign-letter-height" in Protection {
        /// Distance from which the sign has to be read.
        distance ("d"): Length,
        /// Height of the capital letters of the smallest line that matters.
        letter_height ("h"): Length,
    }
    gives
    /// How a letter height stands to the distance.
    pub struct LetterRule {
        /// Least height of the letters.
        least ("hmin"): Length,
        /// Farthest distance at which the letters are read.
        legible ("dmax"): Length,
        /// Whether the letters are tall enough.
        verdict ("–"): LimitVerdict,
    }
    formula "hmin = d / (30 ft/in)\ndmax = h · 30 ft/in"
    valid "Capital letters with good contrast, read square on by day."
    source { work: "MUTCD 2009", clause: "2A.13", evidence: Seen, seen: "two public texts that quote the ratio of 1 in to 30 ft, one with 6 in for 180 ft; the manual itself was not at hand" }
    by letter_rule
}

/// Distance for each unit of letter height: 30 ft for an inch.
const RATIO: f64 = 30.0 * 12.0;

fn letter_rule(sign: &SignLetterHeight) -> Result<LetterRule, OutOfReach> {
    positive("distance", sign.distance, "15 ft")?;
    not_negative("letter_height", sign.letter_height, "3/4 in")?;
    let least = sign.distance / RATIO;
    Ok(LetterRule {
        least,
        legible: Length::from_base(sign.letter_height.base() * RATIO),
        verdict: verdict(is_at_least(sign.letter_height, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sign(distance: f64, height: f64) -> SignLetterHeight {
        SignLetterHeight {
            distance: Length::from_base(distance),
            letter_height: Length::from_base(height),
        }
    }

    proptest! {
        #[test]
        fn letters_of_the_least_height_are_read_just_there(distance in 0.5..100.0) {
            let least = sign(distance, 0.0).evaluate().unwrap().least.base();
            let rule = sign(distance, least).evaluate().unwrap();
            prop_assert!((rule.legible.base() - distance).abs() < 1e-9 * distance);
            prop_assert_eq!(rule.verdict, LimitVerdict::Kept);
        }
    }

    #[test]
    fn a_distance_of_nothing_is_refused() {
        assert_eq!(sign(0.0, 0.02).evaluate().unwrap_err().input, "distance");
    }
}
