//! The sheets of hazard zones of the example sites: nothing overlaps, nothing is left out, and what fails says so in words.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use papers::sheets::{Imprint, NamedDrawing, drawings};
use site::{Site, SourceFile, load};
use std::fs;
use std::path::Path;

const SITES: [&str; 8] = [
    "boatyard",
    "boatyard-faulty",
    "vineyard",
    "vineyard-faulty",
    "quarry",
    "quarry-faulty",
    "clinic",
    "clinic-faulty",
];

fn example(name: &str) -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name);
    let file = |file: &str| SourceFile {
        name: file.to_owned(),
        text: fs::read_to_string(folder.join(file)).unwrap(),
    };
    load(file("site.toml"), vec![file("parts.toml")])
        .site
        .unwrap()
}

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    let imprint = Imprint {
        date: "25 November 2026".to_owned(),
        caution: String::new(),
    };
    let mut all = drawings(site, &imprint).unwrap();
    all.retain(|sheet| sheet.name.starts_with("hazard"));
    all
}

fn words(sheet: &NamedDrawing) -> String {
    let boxes = sheet.drawing.text_boxes();
    let words: Vec<&str> = boxes.iter().map(|text| text.words.as_str()).collect();
    words.join(" ").replace('\n', " ")
}

#[test]
fn every_gate_has_both_sheets_and_no_words_overlap() {
    for name in SITES {
        let sheets = drawn(&example(name));
        let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name.as_str()).collect();
        assert_eq!(names, ["hazard-plan", "hazard-elevation"], "{name}");
        for sheet in sheets {
            let drawing = &sheet.drawing;
            assert_eq!(drawing.overlapping_text(), [], "{name}, {}", sheet.name);
            assert!(
                drawing.without_room().is_empty(),
                "{name}, {}: {:?}",
                sheet.name,
                drawing.without_room()
            );
        }
    }
}

#[test]
fn what_is_protected_says_by_what() {
    let plan = words(&drawn(&example("quarry"))[0]);
    assert!(plan.contains("where leaf passes post-guide-in"), "{plan}");
    assert!(plan.contains("edge-guide-in"), "{plan}");
    assert!(!plan.contains("protected in part"), "{plan}");
}

#[test]
fn what_lacks_something_says_so_on_both_sheets_and_never_by_color_alone() {
    for sheet in drawn(&example("boatyard-faulty")) {
        let said = words(&sheet);
        assert!(said.contains("3 protected in part"), "{said}");
        assert!(
            sheet
                .drawing
                .svg()
                .contains("zones, unprotected or in part")
        );
    }
    let plan = words(&drawn(&example("boatyard-faulty"))[0]);
    assert!(
        plan.contains("2 means of different types are asked"),
        "{plan}"
    );
}

#[test]
fn without_a_drive_that_senses_a_place_without_device_is_unprotected() {
    let mut text = fs::read_to_string(
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/boatyard-faulty/site.toml"),
    )
    .unwrap();
    text = text.replace("inherent_sensing = true", "inherent_sensing = false");
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text,
    };
    let parts = SourceFile {
        name: "parts.toml".to_owned(),
        text: fs::read_to_string(
            Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/boatyard-faulty/parts.toml"),
        )
        .unwrap()
        .replace("inherent_sensing = true", "inherent_sensing = false"),
    };
    let site = load(file, vec![parts]).site.unwrap();
    let plan = words(&drawn(&site)[0]);
    assert!(plan.contains("3 unprotected"), "{plan}");
}
