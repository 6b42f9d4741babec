//! The generated pages are committed and fresh: handbook, questions, JSON Schemas.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use assert_cmd::Command;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

fn docs() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs")
}

/// Every file below a folder with its text.
fn texts(folder: &Path) -> BTreeMap<PathBuf, String> {
    let mut found = BTreeMap::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(&next).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                found.insert(
                    path.strip_prefix(folder).unwrap().to_path_buf(),
                    fs::read_to_string(&path).unwrap(),
                );
            }
        }
    }
    found
}

#[test]
fn the_generated_pages_are_fresh() {
    let fresh = tempfile::tempdir().unwrap();
    Command::cargo_bin("gatewright")
        .unwrap()
        .args(["handbook", "-o"])
        .arg(fresh.path())
        .assert()
        .success();
    let wanted = texts(fresh.path());
    assert!(wanted.len() > 40, "one page for each calculation");
    for (name, text) in &wanted {
        let committed = fs::read_to_string(docs().join(name)).unwrap_or_default();
        assert!(
            *text == committed,
            "docs/{} is stale: run `gatewright handbook -o docs`",
            name.display()
        );
    }
    let kept = texts(&docs().join("handbook"));
    for name in kept.keys() {
        assert!(
            wanted.contains_key(&Path::new("handbook").join(name)),
            "docs/handbook/{} belongs to nothing",
            name.display()
        );
    }
}

/// Where the links of a page lead: what stands in `](…)`.
fn links(page: &str) -> impl Iterator<Item = &str> {
    page.split("](")
        .skip(1)
        .filter_map(|rest| rest.split(')').next())
}

#[test]
fn every_link_of_the_handbook_leads_to_a_page() {
    let handbook = docs().join("handbook");
    let mut count = 0;
    for (name, text) in texts(&handbook) {
        for link in links(&text).filter(|link| !link.contains("://")) {
            let target = handbook.join(&name).parent().unwrap().join(link);
            assert!(target.is_file(), "{}: {link}", name.display());
            count += 1;
        }
    }
    assert!(count > 90, "an index and a way back for each page: {count}");
}

#[test]
fn every_question_stands_on_the_page_of_questions() {
    let page = fs::read_to_string(docs().join("handbook/questions.md")).unwrap();
    for question in design::questions() {
        let row = page
            .lines()
            .find(|line| line.contains(&format!("`{}`", question.id)));
        let ticked = row.unwrap().starts_with("| ✓ |");
        assert_eq!(ticked, design::is_answered(&question.id), "{}", question.id);
    }
}
