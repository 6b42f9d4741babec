//! The plan as a sheet of the document.

use crate::view::DrawingView;
use draw::Drawing;

/// The drawing at its exact size, with words for those who cannot see it.
pub(crate) fn view(drawing: &Drawing) -> DrawingView {
    let (width, height) = drawing.paper_size();
    DrawingView {
        title: drawing.title().to_owned(),
        scale: drawing.scale().map_or_else(
            || "not to scale".to_owned(),
            |scale| scale.words().to_owned(),
        ),
        width,
        height,
        alternative: drawing.description().to_owned(),
        svg: drawing.svg(),
    }
}
