//! What several tests need: files of the tests folder, and loading them.
#![allow(
    dead_code,
    clippy::unwrap_used,
    reason = "each test uses some of it, and a test may stop at a missing file"
)]

use site::{Loaded, SourceFile};
use std::path::PathBuf;

/// A file below the tests folder.
pub(crate) fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests")
        .join(name)
}

/// The text of a file below the tests folder.
pub(crate) fn text(name: &str) -> String {
    std::fs::read_to_string(path(name)).unwrap()
}

/// A source called `name`.
pub(crate) fn source(name: &str, text: &str) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    }
}

/// Loads a site from one text.
pub(crate) fn load(text: &str) -> Loaded {
    site::load(source("site.toml", text), Vec::new())
}

/// The text of the site that uses every key.
pub(crate) fn full() -> String {
    text("sites/full.toml")
}

/// Loads a text beside the parts file of the full site.
pub(crate) fn load_with_parts(text: &str) -> Loaded {
    site::load(
        source("site.toml", text),
        vec![source("parts.toml", &self::text("sites/parts.toml"))],
    )
}
