//! Vehicles in the gate over loops and beams: to scale, with what holds the leaf, nothing over another.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, changed, drawn as sheets, example, read, tidy, words};
use papers::sheets::NamedDrawing;
use site::Site;
use std::fmt::Write as _;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("vehicles"))
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        for plan in drawn(&example(name)) {
            tidy(&format!("{name}, {}", plan.name), &plan.drawing);
        }
    }
}

#[test]
fn each_vehicle_stands_there_with_what_holds_the_leaf() {
    let mut shown = String::new();
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        for plan in drawn(&example(name)) {
            let said = words(&plan.drawing);
            write!(shown, "── {name}, {}\n{said}\n\n", plan.name).unwrap();
        }
    }
    insta::assert_snapshot!(shown);
}

#[test]
fn without_vehicles_there_is_no_sheet_and_one_that_nobody_measured_is_named() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
    assert!(drawn(&read(text)).is_empty());
    let site = changed("boatyard", |text| {
        text.replace(
            "length = \"20 ft\"\nwidth = \"8 ft\"\n",
            "width = \"8 ft\"\n",
        )
    });
    let plan = &drawn(&site)[0];
    let said = words(&plan.drawing);
    assert!(said.contains("measures are missing: van"), "{said}");
}
