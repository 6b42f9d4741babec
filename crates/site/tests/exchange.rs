//! A site read with another part in place of the one that is there.
#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

use crate::common;
use site::{Exchange, Operator, SourceFile, load_exchanged, part_names};

const SITE: &str = r#"
[site]
name = "Example yard"
code_basis = "us"
parts = ["parts.toml"]
[[gate]]
id = "slide"
kind = "track-slide"
[[operator]]
id = "drive"
part = "small"
gate = "slide"
rated_force = "90 lbf, measured"
foundation = "pad"
[[foundation]]
id = "pad"
"#;

const PARTS: &str = r#"
[[operator]]
id = "small"
rated_force = "100 lbf"
duty = "50 %"
[[operator]]
id = "large"
rated_force = "300 lbf"
"#;

fn operator(part: Option<&str>) -> Operator {
    let exchange = Exchange {
        path: "operator \"drive\"".to_owned(),
        part: part.map(str::to_owned),
    };
    let file = |name: &str, text: &str| SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    };
    let loaded = load_exchanged(
        file("site.toml", SITE),
        vec![file("parts.toml", PARTS)],
        &exchange,
    );
    assert_eq!(loaded.problems.to_string(), "");
    loaded.site.unwrap().operator.remove(0)
}

#[test]
fn everything_that_a_data_sheet_says_is_the_other_parts() {
    let large = operator(Some("large"));
    let force: quantity::Force = quantity::read("300 lbf").unwrap();
    assert_eq!(large.rated_force.unwrap().nominal(), force);
    assert!(large.duty.is_none());
    assert_eq!(large.foundation.unwrap(), "pad");
}

#[test]
fn without_a_part_nothing_of_the_data_sheet_is_left() {
    let bare = operator(None);
    assert!(bare.rated_force.is_none() && bare.duty.is_none());
    assert_eq!(bare.gate, "slide");
}

#[test]
fn the_entries_are_listed_in_their_order() {
    let parts = [common::source("parts.toml", PARTS)];
    assert_eq!(part_names(&parts, "operator"), ["small", "large"]);
    assert_eq!(part_names(&parts, "wheels"), [] as [String; 0]);
}
