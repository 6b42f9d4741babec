//! Millions of scenarios on all processors: how they end, and the worst of them.
//!
//! Only whole numbers are added and only a total order decides what is worst, so that any number of threads gives the
//! same answer to the last bit.

use super::lane::Walk;
use super::scenario::Class;
use super::sequence::{BLOCK, Block, Draw, Family};
use super::stop;
use super::tally::{Share, Tally};
use quantity::{Quantity as _, Ratio};
use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicU64, Ordering};

/// The most blocks of numbers that a thread takes at a time.
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

/// How the scenarios of one family ended so far.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bin {
    tally: Tally,
    worst: Option<Worst>,
}

impl Bin {
    pub(super) const EMPTY: Self = Self {
        tally: Tally::EMPTY,
        worst: None,
    };

    /// Counts one scenario, with its severity where something is touched.
    pub(super) fn count(&mut self, seed: u64, repeat: usize, class: Class, severity: Option<f64>) {
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

    /// Counts so many scenarios of a repeat in which nothing is touched.
    pub(super) fn count_many(&mut self, repeat: usize, class: Class, count: u64) {
        self.tally.count_many(repeat, class, count);
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
        let work = |family: &Family, block: &Block, bin: &mut Bin| self.work(family, block, bin);
        sweep_with(&self.families(), count, threads, done, &work)
    }
}

/// Works each scenario of a block by itself.
pub(super) fn each(block: &Block, bin: &mut Bin, run: impl Fn(&Draw) -> (Class, Option<f64>)) {
    for (seed, draw) in block.draws() {
        let (class, severity) = run(&draw);
        bin.count(seed, draw.repeat, class, severity);
    }
}

/// Works the scenarios with the numbers from zero up to a count with what works a block of them.
pub(super) fn sweep_with(
    families: &[Family],
    count: u64,
    threads: NonZeroUsize,
    done: &(dyn Fn(u64) + Sync),
    run: &(impl Fn(&Family, &Block, &mut Bin) + Sync),
) -> Sweep {
    let left = |block: u64| BLOCK.min(count - block * BLOCK);
    let blocks = count.div_ceil(BLOCK);
    share_out(families, (blocks, &left), threads, done, run)
}

/// Works the first so many scenarios of each family on all processors; the numbers are those of a sweep.
pub(super) fn glance_with(
    families: &[Family],
    each: u64,
    run: &(impl Fn(&Family, &Block, &mut Bin) + Sync),
) -> Sweep {
    let count = families.len() as u64;
    let left = |block: u64| BLOCK.min(each - block / count * BLOCK);
    let blocks = each.div_ceil(BLOCK) * count;
    let threads = std::thread::available_parallelism().unwrap_or(NonZeroUsize::MIN);
    share_out(families, (blocks, &left), threads, &|_| (), run)
}

/// Works so many blocks, each with how many of its numbers, on so many threads.
fn share_out(
    families: &[Family],
    (blocks, left): (u64, &(impl Fn(u64) -> u64 + Sync)),
    threads: NonZeroUsize,
    done: &(dyn Fn(u64) + Sync),
    run: &(impl Fn(&Family, &Block, &mut Bin) + Sync),
) -> Sweep {
    let next = AtomicU64::new(0);
    let stop = stop::handed_on();
    let taken = (blocks / (8 * threads.get() as u64)).clamp(1, TAKEN);
    let work = || {
        let mut bins = vec![Bin::EMPTY; families.len()];
        loop {
            let from = next.fetch_add(taken, Ordering::Relaxed);
            let until = (from + taken).min(blocks);
            if from >= until || stop::is_asked() {
                return bins;
            }
            let some = (from..until).map(|block| (block, left(block)));
            done(work_blocks(some, families, &mut bins, run));
        }
    };
    let mut sum = std::thread::scope(|scope| {
        let other = || stop::under(stop.clone(), work);
        let others: Vec<_> = (1..threads.get()).map(|_| scope.spawn(other)).collect();
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

/// Works blocks, each with how many of its numbers; gives how many that were.
fn work_blocks(
    blocks: impl Iterator<Item = (u64, u64)>,
    families: &[Family],
    bins: &mut [Bin],
    run: &impl Fn(&Family, &Block, &mut Bin),
) -> u64 {
    let mut done = 0;
    for (block, count) in blocks {
        let block = Block::new(block, count, families.len());
        let family = block.family();
        run(&families[family], &block, &mut bins[family]);
        done += count;
    }
    done
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
