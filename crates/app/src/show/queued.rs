//! What came of the days of one lane.

use super::{columns, mark, width, wrapped};
use crate::tint::{paint, quiet, strong};
use design::Finding;
use design::queue::{EstimateTold, HourTold, LaneQueue, QueueTold};
use quantity::{Length, Time};

/// Said with every result.
const CAUTION: &str = "A simulation is no count: vehicles are counted per 15 minutes in the first busy week, and where more come, or drivers \
take longer at the reader than was written, this result is void. Each figure stands with its interval at 95 %.";

/// Everything that came of the days of one lane.
pub(crate) fn queued(
    site: &str,
    queue: &LaneQueue<'_>,
    told: &QueueTold,
    finding: &Finding,
) -> String {
    let mut lines = vec![
        paint(
            format!("{site} · {} · gate {}", told.called, told.gate),
            strong(),
        ),
        String::new(),
        mark(finding.standing),
        wrapped(&finding.sentence, 2, width()),
        String::new(),
        paint("Hour by hour", strong()),
    ];
    lines.extend(columns(&rows(queue, told), 2, 400, None));
    lines.push(String::new());
    lines.push(paint("One vehicle that finds everything free", strong()));
    for step in &told.line {
        lines.push(format!("  {:>7.1} s  {}", step.seconds, step.what));
    }
    if !told.taken.is_empty() {
        lines.push(String::new());
        lines.push(paint("What was taken for granted", strong()));
        lines.extend(told.taken.iter().map(|taken| wrapped(taken, 2, width())));
    }
    lines.push(String::new());
    lines.push(paint(wrapped(CAUTION, 0, width()), quiet()));
    lines.push(String::new());
    lines.join("\n")
}

/// A row for each hour, below what the columns are.
fn rows(queue: &LaneQueue<'_>, told: &QueueTold) -> Vec<[String; 8]> {
    let heads = [
        "",
        "vehicles",
        "95 % queue",
        "in the road",
        "mean wait",
        "95 % wait",
        "openings",
        "in another's opening",
    ];
    let mut rows = vec![heads.map(str::to_owned)];
    rows.extend(told.hours.iter().map(|hour| row(queue, hour)));
    rows
}

fn row(queue: &LaneQueue<'_>, hour: &HourTold) -> [String; 8] {
    [
        hour.hour.clone(),
        count(hour.arrivals),
        hour.length.map_or_else(
            || "out of the lane".to_owned(),
            |length| queue.estimated::<Length>(length),
        ),
        percent(hour.in_road),
        queue.estimated::<Time>(hour.wait),
        queue.estimated::<Time>(hour.long_wait),
        count(hour.openings),
        percent(EstimateTold {
            value: hour.shared.value + hour.tailgated.value,
            error: hour.shared.error + hour.tailgated.error,
        }),
    ]
}

fn count(told: EstimateTold) -> String {
    format!("{:.1} ± {:.1}", told.value, told.error)
}

fn percent(told: EstimateTold) -> String {
    format!("{:.2} ± {:.2} %", told.value * 100.0, told.error * 100.0)
}
