//! The worst corner of all tolerances, and the measurement that decides the answer.

use super::Reading;
use super::make::{Judged, figures, judged, reading};
use crate::asking::{Asking, End};
use crate::outcome::Answer;
use crate::{Figure, Verdict};
use serde::Serialize;

/// How the worst corner was looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// Every corner was tried of the values that move the answer, and at the worst one each other value at both its ends.
    EveryCorner,
    /// Each value was pushed to its own worse end, the others as written, and then all of them together.
    EachToItsWorseEnd,
}

/// The answer at the worst corner of all tolerances.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Corner {
    /// Verdict there.
    pub verdict: Verdict,
    /// What is asked of the thing there.
    pub demand: Option<Figure>,
    /// What the thing can give there.
    pub capacity: Option<Figure>,
    /// Demand over capacity there.
    pub ratio: Option<f64>,
    /// How it was looked for.
    pub method: Method,
    /// The toleranced values there.
    pub at: Vec<CornerValue>,
}

/// A toleranced value at a corner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CornerValue {
    /// Its path.
    pub path: String,
    /// Its value there.
    pub text: String,
}

/// The measurement whose own tolerance moves the answer most.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Deciding {
    /// The measurement.
    pub reading: Reading,
    /// Its tolerance alone turns the verdict.
    pub turns: bool,
    /// By how much its tolerance moves demand over capacity; for a figure alone, the figure in its SI unit.
    pub moves: f64,
}

/// What the tolerances do to an answer.
#[derive(Debug, Default)]
pub(super) struct Search {
    pub(super) corner: Option<Corner>,
    pub(super) deciding: Option<Deciding>,
    pub(super) turned_by: Vec<Reading>,
}

/// Toleranced values that move the answer, up to which every corner is tried.
const EVERY: usize = 10;
/// Times that the search starts again because a corner led to values that had not been read before.
const STARTS: usize = 4;

/// Looks for the worst corner; finds none where no value has a tolerance or there is no answer to begin with.
pub(super) fn searched<'s>(
    asking: &mut Asking<'s>,
    answer: &dyn Fn(&mut Asking<'s>) -> Answer,
    nominal: Judged,
) -> Search {
    if nominal.outcome.is_none() {
        return Search::default();
    }
    let mut search = Search::default();
    for _ in 0..STARTS {
        let known = asking.facts.len();
        let loose: Vec<usize> = (0..known)
            .filter(|at| asking.facts[*at].is_loose())
            .collect();
        if loose.is_empty() {
            return search;
        }
        search = Corners {
            asking: &mut *asking,
            answer,
            nominal,
            loose,
        }
        .search();
        if asking.facts.len() == known {
            break;
        }
    }
    search
}

/// One search over the corners of the loose facts.
struct Corners<'a, 's> {
    asking: &'a mut Asking<'s>,
    answer: &'a dyn Fn(&mut Asking<'s>) -> Answer,
    nominal: Judged,
    /// Places of the toleranced facts among the facts.
    loose: Vec<usize>,
}

/// What pushing one fact to its ends does.
#[derive(Clone, Copy)]
struct Push {
    low: Judged,
    high: Judged,
}

impl Push {
    fn moves(&self) -> f64 {
        let moved = (self.high.strain() - self.low.strain()).abs();
        if moved.is_nan() { 0.0 } else { moved }
    }

    fn worse_end(&self) -> End {
        if worse(&self.high, &self.low) {
            End::High
        } else {
            End::Low
        }
    }

    fn turns(&self, nominal: Verdict) -> bool {
        self.low.verdict != nominal || self.high.verdict != nominal
    }
}

impl Corners<'_, '_> {
    fn search(&mut self) -> Search {
        let pushes: Vec<Push> = (0..self.loose.len()).map(|at| self.push(at)).collect();
        let (moving, still) = self.parted(&pushes);
        let (ends, worst, method) = if moving.len() <= EVERY {
            self.every_corner(&moving, &still)
        } else {
            self.combined(&pushes)
        };
        let print = self.asking.print();
        let (demand, capacity, ratio) = figures(worst.outcome, print);
        let turned_by = self.turned_by(&pushes, &worst, &ends);
        Search {
            corner: Some(Corner {
                verdict: worst.verdict,
                demand,
                capacity,
                ratio,
                method,
                at: self.values(&ends),
            }),
            deciding: self.deciding(&pushes),
            turned_by,
        }
    }

    /// The answer with the loose facts at these ends.
    fn judge(&mut self, ends: &[End]) -> Judged {
        let all = self.asking.facts.len();
        self.asking.ends.clear();
        self.asking.ends.resize(all, End::Nominal);
        for (fact, end) in self.loose.iter().zip(ends) {
            self.asking.ends[*fact] = *end;
        }
        self.asking.forget_run();
        let given = (self.answer)(self.asking);
        let judged = judged(self.asking, given);
        self.asking.ends.clear();
        judged
    }

