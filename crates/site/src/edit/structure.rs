//! Adds a record to a site file, or takes one or a value out of it, and leaves the rest of the file as it was.

use super::walk::{Astray, Step, astray, key_of, steps_of};
use super::{by_hand, source_of_text};
use crate::model::Site;
use crate::nearest::{listed, nearest};
use crate::problem::Problem;
use crate::record::{Key, Record as _};
use crate::schema::Definitions;
use crate::syntax;
use toml::de::DeTable;
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// The text with one record more, which has the keys that the lines of `record` give it.
///
/// The path names the list, or the single table, that it belongs to: `device`, `gate.slide.leaf`,
/// `device.reader-in.network`. The record stands behind the others of its list. What its keys say is looked at when the
/// whole is read.
pub fn add_record(text: &str, path: &str, record: &str) -> Result<String, Box<Problem>> {
    let mut document = document(text)?;
    let lines = lines(record)?;
    let steps = steps_of(path);
    let added = match steps.split_last() {
        Some((last, before)) => {
            table(whole(&mut document), before).and_then(|mut found| add(&mut found, last, lines))
        }
        None => Err(nowhere()),
    };
    added.map_err(|error| astray(path, error))?;
    written(text, path, &document)
}

/// The text without a record or a value: `device.reader-in`, `gate.slide.leaf.panel.mass`, `gate.slide.stop.0`.
pub fn remove(text: &str, path: &str) -> Result<String, Box<Problem>> {
    let mut document = document(text)?;
    let steps = steps_of(path);
    take_out(&mut document, &steps).map_err(|error| astray(path, error))?;
    written(text, path, &document)
}

/// The file, ready to be changed; a file that would not come back byte for byte has to be changed by hand.
fn document(text: &str) -> Result<DocumentMut, Box<Problem>> {
    let (_, errors) = DeTable::parse_recoverable(text);
    if let Some(error) = errors.first() {
        return Err(Box::new(syntax::problem(&source_of_text(text), error)));
    }
    let document: DocumentMut = text
        .parse()
        .map_err(|_| Box::new(by_hand("", "this record", "…")))?;
    if document.to_string() == text.replace("\r\n", "\n") {
        Ok(document)
    } else {
        Err(Box::new(by_hand("", "this record", "…")))
    }
}

/// The lines of a new record.
fn lines(record: &str) -> Result<Table, Box<Problem>> {
    let (_, errors) = DeTable::parse_recoverable(record);
    if let Some(error) = errors.first() {
        return Err(Box::new(syntax::problem(&source_of_text(record), error)));
    }
    record
        .trim()
        .parse()
        .map(DocumentMut::into_table)
        .map_err(|_| Box::new(by_hand("", "this record", "…")))
}

/// The changed file as text, with the ends of lines that it had.
fn written(text: &str, path: &str, document: &DocumentMut) -> Result<String, Box<Problem>> {
    let changed = document.to_string();
    let (_, errors) = DeTable::parse_recoverable(&changed);
    if !errors.is_empty() {
        return Err(Box::new(by_hand(path, "this record", "…")));
    }
    Ok(if text.contains("\r\n") {
        changed.replace('\n', "\r\n")
    } else {
        changed
    })
}

/// A table on the way.
struct Found<'d> {
    table: &'d mut dyn TableLike,
    keys: &'static [Key],
    /// It stands in braces.
    inline: bool,
}

/// The table of the whole file.
fn whole(document: &mut DocumentMut) -> Found<'_> {
    Found {
        table: document.as_table_mut(),
        keys: Site::KEYS,
        inline: false,
    }
}

