//! Whether two means of entrapment protection are a pair, by UL 325 since 2016.

use super::MeansType;
use crate::OutOfReach;

quantity::words! {
    /// Whether two means count as two.
    pub enum PairVerdict {
        /// They are two independent means.
        Pair = "a pair",
        /// Two of the same type do not count as two.
        SameType = "the same type twice",
        /// An alarm is a warning and no means of protection.
        Alarm = "an alarm does not count",
    }
}

formula! {
    /// Whether two means of entrapment protection count as the two that a place needs, by UL 325 since January 2016.
    ///
    /// Both may be inherent in the operator, both external, or one of each, as long as their types differ. They must be
    /// independent: no single fault may take out both. A loop or other vehicle detector is no means of protecting
    /// people and has no type here. Sensors are checked by the operator at least once in each cycle.
    pub struct Ul325MeansPair = "ul325-means-pair" in Protection {
        /// Type of the first means.
        first ("–"): MeansType,
        /// Type of the second means.
        second ("–"): MeansType,
    }
    gives
    /// Whether two means are a pair.
    pub struct MeansPair {
        /// What the rule says.
        verdict ("–"): PairVerdict,
    }
    formula "a pair where the types differ and neither is E"
    valid "Operators made after 12 January 2016, United States; one place and one direction of travel."
    source { work: "UL 325, in force 12 January 2016", clause: "", evidence: Seen, seen: "a door-and-access trade magazine's article of December 2015 (address withheld); the standard itself was not at hand" }
    by pair
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    clippy::unnecessary_wraps,
    reason = "every calculation takes its inputs by reference and may refuse"
)]
fn pair(means: &Ul325MeansPair) -> Result<MeansPair, OutOfReach> {
    let verdict = if [means.first, means.second].contains(&MeansType::E) {
        PairVerdict::Alarm
    } else if means.first == means.second {
        PairVerdict::SameType
    } else {
        PairVerdict::Pair
    };
    Ok(MeansPair { verdict })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn the_order_does_not_matter_and_nothing_pairs_with_itself() {
        let verdict = |first, second| Ul325MeansPair { first, second }.evaluate().unwrap().verdict;
        for first in MeansType::ALL {
            assert_ne!(verdict(*first, *first), PairVerdict::Pair);
            for second in MeansType::ALL {
                assert_eq!(verdict(*first, *second), verdict(*second, *first));
            }
        }
    }
}
