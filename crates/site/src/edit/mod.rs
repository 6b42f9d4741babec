//! Writes one changed value back, and leaves every other byte of the file as it was.

mod insert;
mod structure;
mod understood;
mod value;
mod walk;

pub(crate) use structure::is_list;
pub use structure::{add_record, remove};
pub use understood::{Understood, understood};

use crate::problem::{Code, Problem};
use crate::read::load;
use crate::record::Key;
use crate::source::{Source, SourceFile};
use crate::syntax;
use quantity::UnitSystem;
use std::ops::Range;
use toml::de::DeTable;
use walk::{Goal, Place};

/// The text with one value changed, or with one key more when the table did not have it.
///
/// The path names tables by their ids, or by their number from zero where they have none:
/// `site.name`, `device.reader-in.least_voltage`, `gate.slide.leaf.panel.mass`, `gate.slide.stop.0.at`. The value is
/// written as in the file, and text may go without its quotes: `640 lb ± 5 %`, `4`, `["-2 ft", "3 ft", "21 in"]`.
/// A path that leads nowhere, a value that does not read and a zero where none can be are problems, and nothing is changed.
pub fn set_value(text: &str, path: &str, value: &str) -> Result<String, Box<Problem>> {
    let written = write_value(text, path, value)?;
    match written.span.and_then(|span| zero_at(&written.text, &span)) {
        Some(problem) => Err(Box::new(problem)),
        None => Ok(written.text),
    }
}

/// A text into which a value was written.
pub struct Written {
    /// The text.
    pub text: String,
    key: &'static Key,
    /// The value as it stands in the text, and the whole value of its key.
    value: String,
    whole: String,
    /// Its bytes, where it is the whole of its key.
    span: Option<Range<usize>>,
}

impl Written {
    /// How the value is understood.
    pub fn understood(&self, units: UnitSystem) -> Option<Understood> {
        understood::of(self.key, &self.value, &self.whole, units)
    }
}

/// The same as [`set_value`], for a caller who reads the whole text next and refuses a new problem of zero by itself: that a
/// zero stands where none can be is only seen when everything is read.
pub fn write_value(text: &str, path: &str, value: &str) -> Result<Written, Box<Problem>> {
    let source = source_of_text(text);
    let (tree, errors) = DeTable::parse_recoverable(&source.text);
    if let Some(error) = errors.first() {
        return Err(Box::new(syntax::problem(&source, error)));
    }
    let Goal { key, place } = walk::walk(tree.get_ref(), text, path)?;
    let at = |start: usize, value: &str| start..start + value.len();
    let written = match place {
        Place::Whole(span) => {
            let value = value::readable(key, value, str::to_owned)?;
            Written {
                span: Some(at(span.start, &value)),
                text: splice(text, span, &value),
                whole: value.clone(),
                key,
                value,
            }
        }
        Place::OneOf { list, one } => {
            let inside = one.start - list.start..one.end - list.start;
            let before = text.get(list).unwrap_or_default();
            let whole = |one: &str| splice(before, inside.clone(), one);
            let value = value::readable(key, value, whole)?;
            Written {
                span: None,
                text: splice(text, one, &value),
                whole: whole(&value),
                key,
                value,
            }
        }
        Place::Missing(spot) => {
            let value = value::readable(key, value, str::to_owned)?;
            let changed = insert::line(text, &spot, key.name, &value);
            return read_again(changed, (key, value), path);
        }
    };
    if ends_by_itself(&written.value) {
        return Ok(written);
    }
    let Written { text, value, .. } = read_again(written.text, (key, written.value), path)?;
    Ok(Written {
        text,
        value,
        ..written
    })
}

/// What follows a value stays as it was: a comment or an open line would take some of it along.
fn ends_by_itself(value: &str) -> bool {
    !value.contains(['#', '\n', '\r'])
}

/// The changed text, once it reads and the value is where it was meant to be.
fn read_again(
    text: String,
    (key, value): (&'static Key, String),
    path: &str,
) -> Result<Written, Box<Problem>> {
    let (tree, errors) = DeTable::parse_recoverable(&text);
    let span = match walk::walk(tree.get_ref(), &text, path)?.place {
        Place::Missing(_) => return Err(Box::new(by_hand(path, key.name, &value))),
        _ if !errors.is_empty() => return Err(Box::new(by_hand(path, key.name, &value))),
        Place::Whole(span) => Some(span),
        Place::OneOf { .. } => None,
    };
    drop(tree);
    Ok(Written {
        text,
        key,
        whole: value.clone(),
        value,
        span,
    })
}

/// The text of a site file, so that problems can point into it.
fn source_of_text(text: &str) -> Source {
    Source::new(SourceFile {
        name: "the site file".to_owned(),
        text: text.to_owned(),
    })
}

/// What says that the value at a place of the file must be more than zero, where it is not.
fn zero_at(changed: &str, span: &Range<usize>) -> Option<Problem> {
    let file = SourceFile {
        name: "the site file".to_owned(),
        text: changed.to_owned(),
    };
    let problems = load(file, Vec::new()).problems;
    problems
        .into_iter()
        .find(|problem| problem.code == Code::Zero && problem.span == *span)
}

/// The text with other bytes in place of some.
fn splice(text: &str, span: Range<usize>, new: &str) -> String {
    let mut changed = text.to_owned();
    changed.replace_range(span, new);
    changed
}

/// The table is written in a way that only a person can extend.
fn by_hand(path: &str, key: &str, value: &str) -> Problem {
    let source = walk::source_of(path);
    Problem::wrong(
        &source,
        &(0..path.len()),
        Code::UnknownPath,
        "this line has to be added by hand".to_owned(),
    )
    .write(format!("{key} = {value}"))
}
