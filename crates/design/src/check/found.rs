//! What the last few rounds found, for the next: a finding stays as long as no value is another that was looked at for it.
//!
//! A check is a function of the site, so it finds the same where all that it looked at is the same. Measured values note
//! who looks at them; everything else of two sites has to be equal, lines included, before anything is taken over.

use crate::finding::Finding;
use quantity::{Looked, looking};
use site::Site;
use std::collections::VecDeque;

/// Rounds that are kept: a site, what is tried in it, and a step back from either.
const ROUNDS: usize = 4;

/// The last few rounds, the newest first.
#[derive(Debug, Default)]
pub(crate) struct Rounds(VecDeque<Found>);

/// What a round found.
#[derive(Debug)]
struct Found {
    site: Site,
    /// For each check, in its place.
    checks: Vec<CheckFound>,
}

/// What a check found.
#[derive(Debug, Clone)]
pub(crate) struct CheckFound {
    /// The values that it looked at to tell what there is to ask about.
    about: Looked,
    /// What it found, one after the other.
    asked: Vec<Kept>,
}

/// A finding, and the values that were looked at for it.
#[derive(Debug, Clone)]
struct Kept {
    finding: Finding,
    looked: Looked,
}

/// An earlier round over a site that differs from the one of now in these values only.
pub(crate) struct Earlier<'r> {
    found: &'r Found,
    changed: Looked,
}

impl Rounds {
    /// An earlier round from which findings can be taken over.
    pub(crate) fn like(&self, site: &Site) -> Option<Earlier<'_>> {
        self.0.iter().find_map(|found| {
            let changed = found.site.values_changed(site)?;
            Some(Earlier { found, changed })
        })
    }

    /// Keeps what a round found, in the order of the checks.
    pub(crate) fn keep(&mut self, site: &Site, checks: Vec<CheckFound>) {
        let site = site.clone();
        self.0.push_front(Found { site, checks });
        self.0.truncate(ROUNDS);
    }
}

impl Earlier<'_> {
    /// What a check found, where it would go through the same things now.
    pub(crate) fn of(&self, check: usize) -> Option<Sooner<'_>> {
        let found = self.found.checks.get(check)?;
        let changed = &self.changed;
        let is_same = found.about.is_apart_from(changed);
        is_same.then_some(Sooner { found, changed })
    }
}

/// What a check found earlier, which goes through the same things now.
#[derive(Clone, Copy)]
pub(crate) struct Sooner<'r> {
    found: &'r CheckFound,
    changed: &'r Looked,
}

impl Sooner<'_> {
    /// All of it, where all of it stays.
    pub(crate) fn whole(&self) -> Option<CheckFound> {
        let mut all = 0..self.found.asked.len();
        all.all(|at| self.stays(at).is_some())
            .then(|| self.found.clone())
    }

    fn stays(&self, at: usize) -> Option<&Kept> {
        let kept = self.found.asked.get(at)?;
        kept.looked.is_apart_from(self.changed).then_some(kept)
    }
}

/// The findings of a check as they are made, or taken over from earlier.
pub(crate) struct Finds<'r> {
    asked: Vec<Kept>,
    sooner: Option<Sooner<'r>>,
}

impl<'r> Finds<'r> {
    /// What a check finds while it asks.
    pub(crate) fn while_asking(
        sooner: Option<Sooner<'r>>,
        ask: impl FnOnce(&mut Self),
    ) -> CheckFound {
        let mut finds = Self {
            asked: Vec::new(),
            sooner,
        };
        let ((), about) = looking(|| ask(&mut finds));
        CheckFound {
            about,
            asked: finds.asked,
        }
    }

    /// The next finding: as it was, or made now.
    pub(crate) fn next(&mut self, make: impl FnOnce() -> Finding) {
        let stays = self
            .sooner
            .and_then(|sooner| sooner.stays(self.asked.len()).cloned());
        let kept = stays.unwrap_or_else(|| {
            let (finding, looked) = looking(make);
            Kept { finding, looked }
        });
        self.asked.push(kept);
    }
}

impl CheckFound {
    /// Its findings.
    pub(crate) fn findings(&self) -> impl Iterator<Item = &Finding> {
        self.asked.iter().map(|kept| &kept.finding)
    }
}
