//! One day, from an empty lane to the end of its last hour.

use super::arrivals::{Clock, HOUR};
use super::draws::{Draws, SIDE, shares};
use super::hour::Hour;
use super::pass::Stand;
use super::stands::stands;
use super::world::Queue;

/// The vehicles of a day, one after the other.
#[derive(Debug, Default)]
pub(super) struct Day {
    /// When each came, and when it left the reader.
    pub arrives: Vec<f64>,
    pub leaves: Vec<f64>,
    /// Length with the gap to the next.
    pub takes: Vec<f64>,
    /// When its place at the gate line was free.
    onward: Vec<f64>,
}

impl Day {
    fn clear(&mut self) {
        self.arrives.clear();
        self.leaves.clear();
        self.takes.clear();
        self.onward.clear();
    }
}

impl Queue {
    /// Works one day and counts it; gives how many vehicles came.
    pub(super) fn day(&self, seed: u64, number: u64, day: &mut Day, hours: &mut [Hour]) -> u64 {
        day.clear();
        self.vehicles(&mut Draws::of(seed, number), day, hours);
        stands(self, day, hours);
        day.arrives.len() as u64
    }

    fn vehicles(&self, draws: &mut Draws, day: &mut Day, hours: &mut [Hour]) {
        let (mut clock, mut stand) = (Clock::default(), Stand::EMPTY);
        let room = self.passing.room;
        let mut hour = 0;
        loop {
            draws.fill();
            for at in 0..SIDE {
                let [follow, choice, behind] = shares(draws.choices[at]);
                let Some(arrives) = self.hours.next(&mut clock, draws.gaps[at], follow) else {
                    return;
                };
                let ahead = day.onward.len().wrapping_sub(room.max(1));
                let place_free = day.onward.get(ahead).copied().unwrap_or(f64::NEG_INFINITY);
                let drawn = (choice, draws.beyond[at], behind);
                let passed = self.passing.pass(&mut stand, arrives, place_free, drawn);
                day.arrives.push(arrives);
                day.leaves.push(passed.leaves);
                day.takes.push(passed.length + self.gap);
                day.onward.push(passed.onward);
                #[allow(clippy::cast_precision_loss, reason = "at most 24 hours")]
                while hour + 1 < hours.len() && arrives >= (hour + 1) as f64 * HOUR {
                    hour += 1;
                }
                hours[hour].came(arrives, &passed);
            }
        }
    }
}
