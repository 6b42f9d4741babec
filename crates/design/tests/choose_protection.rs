//! The fewest protective devices: nobody is hit with them, and somebody is without any one of them.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::walk::GateWalk;
use design::{ProtectionChoice, protection_choices};
use site::{SourceFile, load};
use std::num::NonZeroUsize;

const SITE: &str = include_str!("guarding/site.toml");
const PARTS: &str = include_str!("guarding/parts.toml");

fn file(name: &str, text: String) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text,
    }
}

fn chosen(site: &str, parts: &str) -> ProtectionChoice {
    let parts = [file("parts.toml", parts.to_owned())];
    let mut found = protection_choices(&file("site.toml", site.to_owned()), &parts).unwrap();
    assert_eq!(found.len(), 1);
    found.remove(0)
}

/// Whether somebody is hit in two hundred thousand walks past the site with these tables added.
fn somebody_is_hit(tables: &[String]) -> bool {
    let text = format!("{SITE}\n{}\n", tables.join("\n"));
    let parts = vec![file("parts.toml", PARTS.to_owned())];
    let site = load(file("site.toml", text), parts).site.unwrap();
    let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
    walk.sweep(200_000, NonZeroUsize::MIN, &|_| {}).any_bad
}

#[test]
fn the_set_holds_needs_what_walks_ask_for_and_once_written_wants_nothing_more() {
    let choice = chosen(SITE, PARTS);
    let set = choice.from_nothing.unwrap();
    assert_eq!(set.left, 0, "{set:#?}");
    assert!(set.failing.is_empty(), "{set:#?}");
    assert!(!set.devices.is_empty());
    assert!(!somebody_is_hit(&set.write));
    assert!(somebody_is_hit(&[]));
    // The trailing edge may be there for the count alone; one at least is there for the walks.
    let needed = (0..set.write.len()).filter(|at| {
        let mut rest = set.write.clone();
        rest.remove(*at);
        somebody_is_hit(&rest)
    });
    assert!(needed.count() >= 1);
    // What is found, once written, leaves nothing to add.
    let set = choice.added.unwrap();
    let written = format!("{SITE}\n{}\n", set.write.join("\n\n"));
    let again = chosen(&written, PARTS).added.unwrap();
    assert!(again.devices.is_empty(), "{again:#?}");
}

#[test]
fn without_entries_what_is_left_is_told() {
    let set = chosen(SITE, "").from_nothing.unwrap();
    assert!(set.devices.is_empty());
    assert!(set.left > 0);
    assert!(set.left_worst.unwrap().contains("the leaf"));
}

#[test]
fn a_missing_fact_is_what_to_write() {
    let choice = chosen(&SITE.replace("thickness = \"2 in\"", ""), PARTS);
    assert!(choice.from_nothing.is_none());
    assert!(choice.write[0].contains("thickness"), "{:?}", choice.write);
}
