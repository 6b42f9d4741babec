//! The pack is a PDF, has its sheets, carries its attachment, and comes out the same twice.
#![allow(clippy::expect_used, reason = "a test that cannot go on says so")]

use crate::invented;
use crate::invented::keep;
use papers::pack::pack;
use papers::view::Paper;

/// How often a byte string stands in another.
fn occurrences(haystack: &[u8], needle: &[u8]) -> usize {
    haystack
        .windows(needle.len())
        .filter(|window| *window == needle)
        .count()
}

#[test]
fn the_pack_is_an_archival_tagged_pdf_with_its_attachment() {
    let pdf = pack(&invented::pack()).expect("the pack is set");
    keep(&pdf, "pack.pdf");
    assert!(pdf.starts_with(b"%PDF-1."));
    assert_eq!(
        occurrences(&pdf, b"pdfaid:part>3<"),
        1,
        "says that it is PDF/A-3"
    );
    assert_eq!(
        occurrences(&pdf, b"pdfuaid:part>1<"),
        1,
        "says that it is PDF/UA-1"
    );
    assert_eq!(
        occurrences(&pdf, b"/AFRelationship/Source")
            + occurrences(&pdf, b"/AFRelationship /Source"),
        1
    );
}

#[test]
fn the_same_view_gives_the_same_bytes() {
    let view = invented::pack();
    let first = pack(&view).expect("the pack is set");
    let second = pack(&view).expect("the pack is set");
    assert!(first == second, "two runs differ");
}

#[test]
fn another_revision_gives_other_bytes() {
    let view = invented::pack();
    let mut revised = view.clone();
    revised.document.revision = "C".to_owned();
    assert!(pack(&view).expect("set") != pack(&revised).expect("set"));
}

#[test]
fn each_drawing_brings_a_sheet_of_its_exact_size() {
    let mut view = invented::pack();
    let with = pack(&view).expect("the pack is set");
    view.drawings.clear();
    let without = pack(&view).expect("the pack is set");
    let tabloid = b"/MediaBox[0 0 1224 792]";
    assert_eq!(
        occurrences(&with, tabloid),
        1,
        "17 × 11 in is 1224 × 792 points"
    );
    assert_eq!(occurrences(&without, tabloid), 0);
}

#[test]
fn paper_follows_the_code_basis() {
    let mut view = invented::pack();
    let letter = pack(&view).expect("the pack is set");
    view.document.paper = Paper::A4;
    let a4 = pack(&view).expect("the pack is set");
    keep(&a4, "pack-a4.pdf");
    assert!(occurrences(&letter, b"/MediaBox[0 0 612 792]") > 5);
    assert!(occurrences(&a4, b"/MediaBox[0 0 595.2756 841.8898]") > 5);
}
