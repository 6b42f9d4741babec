//! Elimination of a sparse symmetric matrix, L·D·Lᵀ: the order and the places of its entries once, the numbers as often as wanted.
//!
//! Places are eliminated in the order of least degree. A tree is then taken apart from its leaves, and nothing fills in.

use std::collections::BTreeSet;

/// The order of elimination and where every entry stands.
#[derive(Debug, Clone)]
pub(super) struct Pattern {
    /// Row of the matrix, by order of elimination, for each unknown.
    pub(super) place: Vec<usize>,
    /// First entry of each column, and the end of the last.
    start: Vec<usize>,
    /// Row of each entry below the diagonal, column by column, rising.
    rows: Vec<usize>,
    /// For each pair of entries of each column, in order, where their product goes.
    targets: Vec<Target>,
}

/// Where a product of two entries goes.
#[derive(Debug, Clone, Copy)]
enum Target {
    Diagonal(usize),
    Below(usize),
}

/// Numbers of a matrix, and after elimination those of its factors.
#[derive(Debug, Clone)]
pub(super) struct Numbers {
    pub(super) diagonal: Vec<f64>,
    pub(super) below: Vec<f64>,
}

/// The matrix has no inverse with only positive pivots.
#[derive(Debug, Clone, Copy)]
pub(super) struct NotPositive;

impl Pattern {
    /// The pattern of a matrix of so many unknowns with entries at these pairs.
    pub(super) fn new(unknowns: usize, pairs: &[(usize, usize)]) -> Self {
        let mut near = vec![BTreeSet::new(); unknowns];
        for &(a, b) in pairs {
            near[a].insert(b);
            near[b].insert(a);
        }
        let mut place = vec![usize::MAX; unknowns];
        let mut columns = Vec::with_capacity(unknowns);
        for step in 0..unknowns {
            let left = (0..unknowns).filter(|at| place[*at] == usize::MAX);
            let Some(next) = left.min_by_key(|at| near[*at].len()) else {
                break;
            };
            place[next] = step;
            let around = std::mem::take(&mut near[next]);
            for &one in &around {
                near[one].remove(&next);
                near[one].extend(around.iter().filter(|other| **other != one));
            }
            columns.push(around);
        }
        Self::laid_out(place, &columns)
    }

    fn laid_out(place: Vec<usize>, columns: &[BTreeSet<usize>]) -> Self {
        let mut start = vec![0];
        let mut rows: Vec<usize> = Vec::new();
        for column in columns {
            let mut below: Vec<usize> = column.iter().map(|unknown| place[*unknown]).collect();
            below.sort_unstable();
            rows.extend(below);
            start.push(rows.len());
        }
        let mut pattern = Self {
            place,
            start,
            rows,
            targets: Vec::new(),
        };
        let mut targets = Vec::new();
        for column in 0..columns.len() {
            let entries = pattern.start[column]..pattern.start[column + 1];
            for first in entries.clone() {
                for second in first..entries.end {
                    targets.extend(pattern.target(pattern.rows[first], pattern.rows[second]));
                }
            }
        }
        pattern.targets = targets;
        pattern
    }

    fn target(&self, column: usize, row: usize) -> Option<Target> {
        if column == row {
            return Some(Target::Diagonal(row));
        }
        self.entry(column, row).map(Target::Below)
    }

    /// Where the entry of two rows stands, the smaller one first.
    fn entry(&self, column: usize, row: usize) -> Option<usize> {
        let entries = self.start[column]..self.start[column + 1];
        let within = self.rows[entries.clone()].binary_search(&row).ok()?;
        Some(entries.start + within)
    }

    /// Where the entry of two unknowns stands.
    pub(super) fn between(&self, one: usize, other: usize) -> Option<usize> {
        let (a, b) = (self.place[one], self.place[other]);
        self.entry(a.min(b), a.max(b))
    }

    /// A matrix of zeros.
    pub(super) fn zeros(&self) -> Numbers {
        Numbers {
            diagonal: vec![0.0; self.place.len()],
            below: vec![0.0; self.rows.len()],
        }
    }

    /// Eliminates in place: afterwards the diagonal holds D and the entries below it hold L.
    pub(super) fn eliminate(&self, numbers: &mut Numbers) -> Result<(), NotPositive> {
        let mut targets = self.targets.iter();
        for column in 0..self.place.len() {
            let pivot = numbers.diagonal[column];
            if pivot.is_nan() || pivot <= 0.0 {
                return Err(NotPositive);
            }
            let entries = self.start[column]..self.start[column + 1];
            for first in entries.clone() {
                let share = numbers.below[first] / pivot;
                for second in first..entries.end {
                    let product = share * numbers.below[second];
                    match targets.next() {
                        Some(Target::Diagonal(row)) => numbers.diagonal[*row] -= product,
                        Some(Target::Below(entry)) => numbers.below[*entry] -= product,
                        None => {}
                    }
                }
            }
            for entry in entries {
                numbers.below[entry] /= pivot;
            }
        }
        Ok(())
    }

    /// Solves for a right-hand side in the order of elimination, in place.
    pub(super) fn solve(&self, factors: &Numbers, side: &mut [f64]) {
        for column in 0..self.place.len() {
            let value = side[column];
            for entry in self.start[column]..self.start[column + 1] {
                side[self.rows[entry]] -= factors.below[entry] * value;
            }
        }
        for (value, pivot) in side.iter_mut().zip(&factors.diagonal) {
            *value /= pivot;
        }
        for column in (0..self.place.len()).rev() {
            let mut value = side[column];
            for entry in self.start[column]..self.start[column + 1] {
                value -= factors.below[entry] * side[self.rows[entry]];
            }
            side[column] = value;
        }
    }
}
