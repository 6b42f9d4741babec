//! `gatewright pack`: the papers are written whole, and the same site gives the same bytes.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use assert_cmd::Command;
use std::fs;
use std::path::Path;

const FILES: [&str; 7] = [
    "pack.pdf",
    "schedules.xlsx",
    "findings.json",
    "gate-plan.svg",
    "gate-plan.dxf",
    "site-plan.svg",
    "site-plan.dxf",
];

/// Makes the papers of the vineyard; gives the bytes of each file.
fn papers(output: &Path, date: &str) -> Vec<Vec<u8>> {
    let site = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/vineyard");
    Command::cargo_bin("gatewright")
        .unwrap()
        .arg("pack")
        .arg(site)
        .arg("-o")
        .arg(output)
        .args(["--date", date])
        .assert()
        .code(1);
    FILES
        .iter()
        .map(|file| fs::read(output.join(file)).unwrap())
        .collect()
}

#[test]
fn the_same_site_and_day_give_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let once = papers(&folder.path().join("one"), "2026-11-25");
    let again = papers(&folder.path().join("two"), "2026-11-25");
    for ((name, one), other) in FILES.iter().zip(&once).zip(&again) {
        assert!(one == other, "{name} differs");
        assert!(!one.is_empty(), "{name} is empty");
    }
    let later = papers(&folder.path().join("three"), "2027-01-05");
    assert!(once[0] != later[0], "the date is on the papers");
}

#[test]
fn a_day_that_does_not_exist_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    Command::cargo_bin("gatewright")
        .unwrap()
        .args(["pack", "nowhere", "--date", "2026-02-30", "-o"])
        .arg(folder.path())
        .assert()
        .code(2);
}
