//! A plan in the terminal: its days with their work, then its tasks with what they wait for.

use super::{columns, width, wrapped};
use crate::tint::{paint, quiet, strong};
use design::plan::{DayShown, PlanShown, TaskShown};

/// Said with every plan.
const CAUTION: &str = "A plan is no promise: measure the temperature of what cures, look at the forecast the evening before, \
and plan again when a day is lost. Structural, mains-electrical and life-safety work is for whoever is licensed for it there.";

/// The whole plan.
pub(crate) fn planned(site: &str, shown: &PlanShown) -> String {
    let mut lines = vec![
        paint(format!("{site} · work plan"), strong()),
        String::new(),
        paint(headline(shown), strong()),
    ];
    for day in &shown.days {
        lines.push(String::new());
        lines.push(paint(
            format!(
                "{} {}   sun {} to {}",
                day.date, day.weekday, day.rise, day.set
            ),
            strong(),
        ));
        lines.extend(columns(&pieces(day), 2, 400, None));
    }
    lines.push(String::new());
    lines.push(paint(
        "Tasks in their order; what decides the end has a mark",
        strong(),
    ));
    lines.extend(columns(&tasks(shown), 2, 400, None));
    lines.push(String::new());
    lines.push(paint(wrapped(CAUTION, 0, width()), quiet()));
    lines.push(String::new());
    lines.join("\n")
}

fn headline(shown: &PlanShown) -> String {
    if shown.tasks.is_empty() {
        return "Every task of the job is done.".to_owned();
    }
    let proof = if shown.proved {
        "no order ends sooner"
    } else {
        "another order might end a little sooner"
    };
    format!(
        "{} tasks on {} days, from {} to {}; {proof}",
        shown.tasks.len(),
        shown.days.len(),
        shown.begins,
        shown.ends
    )
}

fn pieces(day: &DayShown) -> Vec<[String; 3]> {
    let row = |piece: &design::plan::PieceShown| {
        [
            format!("{} to {}", piece.from, piece.to),
            piece.task.clone(),
            if piece.last {
                piece.what.clone()
            } else {
                format!("{} (goes on)", piece.what)
            },
        ]
    };
    day.work.iter().map(row).collect()
}

fn tasks(shown: &PlanShown) -> Vec<[String; 5]> {
    let heads = ["", "task", "begins", "may slip", "why not sooner"];
    let mut rows = vec![heads.map(str::to_owned)];
    rows.extend(shown.tasks.iter().map(row));
    rows
}

fn row(task: &TaskShown) -> [String; 5] {
    [
        if task.decides { "●" } else { " " }.to_owned(),
        task.id.clone(),
        task.from.clone(),
        match task.slack_days {
            1 => "1 day".to_owned(),
            days => format!("{days} days"),
        },
        task.because.clone(),
    ]
}
