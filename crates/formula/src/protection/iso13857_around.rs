//! Reaching around an obstacle with the arm, by ISO 13857.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

formula! {
    /// Whether a danger is out of reach of an arm that reaches around an obstacle, by ISO 13857.
    ///
    /// The whole arm counts, from the shoulder. Where an obstacle at least 300 mm long keeps the arm from bending the
    /// standard allows less; that part of its table is not given here.
    pub struct Iso13857Around = "iso13857-around" in Protection {
        /// Way of the fingertips around the obstacle to the danger.
        way ("sr"): Length,
    }
    gives
    /// How a way stands to the reach of an arm.
    pub struct AroundReach {
        /// Least way that is out of reach.
        least ("smin"): Length,
        /// Way to spare; below zero where the danger can be reached.
        spare ("sr − smin"): Length,
        /// Whether it is out of reach.
        verdict ("–"): LimitVerdict,
    }
    formula "sr ≥ 850 mm"
    valid "Openings that let an arm through and no body; people of 14 years and over."
    source { work: "ISO 13857:2019", clause: "table 3", evidence: Seen, seen: "an engineering consultant's page (address withheld); the standard itself was not at hand" }
    by around
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn around(danger: &Iso13857Around) -> Result<AroundReach, OutOfReach> {
    not_negative("way", danger.way, "900 mm")?;
    let least = Length::from_base(0.85);
    Ok(AroundReach {
        least,
        spare: danger.way - least,
        verdict: verdict(is_at_least(danger.way, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::{Iso13857Reach, OpeningShape};
    use proptest::prelude::*;

    proptest! {
        /// Through an opening that passes an arm the table of openings asks the same, and never more.
        #[test]
        fn no_opening_asks_for_more_than_an_arm(opening in 1.0..120.0) {
            let way = Length::from_base(0.0);
            let arm = Iso13857Around { way }.evaluate().unwrap().least;
            for shape in OpeningShape::ALL {
                let guard = Iso13857Reach { shape: *shape, opening: Length::from_base(opening / 1000.0) };
                prop_assert!(guard.evaluate().unwrap().distance.base() <= arm.base() + 1e-9);
            }
        }
    }
}
