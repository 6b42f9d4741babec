//! Vehicles that wait in one queue for several lanes, or visitors for several who answer.

use super::rate::{busy, made_to_wait};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Frequency, Quantity as _, Ratio, Time};

formula! {
    /// Chance of a wait and mean wait in one queue before several lanes, or before several who answer an intercom.
    ///
    /// The time that each takes has no memory: most are short, a few are long.
    pub struct SharedQueue = "shared-queue" in Signal {
        /// Those who come, on the mean.
        arrivals ("λ"): Frequency,
        /// Mean time that one takes.
        service ("s"): Time,
        /// Lanes, or people who answer.
        servers ("c"): u32,
        /// A wait that is asked about: the share of those who wait longer is given.
        asked ("t"): Time,
    }
    gives
    /// What waits in the shared queue.
    pub struct SharedWait {
        /// Share of the time that each lane is busy.
        utilization ("ρ"): Ratio,
        /// Share of the time that all are free.
        idle ("P₀"): Ratio,
        /// Share that has to wait.
        delayed ("C"): Ratio,
        /// Mean wait of all.
        wait ("Wq"): Time,
        /// Mean time until it is through.
        time ("W"): Time,
        /// Mean number that waits.
        queue ("Lq"): Ratio,
        /// Share that waits longer than asked.
        longer ("P(t)"): Ratio,
    }
    formula "a = λ · s,  ρ = a / c\nB = (aᶜ / c!) / Σ aᵏ / k!, k from 0 to c\nC = B / (1 − ρ · (1 − B))\nP₀ = C · (1 − ρ) · c! / aᶜ\nWq = C · s / (c − a),  W = Wq + s\nLq = λ · Wq\nP(t) = C · exp(−(c − a) · t / s)"
    valid "Arrivals at random at a steady rate, one queue, first come first served, nobody goes away; utilization below 1; 1 to 1000 lanes."
    source { work: "Erlang's delay formula", clause: "", evidence: Seen, seen: "a worked example of a desk with two servers in a chapter on waiting lines: freebooksummary.com/waiting-line-and-queuing-theory-models; the formula in this form from memory, and simulated apart" }
    by shared_queue
}

fn shared_queue(queue: &SharedQueue) -> Result<SharedWait, OutOfReach> {
    positive("service", queue.service, "12 s")?;
    not_negative("asked", queue.asked, "60 s")?;
    let utilization = busy(queue.arrivals, queue.service, queue.servers)?;
    let (rate, service) = (queue.arrivals.base(), queue.service.base());
    let (load, lanes) = (rate * service, f64::from(queue.servers));
    let delayed = made_to_wait(load, queue.servers);
    let wait = delayed * service / (lanes - load);
    let longer = delayed * (-(lanes - load) * queue.asked.base() / service).exp();
    Ok(SharedWait {
        utilization: Ratio::from_base(utilization),
        idle: Ratio::from_base(idle(load, queue.servers)),
        delayed: Ratio::from_base(delayed),
        wait: Time::from_base(wait),
        time: Time::from_base(wait + service),
        queue: Ratio::from_base(rate * wait),
        longer: Ratio::from_base(longer),
    })
}

/// Share of the time that all are free: one over the sum of what the states weigh.
fn idle(load: f64, servers: u32) -> f64 {
    let (mut weight, mut sum) = (1.0, 1.0);
    for server in 1..=servers {
        weight *= load / f64::from(server);
        sum += weight;
    }
    let busy = load / f64::from(servers);
    1.0 / (sum + weight * busy / (1.0 - busy))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::OneLaneQueue;
    use proptest::prelude::*;

    fn queue(rate: f64, service: f64, servers: u32) -> SharedQueue {
        SharedQueue {
            arrivals: Frequency::from_base(rate),
            service: Time::from_base(service),
            servers,
            asked: Time::from_base(30.0),
        }
    }

    proptest! {
        #[test]
        fn one_server_is_a_lane_with_a_spread_as_large_as_its_mean(rate in 0.001..0.09, service in 0.1..10.0) {
            let shared = queue(rate, service, 1).evaluate().unwrap();
            let lane = OneLaneQueue {
                arrivals: Frequency::from_base(rate),
                service: Time::from_base(service),
                spread: Time::from_base(service),
            };
            let lane = lane.evaluate().unwrap();
            prop_assert!((shared.wait - lane.wait).base().abs() < 1e-9);
            prop_assert!((shared.idle - lane.idle).base().abs() < 1e-12);
        }

        #[test]
        fn another_lane_shortens_the_wait(rate in 0.001..0.09, service in 0.1..10.0, servers in 1..40u32) {
            let one = queue(rate, service, servers).evaluate().unwrap();
            let two = queue(rate, service, servers + 1).evaluate().unwrap();
            prop_assert!(two.wait <= one.wait && two.longer <= one.longer);
        }
    }

    #[test]
    fn no_lane_and_too_many_vehicles_are_refused() {
        assert_eq!(queue(0.1, 5.0, 0).evaluate().unwrap_err().input, "servers");
        assert_eq!(queue(1.0, 5.0, 4).evaluate().unwrap_err().input, "arrivals");
        let many = queue(9.0, 100.0, 1000).evaluate().unwrap();
        assert!(many.idle.base().is_finite() && many.wait.base().is_finite());
    }
}
