//! Proof that nobody of a family is touched beyond the limits, or a case in which somebody is.
//!
//! Every touch is a point of a space of five coordinates. The space is halved until each box either surely holds no touch
//! beyond a limit, by bounds that round outward, or the exact evaluator finds one in its middle. What the proof takes for
//! granted is what the evaluator does: straight paths, one body, a leaf on its plan, devices that work.

mod back;
mod before;
mod circle;
mod decide;
mod edge;
mod heard;
pub(super) mod judge;
pub(super) mod leaf;
mod margin;
pub(super) mod place;
mod pressed;
mod reach;
pub(super) mod search;
mod sight;
pub(super) mod space;
pub(super) mod span;
pub(super) mod sweeps;
#[cfg(test)]
pub(super) mod testing;
#[cfg(test)]
mod tests;

pub use margin::Margin;
pub(super) use margin::halved;
pub use reach::{ReachProof, ReachVerdict};

use super::evaluate::Found;
use super::lane::Walk;
use super::path::Case;
use super::scenario::{Outcome, Scenario};
use super::sequence::{Draw, Family, Habit};
use super::stop;
use formula::OutOfReach;
use quantity::{Quantity as _, Ratio};
use search::{Effort, Searched, search_all};
use space::{Job, Kind};
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
        let mut numbers = (0..TRIED).take_while(|_| !stop::is_asked());
        numbers.find_map(|number| {
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
        let kinds = Kind::of(family.habit).iter();
        let jobs: Vec<Job> = kinds
            .flat_map(|&kind| {
                let parts = parts.iter();
                parts.map(move |&part| Job::new(self, family, part, kind))
            })
            .collect();
        let effort = Effort {
            each: most,
            are_dear: false,
        };
        let done = search_all(&jobs, effort, threads);
        let verdict = done.verdict(|case, found| {
            let scenario = lane.scenario(family.pass, case);
            Verdict::Refuted(scenario, lane.outcome(case.way, found))
        });
        (verdict, done.boxes)
    }
}

impl Searched {
    /// How a search ends, with how a bad case is told.
    pub(super) fn verdict(&self, told: impl Fn(&Case, &Found) -> Verdict) -> Verdict {
        match &self.bad {
            Some((case, found)) => told(case, found),
            None if self.open > 0.0 => Verdict::Undecided(Ratio::from_base(self.open)),
            None => Verdict::Proved,
        }
    }
}

/// Works so many tasks on so many threads and gives their results in their order; those that come after a stop are left out.
pub(super) fn in_order<T: Send>(
    count: usize,
    threads: NonZeroUsize,
    work: impl Fn(usize) -> T + Sync,
) -> Vec<T> {
    let next = AtomicUsize::new(0);
    let stop = stop::handed_on();
    let take = || {
        let mut done = Vec::new();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            if at >= count || stop::is_asked() {
                return done;
            }
            done.push((at, work(at)));
        }
    };
    let mut all = std::thread::scope(|scope| {
        let other = || stop::under(stop.clone(), take);
        let others: Vec<_> = (1..threads.get()).map(|_| scope.spawn(other)).collect();
        let mut all = take();
        for other in others {
            all.extend(other.join().unwrap_or_else(|why| resume_unwind(why)));
        }
        all
    });
    all.sort_by_key(|(at, _)| *at);
    all.into_iter().map(|(_, done)| done).collect()
}
