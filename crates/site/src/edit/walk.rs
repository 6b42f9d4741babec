//! Follows a path such as `gate.slide.leaf.panel.mass` to the value that it names.

use super::insert::{Spot, spot};
use crate::model::Site;
use crate::nearest::{listed, nearest};
use crate::problem::{Code, Problem};
use crate::record::{Key, Record};
use crate::source::{Source, SourceFile};
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What a path leads to.
pub(super) struct Goal {
    /// The key whose value it is.
    pub(super) key: &'static Key,
    /// Where it stands.
    pub(super) place: Place,
}

/// Where a value stands, or would stand.
pub(super) enum Place {
    /// It is there: its bytes.
    Whole(Range<usize>),
    /// It is one of a list, such as the height of a position.
    OneOf {
        /// Bytes of the list.
        list: Range<usize>,
        /// Bytes of the value.
        one: Range<usize>,
    },
    /// It is missing.
    Missing(Spot),
}

/// A step of a path with its bytes.
pub(super) struct Step<'p> {
    pub(super) word: &'p str,
    pub(super) span: Range<usize>,
}

/// A table on the way, with the bytes of its header or braces.
struct Table<'t> {
    table: &'t DeTable<'t>,
    span: Range<usize>,
}

/// The path as a text that problems can point into.
pub(super) fn source_of(path: &str) -> Source {
    Source::new(SourceFile {
        name: "path".to_owned(),
        text: path.to_owned(),
    })
}

/// The steps of a path, each with its bytes.
pub(super) fn steps_of(path: &str) -> Vec<Step<'_>> {
    let mut start = 0;
    path.split('.')
        .map(|word| {
            let span = start..start + word.len();
            start = span.end + 1;
            Step { word, span }
        })
        .collect()
}

/// Follows the path.
pub(super) fn walk(root: &DeTable<'_>, text: &str, path: &str) -> Result<Goal, Box<Problem>> {
    let whole = Table {
        table: root,
        span: 0..0,
    };
    follow(&whole, Site::KEYS, &steps_of(path), text).map_err(|error| astray(path, error))
}

/// The bytes of the path at fault, what is so, and what was expected.
pub(super) type Astray = (Range<usize>, String, String);

/// A path that leads nowhere, as a problem.
pub(super) fn astray(path: &str, (span, what, expected): Astray) -> Box<Problem> {
    Box::new(Problem::wrong(&source_of(path), &span, Code::UnknownPath, what).expected(expected))
}

/// Follows the steps from one table.
fn follow(
    table: &Table<'_>,
    keys: &'static [Key],
    steps: &[Step<'_>],
    text: &str,
) -> Result<Goal, Astray> {
    let Some((step, rest)) = steps.split_first() else {
        return Err((
            0..0,
            "the path ends at a table".to_owned(),
            "one more step: a key of it".to_owned(),
        ));
    };
    let key = key_of(keys, step)?;
    let value = table.table.get(key.name);
    match (key.keys)() {
        Some(keys) => {
            let Some(value) = value else {
                return Err((
                    step.span.clone(),
                    format!("the site has no `{}`", key.name),
                    "a table that is there".to_owned(),
                ));
            };
            descend(value, keys, step, rest, text)
        }
        None => at_value(table, key, value, rest, text),
    }
}

/// The key that a step names.
pub(super) fn key_of(keys: &'static [Key], step: &Step<'_>) -> Result<&'static Key, Astray> {
    keys.iter()
        .find(|key| key.name == step.word)
        .ok_or_else(|| {
            let names: Vec<&str> = keys.iter().map(|key| key.name).collect();
            let expected = nearest(step.word, &names)
                .map_or_else(|| listed(&names), |near| format!("perhaps `{near}`"));
            (
                step.span.clone(),
                format!("there is no key `{}`", step.word),
                expected,
            )
        })
}

