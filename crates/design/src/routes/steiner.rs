//! The cheapest set of ways that hangs together and reaches every wanted point: branch and bound.
//!
//! A point that nothing must reach is either on the way or not: that is the branch. The bound is that of the dual ascent;
//! ways that no cheaper set can use are struck out on the way. Costs are whole hundredths, so that a bound that meets the
//! cost is a proof.

use super::ascent::{Ascent, ascend};
use super::tree::{grown, joins_all};
use super::{ENDLESS, Net};

/// The cheapest set that was found, and the proof.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Cheapest {
    /// The ways of the set.
    pub(crate) edges: Vec<usize>,
    /// Their cost.
    pub(crate) cost: u64,
    /// No set costs less than this.
    pub(crate) at_least: u64,
    /// Cases that were looked at.
    pub(crate) looked: usize,
}

impl Cheapest {
    /// Nothing cheaper exists.
    pub(crate) fn is_proved(&self) -> bool {
        self.at_least >= self.cost
    }
}

/// Some ways join every wanted point.
pub(crate) fn joined(net: &Net, edges: impl IntoIterator<Item = usize>) -> bool {
    joins_all(net, edges)
}

/// The cheapest set, looked for in so many cases at most; nothing when a wanted point cannot be reached.
pub(crate) fn cheapest(net: &Net, most: usize) -> Option<Cheapest> {
    let mut search = Search {
        best: None,
        open: ENDLESS,
        looked: 0,
        most,
    };
    search.look(net.clone(), vec![true; net.edges.len()], 0);
    let (cost, edges) = search.best?;
    Some(Cheapest {
        at_least: cost.min(search.open),
        cost,
        edges,
        looked: search.looked,
    })
}

/// Roots from which a bound is tried in one case.
const ROOTS: usize = 3;

struct Search {
    best: Option<(u64, Vec<usize>)>,
    /// Least bound of the cases that were not looked at.
    open: u64,
    looked: usize,
    most: usize,
}

impl Search {
    fn cost(&self) -> u64 {
        self.best.as_ref().map_or(ENDLESS, |(cost, _)| *cost)
    }

    fn offer(&mut self, found: Option<(u64, Vec<usize>)>) {
        if let Some(found) = found
            && found.0 < self.cost()
        {
            self.best = Some(found);
        }
    }

    /// Looks at one case: ways that are still alive, and points that must be reached.
    fn look(&mut self, net: Net, mut alive: Vec<bool>, bound: u64) {
        if self.looked >= self.most {
            self.open = self.open.min(bound);
            return;
        }
        self.looked += 1;
        let living = (0..alive.len()).filter(|edge| alive[*edge]);
        if !joins_all(&net, living) {
            return;
        }
        let Some(bound) = self.narrowed(&net, &mut alive, bound) else {
            return;
        };
        let Some(point) = fork(&net, &alive) else {
            let start = net.goals().next();
            self.offer(start.and_then(|start| grown(&net, &alive, start)));
            return;
        };
        let mut with = net.clone();
        with.wanted[point] = true;
        self.look(with, alive.clone(), bound);
        for edge in &net.at[point] {
            alive[*edge] = false;
        }
        self.look(net, alive, bound);
    }

    /// Finds sets, raises the bound and strikes ways out; nothing where no cheaper set is left.
    fn narrowed(&mut self, net: &Net, alive: &mut [bool], mut bound: u64) -> Option<u64> {
        for root in roots(net) {
            self.offer(grown(net, alive, root));
            let ascent = ascend(net, alive, root);
            self.offer(grown(net, &ascent.used_up(alive), root));
            bound = bound.max(ascent.bound);
            if bound >= self.cost() {
                return None;
            }
            strike(&ascent, net, alive, self.cost());
        }
        Some(bound)
    }
}

fn strike(ascent: &Ascent, net: &Net, alive: &mut [bool], best: u64) {
    for edge in ascent.useless(net, alive, best) {
        alive[edge] = false;
    }
}

/// A few of the wanted points, spread through the list.
fn roots(net: &Net) -> Vec<usize> {
    let goals: Vec<usize> = net.goals().collect();
    let step = goals.len().div_ceil(ROOTS).max(1);
    goals.into_iter().step_by(step).collect()
}

