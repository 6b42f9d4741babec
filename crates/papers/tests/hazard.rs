//! The sheets of hazard zones of the example sites: nothing overlaps, nothing is left out, and what fails says so in words.

use crate::sheet::{SITES, changed, drawn as sheets, example, tidy, words};
use papers::sheets::NamedDrawing;
use site::Site;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("hazard"))
}

#[test]
fn every_gate_has_its_sheets_and_no_words_overlap() {
    for name in SITES {
        let sheets = drawn(&example(name));
        let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name.as_str()).collect();
        assert_eq!(
            names,
            ["hazard-plan", "hazard-elevation", "hazard-details"],
            "{name}"
        );
        for sheet in sheets {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn what_is_protected_says_by_what() {
    let plan = words(&drawn(&example("quarry"))[0].drawing);
    assert!(plan.contains("where leaf passes post-guide-in"), "{plan}");
    assert!(plan.contains("edge-guide-in"), "{plan}");
    assert!(!plan.contains("protected in part"), "{plan}");
}

#[test]
fn small_zones_are_enlarged_with_their_gaps() {
    let details = &drawn(&example("boatyard"))[2].drawing;
    let said = words(details);
    for told in [
        "Detail A: zones 1 and 2, at",
        "Detail B: zones 3 and 4, at",
        "zone 3 least gap 3 in",
        "edge-guide-out",
    ] {
        assert!(said.contains(told), "{told} in {said}");
    }
}

#[test]
fn what_lacks_something_says_so_on_both_sheets_and_never_by_color_alone() {
    let sheets = drawn(&example("boatyard-faulty"));
    for sheet in sheets.iter().take(2) {
        let said = words(&sheet.drawing);
        assert!(said.contains("3 protected in part"), "{said}");
        assert!(
            sheet
                .drawing
                .svg()
                .contains("zones, unprotected or in part")
        );
    }
    let plan = words(&drawn(&example("boatyard-faulty"))[0].drawing);
    assert!(
        plan.contains("2 means of different types are asked"),
        "{plan}"
    );
}

#[test]
fn without_a_drive_that_senses_a_place_without_device_is_unprotected() {
    let site = changed("boatyard-faulty", |text| {
        text.replace("inherent_sensing = true", "inherent_sensing = false")
    });
    let plan = words(&drawn(&site)[0].drawing);
    assert!(plan.contains("3 unprotected"), "{plan}");
}
