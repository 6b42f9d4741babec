//! The tasks of a site as a job to be ordered.

use super::Wish;
use super::days::{Days, days, forecast_on, minutes, work};
use super::waits::{Cured, cure, inspection};
use crate::asking::{Asking, End, Wants, need};
use crate::outcome::Halt;
use quantity::{Measured, Quantity};
use sim::job::{Calendar, DAY, JobTask, Light, Minutes, Need};
use site::{Date, Forecast, Id, Site, Task, TaskKind, TaskLight, TaskLimits, Work};

/// How a task is written.
const TASK: &str =
    "[[task]]\nid = \"task-pour\"\nwhat = \"pour the pad\"\nkind = \"pour\"\nhours = \"4 h\"";

/// A job, ready to be ordered.
pub(super) struct Lowered<'s> {
    pub(super) tasks: Vec<&'s Task>,
    pub(super) job: Vec<JobTask>,
    pub(super) dates: Vec<Date>,
    pub(super) calendar: Calendar,
    pub(super) cures: Vec<Cured<'s>>,
}

/// What a task waits for, and how long.
#[derive(Clone, Copy)]
struct Wait<'s> {
    before: &'s Task,
    minutes: Minutes,
}

/// Reads everything before it gives up, so that all that is missing is named.
pub(super) fn lower<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    wish: &Wish,
) -> Result<Lowered<'s>, Halt> {
    if site.task.is_empty() {
        let none = asking.lack::<()>(&site.origin, "task", Wants::Table(TASK));
        let _ = days(asking, site, wish);
        none?;
    }
    let days = days(asking, site, wish);
    let mut cures = Vec::new();
    let read: Vec<Result<_, Halt>> = site
        .task
        .iter()
        .map(|task| Ok((hours(asking, task), waits(asking, site, task, &mut cures)?)))
        .collect();
    let days = days?;
    let work = work(asking, site)?;
    let tasks: Vec<&Task> = site
        .task
        .iter()
        .filter(|task| task.done.is_none())
        .collect();
    let mut job = Vec::with_capacity(tasks.len());
    for (task, read) in site.task.iter().zip(read) {
        let (hours, waits) = read?;
        let hours = hours?;
        if task.done.is_none() {
            job.push(one(task, hours, &waits, &tasks, &days, work));
        }
    }
    Ok(Lowered {
        tasks,
        job,
        dates: days.dates,
        calendar: days.calendar,
        cures,
    })
}

fn hours<'s>(asking: &mut Asking<'s>, task: &'s Task) -> Result<Minutes, Halt> {
    let hours = asking.read_at((&task.origin, "hours"), task.hours.as_ref(), End::Nominal);
    hours.map(minutes)
}

/// Everything that a task waits for.
fn waits<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    task: &'s Task,
    cures: &mut Vec<Cured<'s>>,
) -> Result<Vec<Wait<'s>>, Halt> {
    let named = |id: &Id| site.task.iter().find(|one| one.id == *id);
    let mut found = Vec::new();
    let mut halted = Ok(());
    found.extend(
        task.after
            .iter()
            .filter_map(named)
            .map(|before| Wait { before, minutes: 0 }),
    );
    for before in task.loads.iter().filter_map(named) {
        match cure(asking, before) {
            Ok(cured) => {
                let minutes = cured.wait.map_or(0, minutes);
                found.push(Wait { before, minutes });
                if cures.iter().all(|known| known.task.id != before.id) {
                    cures.push(cured);
                }
            }
            Err(halt) => halted = Err(halt),
        }
    }
    for before in task.covers.iter().filter_map(named) {
        match inspection(asking, before) {
            Ok((_, wait)) => found.push(Wait {
                before,
                minutes: minutes(wait),
            }),
            Err(halt) => halted = Err(halt),
        }
    }
    if task.kind == Some(TaskKind::Cover) && task.covers.is_empty() {
        let covered = Wants::Written("[\"task-lay\"]");
        halted = asking.lack(&task.origin, "covers", covered);
    }
    for delivery in &task.delivery {
        let day = need!(asking, delivery.arrives, "2026-05-07");
        if let Err(halt) = day {
            halted = Err(halt);
        }
    }
    halted.map(|()| found)
}

fn one(
    task: &Task,
    work_time: Minutes,
    waits: &[Wait<'_>],
    tasks: &[&Task],
    days: &Days,
    work: &Work,
) -> JobTask {
    let first = days.dates.first().copied();
    let opening = |date: Date| first.map_or(0, |first| i64::from(date.days_after(first)) * DAY);
    let mut needs: Vec<Need> = Vec::new();
    let deliveries = task.delivery.iter().filter_map(|delivery| delivery.arrives);
    let passed = task.covers.iter().filter_map(|id| {
        let covered = waits.iter().find(|wait| wait.before.id == *id)?;
        covered.before.inspection.as_ref()?.passed
    });
    let mut not_before = deliveries.chain(passed).map(opening).max().unwrap_or(0);
    for wait in waits {
        match (wait.before.done, index(tasks, wait.before)) {
            (Some(done), _) => not_before = not_before.max(opening(done) + DAY + wait.minutes),
            (None, Some(task)) => needs.push(Need {
                task,
                wait: wait.minutes,
            }),
            (None, None) => {}
        }
    }
    let light = task.limits.as_ref().and_then(|limits| limits.light);
    JobTask {
        work: work_time,
        light: match light.unwrap_or(TaskLight::Daylight) {
            TaskLight::Daylight => Light::Day,
            TaskLight::Dark => Light::Dark,
            TaskLight::Both => Light::Both,
            TaskLight::Any => Light::Any,
        },
        in_one_go: task.in_one_go == Some(true),
        not_before: not_before.max(0),
        not_on: forbidden(task, days, work),
        needs,
    }
}

fn index(tasks: &[&Task], task: &Task) -> Option<usize> {
    tasks.iter().position(|one| one.id == task.id)
}

/// The days whose forecast breaks a limit of the task.
fn forbidden(task: &Task, days: &Days, work: &Work) -> Vec<usize> {
    let Some(limits) = &task.limits else {
        return Vec::new();
    };
    let breaks =
        |date: &Date| forecast_on(work, *date).is_some_and(|forecast| is_broken(limits, forecast));
    let dates = days.dates.iter().enumerate();
    dates
        .filter(|(_, date)| breaks(date))
        .map(|(index, _)| index)
        .collect()
}

/// A day's weather is beyond a limit.
fn is_broken(limits: &TaskLimits, forecast: &Forecast) -> bool {
    let above = |value: Option<f64>, limit: Option<f64>| matches!((value, limit), (Some(value), Some(limit)) if value > limit);
    above(
        nominal(forecast.wind.as_ref()),
        nominal(limits.wind.as_ref()),
    ) || above(
        nominal(forecast.hottest.as_ref()),
        nominal(limits.hottest.as_ref()),
    ) || above(
        nominal(limits.coldest.as_ref()),
        nominal(forecast.coldest.as_ref()),
    ) || (limits.dry == Some(true) && forecast.dry == Some(false))
}

fn nominal<Q: Quantity>(value: Option<&Measured<Q>>) -> Option<f64> {
    value.map(|value| value.nominal().base())
}
