//! The site as a form: every record with its path, and every key of one with its value as written and as understood.

use crate::edit::is_list;
use crate::model::Site;
use crate::overlay::{Layers, TableIn};
use crate::problem::Problems;
use crate::read::{parse, part_entries, take_price_book};
use crate::reader::{Node, Reader};
use crate::record::{Key, Record as _, prose};
use crate::reference::targets;
use crate::schema::Definitions;
use crate::source::{Source, SourceFile};
use crate::stated::Statement;
use crate::weather;
use quantity::{UnitSystem, Word as _};
use serde::Serialize;
use serde_json::Value;
use toml::Spanned;
use toml::de::DeValue;

/// A record of the site.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FormRecord {
    /// Its path, as edits write it: `gate.slide.leaf.panel`; empty for the site as a whole.
    pub path: String,
    /// Its path as a person says it: `gate "slide" · leaf "panel"`.
    pub label: String,
    /// The key that holds it: `leaf`.
    pub kind: String,
    /// Keys that it has, and keys that it could have.
    pub keys: (usize, usize),
}

/// A record with its keys.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Form {
    /// The record.
    #[serde(flatten)]
    pub record: FormRecord,
    /// Its keys, in the order of the model.
    pub fields: Vec<FormField>,
}

/// A key of a record.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FormField {
    /// The path of its value, as edits write it.
    pub path: String,
    /// The key in words: `least voltage`.
    pub label: String,
    /// What it means.
    pub meaning: String,
    /// What sort of value it has.
    pub kind: FieldKind,
    /// The key must be there.
    pub required: bool,
    /// An example of a value, where one says more than the kind.
    pub example: Option<Value>,
    /// The words that it can be, each with its meaning.
    pub words: Vec<(String, String)>,
    /// Tables of the things that it can name.
    pub names: Vec<String>,
    /// The value as it stands in the file, text without its quotes.
    pub written: Option<String>,
    /// The value as it is understood.
    pub understood: Option<String>,
    /// How it is known.
    pub known: Option<String>,
    /// It comes from the entry of a parts file.
    pub from_part: bool,
    /// Paths of the records that it holds.
    pub records: Vec<String>,
}

/// Sorts of values.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FieldKind {
    /// A quantity with its unit.
    Quantity,
    /// One of a closed list of words.
    Word,
    /// A name of a thing.
    Name,
    /// A whole number.
    Count,
    /// Yes or no.
    YesNo,
    /// Three lengths.
    Position,
    /// A list of values.
    List,
    /// A table.
    Record,
    /// A list of tables.
    Records,
    /// Words as somebody likes to write them, days, and whatever is written in a way of its own.
    Text,
}

/// Every record of a site, in the order of the model.
pub fn records(main: &SourceFile, parts: &[SourceFile]) -> Vec<FormRecord> {
    let mut records = Vec::new();
    walk_all(main, parts, &mut |_, path, layers, keys| {
        records.push(record(path, layers, keys));
    });
    records
}

/// One record with its keys; nothing where the path leads to none.
pub fn form(
    main: &SourceFile,
    parts: &[SourceFile],
    path: &str,
    units: UnitSystem,
) -> Option<Form> {
    let mut found = None;
    walk_all(main, parts, &mut |reader, at, layers, keys| {
        if at == path && found.is_none() {
            found = Some(Form {
                record: record(at, layers, keys),
                fields: keys
                    .iter()
                    .map(|key| field(reader, at, layers, key, units))
                    .collect(),
            });
        }
    });
    found
}

/// What is done at each record: reader, path, tables, keys.
pub(crate) type Visit<'v> =
    dyn for<'t> FnMut(&mut Reader<'t>, &str, &Layers<'t>, &'static [Key]) + 'v;

pub(crate) fn walk_all(main: &SourceFile, parts: &[SourceFile], visit: &mut Visit<'_>) {
    let parts = parts.iter().filter(|file| !weather::is_weather(file));
    let files = std::iter::once(main).chain(parts).cloned();
    let sources: Vec<Source> = files.map(Source::new).collect();
    let (mut trees, _, spoiled) = parse(&sources);
    take_price_book(&sources, &mut trees);
    let entries = part_entries(&sources, &trees, &mut Problems::default());
    let mut reader = Reader::new(&sources, &entries, &spoiled);
    if let Some(tree) = trees.first() {
        let root = Layers::root(TableIn {
            file: 0,
            table: tree.get_ref(),
        });
        walk(&mut reader, "", &root, Site::KEYS, visit);
    }
}

fn walk<'t>(
    reader: &mut Reader<'t>,
    path: &str,
    layers: &Layers<'t>,
    keys: &'static [Key],
    visit: &mut Visit<'_>,
) {
    visit(reader, path, layers, keys);
    for key in keys {
        let Some(inside) = (key.keys)() else { continue };
        let Some((table, value, from_part)) = layers.find(key.name) else {
            continue;
        };
        let node = node(layers, key, table, value, from_part);
        for (index, step, value) in tables(key, value) {
            let Some(own) = value.get_ref().as_table() else {
                continue;
            };
            let node = Node {
                value,
                in_list: index.is_some(),
                index,
                ..node.clone()
            };
            let below = Layers::new(reader, &node, own, inside);
            walk(reader, &join(path, &step), &below, inside, visit);
        }
    }
}

