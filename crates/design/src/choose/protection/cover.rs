//! The fewest candidates that together mend every case: a search that branches on the case that the fewest can mend.

use std::collections::{BTreeMap, BTreeSet};

/// Which cases each candidate mends by itself, as bits.
#[derive(Debug, Default)]
pub(super) struct Cover {
    /// For each case, the candidates that mend it, the lowest first.
    menders: Vec<Vec<usize>>,
}

/// The most branches that are followed for one size.
const BRANCHES: usize = 200_000;

impl Cover {
    /// Adds a case with the candidates that mend it; one that none mends is no part of the search.
    pub(super) fn add(&mut self, menders: Vec<usize>) {
        if !menders.is_empty() && !self.menders.contains(&menders) {
            self.menders.push(menders);
        }
    }

    /// Every set of so many candidates, no one more than needed, that mends every case and is none of the refused, as
    /// far as the branches reach; in order.
    pub(super) fn sets(&self, size: usize, refused: &BTreeSet<Vec<usize>>) -> Vec<Vec<usize>> {
        let mut found = BTreeSet::new();
        let mut left = BRANCHES;
        self.branch(size, &mut Vec::new(), &mut found, &mut left);
        found
            .into_iter()
            .filter(|set| !refused.contains(set))
            .collect()
    }

    /// So many candidates that together mend much: each time the one that mends the most of what is left.
    pub(super) fn greedy(&self, size: usize) -> Vec<usize> {
        let mut left: Vec<&Vec<usize>> = self.menders.iter().collect();
        let mut chosen = Vec::new();
        while chosen.len() < size {
            let mut counts: BTreeMap<usize, usize> = BTreeMap::new();
            for one in left.iter().copied().flatten() {
                *counts.entry(*one).or_default() += 1;
            }
            let most = counts
                .into_iter()
                .max_by_key(|(at, count)| (*count, usize::MAX - at));
            let Some((at, _)) = most else { break };
            chosen.push(at);
            left.retain(|menders| !menders.contains(&at));
        }
        chosen.sort_unstable();
        chosen
    }

    fn branch(
        &self,
        size: usize,
        chosen: &mut Vec<usize>,
        found: &mut BTreeSet<Vec<usize>>,
        left: &mut usize,
    ) {
        if *left == 0 {
            return;
        }
        *left -= 1;
        let open = self
            .menders
            .iter()
            .filter(|menders| !menders.iter().any(|one| chosen.contains(one)))
            .min_by_key(|menders| menders.len());
        let Some(menders) = open else {
            let mut set = chosen.clone();
            set.sort_unstable();
            found.insert(set);
            return;
        };
        if chosen.len() == size {
            return;
        }
        for one in menders {
            chosen.push(*one);
            self.branch(size, chosen, found, left);
            chosen.pop();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cover(cases: &[&[usize]]) -> Cover {
        let mut cover = Cover::default();
        for case in cases {
            cover.add(case.to_vec());
        }
        cover
    }

    #[test]
    fn the_fewest_that_mend_all() {
        let cover = cover(&[&[0, 1], &[1, 2], &[3]]);
        let none = BTreeSet::new();
        assert!(cover.sets(1, &none).is_empty());
        assert_eq!(cover.sets(2, &none), vec![vec![1, 3]]);
        let refused = BTreeSet::from([vec![1, 3]]);
        assert!(cover.sets(2, &refused).is_empty());
        assert!(cover.sets(3, &refused).contains(&vec![0, 2, 3]));
    }

    #[test]
    fn the_greedy_take_what_mends_most() {
        let cover = cover(&[&[0, 1], &[1, 2], &[3], &[1, 4]]);
        assert_eq!(cover.greedy(1), [1]);
        assert_eq!(cover.greedy(8), [1, 3]);
    }

    #[test]
    fn nothing_to_mend_takes_nothing() {
        assert_eq!(
            cover(&[&[]]).sets(3, &BTreeSet::new()),
            vec![Vec::<usize>::new()]
        );
    }
}
