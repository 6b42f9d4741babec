//! The plan for people on foot: ways, walk gates, controls, releases and signs, each with its words, nothing over another.

use crate::sheet::{SITES, drawn as sheets, example, read, tidy, words};
use draw::DxfUnit;
use papers::sheets::NamedDrawing;
use site::Site;
use std::fmt::Write as _;

fn drawn(site: &Site) -> Option<NamedDrawing> {
    sheets(site, |name| name == "foot-plan").pop()
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        if let Some(plan) = drawn(&example(name)) {
            tidy(name, &plan.drawing);
        }
    }
}

#[test]
fn every_way_control_release_and_sign_is_told() {
    let mut shown = String::new();
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let drawn = drawn(&example(name));
        let said = drawn.map_or_else(String::new, |plan| words(&plan.drawing));
        writeln!(shown, "── {name}\n{said}\n").unwrap_or_default();
    }
    insta::assert_snapshot!(shown);
}

#[test]
fn the_cad_file_has_a_layer_for_each_meaning() {
    let dxf = drawn(&example("boatyard")).map(|plan| plan.drawing.dxf(DxfUnit::Millimeters));
    let dxf = dxf.unwrap_or_default();
    for layer in [
        "boundary of the property",
        "ways on foot",
        "controls",
        "hand releases",
        "signs",
    ] {
        assert!(dxf.lines().any(|line| line.trim() == layer), "{layer}");
    }
}

#[test]
fn what_has_no_place_is_named() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\nclear_opening = \"14 ft\"\n[[sign]]\nid = \"placard\"\nwhat = \"warning placard\"\n[[walk_gate]]\nid = \"walk\"\nat = [\"-6 ft\", \"0 ft\", \"0 in\"]\n";
    let said = drawn(&read(text)).map_or_else(String::new, |plan| words(&plan.drawing));
    assert!(said.contains("no position is given: placard"), "{said}");
    let nothing = text.replace("at = [", "note = \"left\"\n# [");
    assert!(drawn(&read(&nothing)).is_none());
}
