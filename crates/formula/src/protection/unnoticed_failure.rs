//! Chance that a sensor which nothing monitors has failed without anybody noticing.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio, Time};

formula! {
    /// Chance that a sensor without monitoring has failed unnoticed, by the time from one test to the next.
    ///
    /// An operator that checks its sensors in every cycle notices at once; for the others the owner's monthly test is the
    /// only look. UL 325 allows an operator with its listed sensor 6 failures in a million hours: a mean time of
    /// 166 667 hours, or 19 years. Mud, mowers and vandals are not in that figure.
    pub struct UnnoticedFailure = "unnoticed-failure" in Protection {
        /// Mean time from one failure to the next.
        mean_time ("T"): Time,
        /// Time from one test to the next.
        interval ("t"): Time,
    }
    gives
    /// Chance of an unnoticed failure.
    pub struct FailureChance {
        /// Chance that the sensor has failed by the end of the interval.
        chance ("P"): Ratio,
        /// Mean share of the time for which it is dead and nobody knows.
        dead_share ("q"): Ratio,
    }
    formula "P = 1 − exp(−t / T)\nq = 1 − P · T / t"
    valid "Failures that come at random at an even rate; a test that finds every failure."
    source { work: "exponential law of random failures", clause: "", evidence: Physics, seen: "integral of an even failure rate; the rate of UL 325 on an installer's page that quotes DASMA Technical Data Sheet 353 (address withheld)" }
    by failure
}

fn failure(sensor: &UnnoticedFailure) -> Result<FailureChance, OutOfReach> {
    positive("mean_time", sensor.mean_time, "19 years")?;
    positive("interval", sensor.interval, "30 days")?;
    let share = sensor.interval.base() / sensor.mean_time.base();
    if !(1e-9..=1e9).contains(&share) {
        return Err(OutOfReach::new(
            "interval",
            "these two times are out of all proportion; look at their units",
        ));
    }
    let chance = -(-share).exp_m1();
    let dead = if share < 1e-4 {
        share / 2.0
    } else {
        1.0 - chance / share
    };
    Ok(FailureChance {
        chance: Ratio::from_base(chance),
        dead_share: Ratio::from_base(dead),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sensor(mean: f64, interval: f64) -> UnnoticedFailure {
        UnnoticedFailure {
            mean_time: Time::from_base(mean),
            interval: Time::from_base(interval),
        }
    }

    proptest! {
        #[test]
        fn testing_more_often_never_leaves_it_dead_longer(
            mean in 1e4..1e9, interval in 1e3..1e8, share in 0.1..1.0
        ) {
            let seldom = sensor(mean, interval).evaluate().unwrap();
            let often = sensor(mean, interval * share).evaluate().unwrap();
            prop_assert!(often.chance <= seldom.chance);
            prop_assert!(often.dead_share.base() <= seldom.dead_share.base() * (1.0 + 1e-3) + 1e-9);
            prop_assert!(seldom.dead_share <= seldom.chance && seldom.chance.base() <= 1.0);
        }
    }

    #[test]
    fn a_sensor_that_is_never_tested_is_refused() {
        assert_eq!(sensor(1e8, 0.0).evaluate().unwrap_err().input, "interval");
    }
}
