//! `gatewright set`: one value changes, and every other byte stays.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::{example, run, site};
use std::fs;

/// Sets a value in a copy of the text; gives how that ended and the text afterwards.
fn set(text: &str, path: &str, value: &str) -> (common::Run, String) {
    let folder = site(text);
    let run = run(&["set", folder.path().to_str().unwrap(), path, value]);
    let after = fs::read_to_string(folder.path().join("site.toml")).unwrap();
    (run, after)
}

/// A site with comments and odd spacing.
const ODD: &str = "# ours\r\n[site]\nname   =   \"Bare\"\ncode_basis = \"us\"\n\n[climate]  # cold\n\thottest = \"95 °F\"   # south wall\n";

#[test]
fn one_value_changes_and_nothing_else() {
    let (run, after) = set(ODD, "climate.hottest", "101 °F");
    assert_eq!(run.status, 0, "{}", run.complaints);
    assert_eq!(after, ODD.replace("95 °F", "101 °F"));
}

#[test]
fn a_value_of_the_boatyard_changes_alone() {
    let text = fs::read_to_string(example("boatyard").join("site.toml")).unwrap();
    let text = text
        .lines()
        .filter(|line| !line.starts_with("parts = ") && !line.starts_with("price_book = "))
        .fold(String::new(), |text, line| text + line + "\n");
    let (run, after) = set(&text, "gate.main.run_timer", "50 s");
    assert_eq!(run.status, 0, "{}", run.complaints);
    let changed: Vec<(&str, &str)> = text
        .lines()
        .zip(after.lines())
        .filter(|(before, after)| before != after)
        .collect();
    assert_eq!(text.lines().count(), after.lines().count());
    let [(before, after)] = changed[..] else {
        unreachable!("one line: {changed:?}");
    };
    assert_eq!(before.replace("45 s", "50 s"), after);
}

#[test]
fn a_wrong_unit_is_refused_and_the_file_stays() {
    let (run, after) = set(ODD, "climate.hottest", "12 lb");
    assert_eq!(run.status, 2);
    assert!(run.complaints.contains("temperature"), "{}", run.complaints);
    assert_eq!(after, ODD);
}

#[test]
fn an_unknown_path_is_refused_and_the_file_stays() {
    for path in [
        "climate.hotest",
        "device.none.least_voltage",
        "",
        "..",
        "site",
    ] {
        let (run, after) = set(ODD, path, "1 V");
        assert_eq!(run.status, 2, "{path}: {}", run.printed);
        assert!(!run.complaints.trim().is_empty(), "{path}");
        assert_eq!(after, ODD, "{path}");
    }
}
