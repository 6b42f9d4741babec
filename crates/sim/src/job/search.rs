//! The order in which a job ends soonest: branch and bound over the orders that meet every need.

use super::slack::slack;
use super::{Calendar, Cause, JobTask, Light, Minutes, Placed};
use std::collections::BTreeMap;

/// An order of the tasks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// The tasks in their order.
    pub order: Vec<Placed>,
    /// End of the last of them.
    pub end: Minutes,
    /// No order ends before this moment; the end itself where that is proved.
    pub bound: Minutes,
}

/// Why there is no order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Trouble {
    /// Tasks that wait for one another in a circle.
    Circle(Vec<usize>),
    /// A task for which no day is left.
    NoRoom(usize),
}

/// The order that ends soonest, looked for in so many steps.
pub fn shortest(tasks: &[JobTask], calendar: &Calendar, steps: u32) -> Result<Found, Trouble> {
    let sequence = in_sequence(tasks)?;
    let mut search = Search {
        tasks,
        calendar,
        tails: tails(tasks, &sequence),
        sequence,
        best: None,
        steps,
        seen: BTreeMap::new(),
        stuck: None,
    };
    let start = Partial {
        ends: vec![None; tasks.len()],
        order: Vec::new(),
        now: 0,
    };
    let lowest = search.bound(&start).map_err(Trouble::NoRoom)?;
    search.branch(&start);
    let Some((end, mut order)) = search.best else {
        return Err(Trouble::NoRoom(search.stuck.unwrap_or_default()));
    };
    let bound = if search.steps > 0 { end } else { lowest };
    slack(tasks, calendar, &mut order, end);
    Ok(Found { order, end, bound })
}

/// The tasks so that each comes after what it needs; the circle where there is one.
fn in_sequence(tasks: &[JobTask]) -> Result<Vec<usize>, Trouble> {
    let mut sequence: Vec<usize> = Vec::with_capacity(tasks.len());
    let mut placed = vec![false; tasks.len()];
    loop {
        let before = sequence.len();
        for (index, task) in tasks.iter().enumerate() {
            let ready = |need: &super::Need| placed.get(need.task).copied().unwrap_or(true);
            if !placed[index] && task.needs.iter().all(ready) {
                placed[index] = true;
                sequence.push(index);
            }
        }
        if sequence.len() == tasks.len() {
            return Ok(sequence);
        }
        if sequence.len() == before {
            return Err(Trouble::Circle(circle(tasks, &placed)));
        }
    }
}

/// A circle among the tasks that could not be placed: each has a need that could not be placed either.
fn circle(tasks: &[JobTask], placed: &[bool]) -> Vec<usize> {
    let left = |at: &usize| !placed[*at];
    let Some(mut at) = (0..tasks.len()).find(left) else {
        return Vec::new();
    };
    let mut way = Vec::new();
    loop {
        if let Some(begin) = way.iter().position(|seen| *seen == at) {
            return way.split_off(begin);
        }
        way.push(at);
        let next = tasks[at].needs.iter().map(|need| need.task).find(left);
        let Some(next) = next else { return way };
        at = next;
    }
}

/// Work and waits of the longest chain that follows each task, itself included.
fn tails(tasks: &[JobTask], sequence: &[usize]) -> Vec<Minutes> {
    let mut tails: Vec<Minutes> = tasks.iter().map(|task| task.work).collect();
    for &at in sequence.iter().rev() {
        let tail = tails[at];
        for need in &tasks[at].needs {
            if let Some(before) = tasks.get(need.task) {
                tails[need.task] = tails[need.task].max(before.work + need.wait + tail);
            }
        }
    }
    tails
}

/// Some of the tasks in their places.
#[derive(Clone)]
struct Partial {
    ends: Vec<Option<Minutes>>,
    order: Vec<Placed>,
    now: Minutes,
}

struct Search<'a> {
    tasks: &'a [JobTask],
    calendar: &'a Calendar,
    tails: Vec<Minutes>,
    sequence: Vec<usize>,
    best: Option<(Minutes, Vec<Placed>)>,
    steps: u32,
    /// Sets of tasks that are over, with the moments reached: the hands free, and each task ready.
    seen: BTreeMap<u64, Vec<Vec<Minutes>>>,
    stuck: Option<usize>,
}

