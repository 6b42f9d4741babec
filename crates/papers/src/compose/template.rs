//! The templates of anchors as a document of their own.

use super::sheet;
use crate::sheets::Template;
use crate::view::{DocumentView, TemplatesView};

/// Every page of every template; nothing where there is none.
pub(super) fn view(document: &DocumentView, templates: &[Template]) -> Option<TemplatesView> {
    let pages = templates.iter().flat_map(|template| &template.pages);
    let pages: Vec<_> = pages.map(sheet::view).collect();
    (!pages.is_empty()).then(|| TemplatesView {
        document: DocumentView {
            title: "Templates at full size".to_owned(),
            ..document.clone()
        },
        pages,
    })
}
