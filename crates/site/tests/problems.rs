//! Every rule has an example that breaks it, and what it says there is a page that somebody read.
#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

use crate::common;
use quantity::Word as _;
use site::{Code, Loaded, load};

/// Rules about the input of `set_value`, whose examples are in `edit.rs`.
const NOT_OF_FILES: &[Code] = &[Code::UnknownPath];

/// Loads the example of a rule, with its parts file where it has one.
fn example(code: Code) -> Loaded {
    let site = common::source(
        &format!("{code}.toml"),
        &common::text(&format!("problems/{code}.toml")),
    );
    let parts = std::fs::read_to_string(common::path(&format!("problems/{code}.parts.toml")));
    let weather = std::fs::read_to_string(common::path(&format!("problems/{code}.epw")));
    let parts = parts.iter().map(|text| common::source("parts.toml", text));
    let weather = weather.iter();
    let weather = weather.map(|text| common::source("typical-year.epw", text));
    load(site, parts.chain(weather).collect())
}

#[test]
fn every_rule_has_an_example_that_was_read() {
    for code in Code::ALL.iter().filter(|code| !NOT_OF_FILES.contains(code)) {
        let problems = example(*code).problems;
        assert!(
            problems.iter().any(|problem| problem.code == *code),
            "{code}:\n{problems}"
        );
        insta::assert_snapshot!(code.word(), problems);
    }
}

#[test]
fn every_example_belongs_to_a_rule() {
    for entry in std::fs::read_dir(common::path("problems")).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let stem = name.split('.').next().unwrap();
        assert!(Code::from_word(stem).is_some(), "{name}");
    }
}

#[test]
fn problems_are_data_too() {
    let json = serde_json::to_value(example(Code::DoubledId).problems).unwrap();
    insta::assert_snapshot!(serde_json::to_string_pretty(&json[0]).unwrap());
}

#[test]
fn a_wrong_value_leaves_the_rest() {
    let site = example(Code::UnreadableQuantity).site.unwrap();
    let leaf = &site.gate[0].leaf[0];
    assert!(leaf.mass.is_none() && leaf.height.is_none());
    assert_eq!(leaf.id, "panel");
    assert_eq!(site.device.len(), 1);
}

#[test]
fn without_a_readable_site_table_the_rest_is_looked_at_all_the_same() {
    let text = "[site]\ncode_basis = \"us\"\n\n[[gate]]\nid = \"g\"\nkind = \"track-slide\"\nclear_opening = \"0 ft\"\n";
    let loaded = common::load(text);
    assert!(loaded.site.is_none());
    let codes: Vec<Code> = loaded.problems.iter().map(|problem| problem.code).collect();
    assert_eq!(codes, [Code::MissingKey, Code::Zero]);
}
