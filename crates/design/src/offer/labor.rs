//! Hours by task at the speed at which such work really went.

use crate::bill::Gap;
use quantity::{Measured, Quantity as _, Time, Word as _};
use serde::Serialize;
use site::{PriceBook, Site, Task, TaskKind};

/// Hours planned and hours taken of one sort of work, over all jobs on record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Speed {
    /// The sort of work.
    pub kind: String,
    /// Jobs on record.
    pub jobs: usize,
    /// Minutes planned.
    pub planned: u64,
    /// Minutes taken.
    pub took: u64,
}

/// A task with its hours.
#[derive(Debug, Clone, Serialize)]
pub struct LaborLine {
    /// The task.
    pub task: String,
    /// What is done.
    pub what: String,
    /// What sort of work it is.
    pub kind: Option<String>,
    /// Minutes as planned.
    pub planned: u64,
    /// Minutes at real speed.
    pub minutes: u64,
    /// Minutes of a helper at real speed.
    pub helper: u64,
    /// Jobs of this sort on record; none where the plan stands as it is.
    pub jobs: usize,
}

/// A time in whole minutes.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the figure is held between zero and a million"
)]
pub(super) fn minutes(time: Measured<Time>) -> Option<u64> {
    let minutes = (time.nominal().base() / 60.0).round();
    (0.0..1e6).contains(&minutes).then_some(minutes as u64)
}

/// The record, sort by sort.
pub(super) fn speeds(book: &PriceBook) -> Vec<Speed> {
    let all = TaskKind::ALL.iter().filter_map(|kind| speed(book, *kind));
    all.collect()
}

fn speed(book: &PriceBook, kind: TaskKind) -> Option<Speed> {
    let mut speed = Speed {
        kind: kind.word().to_owned(),
        jobs: 0,
        planned: 0,
        took: 0,
    };
    for worked in book.worked.iter().filter(|worked| worked.kind == kind) {
        let both = worked
            .planned
            .and_then(minutes)
            .zip(worked.took.and_then(minutes));
        if let Some((planned, took)) = both {
            speed.jobs += 1;
            speed.planned += planned;
            speed.took += took;
        }
    }
    (speed.planned > 0).then_some(speed)
}

/// Every task of the site with its hours; a task without hours is a gap.
pub(super) fn lines<'s>(
    site: &'s Site,
    book: Option<&PriceBook>,
    gaps: &mut Vec<Gap<'s>>,
) -> Vec<LaborLine> {
    if site.task.is_empty() {
        gaps.push(Gap {
            origin: &site.origin,
            key: "task",
            write: "[[task]] with id, what, kind and hours",
            what: "no task of the job is listed".to_owned(),
        });
    }
    let line = |task: &'s Task| line(task, book, gaps);
    site.task.iter().filter_map(line).collect()
}

fn line<'s>(
    task: &'s Task,
    book: Option<&PriceBook>,
    gaps: &mut Vec<Gap<'s>>,
) -> Option<LaborLine> {
    let Some(planned) = task.hours.and_then(minutes) else {
        gaps.push(Gap {
            origin: &task.origin,
            key: "hours",
            write: "hours = \"4 h\"",
            what: format!("task {}: its hours", task.id),
        });
        return None;
    };
    let speed = book
        .zip(task.kind)
        .and_then(|(book, kind)| speed(book, kind));
    let real = |planned: u64| {
        speed.as_ref().map_or(planned, |speed| {
            (2 * planned * speed.took + speed.planned) / (2 * speed.planned)
        })
    };
    let helper = task.helper.as_ref().map_or(0, |_| {
        task.helper_hours.and_then(minutes).unwrap_or(planned)
    });
    Some(LaborLine {
        task: task.id.to_string(),
        what: task.what.to_string(),
        kind: task.kind.map(|kind| kind.word().to_owned()),
        planned,
        minutes: real(planned),
        helper: real(helper),
        jobs: speed.as_ref().map_or(0, |speed| speed.jobs),
    })
}
