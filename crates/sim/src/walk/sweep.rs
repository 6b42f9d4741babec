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
        let families = self.families();
        let next = AtomicU64::new(0);
        let work = || {
            let mut bins = vec![
                Bin {
                    tally: Tally::EMPTY,
                    worst: None
                };
                families.len()
            ];
            loop {
                let from = next.fetch_add(TAKEN * BLOCK, Ordering::Relaxed);
                if from >= count {
                    return bins;
                }
                let until = (from + TAKEN * BLOCK).min(count);
                for seed in from..until {
                    self.work(seed, &families, &mut bins);
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
        summary(&families, &mut sum)
    }

    fn work(&self, seed: u64, families: &[Family], bins: &mut [Bin]) {
        let draw = Draw::new(seed, families.len());
        let family = &families[draw.family];
        let lane = &self.lanes[family.pass];
        let found = lane.run(&lane.drawn(family, &draw, self.slant));
        let bin = &mut bins[draw.family];
        bin.tally.count(draw.repeat, found.class);
        if let Some((_, harm)) = found.touch {
            bin.note(Worst {
                seed,
                class: found.class,
                severity: Ratio::from_base(harm.severity),
            });
        }
    }
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
