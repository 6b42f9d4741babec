//! Time that a walking person needs to clear the travel of a gate.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Time, Velocity};

quantity::words! {
    /// Published walking speed.
    pub enum Walker {
        /// What pedestrian clearance is timed with: 3.5 ft/s.
        Mutcd = "road manual, 3.5 ft/s",
        /// The manual's cross-check for slower people: 3.0 ft/s.
        MutcdSlow = "road manual for slower people, 3.0 ft/s",
        /// The slowest 15 % of people over 60: 3.03 ft/s.
        Over60 = "over 60, slowest 15 %",
        /// The slowest 15 % of people of 60 and under: 3.77 ft/s.
        Under60 = "60 and under, slowest 15 %",
        /// The slowest that studies span: 0.6 m/s.
        Slowest = "slowest of the studies, 0.6 m/s",
    }
}

formula! {
    /// Time that a person on foot needs to clear the travel of a gate, against the time that the gate holds open.
    ///
    /// Slow people decide here; fast ones decide how soon somebody reaches a danger. The way counts from where a person
    /// still believes to have time, such as the button or 6 ft before the gate, to beyond the reach of the leaf. A hold
    /// time is no protection: people stop, turn and fall.
    pub struct WalkingClearanceTime = "walking-clearance-time" in Protection {
        /// Who walks.
        walker ("–"): Walker,
        /// Way that has to be cleared.
        way ("l"): Length,
        /// Time from the start of the walk until the leaf begins to close, warning time counted.
        hold_open ("th"): Time,
    }
    gives
    /// Time that a person on foot needs.
    pub struct WalkingTime {
        /// Walking speed.
        speed ("v"): Velocity,
        /// Time needed.
        time ("t"): Time,
        /// Time to spare; below zero where the gate closes too soon.
        spare ("th − t"): Time,
        /// Whether the gate holds open long enough.
        verdict ("–"): LimitVerdict,
    }
    formula "t = l / v\nth ≥ t"
    valid "Level ground, people who walk on without stopping."
    source { work: "MUTCD 2009, 4E.06; TCRP-NCHRP study of 2005; studies cited by ITE", clause: "", evidence: Seen, seen: "public pages that quote the figures of each" }
    by walking_time
}

/// Walking speed in m/s.
fn speed(walker: Walker) -> f64 {
    match walker {
        Walker::Mutcd => 3.5 * 0.3048,
        Walker::MutcdSlow => 3.0 * 0.3048,
        Walker::Over60 => 3.03 * 0.3048,
        Walker::Under60 => 3.77 * 0.3048,
        Walker::Slowest => 0.6,
    }
}

fn walking_time(walk: &WalkingClearanceTime) -> Result<WalkingTime, OutOfReach> {
    positive("way", walk.way, "20 ft")?;
    not_negative("hold_open", walk.hold_open, "15 s")?;
    let speed = Velocity::from_base(speed(walk.walker));
    let time: Time = walk.way / speed;
    Ok(WalkingTime {
        speed,
        time,
        spare: walk.hold_open - time,
        verdict: verdict(is_at_least(walk.hold_open, time)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn walk(walker: Walker, way: f64, hold: f64) -> WalkingClearanceTime {
        WalkingClearanceTime {
            walker,
            way: Length::from_base(way),
            hold_open: Time::from_base(hold),
        }
    }

    proptest! {
        #[test]
        fn what_the_slowest_clear_everybody_clears(way in 0.5..20.0, hold in 0.0..60.0) {
            let verdict = |walker| walk(walker, way, hold).evaluate().unwrap().verdict;
            if verdict(Walker::Slowest) == LimitVerdict::Kept {
                for walker in Walker::ALL {
                    prop_assert_eq!(verdict(*walker), LimitVerdict::Kept);
                }
            }
        }
    }

    #[test]
    fn no_way_is_refused() {
        let none = walk(Walker::Mutcd, 0.0, 10.0);
        assert_eq!(none.evaluate().unwrap_err().input, "way");
    }
}
