//! The order of a job for one pair of hands: tasks that need each other, waits that run by the clock, days with hours and
//! light. Times are whole minutes since midnight before the first day.

mod calendar;
mod search;
mod slack;

pub use calendar::{Calendar, JobDay, Light};
pub use search::{Found, Trouble, shortest};

/// Whole minutes.
pub type Minutes = i64;

/// Minutes of a day.
pub const DAY: Minutes = 24 * 60;

/// A need: another task must have ended so long before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Need {
    /// The other task.
    pub task: usize,
    /// Time by the clock from its end.
    pub wait: Minutes,
}

/// A task.
#[derive(Debug, Clone, Default)]
pub struct JobTask {
    /// Work that it takes.
    pub work: Minutes,
    /// Light in which it is done.
    pub light: Light,
    /// It cannot be broken off and gone on with another day.
    pub in_one_go: bool,
    /// Moment before which it cannot begin.
    pub not_before: Minutes,
    /// Days on which it cannot be done.
    pub not_on: Vec<usize>,
    /// What it needs.
    pub needs: Vec<Need>,
}

/// A stretch of work on one day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stretch {
    /// Its beginning.
    pub from: Minutes,
    /// Its end.
    pub to: Minutes,
}

impl Stretch {
    /// The day on which it is.
    pub fn day(&self) -> usize {
        usize::try_from(self.from / DAY).unwrap_or_default()
    }
}

/// Why a task does not begin earlier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cause {
    /// The job begins.
    Start,
    /// It cannot begin before: a delivery.
    NotBefore,
    /// The hands are at another task until then.
    Hands(usize),
    /// Another task must be over, and its wait too.
    Need(Need),
}

/// A task in its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placed {
    /// The task.
    pub task: usize,
    /// Its stretches of work, in order; at least one.
    pub stretches: Vec<Stretch>,
    /// What holds it back.
    pub cause: Cause,
    /// Whole days by which it may be later without a later end of the job.
    pub slack: u32,
}

impl Placed {
    /// Its beginning.
    pub fn from(&self) -> Minutes {
        self.stretches.first().map_or(0, |stretch| stretch.from)
    }

    /// Its end.
    pub fn to(&self) -> Minutes {
        self.stretches.last().map_or(0, |stretch| stretch.to)
    }
}
