//! `gatewright choose` for what stands: posts, anchors and pads.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{BARE, Run, run, site};
use std::fs;

const ANCHORS: &str = include_str!("../../design/tests/standing/site.toml");
const PARTS: &str = include_str!("../../design/tests/standing/parts.toml");

/// Chooses on a site of its own.
fn choose(what: &str, text: &str, parts: &str, more: &[&str]) -> Run {
    let folder = site(text);
    fs::write(folder.path().join("parts.toml"), parts).unwrap();
    let mut arguments = vec!["choose", what, folder.path().to_str().unwrap()];
    arguments.extend(more);
    run(&arguments)
}

#[test]
fn anchors_are_ranked_and_what_rules_others_out_is_said() {
    let chosen = choose("anchors", ANCHORS, PARTS, &[]);
    insta::assert_snapshot!(chosen.printed);
}

#[test]
fn anchors_are_data_too() {
    let chosen = choose("anchors", ANCHORS, PARTS, &["--json"]);
    let choices: serde_json::Value = serde_json::from_str(&chosen.printed).unwrap();
    assert_eq!(choices[0]["best"].as_array().unwrap().len(), 5);
    assert!(choices[0]["tried"].as_u64().unwrap() > 1000);
}

#[test]
fn anchors_need_a_set_and_an_entry() {
    let chosen = choose("anchors", BARE, "", &[]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("no anchors"),
        "{}",
        chosen.complaints
    );
    let chosen = choose("anchors", ANCHORS, "", &[]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("[[anchor]]"),
        "{}",
        chosen.complaints
    );
}

/// A drive that pulls along the gate line, on a pad whose size is open.
const PAD: &str = r#"
[site]
name = "Test yard"
code_basis = "us"
[climate]
soil_class = "sand"
frost_depth = "30 in"
[[gate]]
id = "main"
kind = "track-slide"
[[operator]]
id = "drive"
gate = "main"
drive = "rack"
at = ["22 ft", "14 in", "18 in"]
foundation = "pad"
starting_force = "300 lbf"
[[foundation]]
id = "pad"
at = ["22 ft", "14 in", "2 in"]
[[foundation.anchor]]
holds = "operator"
plate_length = "16 in"
plate_width = "14 in"
"#;

#[test]
fn the_smallest_pad_is_told_with_its_concrete() {
    let chosen = choose("pad", PAD, "", &[]);
    insta::assert_snapshot!(chosen.printed);
}

#[test]
fn pads_are_data_and_need_one_to_pour() {
    let chosen = choose("pad", PAD, "", &["--json"]);
    let choices: serde_json::Value = serde_json::from_str(&chosen.printed).unwrap();
    assert!(choices[0]["best"][0]["bags"].as_u64().unwrap() > 0);
    let chosen = choose("pad", BARE, "", &[]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("no pad"),
        "{}",
        chosen.complaints
    );
}

#[test]
fn posts_are_ranked_like_other_parts() {
    let text = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\nparts = [\"parts.toml\"]\n[[gate]]\nid = \"main\"\n\
                kind = \"single-swing\"\n[[gate.post]]\nid = \"hinges\"\nrole = \"hinge\"\n";
    let parts = "[[post]]\nid = \"square\"\nprice = \"90.00 USD\"\n\
                 finish = { coating = \"none\", wanted_life = \"25 years\" }\n";
    let chosen = choose("post", text, parts, &[]);
    assert!(
        chosen.printed.contains("square"),
        "{}{}",
        chosen.printed,
        chosen.complaints
    );
    assert!(
        chosen.printed.contains("Bare steel rusts"),
        "{}",
        chosen.printed
    );
}
