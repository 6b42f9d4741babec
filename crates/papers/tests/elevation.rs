//! Elevations and sections of every kind of gate: nothing overlaps, what matters is measured, what is missing is told.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet;
use crate::sheet::{SITES, drawn as sheets, example, read};
use draw::DxfUnit;
use papers::sheets::NamedDrawing;
use quantity::{Length, Measured, UnitSystem};
use site::Site;

/// A gate of a kind with a leaf of 17 ft by 5 ft, with more keys of the gate.
fn small(kind: &str, more: &str) -> Site {
    let text = format!(
        "[site]\nname = \"Lane end\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"{kind}\"\nclear_opening = \"16 ft\"\n{more}\n\
         [[gate.leaf]]\nid = \"leaf\"\nlength = \"17 ft\"\nheight = \"5 ft\"\nthickness = \"2 in\"\nground_clearance = \"3 in\"\ninfill = \"welded mesh\"\n\
         [[gate.post]]\nid = \"near\"\nrole = \"catch\"\nat = [\"-6 in\", \"0 in\", \"0 in\"]\nheight = \"6 ft\"\nwidth = \"4 in\"\n"
    );
    read(&text)
}

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| {
        !name.contains("plan") && !name.starts_with("hazard")
    })
}

fn sheet(site: &Site, name: &str) -> NamedDrawing {
    sheets(site, |one| one == name).remove(0)
}

fn words(sheet: &NamedDrawing) -> String {
    sheet::words(&sheet.drawing)
}

fn says(sheet: &NamedDrawing, all: &[&str]) {
    let words = words(sheet);
    for said in all {
        assert!(words.contains(said), "{said} in {words}");
    }
}

fn tidy(site: &Site, what: &str) {
    for sheet in drawn(site) {
        sheet::tidy(&format!("{what}, {}", sheet.name), &sheet.drawing);
    }
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        tidy(&example(name), name);
    }
}

#[test]
fn every_kind_of_gate_has_its_elevation_and_section_to_scale() {
    let kinds = [
        ("track-slide", "travel = \"17 ft\""),
        ("cantilever-slide", "travel = \"17 ft\""),
        (
            "single-swing",
            "travel_angle = \"90°\"\nswings = \"toward the road\"",
        ),
        ("double-swing", ""),
        ("vertical-pivot", "travel_angle = \"85°\""),
        ("vertical-lift", "travel = \"15 ft\""),
        ("barrier-arm", ""),
    ];
    for (kind, more) in kinds {
        let site = small(kind, more);
        tidy(&site, kind);
        for name in ["gate-elevation", "gate-section"] {
            let sheet = sheet(&site, name);
            assert!(sheet.drawing.scale().is_some(), "{kind}, {name}");
            says(&sheet, &["5'-0\"", "5'-3\"", "3\""]);
        }
    }
}

#[test]
fn the_lengths_of_a_track_slide_are_on_its_elevation() {
    let elevation = sheet(&example("boatyard"), "gate-elevation");
    says(
        &elevation,
        &[
            "clear opening 20'-0\"",
            "leaf 21'-6\"",
            "travel 20'-8\"",
            "guides 6'-4\"",
            "posts 7'-0\"",
            "6'-0\"",
            "Seen from the road side",
        ],
    );
}

#[test]
fn the_tail_and_the_trolleys_of_a_cantilever_slide_are_measured() {
    let site = example("quarry");
    let leaf = &site.gate[0].leaf[0];
    let words = |what: &str, length: &Measured<Length>| {
        let length = draw::dimension_text(length.nominal(), UnitSystem::UsCustomary);
        format!("{what} {length}")
    };
    let spacing = site.gate[0].wheels.as_ref().unwrap().spacing;
    let wanted = [
        words("tail", &leaf.tail.unwrap()),
        words("trolleys", &spacing.unwrap()),
        words("leaf", &leaf.length.unwrap()),
    ];
    let wanted: Vec<&str> = wanted.iter().map(String::as_str).collect();
    says(&sheet(&site, "gate-elevation"), &wanted);
}

