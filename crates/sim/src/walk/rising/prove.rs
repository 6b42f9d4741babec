//! Proofs about leaves that rise.

use super::super::evaluate::Found;
use super::super::lane::Lane;
use super::super::path::Case;
use super::super::prove::place::Job;
use super::super::prove::search::search_all;
use super::super::prove::space::Kind;
use super::super::prove::{Proof, Verdict};
use super::super::sequence::{Family, Habit};
use super::super::swing::{outcome, scenario};
use super::super::unproved::{BOXES, check_family, each_proved, tried};
use super::bound::Bound;
use super::lane::{RisingLane, RisingWalk};
use formula::OutOfReach;
use std::num::NonZeroUsize;

impl RisingWalk {
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
        check_family(&self.provable(), family)?;
        Ok(self.proof(family, most, threads))
    }

    /// Proves or refutes every family.
    pub fn prove_all(&self, most: u64, threads: NonZeroUsize) -> Vec<Proof> {
        each_proved(&self.provable(), threads, &|family| {
            self.proof(family, most, NonZeroUsize::MIN)
        })
    }

    fn proof(&self, family: &Family, most: u64, threads: NonZeroUsize) -> Proof {
        let lane = &self.lanes[family.pass];
        let told = |case: &Case, found: &Found| {
            Verdict::Refuted(scenario(family.pass, case), outcome(case.way, found))
        };
        let run = |point| {
            let case = lane.placed(family, point, self.slant);
            let found = lane.run(&case);
            (case, found)
        };
        if let Some((case, found)) = tried(&run) {
            return Proof {
                family: *family,
                verdict: told(&case, &found),
                boxes: 0,
            };
        }
        let plain = lane.plain();
        let mut jobs = Vec::new();
        for &kind in Kind::of(family.habit) {
            for part in 0..lane.people[family.body].parts.len() {
                jobs.push(Job {
                    shape: Bound(lane),
                    lane: &plain,
                    delay: 0.0,
                    slant: self.slant,
                    family,
                    kind,
                    part,
                });
            }
        }
        let done = search_all(&jobs, most.min(BOXES), threads);
        Proof {
            family: *family,
            verdict: done.verdict(told),
            boxes: done.boxes,
        }
    }
}

impl RisingLane {
    pub(super) fn plain(&self) -> Lane {
        let motion = (self.profile.clone(), self.control);
        Lane::plain(motion, self.bounds, &self.people, &self.fields)
    }
}
