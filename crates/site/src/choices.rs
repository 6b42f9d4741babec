//! The entries of the parts files that a thing of the site could be bought as, and what each brings.

use crate::form::{node, walk_all};
use crate::overlay::TableIn;
use crate::source::SourceFile;
use crate::stated::Statement;
use quantity::UnitSystem;
use serde::Serialize;

/// An entry of a parts file that a record could be bought as.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PartChoice {
    /// Its name, as `part` would say it.
    pub id: String,
    /// What it brings, key by key.
    pub brings: Vec<Brought>,
}

/// A value that comes with a part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Brought {
    /// The key in words.
    pub label: String,
    /// The value as it is printed.
    pub text: String,
    /// The site says something else of this thing, and that counts.
    pub overruled: bool,
}

/// Keys that name an entry, rather than describe it.
const NAMES: &[&str] = &["id", "part", "note"];

/// The entries that the record at a path could be bought as, by name: those of its own kind, and where the record says what it
/// is (a reader, a camera), those that are the same.
pub fn parts_for(
    main: &SourceFile,
    beside: &[SourceFile],
    path: &str,
    units: UnitSystem,
) -> Vec<PartChoice> {
    let mut choices = Vec::new();
    walk_all(main, beside, &mut |reader, at, layers, keys| {
        if at != path || !choices.is_empty() || !keys.iter().any(|key| key.name == "part") {
            return;
        }
        let kind = layers
            .find("kind")
            .and_then(|(_, kind, _)| kind.get_ref().as_str());
        let all = reader.parts().iter();
        let of_table = all.filter(|((table, _), _)| *table == layers.owner);
        let entries: Vec<(String, TableIn<'_>)> = of_table
            .map(|((_, name), entry)| (name.clone(), *entry))
            .collect();
        for (id, entry) in entries {
            let its = entry
                .table
                .get("kind")
                .and_then(|kind| kind.get_ref().as_str());
            if kind.zip(its).is_some_and(|(kind, its)| kind != its) {
                continue;
            }
            let described = keys.iter().filter(|key| !NAMES.contains(&key.name));
            let brings = described.filter_map(|key| {
                let value = entry.table.get(key.name)?;
                let node = node(layers, key, entry, value, true);
                let mut statement = Statement::new(units);
                (key.state)(reader, &node, &mut statement);
                let texts: Vec<String> = statement.keys().into_iter().map(|one| one.text).collect();
                (!texts.is_empty()).then(|| Brought {
                    label: key.name.replace('_', " "),
                    text: texts.join("; "),
                    overruled: layers.own.table.get(key.name).is_some(),
                })
            });
            let brings = brings.collect();
            choices.push(PartChoice { id, brings });
        }
    });
    choices
}
