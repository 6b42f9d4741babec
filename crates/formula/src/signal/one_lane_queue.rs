//! Vehicles that wait at one reader.

use super::rate::busy;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Frequency, Quantity as _, Ratio, Time};

formula! {
    /// Mean wait and mean queue at one reader where vehicles come at random and each takes its time.
    ///
    /// The spread of the time at the reader counts as much as its mean: with no spread the wait is half of that with a
    /// spread as large as the mean. Vehicles that come in groups wait longer than this says.
    pub struct OneLaneQueue = "one-lane-queue" in Signal {
        /// Vehicles that come, on the mean: `"40 per hour"`.
        arrivals ("λ"): Frequency,
        /// Mean time that one takes at the reader, until the next stands there.
        service ("s"): Time,
        /// Standard deviation of that time: zero where all take the same, the mean where it has no memory.
        spread ("σ"): Time,
    }
    gives
    /// What stands at the reader and behind it.
    pub struct LaneQueue {
        /// Share of the time that somebody stands at the reader.
        utilization ("ρ"): Ratio,
        /// Share of the time that nobody does.
        idle ("P₀"): Ratio,
        /// Mean wait before the reader.
        wait ("Wq"): Time,
        /// Mean time until it leaves the reader.
        time ("W"): Time,
        /// Mean number that waits.
        queue ("Lq"): Ratio,
        /// Mean number with the one at the reader.
        standing ("L"): Ratio,
    }
    formula "ρ = λ · s,  P₀ = 1 − ρ\nWq = λ · (s² + σ²) / (2 · (1 − ρ))\nW = Wq + s\nLq = λ · Wq,  L = λ · W"
    valid "Arrivals at random at a steady rate, first come first served, room for all; below a utilization of 1 and long enough for the mean to settle."
    source { work: "Pollaczek-Khinchine formula, with Little's law", clause: "", evidence: Seen, seen: "queueing problem 1 of an open textbook, Fundamentals of Transportation, for a spread as large as the mean: en.wikibooks.org/wiki/Fundamentals_of_Transportation/Queueing/Problem1; the general form from memory and simulated apart" }
    by one_lane_queue
}

fn one_lane_queue(lane: &OneLaneQueue) -> Result<LaneQueue, OutOfReach> {
    positive("service", lane.service, "12 s")?;
    not_negative("spread", lane.spread, "6 s")?;
    let (rate, service, spread) = (
        lane.arrivals.base(),
        lane.service.base(),
        lane.spread.base(),
    );
    let utilization = busy(lane.arrivals, lane.service, 1)?;
    let wait = rate * (service * service + spread * spread) / (2.0 * (1.0 - utilization));
    Ok(LaneQueue {
        utilization: Ratio::from_base(utilization),
        idle: Ratio::from_base(1.0 - utilization),
        wait: Time::from_base(wait),
        time: Time::from_base(wait + service),
        queue: Ratio::from_base(rate * wait),
        standing: Ratio::from_base(rate * (wait + service)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lane(rate: f64, service: f64, spread: f64) -> OneLaneQueue {
        OneLaneQueue {
            arrivals: Frequency::from_base(rate),
            service: Time::from_base(service),
            spread: Time::from_base(spread),
        }
    }

    proptest! {
        #[test]
        fn steady_service_halves_the_wait(rate in 0.001..0.09, service in 0.1..10.0) {
            let steady = lane(rate, service, 0.0).evaluate().unwrap();
            let free = lane(rate, service, service).evaluate().unwrap();
            prop_assert!((2.0 * steady.wait.base() - free.wait.base()).abs() < 1e-9 * free.wait.base());
        }

        #[test]
        fn more_vehicles_wait_longer(rate in 0.001..0.08, service in 0.1..10.0, spread in 0.0..20.0) {
            let fewer = lane(rate, service, spread).evaluate().unwrap();
            let more = lane(rate * 1.1, service, spread).evaluate().unwrap();
            prop_assert!(more.wait > fewer.wait);
        }
    }

    #[test]
    fn an_overrun_reader_is_refused() {
        assert_eq!(
            lane(0.1, 10.0, 0.0).evaluate().unwrap_err().input,
            "arrivals"
        );
        assert_eq!(
            lane(0.0, 10.0, 0.0).evaluate().unwrap_err().input,
            "arrivals"
        );
        assert_eq!(lane(0.1, 0.0, 0.0).evaluate().unwrap_err().input, "service");
        assert_eq!(lane(0.1, 1.0, -1.0).evaluate().unwrap_err().input, "spread");
    }
}
