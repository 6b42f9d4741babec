//! What sampling and proof say of a gate, as values that can be shown, and as the finding.

use super::told::{Told, rank};
use super::{GateWalk, Seed, Slot};
use crate::Finding;
use crate::asking::Asking;
use crate::check::walk::anyone_hit::{CHECK, decided};
use crate::finding::made;
use crate::subject::About;
use quantity::Quantity as _;
use serde::{Deserialize, Serialize};
use sim::walk::{Class, Direction, Family, Habit, Sweep, Verdict, Way, Worst};
use std::num::NonZeroUsize;
use std::sync::Arc;

/// How a share of the walks ends.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ShareTold {
    /// How they end.
    pub ends: String,
    /// Their share of all.
    pub share: f64,
    /// How far the true share may be off, at 95 %.
    pub error: f64,
}

/// What a sweep comes to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SweepTold {
    /// How many walks were worked.
    pub walks: u64,
    /// How they end.
    pub shares: Vec<ShareTold>,
    /// The worst touches, one of a family at most, the worst first.
    pub worst: Vec<Told>,
    /// Walks that end badly.
    pub any_bad: bool,
}

/// How a family stands.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// No touch beyond the limits is possible.
    Proved,
    /// A walk ends badly.
    Refuted,
    /// Neither was shown.
    Undecided,
}

/// One family of walks, proved or not.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FamilyTold {
    /// Who does what, while the leaf moves which way.
    pub family: String,
    /// How it stands.
    pub standing: Standing,
    /// Share of the space of touches that is open.
    pub open: f64,
    /// Boxes of it that were looked at.
    pub boxes: u64,
    /// The walk that ends badly.
    pub refuted_by: Option<Told>,
}

/// How many kinds of walk are proved, how many not.
pub fn told_together(families: &[FamilyTold]) -> String {
    let count = |standing| {
        let of_it = families.iter().filter(|family| family.standing == standing);
        of_it.count()
    };
    format!(
        "Of {} kinds of walk {} are proved safe, {} end badly, {} are left open.",
        families.len(),
        count(Standing::Proved),
        count(Standing::Refuted),
        count(Standing::Undecided)
    )
}

/// The worst touches that are told.
const TOLD: usize = 5;

impl GateWalk<'_> {
    /// How many families are proved one by one.
    pub fn families(&self) -> usize {
        self.walk.provable().len() + self.reaches()
    }

    /// Works the walks with the numbers from zero up to a count; tells how many are done.
    pub fn sweep(
        &self,
        walks: u64,
        threads: NonZeroUsize,
        done: &(dyn Fn(u64) + Sync),
    ) -> SweepTold {
        self.swept(&self.walk.sweep(walks, threads, done))
    }

    /// Works so many walks of each family.
    pub(crate) fn glance(&self, asking: &Asking<'_>, each: u64) -> SweepTold {
        self.swept(&self.glanced(asking, each))
    }

    fn glanced(&self, asking: &Asking<'_>, each: u64) -> Arc<Sweep> {
        let world = &self.lowered.world;
        asking.simulate(
            |known| &known.glances,
            &(world, each),
            || Arc::new(self.walk.glance(each)),
        )
    }

    fn swept(&self, sweep: &Sweep) -> SweepTold {
        let shares = Class::ALL.iter().zip(&sweep.shares);
        let mut worst: Vec<Worst> = sweep.families.iter().filter_map(|one| one.worst).collect();
        worst.sort_by(|a, b| {
            let order = rank(b.class).cmp(&rank(a.class));
            order.then(b.severity.base().total_cmp(&a.severity.base()))
        });
        SweepTold {
            walks: sweep.scenarios,
            shares: shares
                .map(|(class, share)| ShareTold {
                    ends: class.words().to_owned(),
                    share: share.share.base(),
                    error: share.error.base(),
                })
                .collect(),
            any_bad: worst.iter().any(|one| one.class.is_bad()),
            worst: worst
                .iter()
                .take(TOLD)
                .map(|one| self.told(one.seed.into()))
                .collect(),
        }
    }

    /// Somebody is hit in a first look at so many walks of each family.
    pub(crate) fn is_hit_in_a_glance(&self, asking: &Asking<'_>, each: u64) -> bool {
        let sweep = self.glanced(asking, each);
        let mut worst = sweep.families.iter().filter_map(|family| family.worst);
        worst.any(|worst| worst.class.is_bad())
    }

    /// In how many families somebody is hit with one device less, and one of them in words.
    pub(crate) fn hit_without(
        &self,
        asking: &Asking<'_>,
        slot: &Slot,
        each: u64,
    ) -> (usize, String) {
        let world = self.without(slot);
        let hit = asking.simulate(
            |known| &known.hits,
            &(&world, each),
            || world.lower().map(|walk| walk.hit(each)),
        );
        let Ok(hit) = hit else {
            return (0, String::new());
        };
        let first = hit.first().map(|family| self.family_in_words(family));
        (hit.len(), first.unwrap_or_default())
    }

    /// Proves or refutes each family, looking at so many boxes at most in each part of its space; tells when one is done.
    pub fn prove(&self, most: u64, threads: NonZeroUsize, done: &dyn Fn()) -> Vec<FamilyTold> {
        let families = self.walk.provable();
        let mut all: Vec<FamilyTold> = families
            .iter()
            .map(|family| {
                let told = self.proved(family, most, threads);
                done();
                told
            })
            .collect();
        all.extend(self.prove_reaches(most, done));
        all
    }

    fn proved(&self, family: &Family, most: u64, threads: NonZeroUsize) -> FamilyTold {
        let name = self.family_in_words(family);
        let open = |share| FamilyTold {
            family: name.clone(),
            standing: Standing::Undecided,
            open: share,
            boxes: 0,
            refuted_by: None,
        };
        let Ok(proof) = self.walk.prove(family, most, threads) else {
            return open(1.0);
        };
        let mut told = open(0.0);
        told.boxes = proof.boxes;
        match proof.verdict {
            Verdict::Proved => told.standing = Standing::Proved,
            Verdict::Undecided(share) => told.open = share.base(),
            Verdict::Refuted(scenario, _) => {
                told.standing = Standing::Refuted;
                told.refuted_by = Some(self.told(Seed::Spelled(scenario)));
            }
        }
        told
    }

    fn family_in_words(&self, family: &Family) -> String {
        let world = &self.lowered.world;
        let moving = match world.direction(family.pass) {
            Some(Direction::Opening) => "opening",
            _ => "closing",
        };
        let way = match family.way {
            Way::In => "in",
            Way::Out => "out",
        };
        let does = match family.habit {
            Habit::Cross => "goes",
            Habit::Follow => "follows",
            Habit::Stop => "stays in the way, going",
            Habit::Stand => "is there before it starts, facing",
            Habit::Lean => "has a hand in the gap before it starts, facing",
        };
        format!(
            "{}, {does} {way}, leaf {moving}",
            world.bodies()[family.body].name
        )
    }
}

impl<'s> GateWalk<'s> {
    /// The answer to whether anyone can be hit.
    pub fn finding(&self, sweep: &SweepTold, families: &[FamilyTold]) -> Finding {
        let mut asking = Asking::new(self.site.site.unit_system());
        let answer = |asking: &mut Asking<'s>| {
            Self::read(asking, self.site, self.gate)?;
            decided(
                asking,
                sweep,
                families,
                (self.site.site.code_basis, self.judged()),
            )
        };
        made(
            &CHECK,
            About::new(&self.gate.origin, &self.gate.id),
            &mut asking,
            &answer,
        )
    }
}
