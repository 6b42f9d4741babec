//! Days with their hours and their light, and where a task fits into them.

use super::{DAY, JobTask, Minutes, Stretch};

/// Light in which a task is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Light {
    /// Any.
    #[default]
    Any,
    /// Daylight.
    Day,
    /// Dark.
    Dark,
    /// One half before sunset, the other from dusk on.
    Both,
}

/// One day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JobDay {
    /// Work begins.
    pub open: Minutes,
    /// Work ends; the same as its beginning on a day without work.
    pub close: Minutes,
    /// Sunrise.
    pub rise: Minutes,
    /// Sunset.
    pub set: Minutes,
    /// End of dusk: it is dark.
    pub dusk: Minutes,
}

impl JobDay {
    fn is_worked(&self) -> bool {
        self.close > self.open
    }
}

/// Days one after the other.
#[derive(Debug, Clone)]
pub struct Calendar {
    /// The days.
    pub days: Vec<JobDay>,
}

/// A stretch shorter than this is not worth beginning, unless it ends the task.
const SHORTEST: Minutes = 30;

impl Calendar {
    /// Where a task fits that cannot begin before a moment; nothing where no day is left.
    pub fn place(&self, task: &JobTask, earliest: Minutes) -> Option<Vec<Stretch>> {
        let mut left = task.work;
        let mut stretches = Vec::new();
        for (index, day) in self.days_from(earliest) {
            if !day.is_worked() || task.not_on.contains(&index) {
                continue;
            }
            if let Light::Dark | Light::Both = task.light {
                let block = evening(task, day);
                if block.from >= earliest {
                    return Some(vec![block]);
                }
                continue;
            }
            let (open, close) = window(task, day);
            let from = open.max(earliest);
            let room = close - from;
            let wanted = if task.in_one_go {
                left
            } else {
                left.min(SHORTEST)
            };
            if room < wanted.max(0) {
                continue;
            }
            let to = from + room.min(left);
            stretches.push(Stretch { from, to });
            left -= to - from;
            if left <= 0 {
                return Some(stretches);
            }
        }
        None
    }

    /// End of so much work of any kind from a moment on, where hands find nothing but work; nothing where no day is left.
    pub(super) fn worked_off(&self, work: Minutes, from: Minutes) -> Option<Minutes> {
        let mut left = work;
        for (_, day) in self.days_from(from) {
            let begin = day.open.max(from);
            let room = (day.close - begin).max(0);
            if room >= left {
                return Some(begin.max(from) + left);
            }
            left -= room;
        }
        None
    }

    fn days_from(&self, moment: Minutes) -> impl Iterator<Item = (usize, &JobDay)> {
        let first = usize::try_from(moment.max(0) / DAY).unwrap_or(usize::MAX);
        self.days.iter().enumerate().skip(first)
    }
}

/// Hours of a day in which a task can be done.
fn window(task: &JobTask, day: &JobDay) -> (Minutes, Minutes) {
    match task.light {
        Light::Day => (day.open.max(day.rise), day.close.min(day.set)),
        _ => (day.open, day.close),
    }
}

/// A task of the dark on a day.
fn evening(task: &JobTask, day: &JobDay) -> Stretch {
    match task.light {
        Light::Both => Stretch {
            from: day.set - task.work / 2,
            to: day.dusk + (task.work - task.work / 2),
        },
        _ => Stretch {
            from: day.dusk,
            to: day.dusk + task.work,
        },
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    /// Two worked days, one without work, two worked: 7 to 15 h, light from 6 to 14 h, dark from 14:30.
    pub(in crate::job) fn days(worked: &[bool]) -> Calendar {
        let day = |(index, worked): (usize, &bool)| {
            let midnight = Minutes::try_from(index).unwrap() * DAY;
            JobDay {
                open: midnight + 7 * 60,
                close: midnight + if *worked { 15 * 60 } else { 7 * 60 },
                rise: midnight + 6 * 60,
                set: midnight + 14 * 60,
                dusk: midnight + 14 * 60 + 30,
            }
        };
        Calendar {
            days: worked.iter().enumerate().map(day).collect(),
        }
    }

    #[test]
    fn a_task_goes_on_the_next_worked_day() {
        let calendar = days(&[true, false, true]);
        let task = JobTask {
            work: 10 * 60,
            ..JobTask::default()
        };
        let found = calendar.place(&task, 0).unwrap();
        assert_eq!(found.len(), 2);
        assert_eq!((found[0].day(), found[1].day()), (0, 2));
        assert_eq!(found[1].to - found[1].from, 2 * 60);
        let whole = JobTask {
            in_one_go: true,
            ..task.clone()
        };
        assert_eq!(calendar.place(&whole, 0), None);
        let daylight = JobTask {
            light: Light::Day,
            work: 8 * 60,
            ..task
        };
        assert_eq!(calendar.place(&daylight, 0).unwrap().len(), 2);
    }

    #[test]
    fn dark_begins_at_dusk_and_both_lies_about_it() {
        let calendar = days(&[true, true]);
        let dark = JobTask {
            work: 60,
            light: Light::Dark,
            ..JobTask::default()
        };
        let found = calendar.place(&dark, 0).unwrap();
        assert_eq!((found[0].from, found[0].to), (14 * 60 + 30, 15 * 60 + 30));
        let both = JobTask {
            light: Light::Both,
            ..dark
        };
        let found = calendar.place(&both, 0).unwrap();
        assert_eq!((found[0].from, found[0].to), (13 * 60 + 30, 15 * 60));
        assert_eq!(calendar.place(&both, 13 * 60 + 31).unwrap()[0].day(), 1);
        assert_eq!(calendar.worked_off(9 * 60, 0), Some(DAY + 8 * 60));
    }
}
