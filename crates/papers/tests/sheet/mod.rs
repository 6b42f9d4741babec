//! What tests of drawings need: the example sites, sites of a few lines, their sheets, and what is on them.
#![allow(
    dead_code,
    clippy::unwrap_used,
    reason = "each test uses some of it, and a test may stop at the first surprise"
)]

use draw::Drawing;
use papers::sheets::{Imprint, NamedDrawing, drawings};
use site::{Site, SourceFile, load};
use std::fs;
use std::path::Path;

/// The sites of the examples.
pub(crate) const SITES: [&str; 8] = [
    "boatyard",
    "boatyard-faulty",
    "vineyard",
    "vineyard-faulty",
    "quarry",
    "quarry-faulty",
    "clinic",
    "clinic-faulty",
];

/// One of the example sites.
pub(crate) fn example(name: &str) -> Site {
    changed(name, |text| text)
}

/// One of the example sites, its site and parts files changed as told.
pub(crate) fn changed(name: &str, change: impl Fn(String) -> String) -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name);
    let file = |file: &str| SourceFile {
        name: file.to_owned(),
        text: change(fs::read_to_string(folder.join(file)).unwrap()),
    };
    load(
        file("site.toml"),
        vec![file("parts.toml"), file("price-book.toml")],
    )
    .site
    .unwrap()
}

/// A site of a few lines.
pub(crate) fn read(text: &str) -> Site {
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    load(file, Vec::new()).site.unwrap()
}

/// The imprint of test sheets.
pub(crate) fn imprint() -> Imprint {
    Imprint {
        date: "25 November 2026".to_owned(),
        caution: "Results support a competent person.".to_owned(),
    }
}

/// The sheets of a site whose names are asked for.
pub(crate) fn drawn(site: &Site, asked: impl Fn(&str) -> bool) -> Vec<NamedDrawing> {
    let mut all = drawings(site, &imprint()).unwrap();
    all.retain(|sheet| asked(&sheet.name));
    all
}

/// The words on a drawing, in one line.
pub(crate) fn words(drawing: &Drawing) -> String {
    let boxes = drawing.text_boxes();
    let words: Vec<&str> = boxes.iter().map(|text| text.words.as_str()).collect();
    words.join(" ").replace('\n', " ")
}

/// No words overlap, and none is left out for want of room.
pub(crate) fn tidy(name: &str, drawing: &Drawing) {
    assert_eq!(drawing.overlapping_text(), [], "{name}");
    let homeless = drawing.without_room();
    assert!(homeless.is_empty(), "{name}: {homeless:?}");
}
