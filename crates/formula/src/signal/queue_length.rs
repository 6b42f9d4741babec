//! How many vehicles stand there, but for a small share of the time.

use super::rate::{made_to_wait, some};
use crate::OutOfReach;
use quantity::{Quantity as _, Ratio};

formula! {
    /// Number of vehicles that is exceeded for no more than a small share of the time, and the queue behind the reader.
    ///
    /// With one lane the number in whole vehicles is the smallest that is exceeded no more often than allowed; the queue is
    /// what traffic studies work with: as a number between whole vehicles, those at the readers left out.
    pub struct QueueLength = "queue-length" in Signal {
        /// Share of the time that each lane is busy.
        utilization ("ρ"): Ratio,
        /// Lanes.
        servers ("c"): u32,
        /// Share of the time that it may be exceeded: 5 % for the usual 95 % queue.
        exceeded ("P"): Ratio,
    }
    gives
    /// The number that is rarely exceeded.
    pub struct RareQueue {
        /// Share of vehicles that find all lanes busy.
        delayed ("C"): Ratio,
        /// Vehicles that wait, exceeded so often, as a number between whole vehicles; not below zero.
        queue ("M"): Ratio,
        /// Whole vehicles at the readers and behind them that are exceeded no more often.
        standing ("n"): u32,
    }
    formula "M = (ln P − ln C) / ln ρ − 1, not below 0\nn: smallest with C · ρ^(n + 1 − c) ≤ P, not below c where C > P"
    valid "Arrivals at random, times at the reader without memory; utilization above 0 and up to 0.99."
    source { work: "ITE, Transportation and Land Development (1988), queue of a single or shared channel", clause: "", evidence: Seen, seen: "a parking study in a city record: publicdocs.santa-ana.org/WebLink/1/doc/53013/Page226.aspx" }
    by queue_length
}

fn queue_length(lane: &QueueLength) -> Result<RareQueue, OutOfReach> {
    some(lane.servers)?;
    let (busy, exceeded) = (lane.utilization.base(), lane.exceeded.base());
    if !(busy > 0.0 && busy <= 0.99) {
        return Err(OutOfReach::new(
            "utilization",
            "this lies above 0 and up to 99 %; above, the queue is ever growing",
        ));
    }
    if !((1e-6..1.0).contains(&exceeded)) {
        return Err(OutOfReach::new(
            "exceeded",
            "a small share of the time: 5 %",
        ));
    }
    let servers = f64::from(lane.servers);
    let delayed = made_to_wait(busy * servers, lane.servers);
    let beyond = (exceeded.ln() - delayed.ln()) / busy.ln();
    // A share that is met exactly is met, whatever the last bit says.
    let whole = (beyond + servers - 1.0 - 1e-9).ceil().max(servers - 1.0);
    let whole = if delayed <= exceeded {
        servers
    } else {
        whole.max(servers)
    };
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 1 and some ten thousand"
    )]
    let standing = whole as u32;
    Ok(RareQueue {
        delayed: Ratio::from_base(delayed),
        queue: Ratio::from_base((beyond - 1.0).max(0.0)),
        standing,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lane(busy: f64, exceeded: f64) -> RareQueue {
        let lane = QueueLength {
            utilization: Ratio::from_base(busy),
            servers: 1,
            exceeded: Ratio::from_base(exceeded),
        };
        lane.evaluate().unwrap()
    }

    proptest! {
        /// With one lane the number of vehicles is geometric: more than n stand there ρⁿ⁺¹ of the time.
        #[test]
        fn the_number_is_exceeded_no_more_often_and_one_fewer_is(busy in 0.06..0.98, exceeded in 0.001..0.05) {
            let standing = f64::from(lane(busy, exceeded).standing);
            prop_assert!(busy.powf(standing + 1.0) <= exceeded * (1.0 + 1e-6));
            prop_assert!(standing <= 1.0 || busy.powf(standing) > exceeded * (1.0 - 1e-6));
        }

        #[test]
        fn a_busier_lane_is_longer(busy in 0.06..0.97, exceeded in 0.001..0.05) {
            prop_assert!(lane(busy + 0.01, exceeded).queue >= lane(busy, exceeded).queue);
        }
    }

    #[test]
    fn an_ever_growing_queue_is_refused() {
        let full = QueueLength {
            utilization: Ratio::from_base(1.0),
            servers: 1,
            exceeded: Ratio::from_base(0.05),
        };
        assert_eq!(full.evaluate().unwrap_err().input, "utilization");
    }
}
