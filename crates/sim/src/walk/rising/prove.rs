//! Proofs about leaves that rise.

use super::super::prove::{Proof, Verdict};
use super::super::sequence::{Draw, Family, Habit};
use super::super::swing::{outcome, scenario};
use super::super::unproved::{check_family, each_proved, open};
use super::lane::RisingWalk;
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
        _threads: NonZeroUsize,
    ) -> Result<Proof, OutOfReach> {
        check_family(&self.provable(), family)?;
        Ok(self.proof(family, most))
    }

    /// Proves or refutes every family.
    pub fn prove_all(&self, most: u64, threads: NonZeroUsize) -> Vec<Proof> {
        each_proved(&self.provable(), threads, &|family| {
            self.proof(family, most)
        })
    }

    fn proof(&self, family: &Family, _most: u64) -> Proof {
        let lane = &self.lanes[family.pass];
        let tried = |number: u64| {
            let case = lane.drawn(family, &Draw::new(number, 1), self.slant);
            let found = lane.run(&case);
            let bad = found.class.is_bad();
            bad.then(|| Verdict::Refuted(scenario(family.pass, &case), outcome(case.way, &found)))
        };
        open(family, &tried)
    }
}
