//! When vehicles come: at random within each hour, as many as were counted on the mean, alone or in groups.
//!
//! The gaps between groups are exponential on a clock that runs as fast as vehicles come, hour by hour; the clock is turned
//! back into time. Within a group the vehicles follow one another at the headway.

use super::world::World;
use quantity::Quantity as _;

/// Seconds of an hour.
pub(super) const HOUR: f64 = 3600.0;

/// The hours of a day in plain numbers.
#[derive(Debug, Clone)]
pub(super) struct Hours {
    /// Vehicles up to the start of each hour, and up to the end of the last.
    until: Vec<f64>,
    /// Seconds for one vehicle in each hour.
    each: Vec<f64>,
    /// Mean number in a group.
    group: f64,
    /// Share of vehicles that follow the one before.
    pub follow: f64,
    headway: f64,
}

/// The clock of one day.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Clock {
    /// Vehicles due so far.
    due: f64,
    hour: usize,
    time: f64,
}

impl Hours {
    pub(super) fn new(world: &World) -> Self {
        let mut until = vec![0.0];
        let mut sum = 0.0;
        for &count in &world.arrivals {
            sum += f64::from(count);
            until.push(sum);
        }
        let each = world
            .arrivals
            .iter()
            .map(|&count| HOUR / f64::from(count.max(1)));
        Self {
            until,
            each: each.collect(),
            group: world.group.base(),
            follow: 1.0 - 1.0 / world.group.base(),
            headway: world.lane.headway.base(),
        }
    }

    pub(super) fn count(&self) -> usize {
        self.each.len()
    }

    /// Vehicles of a day on the mean.
    pub(super) fn vehicles(&self) -> f64 {
        self.until.last().copied().unwrap_or(0.0)
    }

    /// When the next vehicle comes; nothing once the last hour is over.
    #[inline]
    pub(super) fn next(&self, clock: &mut Clock, gap: f64, choice: f64) -> Option<f64> {
        if choice < self.follow && clock.due > 0.0 {
            clock.time += self.headway;
            return Some(clock.time);
        }
        clock.due += gap * self.group;
        while clock.due >= *self.until.get(clock.hour + 1)? {
            clock.hour += 1;
        }
        let into = (clock.due - self.until[clock.hour]) * self.each[clock.hour];
        #[allow(clippy::cast_precision_loss, reason = "at most 24 hours")]
        let begins = clock.hour as f64 * HOUR;
        clock.time = clock.time.max(begins + into);
        Some(clock.time)
    }
}