    fn push(&mut self, at: usize) -> Push {
        let mut ends = vec![End::Nominal; self.loose.len()];
        ends[at] = End::Low;
        let low = self.judge(&ends);
        ends[at] = End::High;
        let high = self.judge(&ends);
        Push { low, high }
    }

    /// Those that move the answer by themselves, and those that leave it as it is to the last bit.
    fn parted(&self, pushes: &[Push]) -> (Vec<usize>, Vec<usize>) {
        let same = |one: &Judged| {
            one.verdict == self.nominal.verdict
                && one.strain().to_bits() == self.nominal.strain().to_bits()
        };
        (0..pushes.len()).partition(|at| !(same(&pushes[*at].low) && same(&pushes[*at].high)))
    }

    /// Every corner of those that move the answer; at the worst one the others are pushed to their ends as well, since
    /// they may count there.
    fn every_corner(&mut self, moving: &[usize], still: &[usize]) -> (Vec<End>, Judged, Method) {
        let mut ends = vec![End::Nominal; self.loose.len()];
        // Inside the tolerances may be worse than any corner: the values as written are one such place.
        let mut worst = (ends.clone(), self.nominal);
        for corner in 0..1_usize << moving.len() {
            for (bit, at) in moving.iter().enumerate() {
                ends[*at] = if corner >> bit & 1 == 1 {
                    End::High
                } else {
                    End::Low
                };
            }
            self.keep_worse(&ends, &mut worst);
        }
        for at in still {
            for end in [End::Low, End::High] {
                ends.clone_from(&worst.0);
                ends[*at] = end;
                self.keep_worse(&ends, &mut worst);
            }
        }
        (worst.0, worst.1, Method::EveryCorner)
    }

    fn keep_worse(&mut self, ends: &[End], worst: &mut (Vec<End>, Judged)) {
        let judged = self.judge(ends);
        if worse(&judged, &worst.1) {
            *worst = (ends.to_vec(), judged);
        }
    }

    fn combined(&mut self, pushes: &[Push]) -> (Vec<End>, Judged, Method) {
        let mut worst = (vec![End::Nominal; pushes.len()], self.nominal);
        let ends: Vec<End> = pushes.iter().map(Push::worse_end).collect();
        self.keep_worse(&ends, &mut worst);
        (worst.0, worst.1, Method::EachToItsWorseEnd)
    }

    fn deciding(&self, pushes: &[Push]) -> Option<Deciding> {
        let (at, push) = pushes
            .iter()
            .enumerate()
            .max_by(|(_, a), (_, b)| a.moves().total_cmp(&b.moves()))?;
        Some(Deciding {
            reading: self.reading(at),
            turns: push.turns(self.nominal.verdict),
            moves: push.moves(),
        })
    }

    /// The measurements that turn the verdict: those that do so alone, or else the fewest of the strongest that do so
    /// together at the worst corner.
    fn turned_by(&mut self, pushes: &[Push], worst: &Judged, ends: &[End]) -> Vec<Reading> {
        if worst.verdict == self.nominal.verdict {
            return Vec::new();
        }
        let verdict = self.nominal.verdict;
        let alone: Vec<usize> = (0..pushes.len())
            .filter(|at| pushes[*at].turns(verdict))
            .collect();
        let turning = if alone.is_empty() {
            self.together(pushes, ends)
        } else {
            alone
        };
        turning.into_iter().map(|at| self.reading(at)).collect()
    }

    fn together(&mut self, pushes: &[Push], worst: &[End]) -> Vec<usize> {
        let mut order: Vec<usize> = (0..pushes.len()).collect();
        order.sort_by(|a, b| pushes[*b].moves().total_cmp(&pushes[*a].moves()));
        let mut ends = vec![End::Nominal; worst.len()];
        for (taken, at) in order.iter().enumerate() {
            ends[*at] = worst[*at];
            if self.judge(&ends).verdict != self.nominal.verdict {
                order.truncate(taken + 1);
                break;
            }
        }
        order
    }

    fn reading(&self, at: usize) -> Reading {
        reading(&self.asking.facts[self.loose[at]], self.asking.print())
    }

    fn values(&self, ends: &[End]) -> Vec<CornerValue> {
        let print = self.asking.print();
        self.loose
            .iter()
            .zip(ends)
            .map(|(fact, end)| {
                let fact = &self.asking.facts[*fact];
                CornerValue {
                    path: reading(fact, print).path,
                    text: print.value(&fact.at(*end)),
                }
            })
            .collect()
    }
}

/// The first answer is worse than the second: by its verdict, then by how hard it is strained.
fn worse(one: &Judged, other: &Judged) -> bool {
    let rank = |judged: &Judged| match judged.verdict {
        Verdict::Holds | Verdict::FigureOnly => 0,
        Verdict::UnknownUntil => 1,
        Verdict::OutsideThisTool => 2,
        Verdict::Fails => 3,
    };
    rank(one)
        .cmp(&rank(other))
        .then(one.strain().total_cmp(&other.strain()))
        .is_gt()
}
