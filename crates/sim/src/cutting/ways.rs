//! Ways to cut one bar, of those that a node leaves.

use super::relax::to_float;
use super::search::Node;
use super::whole::{Pattern, Whole};

/// Most ways to cut the bar with the longest piece that are followed.
const MOST_WAYS: usize = 400;
/// Most choices that are looked at to find them.
const MOST_STEPS: u32 = 40_000;

/// Ways to cut one bar that holds the longest piece that is left.
pub(super) struct Ahead<'w> {
    pub(super) whole: &'w Whole,
    pub(super) node: &'w Node,
    pub(super) worths: &'w [f64],
    /// A bar with less on it makes the whole cost too much.
    pub(super) least: f64,
    pub(super) bar: usize,
    /// How many choices were looked at.
    pub(super) steps: u32,
    pub(super) ways: &'w mut Vec<Pattern>,
}

impl Ahead<'_> {
    /// Tries so many of each kind from this one on; false where there are too many ways.
    pub(super) fn fill(
        &mut self,
        piece: usize,
        room: i64,
        worth: f64,
        counts: &mut Vec<u32>,
    ) -> bool {
        self.steps += 1;
        if self.steps > MOST_STEPS {
            return false;
        }
        let rate = |at: usize| self.worths[at] / to_float(self.whole.widths[at]);
        let rest = (piece..counts.len()).filter(|at| self.node.demand[*at] > 0);
        let most = rest.map(rate).fold(0.0, f64::max) * to_float(room);
        if worth + most < self.least {
            return true;
        }
        if piece == counts.len() {
            let counts = counts.clone();
            self.ways.push(Pattern {
                bar: self.bar,
                counts,
            });
            return self.ways.len() <= MOST_WAYS;
        }
        let width = self.whole.widths[piece];
        let fits = u32::try_from(room / width).unwrap_or(u32::MAX);
        let first = counts[..piece].iter().all(|count| *count == 0) && self.node.demand[piece] > 0;
        for count in (u32::from(first)..=self.node.demand[piece].min(fits)).rev() {
            counts[piece] = count;
            let left = room - width * i64::from(count);
            let with = worth + self.worths[piece] * f64::from(count);
            if !self.fill(piece + 1, left, with, counts) {
                return false;
            }
        }
        counts[piece] = 0;
        true
    }
}
