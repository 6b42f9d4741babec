//! The plan of a job for one pair of hands: its tasks in the order that ends soonest, day by day.
//!
//! A task begins when what it needs is over, what it loads has cured, what it covers has been seen and what it takes has
//! arrived; it is done in the hours of the working days, in its light, and never on a day whose forecast breaks its limits.

mod days;
mod lower;
mod shown;
mod waits;

pub use shown::{DayShown, PieceShown, PlanShown, TaskShown};

pub(crate) use days::forecast_on;
pub(crate) use waits::Cured;

use crate::asking::Asking;
use crate::check::work::order::CHECK;
use crate::finding::{Finding, made_at_the_bad_ends};
use crate::outcome::Halt;
use crate::subject::About;
use sim::job::{Calendar, DAY, Found, JobTask, Minutes, Placed, Trouble, shortest};
use site::{Date, Site, Task};

/// Orders that are looked at before the best one found is taken, with what it may still lose to another.
const STEPS: u32 = 4000;

/// What is asked of a plan beyond what the site says.
#[derive(Debug, Clone, Default)]
pub struct Wish {
    /// First day; the site's when missing.
    pub from: Option<Date>,
    /// More days that were lost.
    pub lost: Vec<Date>,
}

/// A plan.
#[derive(Debug, Clone)]
pub struct WorkPlan<'s> {
    pub(crate) site: &'s Site,
    /// The tasks that are still to be done.
    pub(crate) tasks: Vec<&'s Task>,
    /// The days of the calendar, as dates.
    pub(crate) dates: Vec<Date>,
    pub(crate) calendar: Calendar,
    pub(crate) job: Vec<JobTask>,
    /// Cures that something waits for.
    pub(crate) cures: Vec<Cured<'s>>,
    pub(crate) found: Result<Found, Trouble>,
}

impl<'s> WorkPlan<'s> {
    /// Plans the job of a site; where something is missing or does not fit, the finding that says so.
    pub fn of(site: &'s Site, wish: &Wish) -> Result<Self, Box<Finding>> {
        let mut asking = Asking::new(site.site.unit_system()).with_looked_up(&site.looked_up);
        if let Ok(plan) = Self::read(&mut asking, site, wish)
            && plan.found.is_ok()
        {
            return Ok(plan);
        }
        let answer =
            |asking: &mut Asking<'s>| crate::check::work::order::ordered(asking, site, wish);
        let about = About::site(&site.origin);
        Err(Box::new(made_at_the_bad_ends(
            &CHECK,
            about,
            &mut asking,
            &answer,
        )))
    }

    /// Reads the site through what asks, and looks for the order.
    pub(crate) fn read(asking: &mut Asking<'s>, site: &'s Site, wish: &Wish) -> Result<Self, Halt> {
        let lowered = lower::lower(asking, site, wish)?;
        let found = shortest(&lowered.job, &lowered.calendar, STEPS);
        Ok(Self {
            site,
            tasks: lowered.tasks,
            dates: lowered.dates,
            calendar: lowered.calendar,
            job: lowered.job,
            cures: lowered.cures,
            found,
        })
    }

    /// The tasks in their places; none where there is no order.
    pub(crate) fn placed(&self) -> &[Placed] {
        self.found.as_ref().map_or(&[], |found| &found.order)
    }

    /// The day of a moment.
    pub(crate) fn date(&self, moment: Minutes) -> Option<Date> {
        let day = usize::try_from(moment / DAY).ok()?;
        self.dates.get(day).copied()
    }

    /// The place of a task in the plan.
    pub(crate) fn place_of(&self, task: &Task) -> Option<&Placed> {
        let at = self.tasks.iter().position(|one| one.id == task.id)?;
        self.placed().iter().find(|placed| placed.task == at)
    }
}
