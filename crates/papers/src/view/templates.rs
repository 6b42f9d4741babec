//! The templates as a document of their own.

use super::document::DocumentView;
use super::drawing::DrawingView;
use serde::Serialize;

/// Every page of every template, each at its exact size.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TemplatesView {
    /// What the document says of itself.
    pub document: DocumentView,
    /// The pages, in order.
    #[serde(skip)]
    pub pages: Vec<DrawingView>,
}
