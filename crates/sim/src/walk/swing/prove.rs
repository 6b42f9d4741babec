//! Proofs about leaves that swing: of those who stand in their way. Those who cross or stop are refuted where the sequence
//! brings a bad end, and open otherwise.

use super::super::path::Case;
use super::super::prove::{Proof, Verdict};
use super::super::scenario::Way;
use super::super::sequence::{Draw, Family, Habit};
use super::super::unproved::{check_family, each_proved, halve, joined, open};
use super::lane::{SwingWalk, outcome, scenario};
use super::stand::Standing;
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

    fn proof(&self, family: &Family, most: u64) -> Proof {
        let lane = &self.lanes[family.pass];
        let ends = |case: &Case| {
            let found = lane.run(case);
            let bad = found.class.is_bad();
            bad.then(|| Verdict::Refuted(scenario(family.pass, case), outcome(case.way, &found)))
        };
        let tried = |number: u64| ends(&lane.drawn(family, &Draw::new(number, 1), self.lean));
        let known = open(family, &tried);
        let is_open = matches!(known.verdict, Verdict::Undecided(_));
        if family.habit != Habit::Stand || !is_open {
            return known;
        }
        let mut parts = Vec::new();
        for (wing, leaf) in lane.wings.iter().enumerate() {
            for &part in &leaf.touchable[family.body] {
                let standing = Standing {
                    lane,
                    wing,
                    body: family.body,
                    way: usize::from(family.way == Way::Out),
                    part,
                };
                let done = halve(
                    &standing.whole(self.lean),
                    most.saturating_mul(PARTS),
                    &|of| standing.bad(of),
                    &|middle| ends(&standing.case(middle)),
                );
                let ended = done.bad.is_some();
                parts.push(done);
                if ended {
                    return joined(family, parts);
                }
            }
        }
        joined(family, parts)
    }
}

/// As many boxes as a sliding leaf's proof looks at in its fixed parts.
const PARTS: u64 = 64;
