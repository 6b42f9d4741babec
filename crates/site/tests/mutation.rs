//! Damaged files never stop the reader: it loads what is left or says where the damage is.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

#[path = "common/mutate.rs"]
mod mutate;

use crate::common;
use proptest::prelude::*;
use site::{Loaded, files_named, load, set_value};

/// Whatever came out is of use to a person.
fn check(text: &str, parts: &str) -> bool {
    let loaded = load(
        common::source("site.toml", text),
        vec![common::source("parts.toml", parts)],
    );
    let Loaded { site, problems } = &loaded;
    assert!(
        site.is_some() || problems.any_wrong(),
        "neither a site nor a problem"
    );
    for problem in problems {
        let file = if problem.file == "site.toml" {
            text
        } else {
            parts
        };
        assert!(file.get(problem.span.clone()).is_some(), "{problem}");
        assert!(
            problem.line >= 1 && problem.line <= file.split('\n').count(),
            "{problem}"
        );
        assert!(problem.column >= 1 && !problem.what.is_empty(), "{problem}");
        assert!(
            problem.expected.is_some() || problem.write.is_some(),
            "{problem}"
        );
    }
    let order: Vec<_> = problems
        .iter()
        .map(|problem| (problem.file != "site.toml", problem.span.start))
        .collect();
    assert!(order.is_sorted());
    let _ = problems.to_string();
    let _ = files_named(text);
    problems.is_empty()
}

#[test]
fn two_thousand_damaged_sites() {
    let (full, parts) = (common::full(), common::text("sites/parts.toml"));
    let mut without_problems = 0;
    for seed in 0..2000 {
        let text = mutate::mutate(&full, seed);
        let outcome = std::panic::catch_unwind(|| check(&text, &parts));
        assert!(outcome.is_ok(), "seed {seed}");
        without_problems += usize::from(outcome.unwrap());
    }
    assert!(
        without_problems < 1000,
        "{without_problems} of 2000 damages went unnoticed"
    );
}

#[test]
fn five_hundred_damaged_parts_files() {
    let (full, parts) = (common::full(), common::text("sites/parts.toml"));
    for seed in 0..500 {
        let damaged = mutate::mutate(&parts, seed);
        let outcome = std::panic::catch_unwind(|| check(&full, &damaged));
        assert!(outcome.is_ok(), "seed {seed}");
    }
}

#[test]
fn damaged_files_are_edited_or_refused() {
    let full = common::full();
    for seed in 0..500 {
        let text = mutate::mutate(&full, seed);
        let _ = set_value(&text, "gate.slide.leaf.panel.mass", "655 lb");
        let _ = set_value(&text, "device.eye-close.voltage", "24 V");
    }
}

/// Text that looks somewhat like a site file.
fn somewhat_toml() -> impl Strategy<Value = String> {
    let key = prop_oneof![
        "id",
        "kind",
        "mass",
        "at",
        "leaf",
        "part",
        "gate",
        "site",
        "[a-z_.]{1,8}"
    ];
    let value = prop_oneof![
        "\"[ -~°±]{0,12}\"",
        "-?[0-9]{1,20}(\\.[0-9]+)?",
        "\\[(\"[0-9] ft\",? ?){0,4}\\]?",
        "\\{ [a-z]{1,4} = \"x\" \\}",
        "true",
        "[ -~]{0,10}",
    ];
    let header = prop_oneof![
        "\\[(site|place|climate|gate\\.motion|[a-z.]{1,6})\\]",
        "\\[\\[(gate|gate\\.leaf|device|cable|[a-z.]{1,6})\\]\\]?"
    ];
    let line = prop_oneof![3 => (key, value).prop_map(|(key, value)| format!("{key} = {value}")), 1 => header, 1 => "\\PC{0,20}"];
    prop::collection::vec(line, 0..30).prop_map(|lines| lines.join("\n"))
}

proptest! {
    #[test]
    fn what_looks_like_toml_is_read_or_refused(text in somewhat_toml(), parts in somewhat_toml()) {
        check(&text, &parts);
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC*") {
        check(&text, &text);
    }

    #[test]
    fn any_value_is_written_back_or_refused(value in "\\PC{0,20}") {
        let full = common::full();
        for path in ["site.name", "device.reader-in.ports", "device.reader-in.at.1", "place.elevation", "site.codes"] {
            if let Ok(changed) = set_value(&full, path, &value) {
                prop_assert_eq!(common::load_with_parts(&changed).problems.to_string(), "");
            }
        }
    }
}
