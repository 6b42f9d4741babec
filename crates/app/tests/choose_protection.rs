//! `gatewright choose protection`: what is printed, and what is written back.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{run, site};
use std::fs;

const SITE: &str = include_str!("../../design/tests/guarding/site.toml");
const PARTS: &str = include_str!("../../design/tests/guarding/parts.toml");

#[test]
fn the_fewest_devices_are_printed_and_written_back() {
    let folder = site(SITE);
    fs::write(folder.path().join("parts.toml"), PARTS).unwrap();
    let path = folder.path().to_str().unwrap();
    let chosen = run(&["choose", "protection", path, "--write"]);
    assert_eq!(chosen.status, 0, "{}", chosen.complaints);
    insta::assert_snapshot!(chosen.printed.replace(path, "guarding"));
    let text = fs::read_to_string(folder.path().join("site.toml")).unwrap();
    assert!(text.starts_with(SITE.trim_end()));
    assert!(text.len() > SITE.len() + 100);
    let again = run(&["choose", "protection", path, "--write"]);
    assert!(
        again.printed.contains("Nothing to write"),
        "{}",
        again.printed
    );
    assert_eq!(
        fs::read_to_string(folder.path().join("site.toml")).unwrap(),
        text
    );
}

#[test]
fn other_choices_are_not_written_back() {
    let folder = site(SITE);
    let refused = run(&["choose", "pad", folder.path().to_str().unwrap(), "--write"]);
    assert_eq!(refused.status, 2);
    assert!(refused.complaints.contains("protection"));
}
