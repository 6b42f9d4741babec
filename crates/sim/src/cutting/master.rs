//! The linear program of cutting: how often each pattern is cut, fractions allowed, for the least cost.
//!
//! A revised simplex with the inverse of the basis in full: there are as many rows as kinds of pieces, and few more.

use super::whole::Pattern;

/// A difference of costs that counts, as a share of the greatest.
const SMALL: f64 = 1e-10;
/// A pivot that counts.
const PIVOT: f64 = 1e-9;
/// Pivots after which the inverse is made anew.
const FRESH: usize = 80;
/// Pivots after which the first column that helps is taken, which cannot go round in a circle.
const CAREFUL: usize = 600;
/// Pivots after which it gives up.
const GIVE_UP: usize = 6000;

/// What a column stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stands {
    /// A pattern by its place in the pool.
    Pattern(usize),
    /// More than is asked, or less than is allowed.
    Slack,
    /// What nothing gives yet.
    Lacking,
}

#[derive(Debug, Clone)]
struct Column {
    entries: Vec<(usize, f64)>,
    cost: f64,
    stands: Stands,
}

/// What the rows ask.
pub(super) struct Asked<'n> {
    pub(super) demand: &'n [u32],
    pub(super) least: &'n [u32],
    pub(super) most: &'n [u32],
    /// Cost of a piece that is lacking.
    pub(super) lacking: f64,
}

/// The linear program with its basis.
#[derive(Debug, Clone)]
pub(super) struct Master {
    /// Row of each kind of piece that is asked for.
    piece_rows: Vec<Option<usize>>,
    /// Row of the greatest and of the least number of each kind of bar.
    most_rows: Vec<Option<usize>>,
    least_rows: Vec<Option<usize>>,
    rows: usize,
    right: Vec<f64>,
    columns: Vec<Column>,
    basis: Vec<usize>,
    inverse: Vec<f64>,
    amounts: Vec<f64>,
    small: f64,
    /// How many places were worked out so far.
    pub(super) work: u64,
}

impl Master {
    pub(super) fn new(asked: &Asked<'_>, greatest_cost: f64) -> Self {
        let pieces: u32 = asked.demand.iter().sum();
        let mut right = Vec::new();
        let mut row = |wanted: bool, value: u32| {
            wanted.then(|| {
                right.push(f64::from(value));
                right.len() - 1
            })
        };
        let each = |of: &[u32]| of.to_vec();
        let piece_rows: Vec<_> = each(asked.demand)
            .into_iter()
            .map(|count| row(count > 0, count))
            .collect();
        let most_rows: Vec<_> = each(asked.most)
            .into_iter()
            .map(|most| row(most < pieces, most))
            .collect();
        let least_rows: Vec<_> = each(asked.least)
            .into_iter()
            .map(|least| row(least > 0, least))
            .collect();
        let rows = right.len();
        let mut master = Self {
            piece_rows,
            most_rows,
            least_rows,
            rows,
            right,
            columns: Vec::new(),
            basis: vec![0; rows],
            inverse: Vec::new(),
            amounts: Vec::new(),
            small: greatest_cost * SMALL,
            work: 0,
        };
        master.start(asked.lacking);
        master
    }

    /// Everything lacking, and slack in every row.
    fn start(&mut self, lacking: f64) {
        let at_most: Vec<usize> = self.most_rows.iter().flatten().copied().collect();
        for row in 0..self.rows {
            let limits = at_most.contains(&row);
            let mut column = |sign: f64, cost: f64, stands: Stands| {
                self.columns.push(Column {
                    entries: vec![(row, sign)],
                    cost,
                    stands,
                });
                self.columns.len() - 1
            };
            self.basis[row] = if limits {
                column(1.0, 0.0, Stands::Slack)
            } else {
                column(-1.0, 0.0, Stands::Slack);
                column(1.0, lacking, Stands::Lacking)
            };
        }
        self.inverse = vec![0.0; self.rows * self.rows];
        for row in 0..self.rows {
            self.inverse[row * self.rows + row] = 1.0;
        }
        self.amounts = self.right.clone();
    }

