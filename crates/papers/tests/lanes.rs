//! Lanes with what their vehicles sweep, and vehicles on the grade: to scale, nothing over another.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, drawn as sheets, example, read, tidy, words};
use papers::sheets::NamedDrawing;
use site::Site;

/// The sites whose ways from the road are described.
const SITES: [&str; 4] = ["boatyard", "vineyard", "quarry", "clinic"];

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| ["lane-plan", "lane-side"].contains(&name))
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        let sheets = drawn(&example(name));
        assert_eq!(sheets.len(), 2, "{name}");
        for sheet in sheets {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn each_way_shows_its_places_of_least_room_and_every_vehicle() {
    let sheets = drawn(&example("boatyard"));
    let said = words(&sheets[0].drawing);
    for word in [
        "Driving in",
        "Driving out",
        "rig-trailer",
        "engine",
        "cuts the corner by",
    ] {
        assert!(said.contains(word), "{word}: {said}");
    }
    let side = words(&sheets[1].drawing);
    assert!(side.contains("pickup with boat trailer"), "{side}");
    assert!(side.contains("the gate line"), "{side}");
}

#[test]
fn without_ways_there_is_no_sheet_and_a_vehicle_without_measures_is_named() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
    assert!(drawn(&read(text)).is_empty());
    let site = changed("boatyard", |text| {
        text.replace("wheelbase = \"12 ft 4 in\"\n", "")
    });
    let said = words(&drawn(&site)[0].drawing);
    assert!(said.contains("lets them through: van"), "{said}");
}
