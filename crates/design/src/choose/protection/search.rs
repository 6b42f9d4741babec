//! The search for the fewest devices: candidates that mend walks, small sets of them walked in full, what is left added.

use super::ProtectionSet;
use super::cover::Cover;
use super::proposed::{Proposed, assumed, proposed, without_protection};
use crate::answers::findings;
use crate::asking::Asking;
use crate::check::{protect, round};
use crate::choose::tried::Tried;
use crate::verdict::Verdict as Answer;
use crate::verdicts::QuickVerdict;
use crate::walk::{GateWalk, Seed};
use sim::walk::{AnyWalk, Scenario, Verdict};
use site::{Site, SourceFile};
use std::collections::{BTreeMap, BTreeSet};
use std::num::NonZeroUsize;

/// Walks of each family that a set has to stand.
const FULL: u64 = 1_024;
/// Of these, every so manieth is tried with each candidate first.
const FIRST: usize = 41;
/// Walks that end badly and are added to the collection after a set has failed.
const ADDED: usize = 64;
/// The most devices of a set.
const MOST: usize = 8;
/// Threads that look uphill: what they find is the same for any number.
const THREADS: NonZeroUsize = NonZeroUsize::MIN.saturating_add(1);
/// Sets that are walked in full before the search gives up.
const WALKED: usize = 60;

/// The search at one gate.
pub(super) struct Search<'s> {
    site: &'s Site,
    /// The site without devices that see people, at this gate.
    bare: Site,
    at: usize,
    pub(super) candidates: Vec<Proposed>,
    /// What the walks rest on.
    pub(super) assumed: Vec<String>,
    /// Sets that were walked in full.
    pub(super) walked: usize,
    /// What still ended badly with them.
    known: BTreeMap<(bool, Vec<usize>), Vec<Seed>>,
}

/// A set that was walked in full: what is still wrong with it, least first, then its devices.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Walked {
    left: usize,
    failing: usize,
    size: usize,
    set: Vec<usize>,
}

impl<'s> Search<'s> {
    pub(super) fn new(
        files: (&SourceFile, &[SourceFile]),
        site: &'s Site,
        at: usize,
    ) -> Result<Self, Vec<String>> {
        let bare = without_protection(site, at);
        Ok(Self {
            candidates: proposed(files, &bare, at),
            assumed: assumed(&bare, at)?,
            site,
            bare,
            at,
            walked: 0,
            known: BTreeMap::new(),
        })
    }

    /// No device that sees people is there yet.
    pub(super) fn nothing_is_there(&self) -> bool {
        self.bare.device.len() == self.site.device.len()
    }

    /// The fewest candidates with which nobody is hit, by themselves or beside what is there.
    pub(super) fn fewest(&mut self, there: bool) -> Option<ProtectionSet> {
        let bare = self.walk(there, &[])?;
        let singles: Vec<Option<AnyWalk>> = (0..self.candidates.len())
            .map(|at| self.walk(there, &[at]))
            .collect();
        let (mut cover, mut known) = (Cover::default(), BTreeSet::new());
        let mut note = |cover: &mut Cover, seeds: &mut dyn Iterator<Item = Seed>| {
            for seed in seeds {
                if known.insert(seed.to_string()) {
                    cover.add(menders(&singles, &bare, seed));
                }
            }
        };
        note(&mut cover, &mut bad(&bare, FIRST).into_iter());
        let mut refused = BTreeSet::new();
        let mut best: Option<Walked> = None;
        let mut size = 0;
        while size <= MOST && refused.len() < WALKED {
            // A larger set is looked at only as long as it could be the smaller one in the end.
            let sound = |one: &&Walked| one.left == 0 && one.failing == 0;
            if best
                .as_ref()
                .filter(sound)
                .is_some_and(|best| size >= best.size)
            {
                break;
            }
            let Some(set) = cover.sets(size, &refused).into_iter().next() else {
                size += 1;
                continue;
            };
            self.walked += 1;
            let left = self.left(there, &set);
            let apart = left.len() / ADDED + 1;
            refused.insert(set.clone());
            note(&mut cover, &mut left.into_iter().step_by(apart));
            let found = self.completed(there, set);
            if best.as_ref().is_none_or(|best| found < *best) {
                best = Some(found);
            }
        }
        let best = best.unwrap_or_else(|| self.completed(there, cover.greedy(MOST)));
        Some(self.told(there, &best.set))
    }

    /// A set with what the rules ask for besides, one device after another as long as one helps.
    fn completed(&mut self, there: bool, mut set: Vec<usize>) -> Walked {
        let mut failing = self.failing(there, &set);
        while failing > 0 && set.len() < MOST {
            let others = (0..self.candidates.len()).filter(|at| !set.contains(at));
            let with = |at: usize| {
                let with: Vec<usize> = set.iter().copied().chain([at]).collect();
                (self.failing(there, &with), at)
            };
            match others.map(with).min() {
                Some((fewer, at)) if fewer < failing => {
                    set.push(at);
                    failing = fewer;
                }
                _ => break,
            }
        }
        Walked {
            left: self.left(there, &set).len(),
            failing,
            size: set.len(),
            set,
        }
    }

