//! Days on all processors, in sixteen groups; any number of threads gives the same answer to the last bit.

use super::day::Day;
use super::estimate::GROUPS;
use super::hour::Hour;
use super::report::{HourReport, Report};
use super::world::Queue;
use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};

/// How much is worked, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Run {
    /// Days; rounded up to sixteen, so that every group has as many.
    pub days: u64,
    /// Number from which chance is made.
    pub seed: u64,
    /// Processors that work.
    pub threads: NonZeroUsize,
}

/// One group of days.
struct Group {
    hours: Vec<Hour>,
    vehicles: u64,
}

impl Queue {
    /// Vehicles of a day on the mean.
    pub fn vehicles_of_a_day(&self) -> f64 {
        self.hours.vehicles()
    }

    /// Works the days; tells how many vehicles of each group came.
    pub fn run(&self, run: &Run, done: &(dyn Fn(u64) + Sync)) -> Report {
        let each = run.days.div_ceil(GROUPS as u64).max(1);
        let groups = self.groups(run, each, done);
        self.told(run.seed, each * GROUPS as u64, &groups)
    }

    fn groups(&self, run: &Run, each: u64, done: &(dyn Fn(u64) + Sync)) -> Vec<Group> {
        let next = AtomicUsize::new(0);
        let work = || {
            let mut worked = Vec::new();
            loop {
                let group = next.fetch_add(1, Ordering::Relaxed);
                if group >= GROUPS {
                    return worked;
                }
                let found = self.group(run.seed, group as u64, each);
                done(found.vehicles);
                worked.push((group, found));
            }
        };
        let mut all = std::thread::scope(|scope| {
            let others: Vec<_> = (1..run.threads.get()).map(|_| scope.spawn(work)).collect();
            let mut all = work();
            for other in others {
                all.extend(other.join().unwrap_or_else(|why| resume_unwind(why)));
            }
            all
        });
        all.sort_by_key(|(group, _)| *group);
        all.into_iter().map(|(_, group)| group).collect()
    }

    /// One group: every sixteenth day.
    fn group(&self, seed: u64, group: u64, each: u64) -> Group {
        let mut hours = vec![Hour::empty(); self.hours.count()];
        let mut day = Day::default();
        let mut vehicles = 0;
        for number in 0..each {
            vehicles += self.day(seed, number * GROUPS as u64 + group, &mut day, &mut hours);
        }
        Group { hours, vehicles }
    }

    fn told(&self, seed: u64, days: u64, groups: &[Group]) -> Report {
        let hours: Vec<HourReport> = (0..self.hours.count())
            .map(|at| {
                let parts: Vec<&Hour> = groups.iter().map(|group| &group.hours[at]).collect();
                HourReport::of(&sum(parts.iter().copied()), &parts, self.stacking)
            })
            .collect();
        let parts: Vec<Hour> = groups.iter().map(|group| sum(group.hours.iter())).collect();
        let parts: Vec<&Hour> = parts.iter().collect();
        let whole = HourReport::of(&sum(parts.iter().copied()), &parts, self.stacking);
        Report {
            seed,
            days,
            vehicles: groups.iter().map(|group| group.vehicles).sum(),
            worst: worst(&hours),
            hours,
            whole,
        }
    }
}

fn sum<'h>(hours: impl Iterator<Item = &'h Hour>) -> Hour {
    let mut all = Hour::empty();
    for hour in hours {
        all.add(hour);
    }
    all
}

/// The hour with the most time in the road, else with the most vehicles standing.
fn worst(hours: &[HourReport]) -> usize {
    let key = |hour: &HourReport| (hour.in_road.value, hour.standing.value);
    let mut worst = 0;
    for (at, hour) in hours.iter().enumerate().skip(1) {
        if key(hour) > key(&hours[worst]) {
            worst = at;
        }
    }
    worst
}
