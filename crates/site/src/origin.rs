//! Where a record and each of its values was written.

use std::ops::Range;
use std::sync::Arc;

/// A place in a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// Name of the file, as it was given.
    pub file: Arc<str>,
    /// Bytes of the file.
    pub span: Range<usize>,
    /// Line, counted from one.
    pub line: usize,
    /// Column in characters, counted from one.
    pub column: usize,
    /// The value was taken from an entry of a parts file: from a data sheet, not from this site.
    pub from_part: bool,
}

/// Where a record was written, and where each of its values came from.
#[derive(Debug, Clone)]
pub struct Origin {
    /// Name of the file.
    pub file: Arc<str>,
    /// Bytes of the table's header.
    pub span: Range<usize>,
    /// Line of the header, counted from one.
    pub line: usize,
    /// The record as a person would say it: `gate "slide" · leaf "panel"`; empty for the site as a whole.
    pub path: String,
    /// Place of each value that is there.
    fields: Vec<(&'static str, Place)>,
}

impl Origin {
    /// The origin of a record whose header stands at `place`.
    pub(crate) fn new(place: Place, path: String, fields: Vec<(&'static str, Place)>) -> Self {
        Self {
            file: place.file,
            span: place.span,
            line: place.line,
            path,
            fields,
        }
    }

    /// Place of the value of a key; nothing when the key is missing.
    pub fn field(&self, key: &str) -> Option<&Place> {
        self.fields
            .iter()
            .find(|(name, _)| *name == key)
            .map(|(_, place)| place)
    }

    /// A key of this record as a person would say it: `gate "slide" · leaf "panel" · mass`.
    pub fn path_of(&self, key: &str) -> String {
        join(&self.path, key)
    }

    /// The same record later stands on the same lines, and its values do. Bytes and columns may be others: they are for
    /// whoever reads the file, not for whoever answers.
    pub(crate) fn stands_where(&self, later: &Self) -> bool {
        let place = |(key, place): &(&'static str, Place)| {
            (*key, place.line, place.from_part, place.file.clone())
        };
        (&self.path, &self.file, self.line) == (&later.path, &later.file, later.line)
            && self
                .fields
                .iter()
                .map(place)
                .eq(later.fields.iter().map(place))
    }

    /// The value of a key came from an entry of a parts file.
    pub fn from_part(&self, key: &str) -> bool {
        self.field(key).is_some_and(|place| place.from_part)
    }
}

/// A path and one more step.
pub(crate) fn join(path: &str, step: &str) -> String {
    if path.is_empty() {
        step.to_owned()
    } else {
        format!("{path} · {step}")
    }
}
