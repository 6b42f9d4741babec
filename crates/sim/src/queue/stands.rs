//! How many vehicles stand at the reader and behind it, and how far back, second by second of a day.

use super::arrivals::HOUR;
use super::day::Day;
use super::hour::{Hour, STEPS};
use super::world::Queue;

/// Walks the arrivals and the departures of a day in the order of time.
pub(super) fn stands(queue: &Queue, day: &Day, hours: &mut [Hour]) {
    #[allow(clippy::cast_precision_loss, reason = "a hundred")]
    let steps = STEPS as f64 / queue.stacking;
    let (mut came, mut left, mut time, mut takes) = (0, 0, 0.0, 0.0);
    let mut ends = 0.0;
    for hour in hours {
        ends += HOUR;
        loop {
            let arrival = day.arrives.get(came).copied().unwrap_or(f64::INFINITY);
            let departure = day.leaves.get(left).copied().unwrap_or(f64::INFINITY);
            let comes = arrival <= departure;
            let next = if comes { arrival } else { departure };
            let until = if next < ends { next } else { ends };
            let number = came - left;
            let reach = if number > 0 { takes - queue.gap } else { 0.0 };
            hour.stood(until - time, number, reach * steps);
            time = until;
            if next >= ends {
                break;
            }
            if comes {
                takes += day.takes[came];
                came += 1;
            } else {
                takes -= day.takes[left];
                left += 1;
            }
        }
    }
}
