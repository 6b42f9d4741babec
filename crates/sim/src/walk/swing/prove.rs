//! Proofs about leaves that swing.

use super::super::lane::Lane;
use super::super::prove::Proof;
use super::super::prove::place::{Job, kinds};
use super::super::prove::search::search_all;
use super::super::sequence::{Family, Habit};
use super::super::unproved::{check_family, each_proved, effort, proof};
use super::bound::Bound;
use super::lane::{SwingLane, SwingWalk};
use formula::OutOfReach;
use std::num::NonZeroUsize;

impl SwingWalk {
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
        let run = |point| {
            let case = lane.placed(family, point, self.lean);
            let found = lane.run(&case);
            (case, found)
        };
        proof(family, &run, || {
            let plain = lane.plain();
            search_all(&self.jobs(family, &plain), effort(most), threads)
        })
    }

    /// What the proof of a family is about: each leaf, each kind of touch, each cylinder in the leaf's height.
    pub(super) fn jobs<'a>(
        &'a self,
        family: &'a Family,
        plain: &'a [Lane],
    ) -> Vec<Job<'a, Bound<'a>>> {
        let lane = &self.lanes[family.pass];
        let mut jobs = Vec::new();
        for (wing, leaf) in lane.wings.iter().enumerate() {
            for (kind, back) in kinds(family.habit, &leaf.control) {
                for &part in &leaf.touchable[family.body] {
                    jobs.push(Job {
                        shape: Bound { lane, wing },
                        lane: &plain[wing],
                        delay: leaf.delay,
                        slant: self.lean.tan() * (1.0 + 1e-12),
                        family,
                        kind,
                        part,
                        back,
                    });
                }
            }
        }
        jobs
    }
}

impl SwingLane {
    /// For each leaf what sees and feels people in this pass.
    pub(super) fn plain(&self) -> Vec<Lane> {
        let wings = self.wings.iter().map(|wing| {
            let motion = (wing.profile.clone(), wing.control);
            Lane::plain(motion, self.bounds, &self.people, &self.fields)
        });
        wings.collect()
    }
}
