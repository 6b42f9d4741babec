//! What has changed since an earlier issue: a table of every key, and marks on the rows of the schedules.

use crate::view::{Cell, Column, Table};
use site::{Site, Stated};
use std::collections::BTreeMap;

/// The mark before a row that is not as it was.
const MARK: &str = "△ ";

/// Every key that is not as it was, thing by thing.
pub(super) fn table(site: &Site, before: &Site, since: &str) -> Table {
    let (now, then) = (keys(site), keys(before));
    let mut rows = Vec::new();
    for (key, value) in &now {
        let was = then
            .iter()
            .find(|(known, _)| known == key)
            .map(|(_, value)| value);
        if was != Some(value) {
            rows.push(row(key, was.map_or("", String::as_str), value));
        }
    }
    for (key, was) in &then {
        if !now.iter().any(|(known, _)| known == key) {
            rows.push(row(key, was, ""));
        }
    }
    Table {
        title: "Changes".to_owned(),
        note: format!(
            "Everything in the site file that is not as it was in revision {since}. On the drawings it is clouded, in the schedules its row carries the mark {}.",
            MARK.trim_end()
        ),
        columns: vec![
            Column::words("What", 60),
            Column::words("Was", 56),
            Column::words("Is", 56),
        ],
        rows,
    }
}

fn row(key: &str, was: &str, is: &str) -> Vec<Cell> {
    let or_nothing = |text: &str| Cell::text(if text.is_empty() { "–" } else { text });
    vec![Cell::text(key), or_nothing(was), or_nothing(is)]
}

/// Every stated key with its value; things go by their own names, so that one that is added moves none.
fn keys(site: &Site) -> Vec<(String, String)> {
    let stated = site.stated(site.site.unit_system());
    let names = names(&stated);
    let named = |key: &str| {
        let mut path = String::new();
        let mut read = String::new();
        for step in key.split(" · ") {
            path = if path.is_empty() {
                step.to_owned()
            } else {
                format!("{path} · {step}")
            };
            let shown = match names.get(&path) {
                Some(name) => format!(
                    "{} {name}",
                    step.trim_end_matches(|last: char| last.is_ascii_digit())
                        .trim_end()
                ),
                None => step.to_owned(),
            };
            read = if read.is_empty() {
                shown
            } else {
                format!("{read} · {shown}")
            };
        }
        read
    };
    stated
        .iter()
        .map(|one| (named(&one.key), one.text.clone()))
        .collect()
}

/// The name of each thing by the path of its table: its id, or the cable that it belongs to.
fn names(stated: &[Stated]) -> BTreeMap<String, String> {
    let naming = |one: &Stated| {
        let (path, key) = one.key.rsplit_once(" · ")?;
        matches!(key, "id" | "cable").then(|| (path.to_owned(), one.text.clone()))
    };
    stated.iter().filter_map(naming).collect()
}

/// Schedules whose changed rows are marked; rows that have gone are named in the note.
pub(super) fn marked(now: Vec<Table>, before: &[Table], since: &str) -> Vec<Table> {
    now.into_iter()
        .map(
            |table| match before.iter().find(|old| old.title == table.title) {
                Some(old) => against(table, old, since),
                None => Table {
                    note: format!("{} New since revision {since}.", table.note)
                        .trim()
                        .to_owned(),
                    ..table
                },
            },
        )
        .collect()
}

fn against(mut table: Table, old: &Table, since: &str) -> Table {
    let first = |row: &Vec<Cell>| row.first().map(Cell::printed).unwrap_or_default();
    let mut gone: Vec<String> = old
        .rows
        .iter()
        .map(first)
        .filter(|name| !name.is_empty() && !table.rows.iter().any(|row| first(row) == *name))
        .collect();
    gone.dedup();
    for row in &mut table.rows {
        if !old.rows.contains(row)
            && let Some(Cell::Text(name)) = row.first_mut()
        {
            name.insert_str(0, MARK);
        }
    }
    if !gone.is_empty() {
        if !table.note.is_empty() {
            table.note.push(' ');
        }
        table
            .note
            .extend(["Gone since revision ", since, ": ", &gone.join(", "), "."]);
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(rows: &[[&str; 2]]) -> Table {
        let row = |row: &[&str; 2]| row.iter().map(|text| Cell::text(*text)).collect();
        Table {
            title: "Cable schedule".to_owned(),
            note: String::new(),
            columns: vec![Column::words("Cable", 20), Column::words("Size", 20)],
            rows: rows.iter().map(row).collect(),
        }
    }

    #[test]
    fn a_changed_row_is_marked_and_one_that_went_is_named() {
        let old = table(&[["w-01", "18 AWG"], ["w-02", "18 AWG"], ["w-03", "18 AWG"]]);
        let now = table(&[["w-01", "18 AWG"], ["w-02", "16 AWG"]]);
        let marked = marked(vec![now], &[old], "A");
        let rows: Vec<String> = marked[0].rows.iter().map(|row| row[0].printed()).collect();
        assert_eq!(rows, ["w-01", "△ w-02"]);
        assert!(marked[0].note.contains("w-03"), "{}", marked[0].note);
    }
}
