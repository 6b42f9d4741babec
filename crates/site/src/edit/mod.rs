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
use crate::source::{Source, SourceFile};
use crate::syntax;
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
    let (changed, whole) = written(text, path, value)?;
    match whole.and_then(|span| zero_at(&changed, &span)) {
        Some(problem) => Err(Box::new(problem)),
        None => Ok(changed),
    }
}

/// The same as [`set_value`], for a caller who reads the whole text next and refuses a new problem of zero by itself: that a
/// zero stands where none can be is only seen when everything is read.
pub fn write_value(text: &str, path: &str, value: &str) -> Result<String, Box<Problem>> {
    written(text, path, value).map(|(changed, _)| changed)
}

/// The changed text, and the bytes of the value where it is the whole of its key.
fn written(
    text: &str,
    path: &str,
    value: &str,
) -> Result<(String, Option<Range<usize>>), Box<Problem>> {
    let source = source_of_text(text);
    let (tree, errors) = DeTable::parse_recoverable(&source.text);
    if let Some(error) = errors.first() {
        return Err(Box::new(syntax::problem(&source, error)));
    }
    let Goal { key, place } = walk::walk(tree.get_ref(), text, path)?;
    let (value, changed) = match place {
        Place::Whole(span) => {
            let value = value::readable(key, value, str::to_owned)?;
            let changed = splice(text, span, &value);
            (value, changed)
        }
        Place::OneOf { list, one } => {
            let inside = one.start - list.start..one.end - list.start;
            let whole = text.get(list).unwrap_or_default();
            let value = value::readable(key, value, |one| splice(whole, inside.clone(), one))?;
            let changed = splice(text, one, &value);
            (value, changed)
        }
        Place::Missing(spot) => {
            let value = value::readable(key, value, str::to_owned)?;
            let changed = insert::line(text, &spot, key.name, &value);
            (value, changed)
        }
    };
    let (tree, errors) = DeTable::parse_recoverable(&changed);
    match walk::walk(tree.get_ref(), &changed, path)?.place {
        Place::Missing(_) => Err(Box::new(by_hand(path, key.name, &value))),
        _ if !errors.is_empty() => Err(Box::new(by_hand(path, key.name, &value))),
        Place::Whole(span) => Ok((changed, Some(span))),
        Place::OneOf { .. } => Ok((changed, None)),
    }
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
