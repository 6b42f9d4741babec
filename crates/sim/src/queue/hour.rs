//! What is counted of one hour in one group of days.

use super::pass::Passed;

/// Numbers of waiting vehicles that are told apart; the last stands for itself and more.
pub(super) const NUMBERS: usize = 64;
/// Steps into which the room from reader to road is cut.
pub(super) const STEPS: usize = 100;
/// Lengths that are told apart; the last stands for itself and more.
pub(super) const LENGTHS: usize = 3 * STEPS + 1;
/// Waits that are told apart, a second each; the last stands for itself and more.
pub(super) const WAITS: usize = 1801;

/// What is counted of one hour.
#[derive(Debug, Clone)]
pub(super) struct Hour {
    /// Vehicles that came in it.
    pub vehicles: u64,
    /// Seconds that they waited before the reader, and until they were through.
    pub waited: f64,
    pub took: f64,
    /// How many waited so many seconds.
    pub waits: Vec<u32>,
    /// Openings from shut, and reversals while closing.
    pub opened: u64,
    pub reversed: u64,
    /// Vehicles that passed in another's opening, and those that drove on without reading.
    pub shared: u64,
    pub tailgated: u64,
    /// Seconds that were looked at, and those in which the tail stood in the road.
    pub seconds: f64,
    pub beyond: f64,
    /// Vehicles at the reader and behind it, times seconds.
    pub stood: f64,
    /// Seconds for each number of vehicles, and for each length.
    pub numbers: [f64; NUMBERS],
    pub lengths: Vec<f64>,
}

impl Hour {
    pub(super) fn empty() -> Self {
        Self {
            vehicles: 0,
            waited: 0.0,
            took: 0.0,
            waits: vec![0; WAITS],
            opened: 0,
            reversed: 0,
            shared: 0,
            tailgated: 0,
            seconds: 0.0,
            beyond: 0.0,
            stood: 0.0,
            numbers: [0.0; NUMBERS],
            lengths: vec![0.0; LENGTHS],
        }
    }

    /// A vehicle that came in this hour.
    #[inline]
    pub(super) fn came(&mut self, arrives: f64, passed: &Passed) {
        let wait = passed.reads - arrives;
        self.vehicles += 1;
        self.waited += wait;
        self.took += passed.through - arrives;
        self.opened += u64::from(passed.opened);
        self.reversed += u64::from(passed.reversed);
        self.tailgated += u64::from(passed.tailgated);
        let shared = !(passed.opened || passed.reversed || passed.tailgated);
        self.shared += u64::from(shared);
        self.waits[seconds(wait)] += 1;
    }

    /// So many seconds with so many vehicles that reach back so far, in steps.
    #[inline]
    pub(super) fn stood(&mut self, seconds: f64, number: usize, steps: f64) {
        self.seconds += seconds;
        #[allow(clippy::cast_precision_loss, reason = "few vehicles stand in a lane")]
        let vehicles = number as f64;
        self.stood += seconds * vehicles;
        self.numbers[number.min(NUMBERS - 1)] += seconds;
        self.lengths[step(steps)] += seconds;
        self.beyond += if steps > BEYOND { seconds } else { 0.0 };
    }

    /// Adds another of the same hour.
    pub(super) fn add(&mut self, other: &Self) {
        self.vehicles += other.vehicles;
        self.waited += other.waited;
        self.took += other.took;
        self.opened += other.opened;
        self.reversed += other.reversed;
        self.shared += other.shared;
        self.tailgated += other.tailgated;
        self.seconds += other.seconds;
        self.beyond += other.beyond;
        self.stood += other.stood;
        for (mine, theirs) in self.waits.iter_mut().zip(&other.waits) {
            *mine = mine.saturating_add(*theirs);
        }
        let more = self.numbers.iter_mut().zip(&other.numbers);
        for (mine, theirs) in more.chain(self.lengths.iter_mut().zip(&other.lengths)) {
            *mine += theirs;
        }
    }
}

/// All steps, and a little for sums of lengths.
#[allow(clippy::cast_precision_loss, reason = "a hundred")]
const BEYOND: f64 = STEPS as f64 + 1e-6;

/// Whole seconds, up to the last.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "not below zero, and what is too large becomes the largest"
)]
fn seconds(wait: f64) -> usize {
    (wait.ceil() as usize).min(WAITS - 1)
}

/// The step in which a length ends.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "not below zero, and what is too large becomes the largest"
)]
fn step(steps: f64) -> usize {
    ((steps - 1e-6).ceil().max(0.0) as usize).min(LENGTHS - 1)
}