impl Search<'_> {
    fn branch(&mut self, partial: &Partial) {
        if partial.order.len() == self.tasks.len() {
            let end = partial.order.iter().map(Placed::to).max().unwrap_or(0);
            if self.best.as_ref().is_none_or(|(known, _)| end < *known) {
                self.best = Some((end, partial.order.clone()));
            }
            return;
        }
        if self.steps == 0 && self.best.is_some() {
            return;
        }
        self.steps = self.steps.saturating_sub(1);
        match self.bound(partial) {
            Ok(bound) if self.best.as_ref().is_some_and(|(end, _)| bound >= *end) => return,
            Ok(_) => {}
            Err(task) => {
                self.stuck = self.stuck.or(Some(task));
                return;
            }
        }
        if self.is_no_better(partial) {
            return;
        }
        for next in self.children(partial) {
            self.branch(&next);
            if self.steps == 0 && self.best.is_some() {
                return;
            }
        }
    }

    /// What may come next, the soonest first, then what has the longest chain behind it.
    fn children(&self, partial: &Partial) -> Vec<Partial> {
        let mut children: Vec<(Minutes, Minutes, Partial)> = Vec::new();
        for (at, task) in self.tasks.iter().enumerate() {
            if partial.ends[at].is_some() {
                continue;
            }
            let Some((ready, cause)) = ready(task, &partial.ends) else {
                continue;
            };
            let previous = partial.order.last().map(|placed| placed.task);
            let (earliest, cause) = match previous {
                Some(previous) if partial.now > ready => (partial.now, Cause::Hands(previous)),
                _ => (ready, cause),
            };
            let Some(stretches) = self.calendar.place(task, earliest) else {
                continue;
            };
            let placed = Placed {
                task: at,
                stretches,
                cause,
                slack: 0,
            };
            let mut next = partial.clone();
            next.ends[at] = Some(placed.to());
            next.now = placed.to();
            let from = placed.from();
            next.order.push(placed);
            children.push((from, -self.tails[at], next));
        }
        children.sort_by_key(|(from, tail, _)| (*from, *tail));
        children.into_iter().map(|(_, _, next)| next).collect()
    }

    /// No order that goes on from here ends before this; the task for which no day is left.
    fn bound(&self, partial: &Partial) -> Result<Minutes, usize> {
        let mut ends = partial.ends.clone();
        let mut last = partial.now;
        let mut work = 0;
        let mut some = 0;
        for &at in &self.sequence {
            if ends[at].is_some() {
                continue;
            }
            let task = &self.tasks[at];
            let ready = ready(task, &ends).map_or(0, |(moment, _)| moment);
            let end = self
                .calendar
                .place(task, ready.max(partial.now))
                .and_then(|stretches| stretches.last().map(|stretch| stretch.to))
                .ok_or(at)?;
            ends[at] = Some(end);
            last = last.max(end);
            some = at;
            if let Light::Any | Light::Day = task.light {
                work += task.work;
            }
        }
        let hands = self.calendar.worked_off(work, partial.now).ok_or(some)?;
        Ok(last.max(hands))
    }

    /// The same tasks were over at least as soon in an order that was looked at before.
    fn is_no_better(&mut self, partial: &Partial) -> bool {
        if self.tasks.len() > 64 {
            return false;
        }
        let mut done = 0_u64;
        let mut moments = vec![partial.now];
        for (at, task) in self.tasks.iter().enumerate() {
            if partial.ends[at].is_some() {
                done |= 1 << at;
            } else {
                let known = task.needs.iter().filter_map(|need| {
                    let end = partial.ends.get(need.task).copied().flatten()?;
                    Some(end + need.wait)
                });
                moments.push(known.max().unwrap_or(0).max(partial.now));
            }
        }
        let known = self.seen.entry(done).or_default();
        let covers = |old: &Vec<Minutes>| old.iter().zip(&moments).all(|(old, new)| old <= new);
        if known.iter().any(covers) {
            return true;
        }
        known.push(moments);
        false
    }
}

