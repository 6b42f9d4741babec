//! A drawing: a scene laid out on a sheet, ready to be written.

use crate::flat::Spot;
use crate::layout::view::View;
use crate::lettering::width;
use crate::mark::{Letter, Mark, Measured};
use crate::patch::Patch;
use crate::text_box::{TextBox, overlapping};
use crate::{Anchor, Layer, Scale, ScaleBar, Scene, Sheet};
use quantity::{Length, Quantity as _};

/// A scene on its sheet. Made by [`Sheet::lay_out`].
#[derive(Debug, Clone)]
pub struct Drawing {
    pub(crate) title: String,
    pub(crate) description: String,
    pub(crate) size: (f64, f64),
    pub(crate) view: View,
    pub(crate) layers: Vec<Layer>,
    /// For each layer, its geometry.
    pub(crate) geometry: Vec<Vec<Mark>>,
    /// For each layer, its words and dimensions.
    pub(crate) words: Vec<Vec<Mark>>,
    pub(crate) furniture: Vec<Mark>,
    pub(crate) prefix: String,
    scale: Option<Scale>,
    scale_bar: Option<ScaleBar>,
    homeless: Vec<String>,
}

impl Drawing {
    /// Puts together what was laid out.
    pub(crate) fn new(
        scene: &Scene,
        sheet: &Sheet,
        composed: crate::layout::Composed,
        furniture: Vec<Mark>,
        (scale, scale_bar): (Option<Scale>, Option<ScaleBar>),
    ) -> Self {
        Self {
            title: scene.title.clone(),
            description: scene.description.clone(),
            size: sheet.size(),
            view: composed.view,
            layers: scene.layers().to_vec(),
            geometry: composed.geometry,
            words: composed.words,
            furniture,
            prefix: crate::xml::id(&format!("sheet {}", sheet.title_block.sheet_number)),
            scale,
            scale_bar,
            homeless: composed.homeless,
        }
    }

    /// Puts together a page of a pattern at full size.
    pub(crate) fn at_full_size(
        scene: &Scene,
        size: (f64, f64),
        page: usize,
        composed: crate::layout::Composed,
        furniture: Vec<Mark>,
    ) -> Self {
        Self {
            title: scene.title.clone(),
            description: scene.description.clone(),
            size,
            view: composed.view,
            layers: scene.layers().to_vec(),
            geometry: composed.geometry,
            words: composed.words,
            furniture,
            prefix: crate::xml::id(&format!("page {page}")),
            scale: Some(Scale::one_to(1.0)),
            scale_bar: None,
            homeless: composed.homeless,
        }
    }

    /// What the drawing shows.
    pub fn title(&self) -> &str {
        &self.title
    }

    /// What is to be seen, for those who can't see it; may be empty.
    pub fn description(&self) -> &str {
        &self.description
    }

    /// Width and height of the paper as it lies.
    pub fn paper_size(&self) -> (Length, Length) {
        let (width, height) = self.size;
        (
            Length::from_base(width / 1000.0),
            Length::from_base(height / 1000.0),
        )
    }

    /// The scale; `None` for a drawing that isn't to scale.
    pub fn scale(&self) -> Option<&Scale> {
        self.scale.as_ref()
    }

    /// The scale bar; `None` for a drawing that isn't to scale.
    pub fn scale_bar(&self) -> Option<&ScaleBar> {
        self.scale_bar.as_ref()
    }

    /// Words that found no room and aren't on the drawing; take larger paper or fewer words until it is empty.
    pub fn without_room(&self) -> &[String] {
        &self.homeless
    }

    /// The room of every line of text on the sheet.
    pub fn text_boxes(&self) -> Vec<TextBox> {
        let mut boxes = Vec::new();
        let layers = self.geometry.iter().chain(&self.words).flatten();
        layers
            .chain(&self.furniture)
            .for_each(|mark| collect(mark, &mut boxes));
        boxes
    }

    /// Every pair of texts that overlap, by their words. Tests assert that there is none.
    pub fn overlapping_text(&self) -> Vec<(String, String)> {
        overlapping(&self.text_boxes())
    }
}

/// The boxes of the letters in a mark.
fn collect(mark: &Mark, boxes: &mut Vec<TextBox>) {
    match mark {
        Mark::Letters(letter) => boxes.push(TextBox::of(letter.words.clone(), &letter.patch())),
        Mark::Group { marks, .. } | Mark::Measured(Measured { marks, .. }) => {
            for mark in marks {
                collect(mark, boxes);
            }
        }
        _ => {}
    }
}

impl Letter {
    /// The room that the line takes.
    pub(crate) fn patch(&self) -> Patch {
        let wide = width(&self.words, self.height);
        let across = Spot::unit(self.angle);
        let along = match self.anchor {
            Anchor::Start => wide / 2.0,
            Anchor::Middle => 0.0,
            Anchor::End => -wide / 2.0,
        };
        let center = self
            .at
            .plus(across, along)
            .plus(across.left(), self.height * 0.41);
        Patch {
            center,
            half_width: wide / 2.0,
            half_height: self.height * 0.71,
            angle: self.angle,
        }
    }
}
