//! `gatewright pack`: the papers are written whole, and the same site gives the same bytes.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{BARE, example, site};
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

/// Makes the papers of a site.
fn papers(site: &Path, output: &Path, date: &str) {
    Command::cargo_bin("gatewright")
        .unwrap()
        .arg("pack")
        .arg(site)
        .arg("-o")
        .arg(output)
        .args(["--date", date])
        .assert()
        .code(1);
}

#[test]
fn the_same_site_and_day_give_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let [once, again] = ["one", "two"].map(|name| folder.path().join(name));
    for output in [&once, &again] {
        papers(&example("vineyard"), output, "2026-11-25");
    }
    for name in FILES {
        let [one, other] = [&once, &again].map(|output| fs::read(output.join(name)).unwrap());
        assert!(one == other, "{name} differs");
        assert!(!one.is_empty(), "{name} is empty");
    }
}

#[test]
fn the_date_is_on_the_papers() {
    let bare = site(BARE);
    let [one, other] = ["2026-11-25", "2027-01-05"].map(|date| {
        let output = bare.path().join(date);
        papers(bare.path(), &output, date);
        fs::read(output.join("pack.pdf")).unwrap()
    });
    assert!(one != other);
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
