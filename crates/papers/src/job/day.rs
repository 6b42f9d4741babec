//! The sheets of the days: what is done, with what, within which limits, and how the site is left in the evening.

use design::plan::{DayShown, PlanShown};
use quantity::{Measured, Quantity, UnitSystem, print_measured};
use serde::Serialize;
use site::{LeftBehind, Site, Task, TaskLimits};

/// A day.
#[derive(Debug, Clone, Serialize)]
pub(super) struct DayView {
    title: String,
    light: String,
    work: Vec<PieceView>,
    tools: Vec<String>,
    materials: Vec<String>,
    /// What must be there or known before the day begins.
    before: Vec<String>,
    /// Cures that end or begin, with blanks for times and temperatures.
    cures: Vec<String>,
    /// What is left in the evening, with what holds it.
    evening: Vec<String>,
}

/// A stretch of work.
#[derive(Debug, Clone, Serialize)]
struct PieceView {
    time: String,
    what: String,
    with: String,
}

/// Every day with work.
pub(super) fn days(site: &Site, shown: &PlanShown) -> Vec<DayView> {
    let count = shown.days.len();
    let days = shown.days.iter().enumerate();
    days.map(|(at, day)| one(site, shown, day, &format!("Day {} of {count}", at + 1)))
        .collect()
}

fn one(site: &Site, shown: &PlanShown, day: &DayShown, number: &str) -> DayView {
    let units = site.site.unit_system();
    let mut tasks: Vec<&Task> = Vec::new();
    for piece in &day.work {
        let task = site.task.iter().find(|task| task.id == *piece.task);
        if let Some(task) = task.filter(|task| tasks.iter().all(|known| known.id != task.id)) {
            tasks.push(task);
        }
    }
    let gathered = |of: fn(&Task) -> &[site::Text]| {
        let mut all: Vec<String> = Vec::new();
        for words in tasks.iter().flat_map(|task| of(task)) {
            if !all.iter().any(|known| *known == words.to_string()) {
                all.push(words.to_string());
            }
        }
        all
    };
    DayView {
        title: format!("{number}: {}, {}", day.weekday, day.date),
        light: format!("Sun up {}, down {}, dark {}.", day.rise, day.set, day.dusk),
        work: day
            .work
            .iter()
            .map(|piece| PieceView {
                time: format!("{}–{}", piece.from, piece.to),
                what: if piece.last {
                    piece.what.clone()
                } else {
                    format!("{} (goes on another day)", piece.what)
                },
                with: tasks
                    .iter()
                    .find(|task| task.id == *piece.task)
                    .map_or_else(String::new, |task| with(task, units)),
            })
            .collect(),
        tools: gathered(|task| &task.tools),
        materials: gathered(|task| &task.materials),
        before: tasks.iter().flat_map(|task| before(site, task)).collect(),
        cures: tasks
            .iter()
            .filter(|task| task.curing.is_some())
            .map(|task| format!("{}: began at ______, temperature of it ______", task.what))
            .collect(),
        evening: evening(site, shown, day),
    }
}

/// Helper, calls and limits of a task.
fn with(task: &Task, units: UnitSystem) -> String {
    let mut words = Vec::new();
    words.extend(task.helper.as_ref().map(|helper| match &task.helper_hours {
        Some(hours) => format!("with {helper} for {}", print_measured(hours, units)),
        None => format!("with {helper}"),
    }));
    words.extend(
        task.check_in
            .as_ref()
            .map(|call| format!("a call every {}", print_measured(call, units))),
    );
    words.extend(
        task.limits
            .as_ref()
            .and_then(|limits| limited(limits, units)),
    );
    words.join("; ")
}

/// `not above 12 mph, dry, from 40 °F to 90 °F`.
fn limited(limits: &TaskLimits, units: UnitSystem) -> Option<String> {
    fn said<Q: Quantity>(
        words: &str,
        value: Option<&Measured<Q>>,
        units: UnitSystem,
    ) -> Option<String> {
        value.map(|value| format!("{words} {}", print_measured(value, units)))
    }
    let dry = (limits.dry == Some(true)).then(|| "only dry".to_owned());
    let words: Vec<String> = [
        said("wind up to", limits.wind.as_ref(), units),
        said("not below", limits.coldest.as_ref(), units),
        said("not above", limits.hottest.as_ref(), units),
        dry,
    ]
    .into_iter()
    .flatten()
    .collect();
    (!words.is_empty()).then(|| words.join(", "))
}

/// What must be there, cured, seen or set up before a task begins.
fn before(site: &Site, task: &Task) -> Vec<String> {
    let mut lines: Vec<String> = task
        .delivery
        .iter()
        .map(|delivery| format!("arrived: {}", delivery.what))
        .collect();
    let named = |id: &site::Id| site.task.iter().find(|one| one.id == *id);
    for loaded in task.loads.iter().filter_map(named) {
        lines.push(format!("cured: {}, ended at ______", loaded.what));
    }
    for covered in task.covers.iter().filter_map(named) {
        let by = covered.inspection.as_ref().and_then(|one| one.by.as_ref());
        let by = by.map_or_else(String::new, |by| format!(" by {by}"));
        lines.push(format!("seen{by} and photographed: {}", covered.what));
    }
    if let Some(zone) = task
        .zone
        .as_ref()
        .and_then(|id| site.work_zone.iter().find(|zone| zone.id == *id))
    {
        let guards: Vec<String> = zone.guard.iter().map(ToString::to_string).collect();
        lines.push(format!("guarded by {}, photographed", guards.join(", ")));
        if let Some(told) = &zone.fire_told {
            lines.push(format!("told: {told}"));
        }
    }
    lines
}

/// What is left over the night after a day, and what holds it.
fn evening(site: &Site, shown: &PlanShown, day: &DayShown) -> Vec<String> {
    let span = |id: &str| {
        let task = shown.tasks.iter().find(|task| task.id == id)?;
        Some((task.from_minute, task.to_minute))
    };
    let night = i64::try_from(day.index + 1).unwrap_or_default() * 24 * 60;
    let mut lines = Vec::new();
    for task in &site.task {
        let Some((from, to)) = span(task.id.as_str()) else {
            continue;
        };
        for left in &task.leaves {
            let until = left.until.as_ref().and_then(|id| span(id.as_str()));
            let end = until.map_or(to, |until| until.1);
            if from < night && end > night {
                lines.push(held(task, left));
            }
        }
    }
    lines
}

fn held(task: &Task, left: &LeftBehind) -> String {
    let means: Vec<String> = left.secured_by.iter().map(ToString::to_string).collect();
    format!("{} ({}): {}", left.what, task.id, means.join("; "))
}
