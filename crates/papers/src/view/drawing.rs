//! Drawings and files that go into a document.

use quantity::Length;
use quantity::units::length::millimeter;
use serde::{Serialize, Serializer};

/// A drawing on its own sheet, set at its exact size.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawingView {
    /// Title as listed on the cover: `Plan`.
    pub title: String,
    /// Scale as printed: `1 : 48`.
    pub scale: String,
    /// Width of the sheet of paper.
    #[serde(rename = "width_mm", serialize_with = "millimeters_of_paper")]
    pub width: Length,
    /// Height of the sheet of paper.
    #[serde(rename = "height_mm", serialize_with = "millimeters_of_paper")]
    pub height: Length,
    /// What the drawing shows, in words, for someone who cannot see it. Required by the standard; never empty.
    pub alternative: String,
    /// The drawing as SVG, with the sheet's border and title block. The lowest 6 mm are left free for the caution.
    #[serde(skip)]
    pub svg: String,
}

/// A file that travels inside the document.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Attachment {
    /// Its name: `boatyard.toml`.
    pub name: String,
    /// Its media type: `application/toml`.
    pub media_type: String,
    /// What it is, in one line.
    pub description: String,
    /// Its content.
    #[serde(skip)]
    pub bytes: Vec<u8>,
}

/// Narrowest and widest side of a sheet that any document has, in millimeters.
const SIDES: (f64, f64) = (50.0, 5000.0);

/// A side of a sheet, in millimeters; a side that no paper has becomes the nearest that one has.
#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "the serializer hands fields over by reference"
)]
fn millimeters_of_paper<S: Serializer>(side: &Length, serializer: S) -> Result<S::Ok, S::Error> {
    let side = side.get::<millimeter>();
    let (narrowest, widest) = SIDES;
    serializer.serialize_f64(if side.is_nan() {
        narrowest
    } else {
        side.clamp(narrowest, widest)
    })
}
