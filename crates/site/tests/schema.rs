//! The schemas say what the reader says.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use crate::common;
use serde_json::Value;
use site::{parts_schema, price_book_schema, schema};
use std::collections::BTreeSet;

/// A TOML text as JSON, days as text.
fn json(text: &str) -> Value {
    let text = regex_free_days(text);
    serde_json::to_value(text.parse::<toml::Table>().unwrap()).unwrap()
}

/// Puts days in quotes, because JSON has none.
fn regex_free_days(text: &str) -> String {
    let is_day = |value: &str| {
        value.len() == 10
            && (value.chars().enumerate()).all(|(at, c)| {
                if at == 4 || at == 7 {
                    c == '-'
                } else {
                    c.is_ascii_digit()
                }
            })
    };
    let mut quoted = String::new();
    let (mut at, mut in_text) = (0, false);
    while let Some(next) = text[at..].chars().next() {
        let day = text.get(at..at + 10).filter(|day| !in_text && is_day(day));
        if let Some(day) = day {
            quoted.extend(["\"", day, "\""]);
            at += 10;
            continue;
        }
        in_text ^= next == '"';
        quoted.push(next);
        at += next.len_utf8();
    }
    quoted
}

/// What a schema refuses in a text.
fn refused(schema: &Value, text: &str) -> Vec<String> {
    let validator = jsonschema::draft202012::new(schema).unwrap();
    validator
        .iter_errors(&json(text))
        .map(|error| format!("{} {error}", error.instance_path()))
        .collect()
}

#[test]
fn the_schemas_are_schemas() {
    for schema in [schema(), parts_schema(), price_book_schema()] {
        let found =
            jsonschema::draft202012::meta::validate(&schema).map_err(|error| error.to_string());
        assert_eq!(found, Ok(()));
    }
}

#[test]
fn the_full_site_and_its_parts_are_accepted() {
    assert_eq!(refused(&schema(), &common::full()), [] as [String; 0]);
    assert_eq!(
        refused(&parts_schema(), &common::text("sites/parts.toml")),
        [] as [String; 0]
    );
}

#[test]
fn the_full_price_book_is_accepted_and_uses_every_key() {
    let (schema, mut found) = (price_book_schema(), BTreeSet::new());
    let text = common::text("sites/price-book.toml");
    assert_eq!(refused(&schema, &text), [] as [String; 0]);
    used(&schema, &schema, "Site", &json(&text), &mut found);
    assert_eq!(
        keys(&schema).difference(&found).collect::<Vec<_>>(),
        [] as [&String; 0]
    );
}

#[test]
fn what_the_reader_refuses_by_shape_the_schema_refuses_too() {
    let shapes = "unknown-key missing-key wrong-type not-a-table not-a-list empty-text unknown-word bad-name not-a-count \
                  not-yes-or-no not-a-position number-without-unit";
    for code in shapes.split_whitespace() {
        let text = common::text(&format!("problems/{code}.toml"));
        assert!(!refused(&schema(), &text).is_empty(), "{code}");
    }
}

#[test]
fn a_part_needs_no_gate_and_a_bought_thing_no_kind() {
    let site = "[site]\nname = \"a\"\ncode_basis = \"us\"\n[[device]]\nid = \"b\"\n";
    assert_eq!(
        refused(&schema(), &format!("{site}part = \"c\"\n")),
        [] as [String; 0]
    );
    assert!(!refused(&schema(), site).is_empty());
    assert!(!refused(&parts_schema(), "[[device]]\nid = \"b\"\npart = \"c\"\n").is_empty());
}

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

/// Notes every key that a value uses.
fn used(schema: &Value, at: &Value, name: &str, value: &Value, found: &mut BTreeSet<String>) {
    if let Some(name) = at["$ref"]
        .as_str()
        .and_then(|reference| reference.rsplit('/').next())
    {
        return used(schema, &schema["$defs"][name], name, value, found);
    }
    match value {
        Value::Object(table) => {
            for (key, value) in table {
                found.insert(format!("{name}.{key}"));
                used(schema, &at["properties"][key], name, value, found);
            }
        }
        Value::Array(values) => values
            .iter()
            .for_each(|value| used(schema, &at["items"], name, value, found)),
        _ => {}
    }
}

#[test]
fn the_full_site_uses_every_key() {
    let (schema, mut found) = (schema(), BTreeSet::new());
    used(&schema, &schema, "Site", &json(&common::full()), &mut found);
    assert_eq!(
        keys(&schema).difference(&found).collect::<Vec<_>>(),
        [] as [&String; 0]
    );
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
