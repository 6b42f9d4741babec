//! How often lifting counts, and what that takes off the load.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Stored, Table, interpolated};
use quantity::{Frequency, Length, Quantity as _, Ratio, Time};
use std::sync::LazyLock;

quantity::words! {
    /// How long lifting goes on in a day, with rest between.
    pub enum LiftingDuration {
        /// Up to an hour, followed by rest of at least 1.2 times as long.
        Hour = "up to 1 hour",
        /// Up to two hours, followed by rest of at least 0.3 times as long.
        TwoHours = "up to 2 hours",
        /// Up to eight hours.
        EightHours = "up to 8 hours",
    }
}

formula! {
    /// Lifts each minute over a quarter of an hour, and the frequency multiplier of the lifting equation.
    ///
    /// Count the lifts of a quarter of an hour of the work; where lifting stops before the quarter is over, the lifts
    /// are spread over all of it. A lift now and then counts as one in five minutes. Above the last pace of the table
    /// nothing is recommended at all.
    pub struct LiftingFrequency = "lifting-frequency" in Standing {
        /// Lifts each minute while lifting goes on.
        pace ("Fp"): Frequency,
        /// Minutes of lifting in a quarter of an hour.
        lifting_time ("tw"): Time,
        /// How long lifting goes on in a day.
        duration ("–"): LiftingDuration,
        /// Height of the hands above the floor at the start of the lift.
        hand_height ("V"): Length,
    }
    gives
    /// Frequency of lifting.
    pub struct CountedFrequency {
        /// Lifts each minute that count.
        frequency ("F"): Frequency,
        /// Frequency multiplier.
        multiplier ("FM"): Ratio,
    }
    formula "F = Fp · tw / 15 min, not below 0.2 each minute\nFM from the table, between its rows in proportion"
    valid "Up to 15 lifts each minute; rest between spells as the manual asks."
    source { work: "NIOSH publication 94-110", clause: "1.3.5, table 5", evidence: Seen, seen: "text of the manual as transcribed in a public repository; the table as coded in six public repositories that agree" }
    by frequency
}

static MULTIPLIERS: Stored =
    LazyLock::new(|| Table::read(include_str!("lifting_frequency_multiplier.toml")));

/// Seconds of a quarter of an hour.
const QUARTER: f64 = 900.0;
/// Height of the hands from which more frequent lifting is allowed, 30 in, in meters.
const HIGH: f64 = 0.762;

fn frequency(lifting: &LiftingFrequency) -> Result<CountedFrequency, OutOfReach> {
    positive("pace", lifting.pace, "2 per minute")?;
    let share = Ratio::from_base(lifting.lifting_time.base() / QUARTER);
    positive("lifting_time", lifting.lifting_time, "8 min")?;
    within(
        "lifting_time",
        share,
        0.0,
        1.0,
        "give the minutes of lifting in a quarter of an hour, up to 15 min",
    )?;
    positive("hand_height", lifting.hand_height, "30 in")?;
    let each_minute = lifting.pace.base() * 60.0 * share.base();
    let counted = each_minute.max(0.2);
    let multiplier = multiplier(
        "pace",
        counted,
        lifting.duration,
        lifting.hand_height.base() >= HIGH,
    )?;
    Ok(CountedFrequency {
        frequency: Frequency::from_base(counted / 60.0),
        multiplier: Ratio::from_base(multiplier),
    })
}

/// Frequency multiplier for so many lifts each minute; a pace that the table gives nothing for is refused.
pub(super) fn multiplier(
    input: &'static str,
    each_minute: f64,
    duration: LiftingDuration,
    high: bool,
) -> Result<f64, OutOfReach> {
    let table = Table::of(&MULTIPLIERS)?;
    let column = match (duration, high) {
        (LiftingDuration::Hour, false) => "hour_low",
        (LiftingDuration::Hour, true) => "hour_high",
        (LiftingDuration::TwoHours, false) => "two_hours_low",
        (LiftingDuration::TwoHours, true) => "two_hours_high",
        (LiftingDuration::EightHours, false) => "eight_hours_low",
        (LiftingDuration::EightHours, true) => "eight_hours_high",
    };
    let rows = table
        .numbers("rate")
        .into_iter()
        .zip(table.numbers(column))
        .filter(|(_, multiplier)| *multiplier > 0.0);
    let points: Vec<(f64, f64)> = rows.collect();
    let last = points.last().map_or(0.0, |(rate, _)| *rate);
    if each_minute > last * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            input,
            format!(
                "above {last} lifts each minute for this long no weight is recommended; lift less often, or with gear"
            ),
        ));
    }
    Ok(interpolated(each_minute, points))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn more_often_longer_or_lower_never_allows_more(rate in 0.01..15.0, more in 0.0..1.0) {
            for duration in LiftingDuration::ALL {
                for high in [false, true] {
                    let Ok(faster) = multiplier("pace", rate + more, *duration, high) else { continue };
                    prop_assert!(faster <= multiplier("pace", rate, *duration, high).unwrap());
                    let hour = multiplier("pace", rate, LiftingDuration::Hour, high).unwrap();
                    prop_assert!(multiplier("pace", rate, *duration, high).unwrap() <= hour);
                    let lifted = multiplier("pace", rate, *duration, true).unwrap();
                    prop_assert!(multiplier("pace", rate, *duration, high).unwrap() <= lifted);
                }
            }
        }
    }

    #[test]
    fn a_pace_beyond_the_table_is_refused() {
        let refused = multiplier("pace", 9.0, LiftingDuration::EightHours, false);
        assert_eq!(refused.unwrap_err().input, "pace");
    }
}
