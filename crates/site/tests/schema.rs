//! The schemas say what the reader says. What they accept and refuse is judged in `reference/test_schema.py`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use crate::common;
use serde_json::Value;
use site::{parts_schema, price_book_schema, schema};
use std::collections::BTreeSet;

/// Every key of a schema, as `Leaf.mass`.
fn keys(schema: &Value) -> BTreeSet<String> {
    let of = |name: &str, table: &Value| -> Vec<String> {
        let properties = table["properties"].as_object();
        properties
            .into_iter()
            .flat_map(|keys| keys.keys())
            .map(|key| format!("{name}.{key}"))
            .collect()
    };
    let tables = schema["$defs"].as_object().unwrap().iter();
    tables
        .flat_map(|(name, table)| of(name, table))
        .chain(of("Site", schema))
        .collect()
}

/// Notes every key that a text uses.
fn used(schema: &Value, at: &Value, name: &str, value: &toml::Value, found: &mut BTreeSet<String>) {
    if let Some(name) = at["$ref"]
        .as_str()
        .and_then(|reference| reference.rsplit('/').next())
    {
        return used(schema, &schema["$defs"][name], name, value, found);
    }
    match value {
        toml::Value::Table(table) => {
            for (key, value) in table {
                found.insert(format!("{name}.{key}"));
                used(schema, &at["properties"][key], name, value, found);
            }
        }
        toml::Value::Array(values) => values
            .iter()
            .for_each(|value| used(schema, &at["items"], name, value, found)),
        _ => {}
    }
}

/// Keys of a schema that a text does not use.
fn unused(schema: &Value, text: &str) -> Vec<String> {
    let mut found = BTreeSet::new();
    let value = toml::Value::Table(text.parse().unwrap());
    used(schema, schema, "Site", &value, &mut found);
    keys(schema).difference(&found).cloned().collect()
}

#[test]
fn the_full_site_and_the_full_price_book_use_every_key() {
    let book = common::text("sites/price-book.toml");
    for (schema, text) in [(schema(), common::full()), (price_book_schema(), book)] {
        assert_eq!(unused(&schema, &text), [] as [String; 0]);
    }
}

#[test]
fn every_key_and_every_word_is_described() {
    fn check(value: &Value, path: &str) {
        if let Some(properties) = value["properties"].as_object() {
            for (key, schema) in properties {
                assert!(
                    schema["description"]
                        .as_str()
                        .is_some_and(|text| text.len() > 3),
                    "{path}.{key}"
                );
            }
            assert_eq!(value["additionalProperties"], false, "{path}");
        }
        for (word, schema) in value["oneOf"].as_array().into_iter().flatten().enumerate() {
            assert!(
                schema["description"]
                    .as_str()
                    .is_some_and(|text| text.len() > 3),
                "{path} word {word}"
            );
        }
    }
    for schema in [schema(), parts_schema(), price_book_schema()] {
        check(&schema, "root");
        schema["$defs"]
            .as_object()
            .unwrap()
            .iter()
            .for_each(|(name, schema)| check(schema, name));
    }
}

#[test]
fn the_committed_schemas_are_fresh() {
    for (name, schema) in [
        ("site.schema.json", schema()),
        ("parts.schema.json", parts_schema()),
        ("price-book.schema.json", price_book_schema()),
    ] {
        let path = common::path("../../../docs").join(name);
        if let Ok(committed) = std::fs::read_to_string(&path) {
            let committed: Value = serde_json::from_str(&committed).unwrap();
            assert!(
                committed == schema,
                "{name}: write it again with the command that writes the pages of docs"
            );
        }
    }
}
