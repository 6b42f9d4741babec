//! What the last few rounds found, for the next: a finding stays as long as no value is another that was looked at for it.
//!
//! A check is a function of the site, so it finds the same where all that it looked at is the same. Measured values note
//! who looks at them; everything else of two sites has to be equal before anything is taken over, but for the lines on which
//! things stand: those are told anew in what is taken over.

use crate::finding::{Finding, moved};
use quantity::{Looked, looking};
use site::{Changed, Site};
use std::collections::{BTreeSet, VecDeque};
use std::sync::{Arc, Mutex, PoisonError};

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
    finding: Arc<Finding>,
    looked: Looked,
}

/// An earlier round over a site that differs from the one of now in these values and lines only.
pub(crate) struct Earlier<'r> {
    found: &'r Found,
    changed: Changed,
}

impl Rounds {
    /// An earlier round from which findings can be taken over.
    pub(crate) fn like(&self, site: &Site) -> Option<Earlier<'_>> {
        self.0.iter().find_map(|found| {
            let changed = found.site.changed(site)?;
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
        let is_same = found.about.is_apart_from(changed.values());
        is_same.then_some(Sooner { found, changed })
    }
}

/// What a check found earlier, which goes through the same things now.
#[derive(Clone, Copy)]
pub(crate) struct Sooner<'r> {
    found: &'r CheckFound,
    changed: &'r Changed,
}

impl Sooner<'_> {
    /// All of it, where all of it stays.
    pub(crate) fn whole(&self) -> Option<CheckFound> {
        let all = 0..self.found.asked.len();
        let asked: Option<Vec<Kept>> = all.map(|at| self.stays(at)).collect();
        asked.map(|asked| CheckFound {
            about: self.found.about,
            asked,
        })
    }

    fn stays(&self, at: usize) -> Option<Kept> {
        let kept = self.found.asked.get(at)?;
        let stays = kept.looked.is_apart_from(self.changed.values());
        let finding = stays.then(|| moved(&kept.finding, self.changed))??;
        Some(Kept {
            finding,
            looked: kept.looked,
        })
    }
}

/// Which findings of a check somebody has taken upon itself, where several threads go through it at once.
#[derive(Debug, Default)]
pub(crate) struct Taken(Mutex<BTreeSet<usize>>);

impl Taken {
    /// Takes a finding; false where somebody else has it.
    fn take(&self, place: usize) -> bool {
        let mut taken = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        taken.insert(place)
    }
}

/// The findings of a check as they are made, or taken over from earlier.
pub(crate) struct Finds<'r> {
    asked: Vec<Option<Kept>>,
    sooner: Option<Sooner<'r>>,
    taken: &'r Taken,
}

/// What a check found, without the findings that others have taken.
#[derive(Debug)]
pub(crate) struct PartFound {
    about: Looked,
    asked: Vec<Option<Kept>>,
}

impl<'r> Finds<'r> {
    /// What a check finds while it asks, of what nobody else has taken.
    pub(crate) fn while_asking(
        (sooner, taken): (Option<Sooner<'r>>, &'r Taken),
        ask: impl FnOnce(&mut Self),
    ) -> PartFound {
        let mut finds = Self {
            asked: Vec::new(),
            sooner,
            taken,
        };
        let ((), about) = looking(|| ask(&mut finds));
        PartFound {
            about,
            asked: finds.asked,
        }
    }

    /// The next finding: as it was, or made now.
    pub(crate) fn next(&mut self, make: impl FnOnce() -> Finding) {
        let place = self.asked.len();
        let kept = self.taken.take(place).then(|| {
            let stays = self.sooner.and_then(|sooner| sooner.stays(place));
            stays.unwrap_or_else(|| {
                let (finding, looked) = looking(make);
                Kept {
                    finding: Arc::new(finding),
                    looked,
                }
            })
        });
        self.asked.push(kept);
    }
}

impl PartFound {
    /// All of a check, where nothing was made.
    pub(crate) fn of_whole(found: CheckFound) -> Self {
        Self {
            about: found.about,
            asked: found.asked.into_iter().map(Some).collect(),
        }
    }

    /// Puts in what somebody else found of the same check at the same time.
    pub(crate) fn join(&mut self, other: Self) {
        for (own, other) in self.asked.iter_mut().zip(other.asked) {
            *own = own.take().or(other);
        }
    }

    /// What the check found, once everybody has put in theirs.
    pub(crate) fn whole(self) -> CheckFound {
        CheckFound {
            about: self.about,
            asked: self.asked.into_iter().flatten().collect(),
        }
    }
}

impl CheckFound {
    /// Its findings.
    pub(crate) fn findings(&self) -> impl Iterator<Item = &Arc<Finding>> {
        self.asked.iter().map(|kept| &kept.finding)
    }
}
