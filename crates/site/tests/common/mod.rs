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
        vec![
            source("parts.toml", &self::text("sites/parts.toml")),
            source("typical.epw", &typical_year()),
            source("price-book.toml", &self::text("sites/price-book.toml")),
        ],
    )
}

/// An invented year of weather as an EPW file: the same day over and over.
pub(crate) fn typical_year() -> String {
    use std::fmt::Write as _;
    let mut text = self::text("problems/unreadable-weather.epw")
        .lines()
        .take(8)
        .fold(String::new(), |all, line| all + line + "\n");
    for (month, days) in (1..).zip([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) {
        for day in 1..=days {
            for hour in 1..=24 {
                let sun = if (9..16).contains(&hour) { 300 } else { 0 };
                writeln!(text, "2001,{month},{day},{hour},0,?9,8.0,5.0,80,101300,0,0,250,{sun},400,100,0,0,0,0,0,3.1").unwrap();
            }
        }
    }
    text
}
