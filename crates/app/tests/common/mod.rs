//! Running the program as a person does.

#![allow(
    dead_code,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "each test file takes what it needs, and a test may stop at the first surprise"
)]

pub(crate) mod served;

use assert_cmd::Command;
use std::fs;
use std::path::{Path, PathBuf};

/// How the program ended.
pub(crate) struct Run {
    /// Its exit status.
    pub(crate) status: i32,
    /// What it printed.
    pub(crate) printed: String,
    /// What it complained of.
    pub(crate) complaints: String,
}

/// Runs the program with these arguments.
pub(crate) fn run(arguments: &[&str]) -> Run {
    let output = Command::cargo_bin("gatewright")
        .unwrap()
        .args(arguments)
        .output()
        .unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    Run {
        status: output.status.code().unwrap(),
        printed: text(output.stdout),
        complaints: text(output.stderr),
    }
}

/// Checks a site at a path.
pub(crate) fn check(site: &Path, more: &[&str]) -> Run {
    let mut arguments = vec!["check", site.to_str().unwrap()];
    arguments.extend(more);
    run(&arguments)
}

/// The folder of an example site.
pub(crate) fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name)
}

/// A site in a folder of its own.
pub(crate) fn site(text: impl AsRef<[u8]>) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("site.toml"), text).unwrap();
    folder
}

/// The least that a site file holds.
pub(crate) const BARE: &str = "[site]\nname = \"Bare yard\"\ncode_basis = \"us\"\n";
