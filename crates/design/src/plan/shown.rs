//! A plan as whoever shows it needs it: days with their work, tasks with their slack.

use super::WorkPlan;
use serde::Serialize;
use sim::job::{Cause, DAY, Minutes, Placed};
use site::Task;

/// A stretch of work on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PieceShown {
    /// Id of the task.
    pub task: String,
    /// What is done.
    pub what: String,
    /// From, by the clock: `07:00`.
    pub from: String,
    /// To, by the clock.
    pub to: String,
    /// The task ends with it.
    pub last: bool,
}

/// A day of the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DayShown {
    /// The day: `2026-05-04`.
    pub date: String,
    /// Its name.
    pub weekday: &'static str,
    /// Whole days since the first of the plan.
    pub index: usize,
    /// Sunrise by the clock.
    pub rise: String,
    /// Sunset by the clock.
    pub set: String,
    /// End of dusk by the clock.
    pub dusk: String,
    /// The work of the day, in its order.
    pub work: Vec<PieceShown>,
}

/// A task in the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TaskShown {
    /// Its id.
    pub id: String,
    /// What is done.
    pub what: String,
    /// Day and hour of its beginning.
    pub from: String,
    /// Day and hour of its end.
    pub to: String,
    /// Beginning, in minutes since midnight before the first day.
    pub from_minute: Minutes,
    /// End, in minutes since midnight before the first day.
    pub to_minute: Minutes,
    /// End of what runs by the clock after it: cure or inspection; its own end where nothing does.
    pub ready_minute: Minutes,
    /// What runs meanwhile: `cures`, `is inspected`; empty where nothing does.
    pub waits: String,
    /// Whole days by which it may be later without a later end of the job.
    pub slack_days: u32,
    /// It belongs to the chain that decides the end.
    pub decides: bool,
    /// Why it does not begin earlier, in words.
    pub because: String,
}

/// A plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PlanShown {
    /// First day with work.
    pub begins: String,
    /// Last day with work.
    pub ends: String,
    /// End of the last task, in minutes since midnight before the first day.
    pub end_minute: Minutes,
    /// No order of these tasks ends before this moment.
    pub bound_minute: Minutes,
    /// The order is proved to be one that ends soonest.
    pub proved: bool,
    /// Days with work.
    pub days: Vec<DayShown>,
    /// The tasks in their order.
    pub tasks: Vec<TaskShown>,
    /// Working days between the first and the last without work to do.
    pub idle_days: usize,
}

const WEEKDAYS: [&str; 7] = [
    "Monday",
    "Tuesday",
    "Wednesday",
    "Thursday",
    "Friday",
    "Saturday",
    "Sunday",
];

