//! Millions of scenarios on all processors: how they end, and the worst of them.
//!
//! Only whole numbers are added and only a total order decides what is worst, so that any number of threads gives the
//! same answer to the last bit.

use super::lane::Walk;
use super::scenario::Class;
use super::sequence::{BLOCK, Draw, Family};
use super::tally::{Share, Tally};
use quantity::{Quantity as _, Ratio};
use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicU64, Ordering};

/// Blocks of numbers that a thread takes at a time.
const TAKEN: u64 = 16;

/// The worst scenario of a family.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worst {
    /// Number from which [`Walk::scenario`] makes it again.
    pub seed: u64,
    /// How it ends.
    pub class: Class,
    /// Greatest share of a limit that it uses up.
    pub severity: Ratio,
}

/// How the scenarios of one family end.
#[derive(Debug, Clone, PartialEq)]
pub struct FamilyShares {
    /// The family.
    pub family: Family,
    /// How many were worked.
    pub scenarios: u64,
    /// Share of each class, in the order of [`Class::ALL`].
    pub shares: [Share; 5],
    /// The worst touch, where there was one.
    pub worst: Option<Worst>,
}

/// How the scenarios end.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    /// How many were worked.
    pub scenarios: u64,
    /// Share of each class over all families, in the order of [`Class::ALL`].
    pub shares: [Share; 5],
    /// Each family.
    pub families: Vec<FamilyShares>,
}

#[derive(Debug, Clone, Copy)]
struct Bin {
    tally: Tally,
    worst: Option<Worst>,
}

impl Bin {
    const EMPTY: Self = Self {
        tally: Tally::EMPTY,
        worst: None,
    };

    fn count(&mut self, seed: u64, repeat: usize, class: Class, severity: Option<f64>) {
        self.tally.count(repeat, class);
        if let Some(severity) = severity {
            let severity = Ratio::from_base(severity);
            self.note(Worst {
                seed,
                class,
                severity,
            });
        }
    }

    fn note(&mut self, worst: Worst) {
        let worse = self.worst.is_none_or(|known| {
            let order = worst.class.cmp(&known.class);
            order
                .then(worst.severity.base().total_cmp(&known.severity.base()))
                .then(known.seed.cmp(&worst.seed))
                .is_gt()
        });
        if worse {
            self.worst = Some(worst);
        }
    }

    fn add(&mut self, other: &Self) {
        self.tally.add(&other.tally);
        if let Some(worst) = other.worst {
            self.note(worst);
        }
    }
}

impl Walk {
    /// Works the scenarios with the numbers from zero up to a count, on so many threads; tells how many are done.
    pub fn sweep(&self, count: u64, threads: NonZeroUsize, done: &(dyn Fn(u64) + Sync)) -> Sweep {
        let work = |family: &Family, draw: &Draw| self.work(family, draw);
        sweep_with(&self.families(), count, threads, done, &work)
    }

    /// How the scenario of a number ends.
    pub(super) fn work(&self, family: &Family, draw: &Draw) -> (Class, Option<f64>) {
        let lane = &self.lanes[family.pass];
        let found = lane.run(&lane.drawn(family, draw, self.slant));
        (found.class, found.touch.map(|(_, harm)| harm.severity))
    }
}

/// Works the scenarios with the numbers from zero up to a count with what gives a class, and a severity where something
/// is touched.
pub(super) fn sweep_with(
    families: &[Family],
    count: u64,
    threads: NonZeroUsize,
    done: &(dyn Fn(u64) + Sync),
    run: &(impl Fn(&Family, &Draw) -> (Class, Option<f64>) + Sync),
) -> Sweep {
    let next = AtomicU64::new(0);
    let work = || {
        let mut bins = vec![Bin::EMPTY; families.len()];
        loop {
            let from = next.fetch_add(TAKEN * BLOCK, Ordering::Relaxed);
            if from >= count {
                return bins;
            }
            let until = (from + TAKEN * BLOCK).min(count);
            for seed in from..until {
                work_one(seed, families, &mut bins, run);
            }
            done(until - from);
        }
    };
    let mut sum = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads.get()).map(|_| scope.spawn(work)).collect();
        let mut sum = work();
        for other in others {
            let bins = other.join().unwrap_or_else(|why| resume_unwind(why));
            for (mine, theirs) in sum.iter_mut().zip(&bins) {
                mine.add(theirs);
            }
        }
        sum
    });
    summary(families, &mut sum)
}

/// Works the scenarios of some numbers.
pub(super) fn glance_with(
    families: &[Family],
    seeds: impl Iterator<Item = u64>,
    run: &impl Fn(&Family, &Draw) -> (Class, Option<f64>),
) -> Sweep {
    let mut bins = vec![Bin::EMPTY; families.len()];
    for seed in seeds {
        work_one(seed, families, &mut bins, run);
    }
    summary(families, &mut bins)
}

fn work_one(
    seed: u64,
    families: &[Family],
    bins: &mut [Bin],
    run: &impl Fn(&Family, &Draw) -> (Class, Option<f64>),
) {
    let draw = Draw::new(seed, families.len());
    let (class, severity) = run(&families[draw.family], &draw);
    bins[draw.family].count(seed, draw.repeat, class, severity);
}

fn summary(families: &[Family], bins: &mut [Bin]) -> Sweep {
    let mut all = Tally::EMPTY;
    let mut each = Vec::with_capacity(families.len());
    for (family, bin) in families.iter().zip(bins) {
        all.add(&bin.tally);
        each.push(FamilyShares {
            family: *family,
            scenarios: bin.tally.all(),
            shares: Class::ALL.map(|class| bin.tally.share(class)),
            worst: bin.worst,
        });
    }
    Sweep {
        scenarios: all.all(),
        shares: Class::ALL.map(|class| all.share(class)),
        families: each,
    }
}
