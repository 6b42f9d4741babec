//! The queue before a gate: a lane lowered to `sim::queue`, days of it worked, and what they say.

mod defaults;
mod leaf;
mod line;
mod lower;
mod picture;
mod told;

pub use picture::{HourShown, QueuePicture};
pub use told::{EstimateTold, HourTold, LineStep, QueueTold};

pub(crate) use defaults::{HEADWAY, headway};
pub(crate) use leaf::{at_gate, opening_time, sees};

use crate::asking::Asking;
use crate::check::lane::queue::CHECK;
use crate::figure::Print;
use crate::finding::{Finding, made};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::OneLaneQueue;
use formula::{Evidence, Source};
use lower::Lowered;
use quantity::{Frequency, Quantity as _, Ratio, Time};
use sim::queue::{Queue, Report, Run, Timeline};
use site::{Gate, Lane, Site};
use std::num::NonZeroUsize;

/// Vehicles that `check` lets come; a longer run is a command of its own.
const GLANCE: f64 = 6000.0;

static SIMULATED: Source = Source {
    work: "days simulated one by one: arrivals at random within each hour, first come first served, sixteen groups of days for the interval",
    clause: "",
    evidence: Evidence::Physics,
    seen: "held against closed forms of queues, and against another simulator",
};

static COVERED: Source = Source {
    work: "the queue that is not exceeded for 95 % of the time in the busiest hour",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "entry studies of parking structures",
};

/// A lane that is ready to be worked.
#[derive(Debug, Clone)]
pub struct LaneQueue<'s> {
    site: &'s Site,
    lane: &'s Lane,
    print: Print,
    lowered: Lowered<'s>,
    queue: Queue,
}

/// How much is worked.
#[derive(Debug, Clone, Copy)]
pub struct Days {
    /// Days.
    pub days: u64,
    /// Number from which chance is made.
    pub seed: u64,
    /// Processors that work.
    pub threads: NonZeroUsize,
}

impl<'s> LaneQueue<'s> {
    /// Reads a lane; where something is missing or does not fit, the finding that says so.
    pub fn of(site: &'s Site, lane: &'s Lane) -> Result<Self, Box<Finding>> {
        let mut asking = Asking::new(site.site.unit_system());
        Self::read(&mut asking, site, lane).map_err(|_| {
            let answer = |asking: &mut Asking<'s>| {
                Self::read(asking, site, lane).map(|_| Outcome::Rule(false))
            };
            let about = About::new(&lane.origin, &lane.id);
            Box::new(made(&CHECK, about, &mut asking, &answer))
        })
    }

    /// Reads a lane through what asks.
    pub(crate) fn read(
        asking: &mut Asking<'s>,
        site: &'s Site,
        lane: &'s Lane,
    ) -> Result<Self, Halt> {
        let lowered = lower::lower(asking, site, lane)?;
        let queue = match lowered.world.lower() {
            Ok(queue) => queue,
            Err(reach) => return asking.beyond_reach("queue", reach),
        };
        Ok(Self {
            site,
            lane,
            print: asking.print(),
            lowered,
            queue,
        })
    }

    /// Name of the lane.
    pub fn name(&self) -> &str {
        self.lane.id.as_str()
    }

    /// What was taken for granted, in whole sentences.
    pub fn taken(&self) -> &[String] {
        &self.lowered.taken
    }

    /// Works so many days.
    pub fn run(&self, days: Days, done: &(dyn Fn(u64) + Sync)) -> Report {
        let run = Run {
            days: days.days,
            seed: days.seed,
            threads: days.threads,
        };
        self.queue.run(&run, done)
    }

    /// A first look: some thousand vehicles, always the same.
    pub fn glance(&self) -> Report {
        self.look(GLANCE)
    }

    /// About so many vehicles, always the same.
    fn look(&self, vehicles: f64) -> Report {
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "some ten thousand at most"
        )]
        let days = (vehicles / self.queue.vehicles_of_a_day().max(1.0)) as u64;
        let days = Days {
            days,
            seed: 1,
            threads: NonZeroUsize::MIN,
        };
        self.run(days, &|_| ())
    }

    /// One vehicle of the most frequent kind that finds lane and gate free.
    pub(crate) fn timeline(&self) -> Option<Timeline> {
        let drivers = &self.lowered.world.drivers;
        let share = |at: &usize| drivers[*at].share.base();
        let most = (0..drivers.len()).max_by(|a, b| share(a).total_cmp(&share(b)))?;
        self.lowered.world.timeline(most).ok()
    }

    /// The finding of the lane's queue from what was worked.
    pub fn finding(&self, report: &Report) -> Finding {
        let mut asking = Asking::new(self.site.site.unit_system());
        let (site, lane) = (self.site, self.lane);
        let answer =
            |asking: &mut Asking<'s>| Self::read(asking, site, lane)?.judged(asking, report);
        let about = About::new(&lane.origin, &lane.id);
        made(&CHECK, about, &mut asking, &answer)
    }

    /// What the days say of the queue.
    #[allow(
        clippy::unnecessary_wraps,
        reason = "it stands where an answer is asked for"
    )]
    pub(crate) fn judged(&self, asking: &mut Asking<'s>, report: &Report) -> Answer {
        asking.rest_on(&SIMULATED);
        asking.rest_on(&COVERED);
        for taken in &self.lowered.taken {
            asking.note(|_| taken.clone());
        }
        self.were_it_open(asking, report);
        let worst = report.worst();
        let stacking = self.lowered.world.lane.stacking;
        asking.say(|print| self.said(print, report));
        Ok(match worst.length {
            Some(length) => Outcome::at_most(
                Labeled::new(
                    "queue behind the reader, 95 % of its worst hour",
                    length.most(),
                ),
                Labeled::new("from the reader to the road", stacking),
            ),
            None => Outcome::at_most(
                Labeled::new(
                    "share of the worst hour with a tail in the road",
                    worst.in_road.most(),
                ),
                Labeled::new("share that is accepted", Ratio::from_base(0.05)),
            ),
        })
    }

    /// The closed form for a gate that always stands open, as a line to hold the days against.
    fn were_it_open(&self, asking: &mut Asking<'s>, report: &Report) {
        let count = self.lowered.world.arrivals.get(report.worst);
        let (service, spread) = self.lowered.reader_cycle();
        let open = OneLaneQueue {
            arrivals: Frequency::from_base(f64::from(count.copied().unwrap_or(0)) / 3600.0),
            service: Time::from_base(service),
            spread: Time::from_base(spread),
        };
        if let Some(open) = asking.work_if_in_reach(&open) {
            asking.note(|print| {
                format!(
                    "Were the gate always open, vehicles that came alone would wait {} before the reader on the mean, by the closed form.",
                    print.q(open.wait)
                )
            });
        }
    }

    /// The gate that the lane leads through.
    pub fn gate(&self) -> &'s Gate {
        self.lowered.gate
    }
}