    /// Adds a pattern of the pool.
    pub(super) fn add(&mut self, index: usize, pattern: &Pattern, cost: f64) {
        let pieces = pattern.counts.iter().zip(&self.piece_rows);
        let mut entries: Vec<(usize, f64)> = pieces
            .filter_map(|(count, row)| {
                row.filter(|_| *count > 0)
                    .map(|row| (row, f64::from(*count)))
            })
            .collect();
        let limits = [&self.most_rows, &self.least_rows];
        entries.extend(
            limits
                .iter()
                .filter_map(|rows| rows[pattern.bar])
                .map(|row| (row, 1.0)),
        );
        self.columns.push(Column {
            entries,
            cost,
            stands: Stands::Pattern(index),
        });
    }

    /// Brings the cost to its least; false where the numbers went astray.
    pub(super) fn solve(&mut self) -> bool {
        for step in 0..GIVE_UP {
            self.work += (self.rows * self.rows + 8 * self.columns.len()) as u64;
            if step % FRESH == FRESH - 1 && !self.renew() {
                return false;
            }
            let duals = self.row_duals();
            let Some(entering) = self.entering(&duals, step > CAREFUL) else {
                return true;
            };
            let direction = self.direction(entering);
            let Some(leaving) = self.leaving(&direction, step > CAREFUL) else {
                return false;
            };
            self.pivot(entering, leaving, &direction);
        }
        false
    }

    fn row_duals(&self) -> Vec<f64> {
        let mut duals = vec![0.0; self.rows];
        for (place, &column) in self.basis.iter().enumerate() {
            let cost = self.columns[column].cost;
            if cost != 0.0 {
                let row = &self.inverse[place * self.rows..(place + 1) * self.rows];
                for (dual, entry) in duals.iter_mut().zip(row) {
                    *dual += cost * entry;
                }
            }
        }
        duals
    }

    fn entering(&self, duals: &[f64], first: bool) -> Option<usize> {
        let reduced = |column: &Column| {
            column
                .entries
                .iter()
                .fold(column.cost, |left, (row, entry)| left - duals[*row] * entry)
        };
        let mut helping = self
            .columns
            .iter()
            .map(reduced)
            .enumerate()
            .filter(|(_, reduced)| *reduced < -self.small);
        let found = if first {
            helping.next()
        } else {
            helping.min_by(|one, other| one.1.total_cmp(&other.1))
        };
        found.map(|(column, _)| column)
    }

    fn direction(&self, column: usize) -> Vec<f64> {
        let entries = &self.columns[column].entries;
        self.inverse
            .chunks(self.rows)
            .map(|row| entries.iter().map(|(at, entry)| row[*at] * entry).sum())
            .collect()
    }

