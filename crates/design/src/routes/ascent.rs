//! A lower bound by dual ascent: prices are laid on cuts between the root and each point that must be reached, until every
//! one of them hangs on the root by arcs whose cost is used up. Whatever reaches all points pays at least these prices.
//!
//! The method is Wong's of 1984.

use super::{ENDLESS, Net};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A lower bound, and what is left of the cost of each arc: way e from its first end is arc 2·e, backwards 2·e + 1.
pub(super) struct Ascent {
    pub(super) root: usize,
    pub(super) bound: u64,
    pub(super) left: Vec<u64>,
}

/// The bound for the ways that are still alive, seen from a root.
pub(super) fn ascend(net: &Net, alive: &[bool], root: usize) -> Ascent {
    let mut left: Vec<u64> = net
        .edges
        .iter()
        .flat_map(|edge| [edge.cost, edge.cost])
        .collect();
    let mut bound = 0_u64;
    let mut waiting: BinaryHeap<Reverse<(usize, usize)>> = net
        .goals()
        .filter(|goal| *goal != root)
        .map(|goal| Reverse((0, goal)))
        .collect();
    while let Some(Reverse((size, goal))) = waiting.pop() {
        let cut = hanging(net, alive, &left, goal);
        if cut[root] {
            continue;
        }
        let now = cut.iter().filter(|inside| **inside).count();
        if now > size && waiting.peek().is_some_and(|Reverse(next)| next.0 < now) {
            waiting.push(Reverse((now, goal)));
            continue;
        }
        let entering = entering(net, alive, &cut);
        let Some(price) = entering.iter().map(|arc| left[*arc]).min() else {
            bound = ENDLESS;
            break;
        };
        for arc in entering {
            left[arc] -= price;
        }
        bound = bound.saturating_add(price);
        waiting.push(Reverse((now, goal)));
    }
    Ascent { root, bound, left }
}

/// The arc of a way that leads to one of its ends.
fn towards(net: &Net, edge: usize, end: usize) -> usize {
    2 * edge + usize::from(net.edges[edge].ends[0] == end)
}

/// The points from which one is reached by arcs with nothing left.
fn hanging(net: &Net, alive: &[bool], left: &[u64], goal: usize) -> Vec<bool> {
    let mut found = vec![false; net.wanted.len()];
    found[goal] = true;
    let mut open = vec![goal];
    while let Some(point) = open.pop() {
        for edge in &net.at[point] {
            let from = net.edges[*edge].across(point);
            if alive[*edge] && !found[from] && left[towards(net, *edge, point)] == 0 {
                found[from] = true;
                open.push(from);
            }
        }
    }
    found
}

/// The arcs that lead into a set of points.
fn entering(net: &Net, alive: &[bool], cut: &[bool]) -> Vec<usize> {
    let crossing = (0..net.edges.len()).filter(|edge| alive[*edge]);
    crossing
        .filter_map(|edge| {
            let [one, other] = net.edges[edge].ends;
            match (cut[one], cut[other]) {
                (false, true) => Some(towards(net, edge, other)),
                (true, false) => Some(towards(net, edge, one)),
                _ => None,
            }
        })
        .collect()
}

impl Ascent {
    /// Ways that no set cheaper than `best` can use.
    pub(super) fn useless(&self, net: &Net, alive: &[bool], best: u64) -> Vec<usize> {
        let from_root = self.distances(net, alive, &[self.root], true);
        let ends: Vec<usize> = net.goals().filter(|goal| *goal != self.root).collect();
        let to_goal = self.distances(net, alive, &ends, false);
        let dear = |from: usize, arc: usize, to: usize| {
            let through = self.left[arc].saturating_add(to_goal[to]);
            let whole = self.bound.saturating_add(from_root[from]);
            whole.saturating_add(through) >= best
        };
        let both = |edge: &usize| {
            let [one, other] = net.edges[*edge].ends;
            dear(one, 2 * edge, other) && dear(other, 2 * edge + 1, one)
        };
        let living = (0..net.edges.len()).filter(|edge| alive[*edge]);
        living.filter(both).collect()
    }

    /// Least sums of what is left, from some points along the arcs, or back to them.
    fn distances(&self, net: &Net, alive: &[bool], starts: &[usize], along: bool) -> Vec<u64> {
        let mut found = vec![ENDLESS; net.wanted.len()];
        let mut open = BinaryHeap::new();
        for start in starts {
            found[*start] = 0;
            open.push(Reverse((0, *start)));
        }
        while let Some(Reverse((far, point))) = open.pop() {
            if far > found[point] {
                continue;
            }
            for edge in net.at[point].iter().filter(|edge| alive[**edge]) {
                let next = net.edges[*edge].across(point);
                let arc = towards(net, *edge, if along { next } else { point });
                let sum = far.saturating_add(self.left[arc]);
                if sum < found[next] {
                    found[next] = sum;
                    open.push(Reverse((sum, next)));
                }
            }
        }
        found
    }

    /// The ways with nothing left in one direction at least.
    pub(super) fn used_up(&self, alive: &[bool]) -> Vec<bool> {
        let pairs = self.left.chunks(2).zip(alive);
        pairs
            .map(|(left, alive)| *alive && left.contains(&0))
            .collect()
    }
}
