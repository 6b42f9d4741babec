//! A square code that a phone reads.

use qrcodegen::{QrCode, QrCodeEcc};
use std::fmt::Write as _;

/// Light border around the code, in modules: four, as the standard has it.
const BORDER: i32 = 4;
/// Smallest module that a phone surely reads, in millimeters: common practice.
const LEAST_MODULE: f64 = 0.35;

/// A code that fits a side of so many millimeters.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Code {
    /// The code with its light border, as SVG.
    pub(super) svg: String,
    /// What it says.
    pub(super) text: String,
}

/// The first of several texts whose code is not too fine for a side of so many millimeters.
pub(super) fn code(texts: &[&str], side: f64) -> Option<Code> {
    texts.iter().find_map(|text| {
        let code = QrCode::encode_text(text, QrCodeEcc::Medium).ok()?;
        let modules = code.size() + 2 * BORDER;
        (side / f64::from(modules) >= LEAST_MODULE).then(|| Code {
            svg: svg(&code, modules),
            text: (*text).to_owned(),
        })
    })
}

/// One path of squares.
fn svg(code: &QrCode, modules: i32) -> String {
    let mut path = String::new();
    for row in 0..code.size() {
        for column in 0..code.size() {
            if code.get_module(column, row) {
                // Writing to a string does not fail.
                let _ = write!(path, "M{},{}h1v1h-1z", column + BORDER, row + BORDER);
            }
        }
    }
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {modules} {modules}\" width=\"{modules}\" height=\"{modules}\" shape-rendering=\"crispEdges\"><rect width=\"{modules}\" height=\"{modules}\" fill=\"#ffffff\"/><path d=\"{path}\" fill=\"#000000\"/></svg>"
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::code;

    #[test]
    fn a_short_text_stands_in_where_the_long_one_is_too_fine() {
        let long = "a very long text that needs many modules ".repeat(6);
        let found = code(&[&long, "w-07"], 12.0).unwrap();
        assert_eq!(found.text, "w-07");
        assert!(found.svg.contains("viewBox=\"0 0 29 29\""), "{}", found.svg);
        assert!(code(&["w-07"], 5.0).is_none());
    }
}
