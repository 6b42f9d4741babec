//! How soon and how far a gate reverses after it has sensed somebody, by UL 325.

use super::limit::is_at_least;
use super::limit::is_at_most;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _, Time};

quantity::words! {
    /// How a reversal stands to its rule.
    pub enum ReversalVerdict {
        /// Soon and far enough.
        Kept = "kept",
        /// It begins too late.
        Late = "begins too late",
        /// It ends too soon.
        Short = "not far enough",
    }
}

formula! {
    /// Whether a gate reverses soon and far enough after it has sensed an obstruction, by UL 325.
    ///
    /// The way counts from where the obstruction was first met. After a second obstruction in the same travel an
    /// operator that senses by itself only stops. Measure both; `reversal-distance` foretells them.
    pub struct Ul325Reversal = "ul325-reversal" in Protection {
        /// Time from sensing until the leaf begins to move back.
        start_time ("t"): Time,
        /// How far back the leaf moves.
        distance ("d"): Length,
    }
    gives
    /// How a reversal stands to its rule.
    pub struct ReversalRule {
        /// Time to spare; below zero where it begins too late.
        time_spare ("2 s − t"): Time,
        /// Distance to spare; below zero where it is too short.
        distance_spare ("d − 2 in"): Length,
        /// The verdict, or the first part that is not kept.
        verdict ("–"): ReversalVerdict,
    }
    formula "t ≤ 2 s\nd ≥ 2 in"
    valid "Types A, B1 and B2, the distance after contact only; United States."
    source { work: "UL 325, in force 1 August 2018", clause: "", evidence: Seen, seen: "an installer's page that quotes DASMA Technical Data Sheet 353, and an operator manual that reprints the general provisions (addresses withheld); the standard itself was not at hand" }
    by reversal
}

fn reversal(leaf: &Ul325Reversal) -> Result<ReversalRule, OutOfReach> {
    not_negative("start_time", leaf.start_time, "0.8 s")?;
    not_negative("distance", leaf.distance, "4 in")?;
    let (latest, shortest) = (Time::from_base(2.0), Length::from_base(0.0508));
    let verdict = if !is_at_most(leaf.start_time, latest) {
        ReversalVerdict::Late
    } else if is_at_least(leaf.distance, shortest) {
        ReversalVerdict::Kept
    } else {
        ReversalVerdict::Short
    };
    Ok(ReversalRule {
        time_spare: latest - leaf.start_time,
        distance_spare: leaf.distance - shortest,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(time: f64, distance: f64) -> Ul325Reversal {
        Ul325Reversal {
            start_time: Time::from_base(time),
            distance: Length::from_base(distance),
        }
    }

    proptest! {
        #[test]
        fn sooner_and_farther_never_breaks_it(
            time in 0.0..4.0, distance in 0.0..0.2, share in 0.0..1.0, more in 0.0..0.2
        ) {
            if leaf(time, distance).evaluate().unwrap().verdict == ReversalVerdict::Kept {
                let better = leaf(time * share, distance + more).evaluate().unwrap();
                prop_assert_eq!(better.verdict, ReversalVerdict::Kept);
            }
        }
    }

    #[test]
    fn a_time_below_zero_is_refused() {
        assert_eq!(leaf(-1.0, 0.1).evaluate().unwrap_err().input, "start_time");
    }
}
