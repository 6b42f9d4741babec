//! What came of the days: each hour, and all of them together.

use super::estimate::Estimate;
use super::hour::{Hour, LENGTHS, STEPS, WAITS};
use quantity::{Length, Quantity as _, Ratio, Time};

/// Share of the time, or of the vehicles, that a figure at 95 % covers.
const COVERED: f64 = 0.95;

/// What came of one hour, or of all.
#[derive(Debug, Clone, PartialEq)]
pub struct HourReport {
    /// Vehicles that came, for each hour that was looked at.
    pub arrivals: Estimate<Ratio>,
    /// Vehicles at the reader and behind it, on the mean over the time.
    pub standing: Estimate<Ratio>,
    /// Share of the time with none, one, two … vehicles there; the last for itself and more.
    pub numbers: Vec<Ratio>,
    /// Share of the time that they reach farther back than a length, at ever longer lengths.
    pub farther: Vec<(Length, Ratio)>,
    /// From the reader back to the last tail, not exceeded in 95 % of the time; nothing where it is more than three times the
    /// room up to the road.
    pub length: Option<Estimate<Length>>,
    /// Share of the time that the last tail stands in the road.
    pub in_road: Estimate<Ratio>,
    /// Wait before the reader, on the mean.
    pub wait: Estimate<Time>,
    /// Wait before the reader that 95 % do not exceed; at half an hour it may be more.
    pub long_wait: Estimate<Time>,
    /// From the arrival to the front's passing the gate line, on the mean.
    pub through: Estimate<Time>,
    /// Openings from shut in an hour.
    pub openings: Estimate<Ratio>,
    /// Times in an hour that a leaf that closes turns back.
    pub reversals: Estimate<Ratio>,
    /// Share of vehicles that are let in while the leaf still stands open for another.
    pub shared: Estimate<Ratio>,
    /// Share of vehicles that drive on without reading.
    pub tailgated: Estimate<Ratio>,
}

/// What came of all days.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Number from which the same days can be made again.
    pub seed: u64,
    /// Days that were worked.
    pub days: u64,
    /// Vehicles that came.
    pub vehicles: u64,
    /// Each hour.
    pub hours: Vec<HourReport>,
    /// All hours together.
    pub whole: HourReport,
    /// The hour with the most time in the road, else with the most vehicles standing.
    pub worst: usize,
}

impl Report {
    /// The worst hour.
    pub fn worst(&self) -> &HourReport {
        self.hours.get(self.worst).unwrap_or(&self.whole)
    }
}

impl HourReport {
    pub(super) fn of(all: &Hour, groups: &[&Hour], stacking: f64) -> Self {
        let share = |seconds: f64| Ratio::from_base(seconds / all.seconds.max(1e-9));
        Self {
            arrivals: Estimate::of(all, groups, |hour| in_an_hour(hour, hour.vehicles)),
            standing: Estimate::of(all, groups, |hour| hour.stood / hour.seconds.max(1e-9)),
            numbers: all.numbers.iter().map(|&seconds| share(seconds)).collect(),
            farther: farther(all, stacking),
            length: length(all, groups, stacking),
            in_road: Estimate::of(all, groups, |hour| hour.beyond / hour.seconds.max(1e-9)),
            wait: Estimate::of(all, groups, |hour| each(hour, hour.waited)),
            long_wait: Estimate::of(all, groups, long_wait),
            through: Estimate::of(all, groups, |hour| each(hour, hour.took)),
            openings: Estimate::of(all, groups, |hour| in_an_hour(hour, hour.opened)),
            reversals: Estimate::of(all, groups, |hour| in_an_hour(hour, hour.reversed)),
            shared: Estimate::of(all, groups, |hour| each(hour, number(hour.shared))),
            tailgated: Estimate::of(all, groups, |hour| each(hour, number(hour.tailgated))),
        }
    }
}

#[allow(clippy::cast_precision_loss, reason = "counts stay far below 2^53")]
fn number(count: u64) -> f64 {
    count as f64
}

fn in_an_hour(hour: &Hour, count: u64) -> f64 {
    number(count) * super::arrivals::HOUR / hour.seconds.max(1e-9)
}

fn each(hour: &Hour, sum: f64) -> f64 {
    sum / number(hour.vehicles).max(1.0)
}

/// The length at the end of a step.
#[allow(clippy::cast_precision_loss, reason = "a few hundred")]
fn at(step: usize, stacking: f64) -> Length {
    Length::from_base(step as f64 / STEPS as f64 * stacking)
}

fn farther(all: &Hour, stacking: f64) -> Vec<(Length, Ratio)> {
    let mut left: f64 = all.lengths.iter().sum();
    let whole = left.max(1e-9);
    let point = |(step, seconds): (usize, &f64)| {
        left -= seconds;
        (
            at(step, stacking),
            Ratio::from_base((left / whole).max(0.0)),
        )
    };
    all.lengths
        .iter()
        .take(LENGTHS - 1)
        .enumerate()
        .map(point)
        .collect()
}

fn length(all: &Hour, groups: &[&Hour], stacking: f64) -> Option<Estimate<Length>> {
    let within = |hour: &Hour| covers(&hour.lengths, hour.seconds);
    let most = within(all);
    if most >= LENGTHS - 1 {
        return None;
    }
    Some(Estimate::of(all, groups, |hour| {
        at(within(hour), stacking).base()
    }))
}

/// The first of the bins up to which so much of the whole lies.
fn covers(bins: &[f64], whole: f64) -> usize {
    let mut sum = 0.0;
    let enough = COVERED * whole;
    bins.iter()
        .position(|bin| {
            sum += bin;
            sum >= enough
        })
        .unwrap_or(bins.len() - 1)
}

/// The wait that so many of the vehicles do not exceed, to the second.
#[allow(
    clippy::cast_precision_loss,
    reason = "at most half an hour of seconds"
)]
fn long_wait(hour: &Hour) -> f64 {
    let enough = COVERED * number(hour.vehicles);
    let mut sum = 0.0;
    let found = hour.waits.iter().position(|&count| {
        sum += f64::from(count);
        sum >= enough
    });
    found.unwrap_or(WAITS - 1) as f64
}
