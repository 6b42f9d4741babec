//! How many days a task may slip before the job ends later.

use super::search::ready;
use super::{Calendar, DAY, JobTask, Minutes, Placed};

/// No more days than this are looked at.
const MOST: u32 = 63;

/// Writes to each task by how many whole days it may be later, while the order stays, without a later end.
pub(super) fn slack(tasks: &[JobTask], calendar: &Calendar, order: &mut [Placed], end: Minutes) {
    let sequence: Vec<(usize, Minutes)> = order
        .iter()
        .map(|placed| (placed.task, placed.from()))
        .collect();
    for (position, placed) in order.iter_mut().enumerate() {
        let fits = |days: u32| {
            let late = (position, i64::from(days) * DAY);
            ends_by(tasks, calendar, &sequence, late).is_some_and(|later| later <= end)
        };
        let (mut holds, mut breaks) = (0, MOST + 1);
        while breaks - holds > 1 {
            let middle = u32::midpoint(holds, breaks);
            if fits(middle) {
                holds = middle;
            } else {
                breaks = middle;
            }
        }
        placed.slack = holds;
    }
}

/// End of the job when the task in this place of the order is so much later.
fn ends_by(
    tasks: &[JobTask],
    calendar: &Calendar,
    sequence: &[(usize, Minutes)],
    (late, by): (usize, Minutes),
) -> Option<Minutes> {
    let mut ends = vec![None; tasks.len()];
    let mut now = 0;
    let mut last = 0;
    for (position, (at, from)) in sequence.iter().enumerate() {
        let task = tasks.get(*at)?;
        let mut earliest = ready(task, &ends)?.0.max(now);
        if position == late {
            earliest = earliest.max(from + by);
        }
        let end = calendar.place(task, earliest)?.last()?.to;
        ends[*at] = Some(end);
        now = end;
        last = last.max(end);
    }
    Some(last)
}
