//! The least cost with fractions allowed, by patterns that are made as they are wanted, and a bound in whole numbers.
//!
//! With each piece taken to be worth something, a bar costs so much more than the most that pieces on it can be worth.
//! All pieces together then cost at least what they are worth, and so much more for each bar that has to be used.
//! Every choice of worths gives such a bound. Worths are rounded to whole numbers first, so that the bound is exact.

use super::master::{Asked, Master};
use super::search::Node;
use super::sums::Sums;
use super::whole::{Pattern, Whole};

/// Rounds in which patterns are made.
const ROUNDS: usize = 400;
/// Bits of a whole worth.
const BITS: i32 = 52;

/// Patterns made so far.
#[derive(Debug, Clone, Default)]
pub(super) struct Pool {
    pub(super) patterns: Vec<Pattern>,
    known: std::collections::BTreeSet<Pattern>,
}

impl Pool {
    /// Adds a pattern; its place where it is new.
    pub(super) fn add(&mut self, pattern: Pattern) -> Option<usize> {
        let new = self.known.insert(pattern.clone());
        new.then(|| {
            self.patterns.push(pattern);
            self.patterns.len() - 1
        })
    }
}

/// What fractions allow.
#[derive(Debug, Clone)]
pub(super) struct Relaxed {
    /// No solution of the node costs less, what is fixed left out.
    pub(super) bound: i128,
    /// How often each pattern is cut.
    pub(super) cut: Vec<(usize, f64)>,
    /// What each kind of piece is worth where the bound was found.
    pub(super) worths: Vec<f64>,
    /// The most that pieces are worth on each kind of bar.
    pub(super) filled: Vec<f64>,
    /// Fractions do not bring all pieces onto the bars either.
    pub(super) lacking: bool,
}

/// The bound of a choice of worths, with the best pattern of each kind of bar.
struct Priced {
    bound: i128,
    filled: Vec<f64>,
    best: Vec<(f64, Pattern)>,
}

/// Solves the relaxation of a node; it may stop as soon as no solution can score below a score.
pub(super) fn relaxed(
    (whole, sums): (&Whole, &Sums),
    pool: &mut Pool,
    node: &Node,
    score: Option<i64>,
) -> Option<Relaxed> {
    let lacking = to_float(whole.dearest()) * f64::from(whole.total() + 1);
    let mut found = None;
    for times in [1.0, 1024.0] {
        found = generated(whole, sums, pool, node, score, lacking * times);
        if found.as_ref().is_none_or(|found| !found.lacking) {
            break;
        }
    }
    found
}

fn generated(
    whole: &Whole,
    sums: &Sums,
    pool: &mut Pool,
    node: &Node,
    score: Option<i64>,
    lacking: f64,
) -> Option<Relaxed> {
    let dearest = to_float(whole.dearest());
    let asked = Asked {
        demand: &node.demand,
        least: &node.least,
        most: &node.most,
        lacking,
    };
    let mut master = Master::new(&asked, dearest);
    for (index, pattern) in pool.patterns.iter().enumerate() {
        if node.allows(pattern) {
            master.add(index, pattern, to_float(whole.costs[pattern.bar]));
        }
    }
    let scale = scale(lacking);
    let mut bound = i128::MIN;
    let (mut worths, mut filled) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        if !master.solve() {
            return None;
        }
        let now = master.worths();
        let priced = priced(whole, sums, node, &now, &master.on_bars(), scale);
        if priced.bound > bound {
            bound = priced.bound;
            (worths, filled) = (now, priced.filled);
        }
        let done = score.is_some_and(|score| node.beyond(whole, bound, score));
        let mut added = false;
        for (reduced, pattern) in priced.best {
            if !done
                && reduced < -1e-9 * dearest
                && let Some(index) = pool.add(pattern.clone())
            {
                master.add(index, &pattern, to_float(whole.costs[pattern.bar]));
                added = true;
            }
        }
        if !added {
            break;
        }
    }
    sums.spend(master.work);
    Some(Relaxed {
        bound,
        cut: master.cut(),
        worths,
        filled,
        lacking: master.lacking() > 1e-7,
    })
}

/// A power of two that brings the greatest worth to its bits.
#[allow(
    clippy::cast_possible_truncation,
    reason = "the logarithm of a finite number over one is small"
)]
fn scale(greatest: f64) -> f64 {
    let bits = greatest.max(1.0).log2().ceil() as i32;
    2.0_f64.powi((BITS - bits).min(40))
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "worths fill fewer bits than a double holds, and the bound is rounded down by one"
)]
fn priced(
    whole: &Whole,
    sums: &Sums,
    node: &Node,
    worths: &[f64],
    on_bars: &[f64],
    scale: f64,
) -> Priced {
    let whole_worths: Vec<i64> = worths
        .iter()
        .map(|worth| (worth * scale).floor() as i64)
        .collect();
    let filled = sums.best(&whole.widths, &whole_worths, &node.demand);
    let pairs = whole_worths.iter().zip(&node.demand);
    let mut bound: i128 = pairs
        .map(|(worth, count)| i128::from(*worth) * i128::from(*count))
        .sum();
    let pieces: u32 = node.demand.iter().sum();
    let mut best = Vec::new();
    for (bar, &room) in whole.rooms.iter().enumerate() {
        let worth = filled.worth(room);
        let cost = to_float(whole.costs[bar]);
        let more = (cost * scale).floor() as i128 - i128::from(worth);
        let used = if more >= 0 {
            node.least[bar]
        } else {
            node.most[bar].min(pieces.max(node.least[bar]))
        };
        bound += more * i128::from(used);
        if node.most[bar] > 0 {
            let counts = filled.counts(room);
            let reduced = cost - on_bars[bar] - worth as f64 / scale;
            best.push((reduced, Pattern { bar, counts }));
        }
    }
    let rooms = whole
        .rooms
        .iter()
        .map(|room| filled.worth(*room) as f64 / scale);
    Priced {
        filled: rooms.collect(),
        bound: (bound as f64 / scale).floor() as i128 - 1,
        best,
    }
}

/// A whole number that a double holds, or nearly.
#[allow(clippy::cast_precision_loss, reason = "it is said so")]
pub(super) fn to_float(value: i64) -> f64 {
    value as f64
}
