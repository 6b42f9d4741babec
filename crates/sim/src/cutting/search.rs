//! Branch and bound over cutting plans: first over how many bars of each kind, then over the bar that holds the longest piece
//! that is left.

use super::fill::{self, Plan};
use super::relax::{Pool, Relaxed, relaxed, to_float};
use super::sums::Sums;
use super::ways::Ahead;
use super::whole::{Pattern, Whole};
use std::collections::{BTreeMap, BTreeSet};

/// What is left to cut, of which bars, after some are fixed.
#[derive(Debug, Clone)]
pub(super) struct Node {
    pub(super) demand: Vec<u32>,
    pub(super) least: Vec<u32>,
    pub(super) most: Vec<u32>,
    fixed: Plan,
    spent: i128,
}

impl Node {
    pub(super) fn new(whole: &Whole) -> Self {
        Self {
            demand: whole.demand.clone(),
            least: vec![0; whole.rooms.len()],
            most: whole.counts.clone(),
            fixed: Plan::new(),
            spent: 0,
        }
    }

    /// A pattern asks for no more than is left.
    pub(super) fn allows(&self, pattern: &Pattern) -> bool {
        self.most[pattern.bar] > 0
            && pattern
                .counts
                .iter()
                .zip(&self.demand)
                .all(|(count, left)| count <= left)
    }

    /// How often a pattern can be cut.
    pub(super) fn how_often(&self, pattern: &Pattern) -> u32 {
        let pairs = pattern.counts.iter().zip(&self.demand);
        let often = pairs
            .filter(|(count, _)| **count > 0)
            .map(|(count, left)| left / count);
        often
            .min()
            .unwrap_or(0)
            .clamp(1, self.most[pattern.bar].max(1))
    }

    /// Takes a pattern off what is left.
    pub(super) fn cut(&mut self, pattern: &Pattern, times: u32) {
        for (left, count) in self.demand.iter_mut().zip(&pattern.counts) {
            *left = left.saturating_sub(count * times);
        }
        self.most[pattern.bar] = self.most[pattern.bar].saturating_sub(times);
        self.least[pattern.bar] = self.least[pattern.bar].saturating_sub(times);
    }

    fn fix(&mut self, whole: &Whole, pattern: Pattern, times: u32) {
        self.cut(&pattern, times);
        self.spent += i128::from(whole.costs[pattern.bar]) * i128::from(times);
        self.fixed.push((pattern, times));
    }

    /// No solution of the node scores below a score.
    pub(super) fn beyond(&self, whole: &Whole, bound: i128, score: i64) -> bool {
        bound > i128::MIN / 2 && whole.score_of(bound + self.spent) >= score
    }

    fn done(&self) -> bool {
        self.demand.iter().all(|count| *count == 0)
    }
}

/// What the search found.
pub(super) struct Found {
    pub(super) plan: Option<Plan>,
    /// No plan costs less.
    pub(super) bound: i128,
    /// What each kind of piece is worth at the root.
    pub(super) worths: Vec<f64>,
    /// Nodes that were looked at.
    pub(super) looked_at: u32,
    /// Nothing was left to look at.
    pub(super) closed: bool,
}

struct Search<'p> {
    whole: &'p Whole,
    sums: &'p Sums,
    pool: Pool,
    best: Option<(i128, Plan)>,
    open: BTreeMap<(i128, u32), Node>,
    seen: BTreeSet<Vec<u32>>,
    made: u32,
    /// Work after which it stops.
    most: u64,
}

/// Searches until nothing is left to look at, or for so long.
pub(super) fn search(whole: &Whole, sums: &Sums, most: u64) -> Found {
    let mut search = Search {
        whole,
        sums,
        pool: Pool::default(),
        best: None,
        open: BTreeMap::new(),
        seen: BTreeSet::new(),
        made: 0,
        most,
    };
    let root = Node::new(whole);
    search.offer(fill::filled(whole, sums, &root, &fill::by_width(whole)));
    search.push(root, 0);
    let (mut worths, mut looked_at, mut closed) = (Vec::new(), 0, true);
    let (mut bound, mut lost) = (0, i128::MAX);
    while let Some(((at, number), node)) = search.open.pop_first() {
        bound = at;
        if search.beaten(&node, at - node.spent) {
            break;
        }
        if looked_at > 0 && sums.work() > most {
            search.open.insert((at, number), node);
            closed = false;
            break;
        }
        looked_at += 1;
        match search.look(&node, looked_at == 1) {
            Looked::Done(root_worths, root_bound) if looked_at == 1 => {
                worths = root_worths;
                bound = bound.max(root_bound);
            }
            Looked::Done(..) => {}
            Looked::Lost => lost = lost.min(at),
        }
    }
    let lost_counts = !search.best.as_ref().is_some_and(|(_, plan)| {
        lost < i128::MAX && whole.score_of(lost) >= fill::score(whole, plan)
    });
    if lost < i128::MAX && lost_counts {
        closed = false;
        bound = bound.min(lost);
    }
    Found {
        plan: search.best.map(|(_, plan)| plan),
        bound,
        worths,
        looked_at,
        closed,
    }
}

