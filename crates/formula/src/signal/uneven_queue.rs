//! A queue whose arrivals and services are neither steady nor without memory.

use super::rate::{busy, made_to_wait};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Frequency, Quantity as _, Ratio, Time};

formula! {
    /// Mean wait where vehicles come in groups or by a timetable, and times at the reader vary more or less.
    ///
    /// An approximation: the wait of a queue without memory, enlarged by how uneven arrivals and services are. It is exact
    /// at one lane with arrivals at random, and good where lanes are busy.
    pub struct UnevenQueue = "uneven-queue" in Signal {
        /// Vehicles that come, on the mean.
        arrivals ("λ"): Frequency,
        /// Mean time that one takes.
        service ("s"): Time,
        /// Lanes.
        servers ("c"): u32,
        /// Variance of the gaps between arrivals over their mean squared: 1 at random, 0 by a timetable, more in groups.
        arrival_variation ("ca²"): Ratio,
        /// The same of the time at the reader: 0 where all take the same, 1 without memory.
        service_variation ("cs²"): Ratio,
    }
    gives
    /// The mean wait.
    pub struct UnevenWait {
        /// Share of the time that each lane is busy.
        utilization ("ρ"): Ratio,
        /// Mean wait before the reader.
        wait ("Wq"): Time,
    }
    formula "a = λ · s,  ρ = a / c\nWq = C(c, a) · s / (c − a) · (ca² + cs²) / 2"
    valid "A steady rate; utilization below 1; C is the share that waits in shared-queue."
    source { work: "Allen and Cunneen's approximation", clause: "", evidence: Memory, seen: "from memory" }
    by uneven_queue
}

fn uneven_queue(queue: &UnevenQueue) -> Result<UnevenWait, OutOfReach> {
    positive("service", queue.service, "12 s")?;
    not_negative("arrival_variation", queue.arrival_variation, "1")?;
    not_negative("service_variation", queue.service_variation, "0.5")?;
    let utilization = busy(queue.arrivals, queue.service, queue.servers)?;
    let load = queue.arrivals.base() * queue.service.base();
    let even = made_to_wait(load, queue.servers) * queue.service.base()
        / (f64::from(queue.servers) - load);
    let uneven = (queue.arrival_variation + queue.service_variation).base() / 2.0;
    Ok(UnevenWait {
        utilization: Ratio::from_base(utilization),
        wait: Time::from_base(even * uneven),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::OneLaneQueue;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn one_lane_with_arrivals_at_random_is_exact(
            rate in 0.001..0.09, service in 0.1..10.0, variation in 0.0..4.0
        ) {
            let uneven = UnevenQueue {
                arrivals: Frequency::from_base(rate),
                service: Time::from_base(service),
                servers: 1,
                arrival_variation: Ratio::from_base(1.0),
                service_variation: Ratio::from_base(variation),
            };
            let lane = OneLaneQueue {
                arrivals: Frequency::from_base(rate),
                service: Time::from_base(service),
                spread: Time::from_base(service * variation.sqrt()),
            };
            let (uneven, lane) = (uneven.evaluate().unwrap(), lane.evaluate().unwrap());
            prop_assert!((uneven.wait - lane.wait).base().abs() < 1e-9 * (1.0 + lane.wait.base()));
        }
    }

    #[test]
    fn variation_is_not_below_zero() {
        let wrong = UnevenQueue {
            arrivals: Frequency::from_base(0.01),
            service: Time::from_base(10.0),
            servers: 1,
            arrival_variation: Ratio::from_base(-1.0),
            service_variation: Ratio::from_base(1.0),
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "arrival_variation");
    }
}
