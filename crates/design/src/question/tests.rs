//! The question files are whole: every id once, every word known, every field a key of the site file.

#![allow(
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

use super::*;
use std::collections::BTreeSet;

#[test]
fn every_file_reads_without_a_fault() {
    assert_eq!(READ.faults, Vec::<String>::new());
    assert_eq!(questions().len(), 260);
}

#[test]
fn ids_are_unique_kebab_case_and_begin_with_their_file() {
    let mut seen = BTreeSet::new();
    for (topic, title, text) in files::FILES {
        for question in parse::read(&[(topic, title, text)]).questions {
            assert!(site::Id::new(&question.id).is_some(), "{}", question.id);
            assert_eq!(question.topic(), *topic);
            assert!(seen.insert(question.id.clone()), "{} twice", question.id);
        }
    }
}

#[test]
fn nothing_is_left_empty() {
    for question in questions() {
        let texts = [
            &question.ask,
            &question.rule,
            &question.basis,
            &question.confirm,
        ];
        assert!(
            texts.iter().all(|text| !text.trim().is_empty()),
            "{}",
            question.id
        );
        assert!(
            !question.needs.is_empty() && !question.stages.is_empty() && !question.codes.is_empty(),
            "{}",
            question.id
        );
    }
}

#[test]
fn every_field_is_a_key_of_the_site_file() {
    let schema = site::schema();
    let schema = serde_json::to_value(schema).unwrap();
    for question in questions() {
        for field in &question.fields {
            assert!(has_key(&schema, field), "{}: {field}", question.id);
        }
    }
}

/// Follows a path such as `gate.leaf.mass` through the properties of the schema.
fn has_key(schema: &serde_json::Value, path: &str) -> bool {
    let mut here = schema;
    for key in path.split('.') {
        here = resolved(schema, here);
        match here.get("properties").and_then(|keys| keys.get(key)) {
            Some(next) => here = next,
            None => return false,
        }
    }
    true
}

/// The record behind references and lists.
fn resolved<'v>(
    schema: &'v serde_json::Value,
    mut here: &'v serde_json::Value,
) -> &'v serde_json::Value {
    loop {
        if let Some(items) = here.get("items") {
            here = items;
        } else if let Some(target) = here.get("$ref").and_then(|text| text.as_str()) {
            here = schema.pointer(target.trim_start_matches('#')).unwrap();
        } else if let Some(inner) = here.get("allOf").and_then(|all| all.get(0)) {
            here = inner;
        } else {
            return here;
        }
    }
}

#[test]
fn a_wrong_word_and_an_unknown_key_are_faults() {
    let (topic, title, text) = files::FILES[0];
    let read = |changed: &str| parse::read(&[(topic, title, changed)]).faults.len();
    assert_eq!(read(text), 0);
    assert_eq!(read(&text.replacen("\"survey\"", "\"surveying\"", 1)), 1);
    assert_eq!(read(&text.replacen("ask = ", "asked = ", 1)), 1);
}

#[test]
fn every_topic_has_a_title_and_no_other_word_has() {
    for question in questions() {
        assert!(topic_title(question.topic()).is_some(), "{}", question.id);
    }
    assert_eq!(topic_title("enclosure"), Some("Enclosures"));
    assert_eq!(topic_title("weather"), None);
}