    /// How often the rules of number and distance fail with a set.
    fn failing(&self, there: bool, set: &[usize]) -> usize {
        let site = self.with(there, set);
        let checks = [protect::count::CHECK, protect::minimum_distance::CHECK];
        let verdicts = round::verdicts(&site, checks.iter());
        let wrong = |one: &&QuickVerdict<'_>| {
            matches!(one.verdict, Answer::Fails | Answer::OutsideThisTool)
        };
        verdicts.iter().filter(wrong).count()
    }

    /// The walks that end badly with a set: sampled; where none does, uphill from those that are pressed hardest.
    fn left(&mut self, there: bool, set: &[usize]) -> Vec<Seed> {
        let asked = (there, set.to_vec());
        if let Some(known) = self.known.get(&asked) {
            return known.clone();
        }
        let walk = self.walk(there, set);
        let left = walk.map(|walk| {
            let sampled = bad(&walk, 1);
            if sampled.is_empty() {
                uphill(&walk)
            } else {
                sampled
            }
        });
        let left = left.unwrap_or_default();
        self.known.insert(asked, left.clone());
        left
    }

    fn walk(&self, there: bool, set: &[usize]) -> Option<AnyWalk> {
        let site = self.with(there, set);
        let mut asking = Asking::new(site.site.unit_system());
        let read = GateWalk::read(&mut asking, &site, &site.gate[self.at]).ok()?;
        Some(read.walk)
    }

    /// The site with a set in it.
    fn with(&self, there: bool, set: &[usize]) -> Site {
        let mut site = self.without(there).clone();
        let devices = set.iter().map(|at| self.candidates[*at].device.clone());
        site.device.extend(devices);
        site
    }

    /// The site before anything is added.
    fn without(&self, there: bool) -> &Site {
        if there { self.site } else { &self.bare }
    }

    fn told(&mut self, there: bool, set: &[usize]) -> ProtectionSet {
        let site = self.with(there, set);
        let tried = Tried::new(
            "these devices",
            None,
            findings(&site),
            &findings(self.without(there)),
        );
        let left = self.left(there, set);
        let chosen = || set.iter().map(|at| &self.candidates[*at].placed);
        let mut asking = Asking::new(site.site.unit_system());
        let read = GateWalk::read(&mut asking, &site, &site.gate[self.at]).ok();
        let (mut left_worst, mut left_for) = (None, Vec::new());
        if let Some(read) = &read {
            left_worst = left.first().map(|seed| read.told(*seed).sentence);
            for words in left.iter().filter_map(|seed| read.whose(*seed)) {
                if !left_for.contains(&words) {
                    left_for.push(words);
                }
            }
        }
        let walk = self.walk(there, set);
        let table = |one: &super::place::Placed| one.lines.join("\n");
        ProtectionSet {
            devices: chosen().map(|one| one.words.clone()).collect(),
            walks: walk.map_or(0, |walk| walk.families().len() as u64 * FULL),
            left: left.len(),
            left_worst,
            left_for,
            write: chosen().map(table).collect(),
            failing: tried.candidate.failing,
            open: tried.candidate.open.len(),
        }
    }
}

/// The sampled walks that end badly; every so manieth is looked at.
fn bad(walk: &AnyWalk, step: usize) -> Vec<Seed> {
    let count = walk.families().len() as u64 * FULL;
    (0..count)
        .step_by(step)
        .filter(|number| is_bad(walk, &walk.scenario(*number)))
        .map(Seed::Number)
        .collect()
}

/// Walks that end badly too seldom to be sampled: the proofs of leaves that turn or rise come upon them first.
fn uphill(walk: &AnyWalk) -> Vec<Seed> {
    if matches!(walk, AnyWalk::Sliding(_)) {
        return Vec::new();
    }
    let proofs = walk.prove_all(0, THREADS).into_iter();
    let found = proofs.filter_map(|proof| match proof.verdict {
        Verdict::Refuted(scenario, _) => Some(Seed::Spelled(scenario)),
        _ => None,
    });
    found.collect()
}

fn is_bad(walk: &AnyWalk, scenario: &Scenario) -> bool {
    let outcome = walk.evaluate(scenario);
    outcome.is_ok_and(|outcome| outcome.class.is_bad())
}

/// The candidates that by themselves make a walk end well.
fn menders(singles: &[Option<AnyWalk>], bare: &AnyWalk, seed: Seed) -> Vec<usize> {
    let scenario = match seed {
        Seed::Number(number) => bare.scenario(number),
        Seed::Spelled(scenario) => scenario,
    };
    let each = singles.iter().enumerate();
    each.filter(|(_, walk)| walk.as_ref().is_some_and(|walk| !is_bad(walk, &scenario)))
        .map(|(at, _)| at)
        .collect()
}
