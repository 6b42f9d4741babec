//! The standard rating of a breaker next to a current.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Stored, Table};
use quantity::{Current, Quantity as _};

formula! {
    /// Standard ratings of fuses and breakers next to a current, upward and downward.
    ///
    /// Where the rules let a breaker be the next standard size, a current that is a standard rating itself is its own
    /// next size: 70 A stays 70 A.
    pub struct NecStandardRating = "nec-standard-rating" in Power {
        /// Current that was worked out.
        current ("I"): Current,
    }
    gives
    /// Standard ratings around a current.
    pub struct StandardRatings {
        /// Smallest standard rating that is not below it.
        next_up ("Iup"): Current,
        /// Largest standard rating that is not above it.
        next_down ("Idown"): Current,
    }
    formula "Iup, Idown: 240.6(A)"
    valid "15 A to 200 A. Recent editions add 10 A; fuses have smaller ratings as well."
    source { work: "NFPA 70 (NEC)", clause: "240.6(A)", evidence: Seen, seen: "a list on a motor-breaker question page (host withheld: a personal name is in it)" }
    by nec_standard_rating
}

static RATINGS: Stored = Stored::new(|| Table::read(include_str!("nec_standard_rating.toml")));

/// Two currents nearer than this are the same: 28 A times 2.5 is 70 A.
const SAME: f64 = 1e-6;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_standard_rating(asked: &NecStandardRating) -> Result<StandardRatings, OutOfReach> {
    positive("current", asked.current, "18 A")?;
    let amperes = asked.current.base();
    let ratings = Table::of(&RATINGS)?.numbers("rating");
    let up = ratings.iter().find(|rating| **rating >= amperes - SAME);
    let down = ratings.iter().rfind(|rating| **rating <= amperes + SAME);
    let (Some(up), Some(down)) = (up, down) else {
        return Err(OutOfReach::new(
            "current",
            "the list runs from 15 A to 200 A; below it take a fuse, above it an engineer",
        ));
    };
    Ok(StandardRatings {
        next_up: Current::from_base(*up),
        next_down: Current::from_base(*down),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn around(amperes: f64) -> Result<StandardRatings, OutOfReach> {
        let current = Current::from_base(amperes);
        NecStandardRating { current }.evaluate()
    }

    proptest! {
        #[test]
        fn a_current_lies_between_its_neighbors(amperes in 15.0..200.0) {
            let found = around(amperes).unwrap();
            prop_assert!(found.next_up.base() >= amperes - 1e-6 && found.next_down.base() <= amperes + 1e-6);
        }
    }

    #[test]
    fn beyond_the_list_is_refused() {
        for amperes in [0.0, 12.0, 201.0] {
            assert_eq!(around(amperes).unwrap_err().input, "current");
        }
    }
}
