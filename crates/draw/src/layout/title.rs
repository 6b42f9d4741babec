//! The title block: what the drawing shows, of which site, at which scale, when, and which sheet and revision it is.

use super::typist::{CAPTION, PLAIN, Style, TITLE, Typist};
use crate::flat::Spot;
use crate::mark::{Mark, Pen};
use crate::{Scale, Scene, Sheet};

/// Clear paper in a cell (mm).
const PAD: f64 = 2.2;
/// Lines between cells.
const RULE: Pen = Pen::black(0.18);
/// How the lower row is shared among scale, date, sheet and revision.
const SHARES: [f64; 4] = [0.40, 0.26, 0.17, 0.17];
/// The longest words of a scale, for measuring before the scale is known.
const LONGEST_SCALE: &str = "1 1/2\" = 1'-0\" (1:8)";

/// The title block of a sheet.
#[derive(Debug, Clone)]
pub(crate) struct Title<'a> {
    sheet: &'a Sheet,
    scene: &'a Scene,
    left: f64,
    wide: f64,
}

impl<'a> Title<'a> {
    /// The title block with this left edge and width.
    pub(crate) fn new(sheet: &'a Sheet, scene: &'a Scene, left: f64, wide: f64) -> Self {
        Self {
            sheet,
            scene,
            left,
            wide,
        }
    }

    /// The height that its words need (mm).
    pub(crate) fn height(&self) -> f64 {
        -self.head(0.0).top + self.row_height()
    }

    /// The title block between two heights.
    pub(crate) fn marks(&mut self, scale: Option<&Scale>, top: f64, foot: f64) -> Vec<Mark> {
        let mut marks = self.head(top).marks;
        let row_top = foot + self.row_height();
        let right = self.left + self.wide;
        marks.push(Mark::line(
            Spot::new(self.left, row_top),
            Spot::new(right, row_top),
            RULE,
        ));
        let words = scale.map_or_else(|| "Not to scale".to_owned(), Scale::full_words);
        let mut left = self.left;
        for (cell, share) in self.row(&words, row_top).into_iter().zip(SHARES) {
            if left > self.left {
                marks.push(Mark::line(
                    Spot::new(left, foot),
                    Spot::new(left, row_top),
                    RULE,
                ));
            }
            marks.extend(cell.marks);
            left += share * self.wide;
        }
        marks
    }

    /// Title and site, downward from a height.
    fn head(&self, top: f64) -> Typist {
        let mut typist = Typist::new(self.left + PAD, top - 1.6, self.wide - 2.0 * PAD);
        typist.set("Drawing", CAPTION);
        typist.skip(0.6);
        typist.set(&self.scene.title, TITLE);
        typist.skip(0.8);
        typist.set("Site", CAPTION);
        typist.skip(0.4);
        typist.set(
            &self.sheet.title_block.site,
            Style {
                height: 2.5,
                ..PLAIN
            },
        );
        typist.skip(1.2);
        typist
    }

    /// The cells of the lower row, downward from a height.
    fn row(&self, scale: &str, top: f64) -> Vec<Typist> {
        let block = &self.sheet.title_block;
        let words = [
            ("Scale", scale),
            ("Date", block.date.as_str()),
            ("Sheet", block.sheet_number.as_str()),
            ("Revision", block.revision.as_str()),
        ];
        let mut left = self.left;
        let mut cells = Vec::new();
        for ((head, words), share) in words.into_iter().zip(SHARES) {
            let wide = share * self.wide;
            let mut typist = Typist::new(left + PAD, top - 1.4, wide - PAD - 0.8);
            typist.set(head, CAPTION);
            typist.skip(0.4);
            typist.set(words, PLAIN);
            cells.push(typist);
            left += wide;
        }
        cells
    }

    /// Height of the lower row (mm).
    fn row_height(&self) -> f64 {
        let tops = self
            .row(LONGEST_SCALE, 0.0)
            .into_iter()
            .map(|cell| cell.top);
        1.0 - tops.fold(0.0, f64::min)
    }
}
