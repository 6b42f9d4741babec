//! What goes with a thing that is taken out of a site, and what then names it no longer.

use crate::edit::is_list;
use crate::form::{join, walk_all};
use crate::record::Key;
use crate::reference::targets;
use crate::source::SourceFile;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// What taking out a thing comes to.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Removal {
    /// Paths of the records that go, the thing itself first: those that cannot be without it go with it.
    pub goes: Vec<String>,
    /// Keys of records that stay and named one of them.
    pub let_go: Vec<LetGo>,
}

/// A key that names a thing which goes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LetGo {
    /// The record that stays.
    pub record: String,
    /// The key in words.
    pub label: String,
    /// The path of its value.
    pub path: String,
    /// What is left of a list, as it is written; nothing where the key goes.
    pub left: Option<String>,
}

/// The table of each record, by its path.
type Tables = BTreeMap<String, &'static str>;

/// A key that names things.
struct Naming {
    record: String,
    key: &'static Key,
    /// The tables in which what it names stands.
    tables: Vec<String>,
    names: Vec<String>,
}

/// What goes when the record at a path is taken out, and what no longer names it; nothing where there is no such record.
pub fn removal(main: &SourceFile, beside: &[SourceFile], path: &str) -> Option<Removal> {
    let mut tables = Tables::new();
    let mut namings = Vec::new();
    walk_all(main, beside, &mut |_, at, layers, keys| {
        tables.insert(at.to_owned(), layers.owner);
        for key in keys {
            let of_key = targets(layers.owner, key.name);
            let value = layers
                .own
                .table
                .get(key.name)
                .filter(|_| !of_key.is_empty());
            let Some(value) = value else { continue };
            let list = value.get_ref().as_array();
            let each = list.iter().flat_map(|list| list.iter());
            let names = each.filter_map(|one| one.get_ref().as_str());
            let names = names.chain(value.get_ref().as_str()).map(str::to_owned);
            namings.push(Naming {
                record: at.to_owned(),
                key,
                tables: of_key,
                names: names.collect(),
            });
        }
    });
    tables.get(path)?;
    let mut goes = vec![path.to_owned()];
    let mut next = 0;
    while let Some(gone) = goes.get(next).cloned() {
        next += 1;
        let gone = within(&tables, &[gone]);
        for naming in namings
            .iter()
            .filter(|naming| gone.iter().any(|one| naming.names_one(one, &tables)))
        {
            let is_needed = naming.key.required && !is_list(naming.key);
            if is_needed && !is_within(&naming.record, &goes) {
                goes.push(naming.record.clone());
            }
        }
    }
    let mut let_go = Vec::new();
    let all = within(&tables, &goes);
    for naming in namings
        .iter()
        .filter(|naming| !is_within(&naming.record, &goes))
    {
        let lost: BTreeSet<&str> = all
            .iter()
            .filter(|gone| naming.names_one(gone, &tables))
            .filter_map(|gone| gone.rsplit('.').next())
            .collect();
        if lost.is_empty() {
            continue;
        }
        let left: Vec<&String> = naming
            .names
            .iter()
            .filter(|name| !lost.contains(name.as_str()))
            .collect();
        let_go.push(LetGo {
            record: naming.record.clone(),
            label: naming.key.name.replace('_', " "),
            path: join(&naming.record, naming.key.name),
            left: (!left.is_empty()).then(|| serde_json::json!(left).to_string()),
        });
    }
    Some(Removal { goes, let_go })
}

impl Naming {
    /// It names the record at a path.
    fn names_one(&self, path: &str, tables: &Tables) -> bool {
        let table = tables.get(path).copied().unwrap_or_default();
        let name = path.rsplit('.').next().unwrap_or_default();
        self.tables.iter().any(|one| one == table) && self.names.iter().any(|one| one == name)
    }
}

/// Paths of these records and of all below them: what names one of those is left without it as well.
fn within(tables: &Tables, paths: &[String]) -> Vec<String> {
    let all = tables.keys().filter(|path| is_within(path, paths));
    all.cloned().collect()
}

/// A record is one of these, or below one.
fn is_within(record: &str, paths: &[String]) -> bool {
    let below = |path: &String| {
        record
            .strip_prefix(path.as_str())
            .is_some_and(|rest| rest.starts_with('.'))
    };
    paths.iter().any(|path| path == record || below(path))
}