/// The point that nothing must reach and at which most ways meet. Where there is none, the cheapest tree over what must
/// be reached is exact, and has been found.
fn fork(net: &Net, alive: &[bool]) -> Option<usize> {
    let meeting = |point: usize| net.at[point].iter().filter(|edge| alive[**edge]).count();
    let free = (0..net.wanted.len()).filter(|point| !net.wanted[*point]);
    free.map(|point| (meeting(point), std::cmp::Reverse(point)))
        .filter(|(ways, _)| *ways > 1)
        .max()
        .map(|(_, point)| point.0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::Edge;
    use super::*;
    use proptest::prelude::*;

    fn net(points: usize, ways: &[(usize, usize, u64)], wanted: &[usize]) -> Net {
        let edges = ways
            .iter()
            .map(|(one, other, cost)| Edge {
                ends: [*one, *other],
                cost: *cost,
            })
            .collect();
        let wanted = (0..points).map(|point| wanted.contains(&point)).collect();
        Net::new(edges, wanted)
    }

    #[test]
    fn a_star_beats_the_ring() {
        // Three corners two apart, a middle at 1.2 from each: 3.6 over the middle, 4 along the ring.
        let star = net(
            4,
            &[
                (0, 1, 200),
                (1, 2, 200),
                (2, 0, 200),
                (0, 3, 120),
                (1, 3, 120),
                (2, 3, 120),
            ],
            &[0, 1, 2],
        );
        let found = cheapest(&star, 1000).unwrap();
        assert_eq!((found.cost, found.at_least), (360, 360));
        assert_eq!(found.edges, [3, 4, 5]);
    }

    #[test]
    fn nothing_reaches_an_island() {
        assert_eq!(cheapest(&net(3, &[(0, 1, 5)], &[0, 2]), 1000), None);
        let alone = cheapest(&net(2, &[(0, 1, 5)], &[0]), 1000).unwrap();
        assert_eq!((alone.cost, alone.edges.len()), (0, 0));
    }

    /// The cheapest by trying every subset of the free points.
    fn by_every_subset(net: &Net) -> Option<u64> {
        let free: Vec<usize> = (0..net.wanted.len())
            .filter(|at| !net.wanted[*at])
            .collect();
        let mut best = None;
        for subset in 0..1_u32 << free.len() {
            let mut all = net.clone();
            let mut alive = vec![true; net.edges.len()];
            for (bit, point) in free.iter().enumerate() {
                let taken = subset & (1 << bit) != 0;
                all.wanted[*point] = taken;
                if !taken {
                    net.at[*point].iter().for_each(|edge| alive[*edge] = false);
                }
            }
            // All points wanted or gone: the tree that is grown is a cheapest spanning tree.
            let Some(start) = all.goals().next() else {
                continue;
            };
            if let Some((cost, _)) = grown(&all, &alive, start) {
                best = Some(best.map_or(cost, |least: u64| least.min(cost)));
            }
        }
        best
    }

    proptest! {
        #[test]
        fn as_cheap_as_the_best_of_all_subsets(
            ways in proptest::collection::vec((0_usize..9, 0_usize..9, 1_u64..40), 8..24),
            wanted in proptest::collection::vec(0_usize..9, 2..5)
        ) {
            let ways: Vec<_> = ways.into_iter().filter(|way| way.0 != way.1).collect();
            let net = net(9, &ways, &wanted);
            let found = cheapest(&net, 100_000);
            prop_assert_eq!(found.as_ref().map(|found| found.cost), by_every_subset(&net));
            if let Some(found) = found {
                prop_assert!(found.is_proved());
                prop_assert!(joins_all(&net, found.edges.iter().copied()));
                let sum: u64 = found.edges.iter().map(|edge| net.edges[*edge].cost).sum();
                prop_assert_eq!(sum, found.cost);
            }
        }

        #[test]
        fn a_bound_never_exceeds_the_cost_when_cut_short(
            ways in proptest::collection::vec((0_usize..12, 0_usize..12, 1_u64..40), 12..40),
            most in 1_usize..4
        ) {
            let ways: Vec<_> = ways.into_iter().filter(|way| way.0 != way.1).collect();
            let net = net(12, &ways, &[0, 1, 2, 3, 4]);
            let (short, full) = (cheapest(&net, most), cheapest(&net, 100_000));
            if let (Some(short), Some(full)) = (short, full) {
                prop_assert!(short.at_least <= full.cost && full.cost <= short.cost);
            }
        }
    }
}
