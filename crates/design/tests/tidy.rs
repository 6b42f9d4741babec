//! House rules for checks: each in a file of its own, with a test that it holds, one that it fails, and one that it is unknown.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

use std::path::{Path, PathBuf};

/// Checks whose answer is a figure: it neither holds nor fails.
const FIGURES: &[&str] = &["pressure.rs"];
/// Checks that ask the other findings: what turns is unknown, and nothing fails.
const ABOUT_FINDINGS: &[&str] = &["deciding.rs"];

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push(path);
        }
    }
    found.sort();
    found
}

#[test]
fn each_check_has_a_test_for_each_verdict() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/check");
    let mut count = 0;
    for path in files(&folder) {
        let text = std::fs::read_to_string(&path).unwrap();
        let name = path
            .file_name()
            .expect("a file")
            .to_string_lossy()
            .into_owned();
        if !text.contains("const CHECK: Check") && !ABOUT_FINDINGS.contains(&name.as_str()) {
            continue;
        }
        count += 1;
        assert!(
            text.contains("fn unknown"),
            "{name} has no test that it is unknown"
        );
        if !FIGURES.contains(&name.as_str()) {
            assert!(
                text.contains("fn holds"),
                "{name} has no test that it holds"
            );
        }
        if !FIGURES.contains(&name.as_str()) && !ABOUT_FINDINGS.contains(&name.as_str()) {
            assert!(
                text.contains("fn fails"),
                "{name} has no test that it fails"
            );
        }
    }
    assert_eq!(count, 224, "a check was added or lost: say so here");
}
