//! How long the entrapment alarm sounds, by UL 325.

use super::limit::is_at_least;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Quantity as _, Time};

quantity::words! {
    /// How an alarm behaves after protection has acted.
    pub enum AlarmVerdict {
        /// As the text asks.
        Kept = "kept",
        /// It waits for too many events.
        Late = "sounds after too many events",
        /// It stops too soon.
        Short = "stops too soon",
    }
}

formula! {
    /// Whether the audible alarm sounds early and long enough after a gate has caught somebody twice in a row.
    ///
    /// The alarm sounds until somebody presses stop or resets it at a control in sight of the gate, or for its time.
    /// It is a warning and no means of protection. Its loudness is recalled as 100 dB at 10 ft and could not be read.
    pub struct EntrapmentAlarm = "entrapment-alarm" in Protection {
        /// Number of activations in a row after which the alarm sounds.
        events ("n"): u32,
        /// Time for which it sounds when nobody stops it.
        duration ("t"): Time,
    }
    gives
    /// How an alarm stands to its rule.
    pub struct AlarmRule {
        /// The verdict, or the first part that is not kept.
        verdict ("–"): AlarmVerdict,
    }
    formula "n ≤ 2\nt ≥ 5 min"
    valid "Operators with inherent obstruction sensing, United States."
    source { work: "UL 325, entrapment alarm", clause: "", evidence: Seen, seen: "an operator manual that describes it, and manuals that reprint the rule on resetting in sight (addresses withheld); the standard itself was not at hand" }
    by alarm_rule
}

fn alarm_rule(alarm: &EntrapmentAlarm) -> Result<AlarmRule, OutOfReach> {
    not_negative("duration", alarm.duration, "5 min")?;
    if alarm.events == 0 {
        return Err(OutOfReach::new(
            "events",
            "give the number of activations in a row after which it sounds, at least 1",
        ));
    }
    let verdict = if alarm.events > 2 {
        AlarmVerdict::Late
    } else if is_at_least(alarm.duration, Time::from_base(300.0)) {
        AlarmVerdict::Kept
    } else {
        AlarmVerdict::Short
    };
    Ok(AlarmRule { verdict })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn alarm(events: u32, duration: f64) -> EntrapmentAlarm {
        EntrapmentAlarm {
            events,
            duration: Time::from_base(duration),
        }
    }

    proptest! {
        #[test]
        fn sounding_longer_never_breaks_it(events in 1_u32..5, duration in 0.0..600.0, more in 0.0..600.0) {
            if alarm(events, duration).evaluate().unwrap().verdict == AlarmVerdict::Kept {
                prop_assert_eq!(alarm(events, duration + more).evaluate().unwrap().verdict, AlarmVerdict::Kept);
            }
        }
    }

    #[test]
    fn an_alarm_after_no_event_is_refused() {
        assert_eq!(alarm(0, 300.0).evaluate().unwrap_err().input, "events");
    }
}
