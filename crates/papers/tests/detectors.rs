//! What sees vehicles at a gate, from above: each loop and field with its name and what it does, nothing over another.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, changed, drawn as sheets, example, read, tidy, words};
use papers::sheets::NamedDrawing;
use site::Site;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("detectors"))
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        let sheets = drawn(&example(name));
        assert!(!sheets.is_empty(), "{name}");
        for plan in sheets {
            tidy(&format!("{name}, {}", plan.name), &plan.drawing);
        }
    }
}

#[test]
fn each_loop_and_field_is_named_with_what_it_does_and_when_it_is_live() {
    let said = words(&drawn(&example("clinic"))[0].drawing);
    for wanted in [
        "loop-entry",
        "loop-arm",
        "loop-exit",
        "scanner-road",
        "scanner-park",
        "holds open, stops closing",
        "live while it closes",
        "stops no leaf",
        "railing",
    ] {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
}

#[test]
fn a_field_set_the_wrong_way_round_is_drawn_where_it_lies() {
    let whole = words(&drawn(&example("clinic"))[0].drawing);
    assert!(!whole.contains("swapped"), "{whole}");
    let site = changed("clinic", |text| {
        text.replacen("upside_down = false", "upside_down = true", 1)
    });
    let said = words(&drawn(&site)[0].drawing);
    assert!(said.contains("swapped"), "{said}");
}

#[test]
fn without_loops_and_fields_there_is_no_sheet() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
    assert!(drawn(&read(text)).is_empty());
}
