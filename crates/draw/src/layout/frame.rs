//! The frame of a sheet: border, the band along its foot, and the area that is left for the drawing.

use super::bar::bar_marks;
use super::legend::Legend;
use super::north_arrow::north_marks;
use super::remarks::Remarks;
use super::title::Title;
use super::typist::{CAPTION, PLAIN, Typist};
use crate::flat::{Bounds, Spot};
use crate::mark::{Mark, Pen};
use crate::{Scale, ScaleBar, Scene, Sheet};

/// Clear paper around the border (mm).
const MARGIN: f64 = 8.0;
/// Clear paper inside the border (mm).
const PAD: f64 = 3.0;
/// Width of the cell with north and scale bar (mm).
const COMPASS: f64 = 76.0;
/// Least height of the band (mm).
const BAND: f64 = 41.0;
/// The border and the lines between cells (mm).
const BORDER: Pen = Pen::black(0.7);
/// Lines between cells.
const RULE: Pen = Pen::black(0.25);

/// Where everything around the drawing stands.
#[derive(Debug, Clone)]
pub(crate) struct Frame {
    border: Bounds,
    /// Upper edge of the caution line.
    caution_top: f64,
    /// Upper edge of the band.
    band_top: f64,
    /// The legend's cell.
    legend_cell: Bounds,
    legend: Legend,
    title_left: f64,
    /// The cell of the remarks; without height where there are none.
    remarks_cell: Bounds,
    /// What is left for the drawing.
    pub(crate) area: Bounds,
}

impl Frame {
    /// Measures what the sheet needs and leaves the rest to the drawing.
    pub(crate) fn new(sheet: &Sheet, scene: &Scene) -> Self {
        let (width, height) = sheet.size();
        let border = Bounds::new(
            Spot::new(MARGIN, MARGIN),
            Spot::new(width - MARGIN, height - MARGIN),
        );
        let caution_top = border.low.y + caution_height(sheet, &border);
        let title_wide = (border.width() * 0.28).clamp(88.0, 120.0);
        let legend = Legend::new(scene);
        let beside = border.width() - title_wide - COMPASS;
        let own_row = beside < Legend::COLUMN;
        let title_wide = if own_row {
            border.width() - COMPASS
        } else {
            title_wide
        };
        let title_left = border.high.x - title_wide;
        let title = Title::new(sheet, scene, title_left, title_wide);
        let legend_wide = if own_row { border.width() } else { beside };
        let legend_high = legend.height(legend_wide);
        let band = title
            .height()
            .max(BAND)
            .max(if own_row { 0.0 } else { legend_high });
        let band_top = caution_top + band;
        let legend_low = if own_row {
            Spot::new(border.low.x, band_top)
        } else {
            Spot::new(border.low.x + COMPASS, caution_top)
        };
        let legend_top = if own_row {
            band_top + legend_high
        } else {
            band_top
        };
        let legend_cell = Bounds::new(
            legend_low,
            Spot::new(legend_low.x + legend_wide, legend_top),
        );
        let remarks_cell = Remarks::new(scene, &border).cell(&border, band_top.max(legend_top));
        let area = Bounds::new(
            Spot::new(border.low.x + PAD, remarks_cell.high.y + PAD),
            Spot::new(border.high.x - PAD, border.high.y - PAD),
        );
        Self {
            border,
            caution_top,
            band_top,
            legend_cell,
            legend,
            title_left,
            remarks_cell,
            area,
        }
    }

    /// Everything around the drawing.
    pub(crate) fn furniture(
        &self,
        sheet: &Sheet,
        scene: &Scene,
        scale: Option<&Scale>,
        bar: Option<&ScaleBar>,
    ) -> Vec<Mark> {
        let mut title = Title::new(
            sheet,
            scene,
            self.title_left,
            self.border.high.x - self.title_left,
        );
        let group = |class, marks| Mark::Group {
            class,
            title: None,
            marks,
        };
        let remarks = Remarks::marks(scene, &self.border, self.remarks_cell.high.y);
        let mut furniture = vec![
            group("border", self.rules()),
            group(
                "north",
                north_marks(&sheet.north, self.border.low.x, self.band_top),
            ),
            group(
                "scale-bar",
                bar_marks(sheet, scene, scale, bar, self.compass()),
            ),
            group("legend", self.legend.marks(&self.legend_cell)),
            group(
                "title-block",
                title.marks(scale, self.band_top, self.caution_top),
            ),
            group("caution", caution(sheet, &self.border, self.caution_top)),
        ];
        if !remarks.is_empty() {
            furniture.push(group("remarks", remarks));
        }
        furniture
    }

    /// The cell of north and scale bar.
    fn compass(&self) -> Bounds {
        let low = Spot::new(self.border.low.x, self.caution_top);
        Bounds::new(low, Spot::new(low.x + COMPASS, self.band_top))
    }

    /// Border and lines between cells.
    fn rules(&self) -> Vec<Mark> {
        let (low, high) = (self.border.low, self.border.high);
        let corners = [
            low,
            Spot::new(high.x, low.y),
            high,
            Spot::new(low.x, high.y),
        ];
        let level = |y: f64| Mark::line(Spot::new(low.x, y), Spot::new(high.x, y), RULE);
        let upright = |x: f64| {
            Mark::line(
                Spot::new(x, self.caution_top),
                Spot::new(x, self.band_top),
                RULE,
            )
        };
        let border = Mark::Path {
            spots: corners.to_vec(),
            closed: true,
            pen: Some(BORDER),
            fill: None,
        };
        let mut marks = vec![
            border,
            level(self.band_top),
            upright(low.x + COMPASS),
            upright(self.title_left),
        ];
        if self.legend_cell.high.y > self.band_top {
            marks.push(level(self.legend_cell.high.y));
        }
        if self.remarks_cell.height() > 0.0 {
            marks.push(level(self.remarks_cell.high.y));
        }
        if self.caution_top > low.y {
            marks.push(level(self.caution_top));
        }
        marks
    }
}

/// Height of the caution line; zero without one.
fn caution_height(sheet: &Sheet, border: &Bounds) -> f64 {
    let mut typist = caution_typist(border, 0.0);
    typist.set(&sheet.title_block.caution, PLAIN);
    if typist.marks.is_empty() {
        0.0
    } else {
        2.0 - typist.top
    }
}

/// Where the caution line is set.
fn caution_typist(border: &Bounds, top: f64) -> Typist {
    Typist::new(border.low.x + PAD, top - 1.2, border.width() - 2.0 * PAD)
}

/// The caution line.
fn caution(sheet: &Sheet, border: &Bounds, top: f64) -> Vec<Mark> {
    let mut typist = caution_typist(border, top);
    typist.set(&sheet.title_block.caution, PLAIN);
    typist.marks
}

/// A caption at the upper left of a cell.
pub(crate) fn caption(words: &str, left: f64, top: f64) -> Typist {
    let mut typist = Typist::new(left + 2.0, top - 1.6, 60.0);
    typist.set(words, CAPTION);
    typist
}
