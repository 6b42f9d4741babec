//! Collects what the rules find.

use crate::origin::Origin;
use crate::problem::{Code, Problem, Problems};
use crate::source::Source;
use quantity::{Measured, Quantity};

/// What the rules found.
pub(super) struct Report<'s> {
    sources: &'s [Source],
    problems: Problems,
}

impl<'s> Report<'s> {
    /// A report on a site that was read from these files.
    pub(super) fn new(sources: &'s [Source]) -> Self {
        Self {
            sources,
            problems: Problems::default(),
        }
    }

    /// What was found.
    pub(super) fn finish(self) -> Problems {
        self.problems
    }

    /// Reports that the value of a key cannot be so.
    pub(super) fn wrong(
        &mut self,
        code: Code,
        origin: &Origin,
        key: &str,
        what: &str,
        expected: &str,
    ) {
        self.add(code, origin, key, what, expected, |problem| problem);
    }

    /// Reports that the value of a key hardly is so.
    pub(super) fn doubtful(
        &mut self,
        code: Code,
        origin: &Origin,
        key: &str,
        what: &str,
        expected: &str,
    ) {
        self.add(code, origin, key, what, expected, Problem::doubtful);
    }

    fn add(
        &mut self,
        code: Code,
        origin: &Origin,
        key: &str,
        what: &str,
        expected: &str,
        grade: fn(Problem) -> Problem,
    ) {
        let place = origin.field(key);
        let (file, span) = place.map_or((&origin.file, &origin.span), |place| {
            (&place.file, &place.span)
        });
        let Some(source) = self.sources.iter().find(|source| source.name == *file) else {
            return;
        };
        let problem = Problem::wrong(source, span, code, what.to_owned())
            .path(origin.path_of(key))
            .expected(expected);
        self.problems.push(grade(problem));
    }
}

/// The first nominal value is above the second.
pub(super) fn above<Q: Quantity>(first: Option<Measured<Q>>, second: Option<Measured<Q>>) -> bool {
    let (Some(first), Some(second)) = (first, second) else {
        return false;
    };
    first.nominal().base() > second.nominal().base()
}
