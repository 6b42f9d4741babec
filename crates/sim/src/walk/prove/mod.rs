//! Proof that nobody of a family is touched beyond the limits, or a case in which somebody is.
//!
//! Every touch is a point of a space of five coordinates. The space is halved until each box either surely holds no touch
//! beyond a limit, by bounds that round outward, or the exact evaluator finds one in its middle. What the proof takes for
//! granted is what the evaluator does: straight paths, one body, a leaf on its plan, devices that work.

mod decide;
mod judge;
mod leaf;
mod margin;
mod search;
mod sight;
mod space;
mod span;
#[cfg(test)]
mod tests;

pub use margin::Margin;
pub(super) use margin::halved;

use super::lane::Walk;
use super::scenario::{Outcome, Scenario};
use super::sequence::{Draw, Family, Habit};
use formula::OutOfReach;
use quantity::{Quantity as _, Ratio};
use search::{Searched, roots, search};
use space::{Box5, Job, Kind};
use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Scenarios of the sequence that are tried before a proof begins.
const TRIED: u64 = 32_768;

/// How a proof ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict {
    /// No touch beyond the limits is possible.
    Proved,
    /// This scenario ends badly; the exact evaluator says so.
    Refuted(Scenario, Outcome),
    /// This share of the space of touches is open.
    Undecided(Ratio),
}

/// A proof about one family.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Proof {
    /// The family. One who crosses may come at any time, so that those who follow are among them.
    pub family: Family,
    /// How it ends.
    pub verdict: Verdict,
    /// Boxes that were looked at.
    pub boxes: u64,
}

/// One part of the search of a family.
struct Task<'a> {
    job: Job<'a>,
    whole: Box5,
    root: Box5,
}

impl Walk {
    /// Families that are proved: those who follow are among those who cross.
    pub fn provable(&self) -> Vec<Family> {
        let mut families = self.families();
        families.retain(|family| family.habit != Habit::Follow);
        families
    }

    /// Proves or refutes one family, looking at so many boxes at most in each of the fixed parts of its space.
    pub fn prove(
        &self,
        family: &Family,
        most: u64,
        threads: NonZeroUsize,
    ) -> Result<Proof, OutOfReach> {
        if !self.provable().contains(family) {
            return Err(OutOfReach::new(
                "family",
                "this is one of the families that are proved",
            ));
        }
        Ok(self.proof(family, most, threads))
    }

    /// Proves or refutes every family.
    pub fn prove_all(&self, most: u64, threads: NonZeroUsize) -> Vec<Proof> {
        let families = self.provable();
        let one = NonZeroUsize::MIN;
        in_order(families.len(), threads, |at| {
            self.proof(&families[at], most, one)
        })
    }

    fn proof(&self, family: &Family, most: u64, threads: NonZeroUsize) -> Proof {
        let (verdict, boxes) = match self.tried(family) {
            Some((scenario, outcome)) => (Verdict::Refuted(scenario, outcome), 0),
            None => self.searched(family, most, threads),
        };
        Proof {
            family: *family,
            verdict,
            boxes,
        }
    }

    /// The first bad scenario of the sequence, if one comes early.
    fn tried(&self, family: &Family) -> Option<(Scenario, Outcome)> {
        let lane = &self.lanes[family.pass];
        (0..TRIED).find_map(|number| {
            let case = lane.drawn(family, &Draw::new(number, 1), self.slant);
            let found = lane.run(&case);
            found.class.is_bad().then(|| {
                (
                    lane.scenario(family.pass, &case),
                    lane.outcome(case.way, &found),
                )
            })
        })
    }

    fn searched(&self, family: &Family, most: u64, threads: NonZeroUsize) -> (Verdict, u64) {
        let lane = &self.lanes[family.pass];
        let parts = &lane.people[family.body].touchable;
        let kinds = Kind::of(family.habit);
        let mut tasks = Vec::new();
        for &kind in kinds {
            for &part in parts {
                let whole = Job::new(self, family, part, kind).whole(self.slant);
                for root in roots(&Job::new(self, family, part, kind), &whole) {
                    let job = Job::new(self, family, part, kind);
                    tasks.push(Task { job, whole, root });
                }
            }
        }
        // A part after one that is refuted need not be searched: the first that is refuted is what counts.
        let refuted = AtomicUsize::new(usize::MAX);
        let results = in_order(tasks.len(), threads, |at| {
            if at > refuted.load(Ordering::Relaxed) {
                return None;
            }
            let task = &tasks[at];
            let done = search(&task.job, &task.whole, &task.root, most);
            if done.bad.is_some() {
                refuted.fetch_min(at, Ordering::Relaxed);
            }
            Some(done)
        });
        summary(
            family,
            lane,
            results.into_iter().map_while(|done| done),
            parts.len() * kinds.len(),
        )
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a body has twelve cylinders at most, and three kinds of touches"
)]
fn summary(
    family: &Family,
    lane: &super::lane::Lane,
    results: impl Iterator<Item = Searched>,
    parts: usize,
) -> (Verdict, u64) {
    let (mut boxes, mut open) = (0, 0.0);
    for done in results {
        boxes += done.boxes;
        open += done.open;
        if let Some((case, found)) = done.bad {
            let scenario = lane.scenario(family.pass, &case);
            let outcome = lane.outcome(case.way, &found);
            return (Verdict::Refuted(scenario, outcome), boxes);
        }
    }
    if open > 0.0 {
        let share = Ratio::from_base(open / parts.max(1) as f64);
        (Verdict::Undecided(share), boxes)
    } else {
        (Verdict::Proved, boxes)
    }
}

/// Works so many tasks on so many threads and gives their results in their order.
pub(super) fn in_order<T: Send>(
    count: usize,
    threads: NonZeroUsize,
    work: impl Fn(usize) -> T + Sync,
) -> Vec<T> {
    let next = AtomicUsize::new(0);
    let take = || {
        let mut done = Vec::new();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            if at >= count {
                return done;
            }
            done.push((at, work(at)));
        }
    };
    let mut all = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads.get()).map(|_| scope.spawn(take)).collect();
        let mut all = take();
        for other in others {
            all.extend(other.join().unwrap_or_else(|why| resume_unwind(why)));
        }
        all
    });
    all.sort_by_key(|(at, _)| *at);
    all.into_iter().map(|(_, done)| done).collect()
}
