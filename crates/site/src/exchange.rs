//! Reading a site as it would be with another part in place of the one that is there.

use crate::overlay::{PART_KINDS, Parts};
use crate::source::SourceFile;
use std::collections::BTreeSet;
use toml::de::DeTable;

/// Another part in place of the one that a thing is bought as.
///
/// Whatever any part of its kind describes is taken from that part alone: what the site file says of the old one goes
/// with it. Where it stands, what feeds it and what it is called stays.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exchange {
    /// The thing, as its origin names it: `operator "drive"`, `gate "main" · wheels`.
    pub path: String,
    /// Entry of the parts file; nothing takes the data sheet away and gives no other.
    pub part: Option<String>,
}

/// The entries of a kind in these parts files, in their order.
pub fn part_names(parts: &[SourceFile], kind: &str) -> Vec<String> {
    let mut names = Vec::new();
    for file in parts {
        let (tree, _) = DeTable::parse_recoverable(&file.text);
        let entries = tree
            .get_ref()
            .get(kind)
            .and_then(|value| value.get_ref().as_array());
        let ids = entries
            .iter()
            .flat_map(|entries| entries.iter())
            .filter_map(|entry| entry.get_ref().as_table()?.get("id")?.get_ref().as_str());
        names.extend(ids.map(str::to_owned));
    }
    names
}

/// The keys that parts of this kind describe: those that go with the part.
pub(crate) fn of_data_sheets(parts: &Parts<'_>, kind: &str) -> BTreeSet<String> {
    if !PART_KINDS.contains(&kind) {
        return BTreeSet::new();
    }
    parts
        .iter()
        .filter(|((of, _), _)| *of == kind)
        .flat_map(|(_, part)| part.table.keys())
        .map(|key| key.get_ref().to_string())
        .filter(|key| !["id", "note"].contains(&key.as_str()))
        .collect()
}
