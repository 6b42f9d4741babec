//! Problems with what somebody wrote: what is so, where, what was expected, what to write.

mod code;
mod excerpt;
mod show;

use crate::origin::Place;
use crate::source::Source;
use serde::Serialize;
use std::ops::Range;

pub use code::Code;
pub use excerpt::Excerpt;

/// How bad a problem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// It cannot be so: the value was left out, and the site must be mended.
    Wrong,
    /// It can be so, but hardly is: the value was taken, and somebody should look.
    Doubtful,
}

impl Severity {
    /// The word that begins the message.
    pub fn word(self) -> &'static str {
        match self {
            Self::Wrong => "wrong",
            Self::Doubtful => "doubtful",
        }
    }
}

/// One problem, with everything that is needed to find and mend it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// Name of the rule, which never changes: `unknown-key`.
    pub code: Code,
    /// How bad it is.
    pub severity: Severity,
    /// Name of the file.
    pub file: String,
    /// Line, counted from one.
    pub line: usize,
    /// Column in characters, counted from one.
    pub column: usize,
    /// Bytes of the file that are at fault.
    pub span: Range<usize>,
    /// What it is about, as a person would say it: `gate "slide" · leaf "panel" · mass`.
    pub path: String,
    /// What is so, as a sentence without its full stop.
    pub what: String,
    /// What was expected there.
    pub expected: Option<String>,
    /// What to write instead, ready to paste.
    pub write: Option<String>,
    /// The line at fault.
    pub excerpt: Excerpt,
    /// Another line that it clashes with.
    pub also: Option<Also>,
}

/// A second place that a problem points at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Also {
    /// Name of the file.
    pub file: String,
    /// Line, counted from one.
    pub line: usize,
    /// Column in characters, counted from one.
    pub column: usize,
    /// What stands there.
    pub what: String,
    /// The line.
    pub excerpt: Excerpt,
}

impl Problem {
    /// Begins a problem with some bytes of a file: something that cannot be so.
    pub(crate) fn wrong(source: &Source, span: &Range<usize>, code: Code, what: String) -> Self {
        let Place {
            file,
            span,
            line,
            column,
            ..
        } = source.place(span, false);
        let excerpt = Excerpt::new(source, line, &span);
        Self {
            code,
            severity: Severity::Wrong,
            file: file.to_string(),
            line,
            column,
            span,
            path: String::new(),
            what,
            expected: None,
            write: None,
            excerpt,
            also: None,
        }
    }

    /// It can be so, but hardly is.
    pub(crate) fn doubtful(self) -> Self {
        Self {
            severity: Severity::Doubtful,
            ..self
        }
    }

    /// What it is about.
    pub(crate) fn path(self, path: String) -> Self {
        Self { path, ..self }
    }

    /// What was expected.
    pub(crate) fn expected(self, expected: impl Into<String>) -> Self {
        Self {
            expected: Some(expected.into()),
            ..self
        }
    }

    /// What to write.
    pub(crate) fn write(self, write: impl Into<String>) -> Self {
        Self {
            write: Some(write.into()),
            ..self
        }
    }

    /// Another line that it clashes with.
    pub(crate) fn also(self, source: &Source, place: &Place, what: &str) -> Self {
        let excerpt = Excerpt::new(source, place.line, &place.span);
        let also = Also {
            file: place.file.to_string(),
            line: place.line,
            column: place.column,
            what: what.to_owned(),
            excerpt,
        };
        Self {
            also: Some(also),
            ..self
        }
    }
}

/// Problems in the order of their places.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Problems(Vec<Problem>);

impl Problems {
    /// Adds one, unless the same is there.
    pub(crate) fn push(&mut self, problem: Problem) {
        if !self.0.contains(&problem) {
            self.0.push(problem);
        }
    }

    /// Adds all of `others`.
    pub(crate) fn append(&mut self, others: Problems) {
        others.0.into_iter().for_each(|problem| self.push(problem));
    }

    /// Sorts them: files in the order in which they were given, then by place.
    pub(crate) fn sort(&mut self, sources: &[Source]) {
        let rank = |problem: &Problem| {
            sources
                .iter()
                .position(|source| *source.name == *problem.file)
        };
        self.0.sort_by_key(|problem| {
            (
                rank(problem),
                problem.span.start,
                problem.span.end,
                problem.code,
            )
        });
    }

    /// There are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// One after the other.
    pub fn iter(&self) -> std::slice::Iter<'_, Problem> {
        self.0.iter()
    }

    /// At least one says that something cannot be so.
    pub fn any_wrong(&self) -> bool {
        self.0
            .iter()
            .any(|problem| problem.severity == Severity::Wrong)
    }
}

impl<'a> IntoIterator for &'a Problems {
    type Item = &'a Problem;
    type IntoIter = std::slice::Iter<'a, Problem>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl IntoIterator for Problems {
    type Item = Problem;
    type IntoIter = std::vec::IntoIter<Problem>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}
