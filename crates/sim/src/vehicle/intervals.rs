//! Sets of places on a line: closed stretches that lie apart, in order.

/// Stretches of a line, each with its two ends, apart and in order.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Intervals {
    stretches: Vec<(f64, f64)>,
}

impl Intervals {
    /// The union of stretches in any order; those without length the wrong way round are left out.
    pub(super) fn of(stretches: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut sorted: Vec<(f64, f64)> = stretches
            .into_iter()
            .filter(|(from, to)| from <= to)
            .collect();
        sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut merged: Vec<(f64, f64)> = Vec::with_capacity(sorted.len());
        for (from, to) in sorted {
            match merged.last_mut() {
                Some(last) if from <= last.1 => last.1 = last.1.max(to),
                _ => merged.push((from, to)),
            }
        }
        Self { stretches: merged }
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.stretches.iter().copied()
    }

    pub(super) fn is_empty(&self) -> bool {
        self.stretches.is_empty()
    }

    pub(super) fn contains(&self, place: f64) -> bool {
        self.iter().any(|(from, to)| from <= place && place <= to)
    }

    pub(super) fn union(sets: impl IntoIterator<Item = Self>) -> Self {
        Self::of(sets.into_iter().flat_map(|set| set.stretches))
    }

    /// What is left of each stretch when so much is taken from both of its ends.
    pub(super) fn eroded(&self, by: f64) -> Self {
        Self::of(self.iter().map(|(from, to)| (from + by, to - by)))
    }

    /// What is in this set and not in the other, with the ends of what is left.
    pub(super) fn without(&self, other: &Self) -> Self {
        let mut left = Vec::new();
        for (mut from, to) in self.iter() {
            let mut open = true;
            for (cut_from, cut_to) in other.iter() {
                if cut_to < from || cut_from > to {
                    continue;
                }
                if cut_from > from {
                    left.push((from, cut_from));
                }
                from = cut_to;
                open = cut_to < to;
            }
            if open {
                left.push((from, to));
            }
        }
        Self { stretches: left }
    }

    /// The longest stretch.
    pub(super) fn longest(&self) -> Option<(f64, f64)> {
        self.iter()
            .max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn some() -> impl Strategy<Value = Intervals> {
        prop::collection::vec((-10.0..10.0, 0.0..4.0), 0..6).prop_map(|stretches| {
            Intervals::of(stretches.into_iter().map(|(at, long)| (at, at + long)))
        })
    }

    proptest! {
        #[test]
        fn a_place_left_is_in_the_one_and_not_inside_the_other(a in some(), b in some(), at in -12.0..15.0) {
            let inside = b.eroded(1e-12).contains(at);
            prop_assert_eq!(a.without(&b).contains(at), a.contains(at) && !inside);
        }

        #[test]
        fn a_union_holds_what_either_holds(a in some(), b in some(), at in -12.0..15.0) {
            let both = Intervals::union([a.clone(), b.clone()]);
            prop_assert_eq!(both.contains(at), a.contains(at) || b.contains(at));
        }
    }

    #[test]
    fn touching_stretches_are_one_and_a_cut_in_the_middle_leaves_two() {
        let one = Intervals::of([(2.0, 3.0), (0.0, 2.0), (5.0, 4.0)]);
        assert_eq!(one.iter().collect::<Vec<_>>(), [(0.0, 3.0)]);
        let two = one.without(&Intervals::of([(1.0, 1.5)]));
        assert_eq!(two.iter().collect::<Vec<_>>(), [(0.0, 1.0), (1.5, 3.0)]);
        assert!(one.without(&Intervals::of([(-1.0, 4.0)])).is_empty());
        assert_eq!(two.longest(), Some((1.5, 3.0)));
    }
}