/// What looking at a node gave.
enum Looked {
    /// It was closed or branched: worths and bound of its relaxation.
    Done(Vec<f64>, i128),
    /// It could not be followed.
    Lost,
}

impl Search<'_> {
    fn score(&self) -> Option<i64> {
        (self.best.as_ref()).map(|(_, plan)| fill::score(self.whole, plan))
    }

    fn beaten(&self, node: &Node, bound: i128) -> bool {
        self.score()
            .is_some_and(|score| node.beyond(self.whole, bound, score))
    }

    fn offer(&mut self, plan: Option<Plan>) {
        let Some(plan) = plan else { return };
        let cost = fill::cost(self.whole, &plan);
        if self.best.as_ref().is_none_or(|(known, _)| cost < *known) {
            self.best = Some((cost, plan));
        }
    }

    fn push(&mut self, node: Node, bound: i128) {
        if (self.seen).insert([&node.demand[..], &node.least, &node.most].concat()) {
            self.made += 1;
            self.open.insert((bound, self.made), node);
        }
    }

    fn look(&mut self, node: &Node, root: bool) -> Looked {
        if node.done() {
            let plan = node.fixed.clone();
            if node.least.iter().all(|least| *least == 0) {
                self.offer(Some(plan));
            }
            return Looked::Done(Vec::new(), node.spent);
        }
        let score = self.score();
        let both = (self.whole, self.sums);
        let Some(found) = relaxed(both, &mut self.pool, node, score) else {
            return Looked::Lost;
        };
        let bound = found.bound + node.spent;
        if found.lacking || self.beaten(node, found.bound) {
            return Looked::Done(found.worths, bound);
        }
        let bars = self.bars(&found);
        let branch = fraction(&bars);
        self.round(node, &found);
        if (root || branch.is_none()) && !self.beaten(node, found.bound) {
            self.dive(node);
        }
        if self.beaten(node, found.bound) {
            return Looked::Done(found.worths, bound);
        }
        let followed = match branch {
            Some(bar) => {
                self.split(node, bar, bars[bar], bound);
                true
            }
            None => match free_bar(node) {
                Some(bar) => {
                    self.part(node, bar, bars[bar], bound);
                    true
                }
                None => self.ways(node, &found),
            },
        };
        if followed {
            Looked::Done(found.worths, bound)
        } else {
            Looked::Lost
        }
    }

    /// How many bars of each kind the fractions use.
    fn bars(&self, found: &Relaxed) -> Vec<f64> {
        let mut bars = vec![0.0; self.whole.rooms.len()];
        for (pattern, amount) in &found.cut {
            bars[self.pool.patterns[*pattern].bar] += amount;
        }
        bars
    }

    /// At most so many bars of a kind, or more.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "there are no more bars than pieces"
    )]
    fn split(&mut self, node: &Node, bar: usize, amount: f64, bound: i128) {
        let below = amount.floor() as u32;
        let mut fewer = node.clone();
        fewer.most[bar] = fewer.most[bar].min(below);
        self.push(fewer, bound);
        let mut more = node.clone();
        more.least[bar] = more.least[bar].max(below + 1);
        if more.least[bar] <= more.most[bar] {
            self.push(more, bound);
        }
    }

    /// Just so many bars of a kind, fewer, or more.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "there are no more bars than pieces"
    )]
    fn part(&mut self, node: &Node, bar: usize, amount: f64, bound: i128) {
        let just = (amount.round() as u32).clamp(node.least[bar], node.most[bar]);
        let mut same = node.clone();
        (same.least[bar], same.most[bar]) = (just, just);
        self.push(same, bound);
        let mut more = node.clone();
        more.least[bar] = just + 1;
        if just < node.most[bar] {
            self.push(more, bound);
        }
        let mut fewer = node.clone();
        fewer.most[bar] = just.saturating_sub(1);
        if just > node.least[bar] {
            self.push(fewer, bound);
        }
    }

    /// Whole patterns of the fractions as they are, the rest bar by bar.
    fn round(&mut self, node: &Node, found: &Relaxed) {
        let mut left = node.clone();
        self.take_whole(&mut left, &found.cut);
        let rest = fill::filled(self.whole, self.sums, &left, &found.worths);
        self.offer_with(&left, rest);
    }

    fn offer_with(&mut self, left: &Node, rest: Option<Plan>) {
        self.offer(rest.map(|rest| [left.fixed.clone(), rest].concat()));
    }

    /// Fixes each pattern as often as it is cut in whole; how many that were.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "there are no more bars than pieces"
    )]
    fn take_whole(&self, left: &mut Node, cut: &[(usize, f64)]) -> u32 {
        let mut taken = 0;
        for (index, amount) in cut {
            let pattern = &self.pool.patterns[*index];
            let times = (amount + 1e-6).floor() as u32;
            if times > 0 && left.allows(pattern) {
                let times = times.min(left.how_often(pattern));
                left.fix(self.whole, pattern.clone(), times);
                taken += times;
            }
        }
        taken
    }

    /// Fixes what is whole, or nearest to it, and asks the fractions again, until all is cut.
    fn dive(&mut self, node: &Node) {
        let mut left = node.clone();
        while !left.done() && (self.best.is_none() || self.sums.work() <= self.most) {
            let (both, score) = ((self.whole, self.sums), self.score());
            let Some(found) = relaxed(both, &mut self.pool, &left, score) else {
                return;
            };
            if found.lacking || self.beaten(&left, found.bound) {
                return;
            }
            if self.take_whole(&mut left, &found.cut) == 0 {
                let fitting = found
                    .cut
                    .iter()
                    .filter(|(index, _)| left.allows(&self.pool.patterns[*index]));
                let Some((index, _)) = fitting.max_by(|one, other| one.1.total_cmp(&other.1))
                else {
                    return;
                };
                let pattern = self.pool.patterns[*index].clone();
                left.fix(self.whole, pattern, 1);
            }
            let rest = fill::filled(self.whole, self.sums, &left, &found.worths);
            self.offer_with(&left, rest);
        }
        if left.done() {
            self.offer(Some(left.fixed));
        }
    }

    /// Follows every way to cut the bar that holds the longest piece; false where there are too many.
    fn ways(&mut self, node: &Node, found: &Relaxed) -> bool {
        let bars = node.most.iter().zip(&self.whole.costs);
        let all: i128 = bars
            .map(|(count, cost)| i128::from(*count) * i128::from(*cost))
            .sum();
        let wanted = self.score().map_or(i128::MAX, |score| {
            i128::from(score - self.whole.step + 1) * i128::from(self.whole.weight) - node.spent
        });
        let allowed = all.min(wanted).saturating_sub(found.bound) + 2;
        let allowed = to_float(i64::try_from(allowed).unwrap_or(i64::MAX));
        let mut ways = Vec::new();
        for bar in (0..self.whole.rooms.len()).filter(|bar| node.most[*bar] > 0) {
            let mut ahead = Ahead {
                whole: self.whole,
                node,
                worths: &found.worths,
                least: found.filled[bar] - allowed,
                bar,
                steps: 0,
                ways: &mut ways,
            };
            let room = self.whole.rooms[bar];
            if !ahead.fill(0, room, 0.0, &mut vec![0; node.demand.len()]) {
                return false;
            }
        }
        for pattern in ways {
            let mut child = node.clone();
            child.fix(self.whole, pattern, 1);
            self.push(child, found.bound + node.spent);
        }
        true
    }
}

/// The kind of bar of which the fractions use a number that is farthest from whole.
fn fraction(bars: &[f64]) -> Option<usize> {
    let off = |amount: f64| (amount - amount.round()).abs();
    let (bar, amount) = bars
        .iter()
        .enumerate()
        .max_by(|one, other| off(*one.1).total_cmp(&off(*other.1)))?;
    (off(*amount) > 1e-6).then_some(bar)
}

/// A kind of bar of which the number is still open.
fn free_bar(node: &Node) -> Option<usize> {
    (0..node.most.len()).find(|bar| node.least[*bar] < node.most[*bar])
}