/// The moment from which a task may begin, and what it waits for; nothing while something that it needs is not over.
pub(super) fn ready(task: &JobTask, ends: &[Option<Minutes>]) -> Option<(Minutes, Cause)> {
    let mut found = if task.not_before > 0 {
        (task.not_before, Cause::NotBefore)
    } else {
        (0, Cause::Start)
    };
    for need in &task.needs {
        let Some(end) = ends.get(need.task) else {
            continue;
        };
        let moment = (*end)? + need.wait;
        if moment >= found.0 {
            found = (moment, Cause::Need(*need));
        }
    }
    Some(found)
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::panic,
        reason = "a test may stop at the first surprise"
    )]
    use super::super::{DAY, JobDay, Need};
    use super::*;
    use proptest::prelude::*;

    fn calendar(days: i64) -> Calendar {
        let day = |index: i64| JobDay {
            open: index * DAY + 420,
            close: index * DAY + 900,
            rise: index * DAY + 300,
            set: index * DAY + 1200,
            dusk: index * DAY + 1230,
        };
        Calendar {
            days: (0..days).map(day).collect(),
        }
    }

    fn task(hours: i64, needs: &[(usize, i64)]) -> JobTask {
        let need = |&(task, hours): &(usize, i64)| Need {
            task,
            wait: hours * 60,
        };
        JobTask {
            work: hours * 60,
            needs: needs.iter().map(need).collect(),
            ..JobTask::default()
        }
    }

    /// Pour first, then what else there is while it cures, then what loads it.
    #[test]
    fn waiting_days_are_filled() {
        let tasks = [task(4, &[]), task(4, &[(0, 72)]), task(16, &[])];
        let found = shortest(&tasks, &calendar(20), 1000).unwrap();
        let order: Vec<usize> = found.order.iter().map(|placed| placed.task).collect();
        assert_eq!(order, [0, 2, 1]);
        assert_eq!(found.end, found.bound);
        // The pour ends at 11 on the first day; three days later at 11 it may be loaded, until 15.
        assert_eq!(found.end, 3 * DAY + 900);
        assert!(matches!(found.order[2].cause, Cause::Need(_)));
    }

    #[test]
    fn a_circle_is_named() {
        let tasks = [task(1, &[]), task(1, &[(2, 0)]), task(1, &[(1, 0)])];
        let Err(Trouble::Circle(mut circle)) = shortest(&tasks, &calendar(9), 100) else {
            panic!("no circle");
        };
        circle.sort_unstable();
        assert_eq!(circle, [1, 2]);
        let long = [task(80, &[])];
        assert_eq!(shortest(&long, &calendar(3), 100), Err(Trouble::NoRoom(0)));
    }

    /// Every order tried, one after the other.
    fn by_hand(
        tasks: &[JobTask],
        calendar: &Calendar,
        ends: &mut Vec<Option<i64>>,
        now: i64,
    ) -> i64 {
        let mut best = i64::MAX;
        let mut all = true;
        for at in 0..tasks.len() {
            if ends[at].is_some() {
                continue;
            }
            all = false;
            let Some((moment, _)) = ready(&tasks[at], ends) else {
                continue;
            };
            let end = calendar.place(&tasks[at], moment.max(now)).unwrap();
            let end = end.last().unwrap().to;
            ends[at] = Some(end);
            best = best.min(by_hand(tasks, calendar, ends, end));
            ends[at] = None;
        }
        if all { now } else { best }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(60))]
        #[test]
        fn as_soon_as_every_order_tried(
            hours in prop::collection::vec(1..7_i64, 2..6),
            waits in prop::collection::vec((0..6_usize, 0..60_i64), 6),
        ) {
            let mut tasks: Vec<JobTask> = Vec::new();
            for (at, hours) in hours.iter().enumerate() {
                let (before, wait) = waits[at];
                let needs: Vec<_> = (before < at).then_some((before, wait)).into_iter().collect();
                tasks.push(task(*hours, &needs));
            }
            let calendar = calendar(60);
            let found = shortest(&tasks, &calendar, 100_000).unwrap();
            let mut ends = vec![None; tasks.len()];
            prop_assert_eq!(found.end, by_hand(&tasks, &calendar, &mut ends, 0));
            prop_assert_eq!(found.end, found.bound);
            // One after the other, each after what it needs.
            for pair in found.order.windows(2) {
                prop_assert!(pair[0].to() <= pair[1].from());
            }
        }
    }
}
