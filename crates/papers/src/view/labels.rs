//! Labels at their exact size, and documents of tables and drawings.

use super::document::DocumentView;
use super::drawing::DrawingView;
use super::table::Table;
use serde::Serialize;

/// One label on its place. Sizes and places are in millimeters of paper.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LabelView {
    /// From the left edge of the page.
    pub left: f64,
    /// From the upper edge of the page.
    pub top: f64,
    /// Its width.
    pub width: f64,
    /// Its height.
    pub height: f64,
    /// What it names, in large letters.
    pub head: String,
    /// What else it says.
    pub lines: Vec<String>,
    /// Side of its code; zero without one.
    pub code_side: f64,
    /// What its code says.
    pub code_text: String,
    /// Its code as SVG; empty without one.
    #[serde(skip)]
    pub code: String,
}

/// Labels on pages of one size.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LabelsView {
    /// What the document says of itself.
    pub document: DocumentView,
    /// Width of a page in millimeters.
    pub page_width: f64,
    /// Height of a page in millimeters.
    pub page_height: f64,
    /// Height of capital letters in millimeters.
    pub letters: f64,
    /// The labels, page by page.
    pub pages: Vec<Vec<LabelView>>,
}

/// Tables, and drawings that belong to them, as a document of their own.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TablesView {
    /// What the document says of itself.
    pub document: DocumentView,
    /// The tables, in order.
    pub schedules: Vec<Table>,
    /// The drawings, each on its own sheet.
    #[serde(skip)]
    pub drawings: Vec<DrawingView>,
}
