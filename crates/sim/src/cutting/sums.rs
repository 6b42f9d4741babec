//! The lengths that pieces beside each other can take up, and the most that pieces are worth in each of them.

use std::cell::Cell;

/// Most lengths that are kept.
const MOST: usize = 40_000;

/// Every length that pieces beside each other can take up, rising from nothing.
#[derive(Debug, Clone)]
pub(super) struct Sums {
    sums: Vec<i64>,
    /// How many places were worked out so far: a measure of time that is the same on every machine.
    work: Cell<u64>,
}

/// So many copies of one piece, taken together or not at all; of one that any number may be taken of, one copy.
#[derive(Debug, Clone)]
struct Stage {
    piece: usize,
    times: u32,
    any: bool,
    takes: Vec<bool>,
}

/// The most that pieces are worth in each length, and which pieces they are.
#[derive(Debug, Clone)]
pub(super) struct Filled<'s> {
    sums: &'s [i64],
    widths: &'s [i64],
    worth: Vec<i64>,
    stages: Vec<Stage>,
}

impl Sums {
    /// The lengths up to the longest room; nothing where there are too many to keep.
    pub(super) fn new(widths: &[i64], demand: &[u32], longest: i64) -> Option<Self> {
        let mut sums = vec![0];
        for (&width, &count) in widths.iter().zip(demand) {
            for times in bundles(count.min(fits(width, longest))) {
                let more = width * i64::from(times);
                let shifted: Vec<i64> = sums
                    .iter()
                    .map(|sum| sum + more)
                    .take_while(|sum| *sum <= longest)
                    .collect();
                sums = merged(&sums, &shifted);
                if sums.len() > MOST {
                    return None;
                }
            }
        }
        Some(Self {
            sums,
            work: Cell::new(0),
        })
    }

    /// The most that pieces are worth in each length, with at most so many of each.
    pub(super) fn best<'s>(
        &'s self,
        widths: &'s [i64],
        values: &[i64],
        at_most: &[u32],
    ) -> Filled<'s> {
        let longest = self.sums.last().copied().unwrap_or_default();
        let mut filled = Filled {
            sums: &self.sums,
            widths,
            worth: vec![0; self.sums.len()],
            stages: Vec::new(),
        };
        for (piece, (&width, &value)) in widths.iter().zip(values).enumerate() {
            let fits = fits(width, longest);
            if value <= 0 || fits == 0 {
                continue;
            }
            if at_most[piece] >= fits {
                filled.add(piece, 1, value, true);
            } else {
                for times in bundles(at_most[piece]) {
                    filled.add(piece, times, value, false);
                }
            }
        }
        let places = filled.stages.len() * self.sums.len();
        self.spend(places as u64);
        filled
    }

    /// Counts places that were worked out.
    pub(super) fn spend(&self, places: u64) {
        self.work.set(self.work.get() + places);
    }

    /// How many places were worked out so far.
    pub(super) fn work(&self) -> u64 {
        self.work.get()
    }
}

impl Filled<'_> {
    fn add(&mut self, piece: usize, times: u32, value: i64, any: bool) {
        let width = self.widths[piece] * i64::from(times);
        let value = value * i64::from(times);
        let mut takes = vec![false; self.sums.len()];
        let first = self.sums.partition_point(|sum| *sum < width);
        if any {
            let mut from = 0;
            for (to, take) in takes.iter_mut().enumerate().skip(first) {
                while from + 1 < to && self.sums[from + 1] <= self.sums[to] - width {
                    from += 1;
                }
                *take = self.take(from, to, value);
            }
        } else {
            let mut from = self.sums.len().saturating_sub(1);
            for to in (first..self.sums.len()).rev() {
                while self.sums[from] > self.sums[to] - width {
                    from -= 1;
                }
                takes[to] = self.take(from, to, value);
            }
        }
        self.stages.push(Stage {
            piece,
            times,
            any,
            takes,
        });
    }

    fn take(&mut self, from: usize, to: usize, value: i64) -> bool {
        let with = self.worth[from] + value;
        let better = with > self.worth[to];
        if better {
            self.worth[to] = with;
        }
        better
    }

    fn place(&self, room: i64) -> usize {
        self.sums
            .partition_point(|sum| *sum <= room)
            .saturating_sub(1)
    }

    /// The most that pieces are worth in a room.
    pub(super) fn worth(&self, room: i64) -> i64 {
        self.worth[self.place(room)]
    }

    /// How many of each piece are worth that much.
    pub(super) fn counts(&self, room: i64) -> Vec<u32> {
        let mut counts = vec![0; self.widths.len()];
        let mut at = self.place(room);
        for stage in self.stages.iter().rev() {
            while stage.takes[at] {
                counts[stage.piece] += stage.times;
                at = self.place(self.sums[at] - self.widths[stage.piece] * i64::from(stage.times));
                if !stage.any {
                    break;
                }
            }
        }
        counts
    }
}

/// How often a width goes into a length.
fn fits(width: i64, longest: i64) -> u32 {
    u32::try_from(longest / width.max(1)).unwrap_or(u32::MAX)
}

/// Bundles of one, two, four and so on, and the rest, of which any number up to the count can be put together.
fn bundles(count: u32) -> Vec<u32> {
    let (mut left, mut next, mut bundles) = (count, 1, Vec::new());
    while left > 0 {
        let bundle = next.min(left);
        bundles.push(bundle);
        left -= bundle;
        next = next.saturating_mul(2);
    }
    bundles
}

/// Two rising rows as one, equal values once.
fn merged(one: &[i64], other: &[i64]) -> Vec<i64> {
    let (mut a, mut b) = (0, 0);
    let mut both = Vec::with_capacity(one.len() + other.len());
    while a < one.len() || b < other.len() {
        let left = one.get(a).copied().unwrap_or(i64::MAX);
        let right = other.get(b).copied().unwrap_or(i64::MAX);
        both.push(left.min(right));
        a += usize::from(left <= right);
        b += usize::from(right <= left);
    }
    both
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn the_best_filling_is_that_of_trying_all() {
        let (widths, values, demand) = ([7, 5, 3], [11, 8, 4], [2, 1, 4]);
        let sums = Sums::new(&widths, &demand, 24).unwrap();
        let filled = sums.best(&widths, &values, &demand);
        for room in 0..=24 {
            let mut most = 0;
            for a in 0..=2_i64 {
                for b in 0..=1_i64 {
                    for c in 0..=4_i64 {
                        if 7 * a + 5 * b + 3 * c <= room {
                            most = most.max(11 * a + 8 * b + 4 * c);
                        }
                    }
                }
            }
            let counts = filled.counts(room);
            let of = |what: &[i64]| -> i64 {
                let pairs = what.iter().zip(&counts);
                pairs.map(|(one, count)| one * i64::from(*count)).sum()
            };
            assert_eq!(filled.worth(room), most, "{room}");
            assert_eq!(of(&values), most);
            assert!(of(&widths) <= room);
        }
    }

    #[test]
    fn any_number_up_to_the_count_is_put_together() {
        assert_eq!(bundles(0), Vec::<u32>::new());
        assert_eq!(bundles(10), [1, 2, 4, 3]);
        assert!(Sums::new(&[1_000_003, 1_000_019, 1_000_033], &[400; 3], 400_000_000).is_none());
    }
}