#[test]
fn both_leaves_of_a_double_swing_gate_are_drawn_with_their_way() {
    let elevation = sheet(&example("vineyard"), "gate-elevation");
    says(
        &elevation,
        &["leaf-left: opens 90°", "leaf-right: opens 90°", "leaf 2135"],
    );
    let svg = elevation.drawing.svg();
    assert_eq!(svg.matches("<title>hinge</title>").count(), 4);
}

#[test]
fn an_arm_is_drawn_closed_and_open_with_its_balance() {
    let elevation = sheet(&example("clinic"), "gate-elevation");
    says(
        &elevation,
        &["opens 89°", "arm 3800", "spring", "clear opening 3500"],
    );
    assert!(elevation.drawing.svg().contains("leaf boom, open"));
}

#[test]
fn the_gaps_beside_the_leaf_are_on_the_section() {
    let section = sheet(&example("boatyard"), "gate-section");
    says(
        &section,
        &["2'-7\"", "4\"", "guides 6'-4\"", "property", "road"],
    );
}

#[test]
fn what_is_missing_is_told_and_not_invented() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"eu\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n[[gate.leaf]]\nid = \"leaf\"\n";
    let bare = read(text);
    tidy(&bare, "bare");
    let elevation = sheet(&bare, "gate-elevation");
    says(
        &elevation,
        &[
            "neither its length nor the clear opening is given",
            "no levels of the ground",
        ],
    );
    assert!(
        drawn(&bare)
            .iter()
            .all(|sheet| sheet.name != "gate-section")
    );
    let known = small("track-slide", "");
    says(
        &sheet(&known, "gate-elevation"),
        &[
            "The travel is not given",
            "its outline alone is drawn",
            "The wheels are not described",
        ],
    );
}

#[test]
fn the_pins_of_a_linear_drive_are_measured_from_the_hinge_line() {
    let site = example("vineyard");
    let sketch = sheet(&site, "mounting-drive-left");
    let pins = site.operator[0].mounting.as_ref().unwrap();
    let words = |length: Length| draw::dimension_text(length, UnitSystem::Si);
    let behind = words(pins.rear_behind.as_ref().unwrap().nominal());
    let along = words(pins.front_along.as_ref().unwrap().nominal());
    says(
        &sketch,
        &[&behind, &along, "of stroke", "front pin", "rear pin"],
    );
}

#[test]
fn the_arm_of_an_articulated_drive_is_folded_between_its_pins() {
    let more = "travel_angle = \"90°\"\nswings = \"into the property\"";
    let drive = "[[operator]]\nid = \"drive\"\ngate = \"main\"\ndrive = \"articulated\"\n\
                 [operator.mounting]\nrear_behind = \"6 in\"\nrear_across = \"8 in\"\nfront_along = \"26 in\"\nfront_across = \"2 in\"\ncrank = \"16 in\"\nlink = \"20 in\"\n";
    let text = format!(
        "[site]\nname = \"Lane end\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"single-swing\"\nclear_opening = \"10 ft\"\n{more}\n{drive}"
    );
    let site = read(&text);
    tidy(&site, "articulated");
    let svg = sheet(&site, "mounting-drive").drawing.svg();
    assert_eq!(svg.matches("<title>folding arm</title>").count(), 2);
}

#[test]
fn the_motion_of_a_gate_is_drawn_as_curves() {
    let site = example("boatyard");
    let speed = sheet(&site, "gate-speed");
    says(
        &speed,
        &["time from the start, s", "slow-down", "highest speed"],
    );
    let force = sheet(&site, "gate-force");
    says(
        &force,
        &[
            "force on the leaf, lbf",
            "hardest pull",
            "what the operator",
        ],
    );
    assert!(force.drawing.scale().is_none());
}

#[test]
fn the_same_site_gives_the_same_bytes() {
    let site = example("quarry");
    for (one, other) in drawn(&site).iter().zip(&drawn(&site)) {
        assert_eq!(one.drawing.svg(), other.drawing.svg());
        let dxf = |sheet: &NamedDrawing| sheet.drawing.dxf(DxfUnit::Inches);
        assert_eq!(dxf(one), dxf(other));
        let measured = dxf(one).lines().any(|line| line.trim() == "DIMENSION");
        assert_eq!(measured, one.drawing.scale().is_some(), "{}", one.name);
    }
}
