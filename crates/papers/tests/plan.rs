//! The plans of the example sites: nothing overlaps, nothing is left out, and the same site gives the same bytes.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet;
use crate::sheet::{SITES, drawn as sheets, example, read, tidy};
use draw::{DxfUnit, Scale};
use papers::sheets::NamedDrawing;
use quantity::Quantity as _;
use site::Site;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| ["gate-plan", "site-plan"].contains(&name))
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        for plan in drawn(&example(name)) {
            tidy(&format!("{name}, {}", plan.name), &plan.drawing);
        }
    }
}

fn dxf(plan: &NamedDrawing) -> String {
    plan.drawing.dxf(DxfUnit::Millimeters)
}

fn words(plan: &NamedDrawing) -> String {
    sheet::words(&plan.drawing)
}

#[test]
fn the_sheet_of_the_gate_is_larger_than_that_of_the_site() {
    for name in SITES {
        let plans = drawn(&example(name));
        let names: Vec<&str> = plans.iter().map(|plan| plan.name.as_str()).collect();
        assert_eq!(names, ["gate-plan", "site-plan"], "{name}");
        let ratio = |plan: &NamedDrawing| plan.drawing.scale().unwrap().ratio().base();
        assert!(ratio(&plans[0]) > 5.0 * ratio(&plans[1]), "{name}");
    }
}

#[test]
fn what_is_far_is_told_at_the_gate_and_drawn_on_the_site() {
    let plans = drawn(&example("boatyard"));
    let gate = words(&plans[0]);
    assert!(
        gate.contains("50 ft to the right, 232 ft into the property: camera-yard"),
        "{gate}"
    );
    assert!(words(&plans[1]).contains("camera-yard"));
}

#[test]
fn without_anything_far_away_there_is_no_sheet_of_the_site() {
    let text = "[site]\nname = \"Near\"\ncode_basis = \"eu\"\n[[gate]]\nid = \"main\"\nkind = \"barrier-arm\"\nclear_opening = \"4 m\"\n[[device]]\nid = \"eye\"\nkind = \"camera\"\nat = [\"1 m\", \"1 m\", \"2 m\"]\n";
    let plans = drawn(&read(text));
    assert_eq!(plans.len(), 1);
    assert!(words(&plans[0]).contains("clear opening 4000"));
    assert!(!words(&plans[0]).contains("Beyond this sheet"));
}

#[test]
fn the_measured_lengths_are_on_the_sheet_and_in_the_dxf() {
    let slide = &drawn(&example("boatyard"))[0];
    for said in [
        "clear opening 20'-0\"",
        "travel 20'-8\"",
        "run-back 24'-0\"",
        "leaf 21'-6\"",
        "posts, center to center 21'-1\"",
        "6'-1 1/2\"",
    ] {
        assert!(words(slide).contains(said), "{said} in {}", words(slide));
    }
    let swing = &drawn(&example("vineyard"))[0];
    for said in ["clear opening 4200", "opens 90°", "2135", "2000"] {
        assert!(words(swing).contains(said), "{said} in {}", words(swing));
    }
    for plan in [slide, swing] {
        assert!(dxf(plan).lines().any(|line| line.trim() == "DIMENSION"));
    }
}

#[test]
fn what_is_in_an_enclosure_has_no_label_of_its_own() {
    let gate = words(&drawn(&example("boatyard"))[0]);
    assert!(
        gate.contains("box") && !gate.contains("net-switch"),
        "{gate}"
    );
}

#[test]
fn every_site_has_a_gate_plan_to_scale_and_the_same_bytes_twice() {
    for name in SITES {
        let site = example(name);
        let (once, again) = (drawn(&site), drawn(&site));
        assert_eq!(once[0].name, "gate-plan");
        for (one, other) in once.iter().zip(&again) {
            let words = one.drawing.scale().unwrap().words();
            assert_eq!(one.drawing.scale(), Scale::read(words).as_ref(), "{name}");
            assert_eq!(one.drawing.svg(), other.drawing.svg());
            assert_eq!(dxf(one), dxf(other));
        }
    }
}

#[test]
fn what_has_no_place_is_listed() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"barrier-arm\"\n[[device]]\nid = \"eye\"\nkind = \"camera\"\n";
    let plan = &drawn(&read(text))[0];
    let words = words(plan);
    assert!(
        words.contains("no position is given") && words.contains("eye"),
        "{words}"
    );
    assert_eq!(plan.drawing.overlapping_text(), []);
}