/// Follows the steps from a table to another.
fn table<'d>(from: Found<'d>, steps: &[Step<'_>]) -> Result<Found<'d>, Astray> {
    let Some((step, rest)) = steps.split_first() else {
        return Ok(from);
    };
    let key = key_of(from.keys, step)?;
    let keys = (key.keys)().ok_or_else(|| not_a_record(step))?;
    let item = from.table.get_mut(key.name).ok_or_else(|| {
        (
            step.span.clone(),
            format!("the site has no `{}`", key.name),
            "a table that is there".to_owned(),
        )
    })?;
    if !is_list(key) {
        let inline = item.is_inline_table();
        let next = item.as_table_like_mut().ok_or_else(|| not_a_record(step))?;
        let next = Found {
            table: next,
            keys,
            inline,
        };
        return table(next, rest);
    }
    let (name, rest) = rest.split_first().ok_or_else(|| {
        (
            step.span.clone(),
            "the path ends at a list of tables".to_owned(),
            "the name of one of them".to_owned(),
        )
    })?;
    let at = place(item, name)?;
    let inline = item.is_value();
    let next: Option<&mut dyn TableLike> = match item {
        Item::ArrayOfTables(list) => list.get_mut(at).map(|table| table as &mut dyn TableLike),
        Item::Value(Value::Array(list)) => list
            .get_mut(at)
            .and_then(Value::as_inline_table_mut)
            .map(|table| table as &mut dyn TableLike),
        _ => None,
    };
    let next = Found {
        table: next.ok_or_else(|| not_a_record(name))?,
        keys,
        inline,
    };
    table(next, rest)
}

/// Adds a record under a key of a table.
fn add(found: &mut Found<'_>, step: &Step<'_>, mut lines: Table) -> Result<(), Astray> {
    let key = key_of(found.keys, step)?;
    if (key.keys)().is_none() {
        return Err(not_a_record(step));
    }
    let is_taken = (
        step.span.clone(),
        format!("there is a `{}` already", key.name),
        "a path to one of its keys, to change it".to_owned(),
    );
    lines.decor_mut().set_prefix("\n");
    match (found.table.get_mut(key.name), is_list(key)) {
        (Some(_), false) => Err(is_taken),
        (Some(Item::ArrayOfTables(list)), true) => {
            list.push(lines);
            Ok(())
        }
        (Some(Item::Value(Value::Array(list))), true) => {
            list.push(Value::InlineTable(in_braces(lines)));
            Ok(())
        }
        (Some(_), true) => Err(not_a_record(step)),
        (None, list) => {
            let item = match (found.inline, list) {
                (false, false) => Item::Table(lines),
                (true, false) => Item::Value(Value::InlineTable(in_braces(lines))),
                (false, true) => Item::ArrayOfTables(ArrayOfTables::from_iter([lines])),
                (true, true) => Item::Value(Value::Array(Array::from_iter([in_braces(lines)]))),
            };
            found.table.insert(key.name, item);
            Ok(())
        }
    }
}

/// Takes out what the path leads to.
fn take_out(document: &mut DocumentMut, steps: &[Step<'_>]) -> Result<(), Astray> {
    let (last, before) = steps.split_last().ok_or_else(nowhere)?;
    // A list is named before its entry; a key stands alone.
    if let Some((list, above)) = before.split_last()
        && let Ok(found) = table(whole(document), above)
        && let Ok(key) = key_of(found.keys, list)
        && is_list(key)
    {
        let item = found.table.get_mut(key.name).ok_or_else(|| {
            (
                list.span.clone(),
                format!("the site has no `{}`", key.name),
                "a table that is there".to_owned(),
            )
        })?;
        let at = place(item, last)?;
        let left = match item {
            Item::ArrayOfTables(tables) => {
                tables.remove(at);
                tables.len()
            }
            Item::Value(Value::Array(values)) => {
                values.remove(at);
                values.len()
            }
            _ => return Err(not_a_record(last)),
        };
        if left == 0 {
            found.table.remove(key.name);
        }
        return Ok(());
    }
    let found = table(whole(document), before)?;
    let key = key_of(found.keys, last)?;
    found.table.remove(key.name).map(drop).ok_or_else(|| {
        (
            last.span.clone(),
            format!("there is no `{}` to take out", key.name),
            "a value that is there".to_owned(),
        )
    })
}

/// Which of a list has this name or this number.
fn place(list: &Item, step: &Step<'_>) -> Result<usize, Astray> {
    let tables: Vec<Option<&dyn TableLike>> = match list {
        Item::ArrayOfTables(list) => list.iter().map(|table| Some(table as _)).collect(),
        Item::Value(Value::Array(list)) => list
            .iter()
            .map(|value| value.as_inline_table().map(|table| table as _))
            .collect(),
        _ => return Err(not_a_record(step)),
    };
    let names: Vec<&str> = tables.iter().filter_map(|table| id_of(*table)).collect();
    let called = || {
        let mut ids = tables.iter().map(|table| id_of(*table));
        ids.position(|id| id == Some(step.word))
    };
    let numbered = || step.word.parse().ok().filter(|at| *at < tables.len());
    called().or_else(numbered).ok_or_else(|| {
        let expected = match nearest(step.word, &names) {
            Some(near) => format!("perhaps `{near}`"),
            None if names.is_empty() => {
                format!("a number from 0 to {}", tables.len().saturating_sub(1))
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

/// The name of a table.
fn id_of(table: Option<&dyn TableLike>) -> Option<&str> {
    table?.get("id")?.as_str()
}

/// The key holds a list of records, or a list of values.
pub(crate) fn is_list(key: &Key) -> bool {
    let schema = (key.schema)(&mut Definitions::default());
    schema["type"] == "array"
}

fn in_braces(lines: Table) -> InlineTable {
    let mut table = lines.into_inline_table();
    table.fmt();
    table
}

fn nowhere() -> Astray {
    (
        0..0,
        "the path is empty".to_owned(),
        "the name of a table or of a value".to_owned(),
    )
}

fn not_a_record(step: &Step<'_>) -> Astray {
    (
        step.span.clone(),
        format!("`{}` is not a table", step.word),
        "a path to a table".to_owned(),
    )
}
