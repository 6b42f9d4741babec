//! The templates as a document: every page at its exact size, at full size, archival.
#![allow(clippy::expect_used, reason = "a test that cannot go on says so")]

use crate::invented;
use crate::invented::keep;
use papers::pack::templates;
use papers::view::{DrawingView, TemplatesView};
use quantity::Length;
use quantity::units::length::millimeter;

fn page(number: usize) -> DrawingView {
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\"><path d=\"M20 20H120\" stroke=\"black\" stroke-width=\"0.2\"/></svg>";
    DrawingView {
        title: format!("Template {number}"),
        scale: "1:1".to_owned(),
        width: Length::new::<millimeter>(210.0),
        height: Length::new::<millimeter>(297.0),
        alternative: "A line of 100 mm.".to_owned(),
        svg: svg.to_owned(),
    }
}

#[test]
fn every_page_has_its_exact_size() {
    let view = TemplatesView {
        document: invented::document(),
        pages: vec![page(1), page(2)],
    };
    let pdf = templates(&view).expect("the templates are set");
    keep(&pdf, "templates.pdf");
    let size = b"/MediaBox[0 0 595.2756 841.8898]";
    let count = pdf.windows(size.len()).filter(|part| part == size).count();
    assert_eq!(count, 2);
}