impl WorkPlan<'_> {
    /// The plan with its days and tasks.
    pub fn shown(&self) -> PlanShown {
        let (end, bound) = match &self.found {
            Ok(found) => (found.end, found.bound),
            Err(_) => (0, 0),
        };
        let days = self.days_shown();
        let date = |day: Option<&DayShown>| day.map_or_else(String::new, |day| day.date.clone());
        PlanShown {
            begins: date(days.first()),
            ends: date(days.last()),
            end_minute: end,
            bound_minute: bound,
            proved: bound >= end,
            idle_days: self.idle_days(&days),
            days,
            tasks: self.tasks_shown(),
        }
    }

    fn days_shown(&self) -> Vec<DayShown> {
        let dates = self.dates.iter().zip(&self.calendar.days).enumerate();
        dates
            .filter_map(|(index, (date, day))| {
                let work = self.pieces_on(index);
                let midnight = Minutes::try_from(index).ok()? * DAY;
                (!work.is_empty()).then(|| DayShown {
                    date: date.to_string(),
                    weekday: WEEKDAYS.get(date.in_week()).copied().unwrap_or_default(),
                    index,
                    rise: clock(day.rise - midnight),
                    set: clock(day.set - midnight),
                    dusk: clock(day.dusk - midnight),
                    work,
                })
            })
            .collect()
    }

    fn pieces_on(&self, index: usize) -> Vec<PieceShown> {
        let mut pieces = Vec::new();
        for placed in self.placed() {
            let Some(task) = self.tasks.get(placed.task) else {
                continue;
            };
            for stretch in &placed.stretches {
                if stretch.day() == index {
                    pieces.push(PieceShown {
                        task: task.id.to_string(),
                        what: task.what.to_string(),
                        from: clock(stretch.from % DAY),
                        to: clock(stretch.to % DAY),
                        last: stretch.to == placed.to(),
                    });
                }
            }
        }
        pieces
    }

    /// Worked days between first and last on which no task stands.
    fn idle_days(&self, shown: &[DayShown]) -> usize {
        let (Some(first), Some(last)) = (shown.first(), shown.last()) else {
            return 0;
        };
        let days = self.calendar.days.iter().enumerate();
        days.filter(|(index, day)| {
            day.close > day.open
                && (first.index..last.index).contains(index)
                && shown.iter().all(|shown| shown.index != *index)
        })
        .count()
    }

    fn tasks_shown(&self) -> Vec<TaskShown> {
        let chain = self.chain();
        let placed = self.placed().iter();
        placed
            .filter_map(|placed| {
                let task = self.tasks.get(placed.task)?;
                let wait = self.longest_wait(placed.task);
                Some(TaskShown {
                    id: task.id.to_string(),
                    what: task.what.to_string(),
                    from: self.moment(placed.from()),
                    to: self.moment(placed.to()),
                    from_minute: placed.from(),
                    to_minute: placed.to(),
                    ready_minute: placed.to() + wait,
                    waits: waiting(task, wait).to_owned(),
                    slack_days: placed.slack,
                    decides: chain.contains(&placed.task),
                    because: self.because(placed),
                })
            })
            .collect()
    }

    /// The chain that decides the end, from its last task back to its first.
    pub(crate) fn chain(&self) -> Vec<usize> {
        let mut chain = Vec::new();
        let mut at = self.placed().iter().max_by_key(|placed| placed.to());
        while let Some(placed) = at.filter(|placed| !chain.contains(&placed.task)) {
            chain.push(placed.task);
            let before = match placed.cause {
                Cause::Hands(before) => before,
                Cause::Need(need) => need.task,
                Cause::Start | Cause::NotBefore => break,
            };
            at = self.placed().iter().find(|placed| placed.task == before);
        }
        chain
    }

    /// The longest time by the clock that anything waits after a task.
    fn longest_wait(&self, task: usize) -> Minutes {
        let needs = self.job.iter().flat_map(|job| &job.needs);
        let waits = needs.filter(|need| need.task == task);
        waits.map(|need| need.wait).max().unwrap_or(0)
    }

    /// Day and hour of a moment.
    pub(crate) fn moment(&self, moment: Minutes) -> String {
        self.date(moment).map_or_else(String::new, |date| {
            format!("{date} {}", clock(moment % DAY))
        })
    }

    fn because(&self, placed: &Placed) -> String {
        let name = |task: usize| {
            self.tasks
                .get(task)
                .map_or_else(String::new, |task| task.id.to_string())
        };
        match placed.cause {
            Cause::Start => "the job begins".to_owned(),
            Cause::NotBefore => "what it takes arrives, or an inspection is passed".to_owned(),
            Cause::Hands(before) => format!("the hands are at {} until then", name(before)),
            Cause::Need(need) if need.wait > 0 => {
                let word = self
                    .tasks
                    .get(need.task)
                    .map_or("", |task| waiting(task, need.wait));
                format!("{} {word} until then", name(need.task))
            }
            Cause::Need(need) => format!("{} comes first", name(need.task)),
        }
    }
}

/// What a task does while something waits for it by the clock.
fn waiting(task: &Task, wait: Minutes) -> &'static str {
    match (wait > 0, task.curing.is_some()) {
        (false, _) => "",
        (true, true) => "cures",
        (true, false) => "is inspected",
    }
}

/// Hours and minutes of a day.
fn clock(minute: Minutes) -> String {
    let minute = minute.rem_euclid(DAY);
    format!("{:02}:{:02}", minute / 60, minute % 60)
}
