//! A record of the site laid over the entry of the parts file that it is bought as.

use crate::exchange;
use crate::nearest::{listed, nearest};
use crate::origin::join;
use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Key;
use crate::reference::with_article;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use std::rc::Rc;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// The kinds of things that a parts file may describe, as their tables are called.
pub(crate) const PART_KINDS: &[&str] = &[
    "operator",
    "device",
    "enclosure",
    "cable",
    "battery",
    "supply",
    "solar_panel",
    "fuse",
    "wheels",
    "hinges",
    "post",
    "anchor",
];

/// Keys that are never taken from a part: what names the thing itself.
const OWN_KEYS: &[&str] = &["id", "part"];

/// A table and the file that it stands in.
#[derive(Clone, Copy)]
pub(crate) struct TableIn<'t> {
    /// Number of the file among the sources.
    pub(crate) file: usize,
    /// The table.
    pub(crate) table: &'t DeTable<'t>,
}

/// The entries of all parts files, by kind and name.
pub(crate) type Parts<'t> = BTreeMap<(&'static str, String), TableIn<'t>>;

/// The tables that a record is read from: its own, and below it the part's.
pub(crate) struct Layers<'t> {
    /// The record's own table.
    pub(crate) own: TableIn<'t>,
    /// The entry of the parts file that it is bought as.
    pub(crate) part: Option<TableIn<'t>>,
    /// Bytes of the own table's header.
    pub(crate) span: Range<usize>,
    /// Name of the table, such as `device`.
    pub(crate) owner: &'static str,
    /// The record as a person would say it.
    pub(crate) path: Rc<str>,
    /// The table stands in a parts file or was taken from there.
    pub(crate) from_part: bool,
    /// Missing keys are not reported: it is an entry of a parts file.
    pub(crate) may_lack_keys: bool,
    /// Keys of the own table that went with the old part.
    gone: BTreeSet<String>,
}

impl<'t> Layers<'t> {
    /// Finds the tables of the record at `node`.
    pub(crate) fn new(
        reader: &mut Reader<'t>,
        node: &Node<'t>,
        table: &'t DeTable<'t>,
        keys: &[Key],
    ) -> Self {
        let own = TableIn {
            file: node.file,
            table,
        };
        let takes_parts = keys.iter().any(|key| key.name == "part");
        let path: Rc<str> = join(&node.path, &step(node, table)).into();
        let exchange = reader.exchange_at(&path);
        let gone = match exchange {
            Some(_) => exchange::of_data_sheets(reader.parts(), node.key),
            None => BTreeSet::new(),
        };
        let part = match exchange {
            Some(exchange) => exchange
                .part
                .as_ref()
                .and_then(|name| reader.parts().get(&(node.key, name.clone())).copied()),
            None if takes_parts && !reader.reads_parts() => part_of(reader, node, table, &path),
            None => None,
        };
        let may_lack_keys = takes_parts && reader.reads_parts();
        Self {
            own,
            part,
            span: node.value.span(),
            owner: node.key,
            path,
            from_part: node.from_part,
            may_lack_keys,
            gone,
        }
    }

    /// The tables of the site as a whole.
    pub(crate) fn root(own: TableIn<'t>) -> Self {
        Self {
            own,
            part: None,
            span: 0..0,
            owner: "",
            path: "".into(),
            from_part: false,
            may_lack_keys: false,
            gone: BTreeSet::new(),
        }
    }

    /// The key and its value, and whether it was taken from the part.
    pub(crate) fn find(&self, key: &str) -> Option<(TableIn<'t>, &'t Spanned<DeValue<'t>>, bool)> {
        if let Some(value) = self.own.table.get(key)
            && !self.gone.contains(key)
        {
            return Some((self.own, value, self.from_part));
        }
        let part = self.part.filter(|_| !OWN_KEYS.contains(&key))?;
        part.table.get(key).map(|value| (part, value, true))
    }
}

/// The step of a path: `gate "slide"`, or `stop 2` when it has no name.
fn step(node: &Node<'_>, table: &DeTable<'_>) -> String {
    let kind = node.key.replace('_', " ");
    let id = table.get("id").and_then(|id| id.get_ref().as_str());
    match (id, node.index) {
        (Some(id), _) => format!("{kind} \"{id}\""),
        (None, Some(index)) => format!("{kind} {}", index + 1),
        (None, None) => kind,
    }
}

/// The entry that the record's `part` names; a problem if there is none.
fn part_of<'t>(
    reader: &mut Reader<'t>,
    node: &Node<'t>,
    table: &'t DeTable<'t>,
    path: &Rc<str>,
) -> Option<TableIn<'t>> {
    let value = table.get("part")?;
    let name = value.get_ref().as_str()?;
    let parts = reader.parts();
    if let Some(part) = parts.get(&(node.key, name.to_owned())) {
        return Some(*part);
    }
    let kind = with_article(node.key);
    let of_kind = parts.keys().filter(|(kind, _)| *kind == node.key);
    let names: Vec<&str> = of_kind.map(|(_, name)| name.as_str()).collect();
    let expected = if names.is_empty() {
        let table = node.key;
        format!(
            "a parts file, named in `site.parts`, with a table `[[{table}]]` and `id = \"{name}\"`"
        )
    } else {
        format!("the name of {kind} in a parts file: {}", listed(&names))
    };
    let node = Node {
        value,
        key: "part",
        path: path.clone(),
        index: None,
        in_list: false,
        ..node.clone()
    };
    let what = format!("no parts file has {kind} called `{name}`");
    let problem = reader
        .problem(&node, Code::UnknownPart, what)
        .expected(expected);
    reader.report(match nearest(name, &names) {
        Some(near) => problem.write(format!("part = \"{near}\"")),
        None => problem,
    });
    None
}

#[cfg(test)]
mod tests {
    use super::PART_KINDS;
    use crate::model::PartsFile;
    use crate::record::Record as _;

    #[test]
    fn the_kinds_of_parts_are_the_tables_of_a_parts_file() {
        let tables: Vec<&str> = PartsFile::KEYS.iter().map(|key| key.name).collect();
        assert_eq!(tables, PART_KINDS);
    }
}
