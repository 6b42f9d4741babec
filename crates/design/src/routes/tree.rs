//! A good set of ways, found fast: each next point is joined by the cheapest way to what is joined already; then the
//! cheapest tree over the points used, without the branches that lead nowhere.

use super::{ENDLESS, Net};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// A set of ways that reaches every point from a start, and its cost; nothing when a point cannot be reached.
pub(super) fn grown(net: &Net, alive: &[bool], start: usize) -> Option<(u64, Vec<usize>)> {
    let mut joined = vec![false; net.wanted.len()];
    joined[start] = true;
    let mut missing = net.goals().filter(|goal| *goal != start).count();
    while missing > 0 {
        let path = nearest(net, alive, &joined)?;
        for edge in path {
            for end in net.edges[edge].ends {
                if !joined[end] {
                    joined[end] = true;
                    missing -= usize::from(net.wanted[end]);
                }
            }
        }
    }
    let edges = pruned(net, spanning(net, alive, &joined));
    let cost = edges.iter().map(|edge| net.edges[*edge].cost).sum();
    Some((cost, edges))
}

/// The cheapest path from what is joined to a point that must be and is not.
fn nearest(net: &Net, alive: &[bool], joined: &[bool]) -> Option<Vec<usize>> {
    let mut found = vec![ENDLESS; joined.len()];
    let mut by: Vec<Option<usize>> = vec![None; joined.len()];
    let mut open = BinaryHeap::new();
    for point in (0..joined.len()).filter(|point| joined[*point]) {
        found[point] = 0;
        open.push(Reverse((0, point)));
    }
    while let Some(Reverse((far, point))) = open.pop() {
        if far > found[point] {
            continue;
        }
        if net.wanted[point] && !joined[point] {
            return Some(traced(net, &by, point));
        }
        for edge in net.at[point].iter().filter(|edge| alive[**edge]) {
            let next = net.edges[*edge].across(point);
            let sum = far.saturating_add(net.edges[*edge].cost);
            if sum < found[next] {
                found[next] = sum;
                by[next] = Some(*edge);
                open.push(Reverse((sum, next)));
            }
        }
    }
    None
}

fn traced(net: &Net, by: &[Option<usize>], mut point: usize) -> Vec<usize> {
    let mut path = Vec::new();
    while let Some(edge) = by[point] {
        path.push(edge);
        point = net.edges[edge].across(point);
    }
    path
}

/// The cheapest tree over some points.
fn spanning(net: &Net, alive: &[bool], joined: &[bool]) -> Vec<usize> {
    let within =
        |edge: &usize| alive[*edge] && net.edges[*edge].ends.iter().all(|end| joined[*end]);
    let mut order: Vec<usize> = (0..net.edges.len()).filter(within).collect();
    order.sort_by_key(|edge| (net.edges[*edge].cost, *edge));
    let mut group: Vec<usize> = (0..joined.len()).collect();
    let mut tree = Vec::new();
    for edge in order {
        let [one, other] = net.edges[edge].ends.map(|end| head(&group, end));
        if one != other {
            group[one] = other;
            tree.push(edge);
        }
    }
    tree
}

fn head(group: &[usize], mut point: usize) -> usize {
    while group[point] != point {
        point = group[point];
    }
    point
}

/// A tree without the branches that end where nothing must be reached.
fn pruned(net: &Net, mut tree: Vec<usize>) -> Vec<usize> {
    loop {
        let mut ends = vec![0_usize; net.wanted.len()];
        for end in tree.iter().flat_map(|edge| net.edges[*edge].ends) {
            ends[end] += 1;
        }
        let before = tree.len();
        let idle = |end: &usize| ends[*end] == 1 && !net.wanted[*end];
        tree.retain(|edge| !net.edges[*edge].ends.iter().any(idle));
        if tree.len() == before {
            tree.sort_unstable();
            return tree;
        }
    }
}

/// Every point that must be reached hangs together by some ways.
pub(super) fn joins_all(net: &Net, edges: impl IntoIterator<Item = usize>) -> bool {
    let mut group: Vec<usize> = (0..net.wanted.len()).collect();
    for edge in edges {
        let [one, other] = net.edges[edge].ends.map(|end| head(&group, end));
        group[one] = other;
    }
    let mut heads = net.goals().map(|goal| head(&group, goal));
    let first = heads.next();
    heads.all(|head| Some(head) == first)
}