    fn leaving(&self, direction: &[f64], first: bool) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (place, (&along, &amount)) in direction.iter().zip(&self.amounts).enumerate() {
            if along <= PIVOT {
                continue;
            }
            let ratio = amount.max(0.0) / along;
            let better = best.is_none_or(|(known, least)| {
                let same = (ratio - least).abs() <= 1e-12;
                let wins = if first {
                    self.basis[place] < self.basis[known]
                } else {
                    along > direction[known]
                };
                if same { wins } else { ratio < least }
            });
            if better {
                best = Some((place, ratio));
            }
        }
        best.map(|(place, _)| place)
    }

    fn pivot(&mut self, entering: usize, place: usize, direction: &[f64]) {
        let rows = self.rows;
        let step = self.amounts[place] / direction[place];
        let divided: Vec<f64> = self.inverse[place * rows..(place + 1) * rows]
            .iter()
            .map(|entry| entry / direction[place])
            .collect();
        for (row, &along) in direction.iter().enumerate() {
            let to = &mut self.inverse[row * rows..(row + 1) * rows];
            if row == place {
                to.copy_from_slice(&divided);
                self.amounts[row] = step;
            } else if along != 0.0 {
                for (entry, pivot) in to.iter_mut().zip(&divided) {
                    *entry -= along * pivot;
                }
                self.amounts[row] -= along * step;
            }
        }
        self.basis[place] = entering;
    }

    /// The inverse from the basis itself.
    fn renew(&mut self) -> bool {
        let rows = self.rows;
        let mut wide = vec![0.0; rows * 2 * rows];
        for (place, &column) in self.basis.iter().enumerate() {
            for &(row, entry) in &self.columns[column].entries {
                wide[row * 2 * rows + place] = entry;
            }
            wide[place * 2 * rows + rows + place] = 1.0;
        }
        if !eliminated(&mut wide, rows) {
            return false;
        }
        for row in 0..rows {
            let from = row * 2 * rows + rows;
            self.inverse[row * rows..(row + 1) * rows].copy_from_slice(&wide[from..from + rows]);
        }
        let amounts = self.inverse.chunks(rows).map(|row| {
            let pairs = row.iter().zip(&self.right);
            pairs.map(|(entry, right)| entry * right).sum()
        });
        self.amounts = amounts.collect();
        true
    }

    /// What each kind of piece is worth, never below nothing.
    pub(super) fn worths(&self) -> Vec<f64> {
        let duals = self.row_duals();
        let worth = |row: &Option<usize>| row.map_or(0.0, |row| duals[row].max(0.0));
        self.piece_rows.iter().map(worth).collect()
    }

    /// By how much the limits on each kind of bar change what one of them costs.
    pub(super) fn on_bars(&self) -> Vec<f64> {
        let duals = self.row_duals();
        let of = |row: &Option<usize>| row.map_or(0.0, |row| duals[row]);
        let pairs = self.most_rows.iter().zip(&self.least_rows);
        pairs.map(|(most, least)| of(most) + of(least)).collect()
    }

    /// How often each pattern is cut, where that is not nothing.
    pub(super) fn cut(&self) -> Vec<(usize, f64)> {
        let amounts = self.basis.iter().zip(&self.amounts);
        let cut = amounts.filter_map(|(column, &amount)| match self.columns[*column].stands {
            Stands::Pattern(index) if amount > 1e-9 => Some((index, amount)),
            _ => None,
        });
        cut.collect()
    }

    /// How much nothing gives.
    pub(super) fn lacking(&self) -> f64 {
        let amounts = self.basis.iter().zip(&self.amounts);
        amounts
            .filter(|(column, _)| self.columns[**column].stands == Stands::Lacking)
            .map(|(_, amount)| amount.max(0.0))
            .sum()
    }
}

/// Brings the left half of a matrix twice as wide as high to ones on its diagonal; false where it has no inverse.
fn eliminated(wide: &mut [f64], rows: usize) -> bool {
    let width = 2 * rows;
    for at in 0..rows {
        let size = |row: &usize| wide[row * width + at].abs();
        let Some(pivot) = (at..rows).max_by(|one, other| size(one).total_cmp(&size(other))) else {
            return false;
        };
        if size(&pivot) < 1e-12 {
            return false;
        }
        for column in 0..width {
            wide.swap(at * width + column, pivot * width + column);
        }
        let by = wide[at * width + at];
        for column in 0..width {
            wide[at * width + column] /= by;
        }
        let row_at = wide[at * width..(at + 1) * width].to_vec();
        for row in (0..rows).filter(|row| *row != at) {
            let by = wide[row * width + at];
            if by != 0.0 {
                for (entry, pivot) in wide[row * width..(row + 1) * width].iter_mut().zip(&row_at) {
                    *entry -= by * pivot;
                }
            }
        }
    }
    true
}
