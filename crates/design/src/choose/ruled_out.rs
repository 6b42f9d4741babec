//! What rules candidates out, and how many.

use serde::Serialize;
use std::borrow::Cow;
use std::collections::BTreeMap;

/// What rules candidates out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RuledOut {
    /// A way to fail, or a distance that is not kept.
    pub what: Cow<'static, str>,
    /// How many candidates.
    pub candidates: usize,
}

/// Candidates counted by what rules them out.
#[derive(Debug, Default)]
pub(super) struct Tally(BTreeMap<Cow<'static, str>, usize>);

impl Tally {
    /// So many more are ruled out.
    pub(super) fn add(&mut self, what: Cow<'static, str>, candidates: usize) {
        *self.0.entry(what).or_default() += candidates;
    }

    /// The most frequent first.
    pub(super) fn by_frequency(self) -> Vec<RuledOut> {
        let counted = self.0.into_iter();
        let mut all: Vec<RuledOut> = counted
            .map(|(what, candidates)| RuledOut { what, candidates })
            .collect();
        all.sort_by_key(|one| std::cmp::Reverse(one.candidates));
        all
    }
}