/// Follows the steps below a value that holds a record or a list of records.
fn descend(
    value: &Spanned<DeValue<'_>>,
    keys: &'static [Key],
    step: &Step<'_>,
    rest: &[Step<'_>],
    text: &str,
) -> Result<Goal, Astray> {
    match value.get_ref() {
        DeValue::Table(table) if rest.is_empty() => {
            let _ = table;
            Err((
                step.span.clone(),
                "the path ends at a table".to_owned(),
                "one more step: a key of it".to_owned(),
            ))
        }
        DeValue::Table(table) => follow(
            &Table {
                table,
                span: value.span(),
            },
            keys,
            rest,
            text,
        ),
        DeValue::Array(array) => {
            let Some((name, rest)) = rest.split_first() else {
                let expected = format!("the name of one of them: {}", listed(&names(array)));
                return Err((
                    step.span.clone(),
                    "the path ends at a list of tables".to_owned(),
                    expected,
                ));
            };
            let (table, span) = entry(array, name)?;
            if rest.is_empty() {
                return Err((
                    name.span.clone(),
                    "the path ends at a table".to_owned(),
                    "one more step: a key of it".to_owned(),
                ));
            }
            follow(&Table { table, span }, keys, rest, text)
        }
        _ => Err((
            step.span.clone(),
            format!("`{}` is not a table in this file", step.word),
            "a table".to_owned(),
        )),
    }
}

/// The table of a list that has this name or this number.
fn entry<'t>(
    array: &'t [Spanned<DeValue<'t>>],
    step: &Step<'_>,
) -> Result<(&'t DeTable<'t>, Range<usize>), Astray> {
    let called = |value: &&Spanned<DeValue<'_>>| name_of(value) == Some(step.word);
    let numbered = || {
        step.word
            .parse::<usize>()
            .ok()
            .and_then(|number| array.get(number))
    };
    let value = array.iter().find(called).or_else(numbered);
    value
        .and_then(|value| {
            value
                .get_ref()
                .as_table()
                .map(|table| (table, value.span()))
        })
        .ok_or_else(|| {
            let names = names(array);
            let expected = match nearest(step.word, &names) {
                Some(near) => format!("perhaps `{near}`"),
                None if names.is_empty() => {
                    format!("a number from 0 to {}", array.len().saturating_sub(1))
                }
                None => format!("one of {}", listed(&names)),
            };
            (
                step.span.clone(),
                format!("nothing in this list is called `{}`", step.word),
                expected,
            )
        })
}

/// The names of the tables of a list.
fn names<'t>(array: &'t [Spanned<DeValue<'t>>]) -> Vec<&'t str> {
    array.iter().filter_map(name_of).collect()
}

/// The name of a table.
fn name_of<'t>(value: &'t Spanned<DeValue<'t>>) -> Option<&'t str> {
    value.get_ref().as_table()?.get("id")?.get_ref().as_str()
}

/// The goal at the value of a key, or at one of its list.
fn at_value(
    table: &Table<'_>,
    key: &'static Key,
    value: Option<&Spanned<DeValue<'_>>>,
    rest: &[Step<'_>],
    text: &str,
) -> Result<Goal, Astray> {
    match (value, rest) {
        (None, []) => Ok(Goal {
            key,
            place: Place::Missing(spot(text, table.table, &table.span)),
        }),
        (Some(value), []) => Ok(Goal {
            key,
            place: Place::Whole(value.span()),
        }),
        (Some(value), [number]) => {
            let list = value.get_ref().as_array();
            let one = list
                .zip(number.word.parse::<usize>().ok())
                .and_then(|(list, number)| list.get(number));
            one.map(|one| Goal {
                key,
                place: Place::OneOf {
                    list: value.span(),
                    one: one.span(),
                },
            })
            .ok_or_else(|| {
                (
                    number.span.clone(),
                    format!("`{}` has no such value", key.name),
                    "a number from 0, within its list".to_owned(),
                )
            })
        }
        (_, [step, ..]) => Err((
            step.span.clone(),
            format!("`{}` is not a table", key.name),
            "a path that ends there".to_owned(),
        )),
    }
}
