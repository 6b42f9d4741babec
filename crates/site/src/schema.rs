//! The JSON Schemas of site files, parts files and price books, made from the same declarations as the reader.

use crate::model::{PartsFile, PriceBook, Site};
use crate::record::{Field, Key, Record, prose};
use quantity::Kind;
use serde_json::{Map, Value, json};

/// Definitions that are shared in a schema.
#[derive(Default)]
pub(crate) struct Definitions {
    shared: Map<String, Value>,
    /// Records with a part are entries of a parts file.
    of_parts: bool,
}

impl Definitions {
    /// A reference to a definition, which is made when it is asked for first.
    pub(crate) fn shared(&mut self, name: &str, make: impl FnOnce() -> Value) -> Value {
        if !self.shared.contains_key(name) {
            self.shared.insert(name.to_owned(), make());
        }
        json!({ "$ref": format!("#/$defs/{name}") })
    }

    /// A definition by its name; null where there is none.
    pub(crate) fn definition(&self, name: &str) -> Value {
        self.shared.get(name).cloned().unwrap_or_default()
    }

    /// A reference to a quantity in quotes.
    pub(crate) fn quantity(&mut self, kind: Kind) -> Value {
        let name = kind
            .with_article()
            .split(' ')
            .skip(1)
            .map(capitalized)
            .collect::<String>();
        self.shared(&name, || {
            json!({
                "description": format!("{}, in quotes with its unit.", capitalized(kind.with_article())),
                "type": "string",
                "pattern": "[0-9]",
                "examples": [kind.example()],
            })
        })
    }

    /// A reference to a closed list of words.
    pub(crate) fn words(&mut self, name: &str, doc: &[&str], words: &[(&str, &[&str])]) -> Value {
        self.shared(name, || {
            let each = words.iter().map(|(word, doc)| json!({ "const": word, "description": prose(doc) }));
            json!({ "description": prose(doc), "type": "string", "oneOf": each.collect::<Vec<_>>() })
        })
    }

    /// A reference to a table.
    pub(crate) fn record(&mut self, name: &str, doc: &[&str], keys: &'static [Key]) -> Value {
        if !self.shared.contains_key(name) {
            self.shared.insert(name.to_owned(), Value::Null);
            let table = self.table(doc, keys);
            self.shared.insert(name.to_owned(), table);
        }
        json!({ "$ref": format!("#/$defs/{name}") })
    }

    /// A table with its keys.
    fn table(&mut self, doc: &[&str], keys: &'static [Key]) -> Value {
        let is_part = self.of_parts && keys.iter().any(|key| key.name == "part");
        let takes_part = !self.of_parts && keys.iter().any(|key| key.name == "part");
        let mut properties = Map::new();
        for key in keys.iter().filter(|key| !(is_part && key.name == "part")) {
            let mut schema = (key.schema)(self);
            if let Some(schema) = schema.as_object_mut() {
                schema.insert("description".to_owned(), prose(key.doc).into());
            }
            properties.insert(key.name.to_owned(), schema);
        }
        let required: Vec<&str> = keys
            .iter()
            .filter(|key| key.required)
            .map(|key| key.name)
            .collect();
        let mut table = json!({
            "description": prose(doc),
            "type": "object",
            "properties": properties,
            "additionalProperties": false,
        });
        if is_part || (takes_part && required.contains(&"id")) {
            table["required"] = json!(["id"]);
        } else if !required.is_empty() {
            table["required"] = json!(required);
        }
        if takes_part && required.len() > 1 {
            table["anyOf"] = json!([{ "required": required }, { "required": ["part"] }]);
        }
        table
    }
}

/// The JSON Schema (draft 2020-12) of a site file.
pub fn schema() -> Value {
    let mut definitions = Definitions::default();
    let root = definitions.table(Site::DOC, Site::KEYS);
    finish("Gatewright site file", root, definitions)
}

/// The JSON Schema (draft 2020-12) of a parts file.
pub fn parts_schema() -> Value {
    let mut definitions = Definitions {
        of_parts: true,
        ..Definitions::default()
    };
    let mut properties = Map::new();
    for key in PartsFile::KEYS {
        let mut schema = (key.schema)(&mut definitions);
        schema["description"] = prose(key.doc).into();
        properties.insert(key.name.to_owned(), schema);
    }
    let root = json!({
        "description": "Generic data-sheet entries that sites refer to with `part`.",
        "type": "object",
        "properties": properties,
        "additionalProperties": false,
    });
    finish("Gatewright parts file", root, definitions)
}

/// The JSON Schema (draft 2020-12) of a price book.
pub fn price_book_schema() -> Value {
    let mut definitions = Definitions::default();
    let root = definitions.table(PriceBook::DOC, PriceBook::KEYS);
    finish("Gatewright price book", root, definitions)
}

/// A schema with its head and its shared definitions.
fn finish(title: &str, root: Value, definitions: Definitions) -> Value {
    let mut schema = Map::new();
    schema.insert(
        "$schema".to_owned(),
        "https://json-schema.org/draft/2020-12/schema".into(),
    );
    schema.insert("title".to_owned(), title.into());
    if let Value::Object(root) = root {
        schema.extend(root);
    }
    schema.insert("$defs".to_owned(), Value::Object(definitions.shared));
    Value::Object(schema)
}

/// An example of a value, as it is written in TOML.
pub(crate) fn example<T: Field>() -> String {
    let mut definitions = Definitions::default();
    let mut schema = T::schema(&mut definitions);
    while let Some(name) = schema["$ref"]
        .as_str()
        .and_then(|name| name.rsplit('/').next())
    {
        schema = definitions.shared[name].clone();
    }
    let example = [&schema["examples"][0], &schema["oneOf"][0]["const"]]
        .into_iter()
        .find(|value| !value.is_null());
    match (example, schema["type"].as_str()) {
        (Some(example), _) => example.to_string(),
        (None, Some("integer")) => "1".to_owned(),
        (None, Some("boolean")) => "true".to_owned(),
        _ => "\"…\"".to_owned(),
    }
}

/// The word with a capital letter.
fn capitalized(word: &str) -> String {
    let mut letters = word.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}
