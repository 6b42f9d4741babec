//! Proofs about leaves that rise.

use super::super::lane::Lane;
use super::super::prove::Proof;
use super::super::prove::place::{Job, kinds};
use super::super::prove::search::search_all;
use super::super::sequence::{Family, Habit};
use super::super::unproved::{check_family, each_proved, effort, proof};
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
        let run = |point| {
            let case = lane.placed(family, point, self.slant);
            let found = lane.run(&case);
            (case, found)
        };
        proof(family, &run, || {
            let plain = lane.plain();
            search_all(&self.jobs(family, &plain), effort(most), threads)
        })
    }

    /// What the proof of a family is about: each kind of touch, each cylinder.
    pub(super) fn jobs<'a>(
        &'a self,
        family: &'a Family,
        plain: &'a Lane,
    ) -> Vec<Job<'a, Bound<'a>>> {
        let lane = &self.lanes[family.pass];
        let parts = lane.people[family.body].parts.len();
        let kinds = kinds(family.habit, &lane.control).into_iter();
        let each = kinds.flat_map(|kind| (0..parts).map(move |part| (kind, part)));
        each.map(|((kind, back), part)| Job {
            shape: Bound(lane),
            lane: plain,
            delay: 0.0,
            slant: self.slant,
            family,
            kind,
            part,
            back,
        })
        .collect()
    }
}

impl RisingLane {
    pub(super) fn plain(&self) -> Lane {
        let motion = (self.profile.clone(), self.control);
        Lane::plain(motion, self.bounds, &self.people, &self.fields)
    }
}
