//! Where a record and each of its values was written.

use crate::Changed;
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

    /// The same record later has the same keys from the same files; the lines are put in. Bytes and columns may be others: they
    /// are for whoever reads the file, not for whoever answers.
    pub(crate) fn stands_alike(&self, later: &Self, changed: &mut Changed) -> bool {
        let mut fields = self.fields.iter().zip(&later.fields);
        (&self.path, &self.file, self.fields.len())
            == (&later.path, &later.file, later.fields.len())
            && changed.moves(&self.file, self.line, later.line)
            && fields.all(|((key, was), (other, is))| {
                (key, was.from_part, &was.file) == (other, is.from_part, &is.file)
                    && changed.moves(&was.file, was.line, is.line)
            })
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
