//! Counts of outcomes, and what share they are with its error.

use super::scenario::Class;
use super::sequence::REPEATS;
use quantity::{Quantity as _, Ratio};

/// Student's factor for 95 % between two limits with fifteen degrees of freedom, as tables print it.
const STUDENT: f64 = 2.131;

/// A share of scenarios with its error at 95 %.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// The share.
    pub share: Ratio,
    /// How far the true share may be off, from the spread of sixteen independent repeats; where none was seen, or
    /// nothing else, three over the number of scenarios.
    pub error: Ratio,
}

/// How often each class came out, in each repeat.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Tally([[u64; 5]; REPEATS]);

impl Tally {
    pub(super) const EMPTY: Self = Self([[0; 5]; REPEATS]);

    pub(super) fn count(&mut self, repeat: usize, class: Class) {
        self.count_many(repeat, class, 1);
    }

    pub(super) fn count_many(&mut self, repeat: usize, class: Class, count: u64) {
        self.0[repeat][class as usize] += count;
    }

    pub(super) fn add(&mut self, other: &Self) {
        for (mine, theirs) in self.0.iter_mut().zip(&other.0) {
            for (mine, theirs) in mine.iter_mut().zip(theirs) {
                *mine += theirs;
            }
        }
    }

    pub(super) fn of(&self, class: Class) -> u64 {
        self.0.iter().map(|repeat| repeat[class as usize]).sum()
    }

    pub(super) fn all(&self) -> u64 {
        self.0.iter().flatten().sum()
    }

    #[allow(clippy::cast_precision_loss, reason = "counts stay far below 2^53")]
    pub(super) fn share(&self, class: Class) -> Share {
        let (seen, all) = (self.of(class) as f64, self.all() as f64);
        let shares: Vec<f64> = self
            .0
            .iter()
            .map(|repeat| (repeat[class as usize], repeat.iter().sum::<u64>()))
            .filter(|(_, all)| *all > 0)
            .map(|(seen, all)| seen as f64 / all as f64)
            .collect();
        let count = shares.len() as f64;
        let mean = shares.iter().sum::<f64>() / count;
        let square: f64 = shares.iter().map(|share| (share - mean).powi(2)).sum();
        let least = if seen <= 0.0 || seen >= all {
            3.0 / all.max(1.0)
        } else {
            0.0
        };
        let error = if shares.len() < REPEATS {
            1.0
        } else {
            (STUDENT * (square / (count * (count - 1.0))).sqrt()).max(least)
        };
        Share {
            share: Ratio::from_base(seen / all.max(1.0)),
            error: Ratio::from_base(error.min(1.0)),
        }
    }
}
