//! `gatewright choose`: parts in order, pins of a drive, and complaints in words.
#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

use crate::common::{Run, example, run};

/// Chooses on an example site.
fn choose(what: &str, name: &str, more: &[&str]) -> Run {
    let folder = example(name);
    let mut arguments = vec!["choose", what, folder.to_str().unwrap()];
    arguments.extend(more);
    run(&arguments)
}

#[test]
fn the_drives_of_the_boatyard_are_ranked() {
    let chosen = choose("operator", "boatyard", &[]);
    insta::assert_snapshot!(chosen.printed);
}

#[test]
fn the_wheels_that_carry_the_leaf_come_first() {
    let chosen = choose("wheels", "boatyard", &[]);
    assert_eq!(chosen.status, 0, "{}", chosen.printed);
    let place = |name: &str| chosen.printed.find(name).unwrap();
    assert!(place("wheel-6in-sealed") < place("wheel-4in-light"));
}

#[test]
fn the_pins_of_the_vineyards_drives_are_found() {
    let chosen = choose("mounting", "vineyard", &[]);
    insta::assert_snapshot!(chosen.printed);
}

#[test]
fn the_ranking_is_data_too() {
    let chosen = choose("operator", "boatyard", &["--json"]);
    let choices: serde_json::Value = serde_json::from_str(&chosen.printed).unwrap();
    assert_eq!(choices[0]["candidates"].as_array().unwrap().len(), 3);
}

#[test]
fn what_cannot_be_chosen_is_said_in_words() {
    let chosen = choose("opera", "boatyard", &[]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("Nearest: operator"),
        "{}",
        chosen.complaints
    );
    let chosen = choose("hinges", "boatyard", &[]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("no hinges"),
        "{}",
        chosen.complaints
    );
    let chosen = choose("mounting", "boatyard", &[]);
    assert!(
        chosen.complaints.contains("no linear drive"),
        "{}",
        chosen.complaints
    );
}

#[test]
fn the_bars_of_the_boatyard_are_cut_with_a_proof() {
    let chosen = choose("cuts", "boatyard", &[]);
    assert_eq!(chosen.status, 0, "{}", chosen.printed);
    insta::assert_snapshot!(chosen.printed);
}

#[test]
fn cuts_that_are_alike_are_told_once() {
    // The two leaves of the vineyard write the same pieces twice.
    let chosen = choose("cuts", "vineyard", &["--json"]);
    let sheets: serde_json::Value = serde_json::from_str(&chosen.printed).unwrap();
    for sheet in sheets.as_array().unwrap() {
        let cuts = sheet["cuts"].as_array().unwrap().iter();
        let mut told: Vec<String> = cuts
            .map(|cut| format!("{} {}", cut["length"], cut["pieces"]))
            .collect();
        let count = told.len();
        told.sort();
        told.dedup();
        assert_eq!(told.len(), count, "{sheet:#}");
    }
}

#[test]
fn the_reels_of_the_vineyard_give_every_run_in_one_piece() {
    let chosen = choose("reels", "vineyard", &["--json"]);
    let sheets: serde_json::Value = serde_json::from_str(&chosen.printed).unwrap();
    let sheets = sheets.as_array().unwrap();
    let runs = |sheet: &serde_json::Value| -> usize {
        let cuts = sheet["cuts"].as_array().unwrap().iter();
        let pieces = |cut: &serde_json::Value| cut["pieces"].as_array().unwrap().len();
        cuts.map(pieces).sum()
    };
    assert!(!sheets.is_empty() && sheets.iter().all(|sheet| runs(sheet) > 0));
}

#[test]
fn a_site_that_cuts_nothing_is_told_what_to_write() {
    let folder = tempfile::tempdir().unwrap();
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n";
    std::fs::write(folder.path().join("site.toml"), text).unwrap();
    let chosen = run(&["choose", "cuts", folder.path().to_str().unwrap()]);
    assert_eq!(chosen.status, 2);
    assert!(
        chosen.complaints.contains("[[bar_stock]]"),
        "{}",
        chosen.complaints
    );
}