/// The tables under a key, each with its number and the steps that lead to it.
fn tables<'t>(
    key: &Key,
    value: &'t Spanned<DeValue<'t>>,
) -> Vec<(Option<usize>, String, &'t Spanned<DeValue<'t>>)> {
    match value.get_ref() {
        DeValue::Array(list) => list
            .iter()
            .enumerate()
            .map(|(at, value)| {
                let table = value.get_ref().as_table();
                let id = table.and_then(|table| table.get("id")?.get_ref().as_str());
                let step = id.map_or_else(|| at.to_string(), str::to_owned);
                (Some(at), format!("{}.{step}", key.name), value)
            })
            .collect(),
        _ => vec![(None, key.name.to_owned(), value)],
    }
}

pub(crate) fn node<'t>(
    layers: &Layers<'t>,
    key: &'static Key,
    table: TableIn<'t>,
    value: &'t Spanned<DeValue<'t>>,
    from_part: bool,
) -> Node<'t> {
    Node {
        file: table.file,
        value,
        owner: layers.owner,
        key: key.name,
        path: layers.path.clone(),
        in_list: false,
        index: None,
        from_part,
    }
}

fn record(path: &str, layers: &Layers<'_>, keys: &'static [Key]) -> FormRecord {
    let there = keys.iter().filter(|key| layers.find(key.name).is_some());
    FormRecord {
        path: path.to_owned(),
        label: layers.path.to_string(),
        kind: layers.owner.to_owned(),
        keys: (there.count(), keys.len()),
    }
}

fn field<'t>(
    reader: &mut Reader<'t>,
    at: &str,
    layers: &Layers<'t>,
    key: &'static Key,
    units: UnitSystem,
) -> FormField {
    let path = join(at, key.name);
    let schema = resolved(key);
    let found = layers.find(key.name);
    let is_record = (key.keys)().is_some();
    let (mut understood, mut known) = (None, None);
    if let Some((table, value, from_part)) = found.filter(|_| !is_record) {
        let node = node(layers, key, table, value, from_part);
        let mut statement = Statement::new(units);
        (key.state)(reader, &node, &mut statement);
        let keys = statement.keys();
        known = keys.first().map(|one| one.known.word().to_owned());
        let texts: Vec<&str> = keys.iter().map(|one| one.text.as_str()).collect();
        understood = (!texts.is_empty()).then(|| texts.join("; "));
    }
    let written = found
        .filter(|_| !is_record)
        .and_then(|(table, value, _)| as_written(&reader.sources[table.file], value));
    let records = found
        .filter(|_| is_record)
        .map(|(_, value, _)| tables(key, value))
        .unwrap_or_default();
    FormField {
        label: key.name.replace('_', " "),
        meaning: prose(key.doc),
        kind: kind(key, &schema),
        required: key.required,
        example: schema["examples"].get(0).cloned(),
        words: words(&schema),
        names: targets(layers.owner, key.name),
        written,
        understood,
        known,
        from_part: found.is_some_and(|(_, _, from_part)| from_part),
        records: records.iter().map(|(_, step, _)| join(at, step)).collect(),
        path,
    }
}

/// The value as it stands in the file, text without its quotes.
fn as_written(source: &Source, value: &Spanned<DeValue<'_>>) -> Option<String> {
    match value.get_ref().as_str() {
        Some(text) => Some(text.to_owned()),
        None => source.text.get(value.span()).map(str::to_owned),
    }
}

/// The schema of a value, or of each in a list, behind its reference.
fn resolved(key: &Key) -> Value {
    let mut definitions = Definitions::default();
    let mut schema = (key.schema)(&mut definitions);
    if schema["type"] == "array" {
        schema = schema["items"].take();
    }
    let name = schema["$ref"]
        .as_str()
        .and_then(|name| name.rsplit('/').next())
        .map(str::to_owned);
    match name {
        Some(name) => {
            let mut found = definitions.definition(&name);
            found["name"] = name.into();
            found
        }
        None => schema,
    }
}

fn kind(key: &Key, schema: &Value) -> FieldKind {
    match ((key.keys)().is_some(), is_list(key)) {
        (true, true) => return FieldKind::Records,
        (true, false) => return FieldKind::Record,
        (false, true) => return FieldKind::List,
        (false, false) => {}
    }
    if schema["oneOf"][0]["const"].is_string() {
        return FieldKind::Word;
    }
    match (schema["name"].as_str(), schema["type"].as_str()) {
        (Some("Id"), _) => FieldKind::Name,
        (Some("Position"), _) => FieldKind::Position,
        (_, Some("integer")) => FieldKind::Count,
        (_, Some("boolean")) => FieldKind::YesNo,
        (Some(_), Some("string")) if schema["pattern"] == "[0-9]" => FieldKind::Quantity,
        _ => FieldKind::Text,
    }
}

fn words(schema: &Value) -> Vec<(String, String)> {
    let each = schema["oneOf"].as_array().into_iter().flatten();
    each.filter_map(|word| {
        let meaning = word["description"].as_str().unwrap_or_default();
        Some((word["const"].as_str()?.to_owned(), meaning.to_owned()))
    })
    .collect()
}

pub(crate) fn join(path: &str, step: &str) -> String {
    if path.is_empty() {
        step.to_owned()
    } else {
        format!("{path}.{step}")
    }
}
