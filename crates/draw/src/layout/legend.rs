//! The legend: every layer and symbol that the scene uses, drawn as it is drawn there.

use super::compose::pen_of;
use super::figures::{Stand, figure_marks, patch_around, symbol_marks};
use super::frame::caption;
use super::typist::{PLAIN, Typist};
use crate::flat::{Bounds, Spot};
use crate::mark::{Mark, Pen};
use crate::{Content, Figure, Fill, Layer, LinePattern, Point, Scene, Symbol};
use quantity::{Length, Quantity};

/// Width of the sample (mm).
const SAMPLE: f64 = 11.0;
/// Height of the sample of a symbol or an area (mm).
const TALL: f64 = 4.2;
/// Below the upper edge of the legend, for its caption (mm).
const HEAD: f64 = 5.4;

/// One line of the legend.
#[derive(Debug, Clone)]
enum Entry {
    /// A layer of lines.
    Line(Layer),
    /// A layer of filled areas.
    Area(Layer, Fill),
    /// A symbol.
    Symbol(Symbol, Pen),
}

/// What the legend explains.
#[derive(Debug, Clone)]
pub(crate) struct Legend {
    entries: Vec<Entry>,
}

impl Legend {
    /// Narrowest width of a column (mm).
    pub(crate) const COLUMN: f64 = 44.0;

    /// The layers and symbols of a scene in their order.
    pub(crate) fn new(scene: &Scene) -> Self {
        let layers = scene.layers().iter().enumerate();
        let mut entries: Vec<Entry> = layers
            .filter_map(|(index, layer)| layer_entry(scene, index, layer))
            .collect();
        let mut names: Vec<&str> = Vec::new();
        for shape in scene.shapes() {
            if let Content::Symbol(placement) = &shape.content
                && !names.contains(&placement.symbol.name.as_str())
            {
                names.push(&placement.symbol.name);
                let pen = pen_of(scene.layers().get(shape.layer.0));
                entries.push(Entry::Symbol(placement.symbol.clone(), pen));
            }
        }
        Self { entries }
    }

    /// How high the legend is in a cell of this width (mm).
    pub(crate) fn height(&self, wide: f64) -> f64 {
        if self.entries.is_empty() {
            0.0
        } else {
            HEAD + self.column_height(wide) + 1.6
        }
    }

    /// The least height of a column at which all columns hold the entries.
    fn column_height(&self, wide: f64) -> f64 {
        let (columns, each) = columns(wide);
        let mut high = self
            .entries
            .iter()
            .map(|entry| entry.height(each))
            .fold(0.0, f64::max);
        while self.columns_needed(high, each) > columns {
            high += 1.0;
        }
        high
    }

    /// How many columns of a height the entries fill.
    fn columns_needed(&self, high: f64, each: f64) -> u32 {
        let (mut columns, mut used) = (1, 0.0);
        for entry in &self.entries {
            let tall = entry.height(each);
            if used + tall > high + 1e-9 {
                columns += 1;
                used = 0.0;
            }
            used += tall;
        }
        columns
    }

    /// The legend in its cell.
    pub(crate) fn marks(&self, cell: &Bounds) -> Vec<Mark> {
        if self.entries.is_empty() {
            return Vec::new();
        }
        let (_, each) = columns(cell.width());
        let high = self.column_height(cell.width());
        let top = cell.high.y - HEAD;
        let (mut left, mut used) = (cell.low.x + 2.0, 0.0);
        let mut marks = caption("Legend", cell.low.x, cell.high.y).marks;
        for entry in &self.entries {
            let tall = entry.height(each);
            if used + tall > high + 1e-9 {
                left += each;
                used = 0.0;
            }
            marks.extend(entry.marks(left, top - used, each));
            used += tall;
        }
        marks
    }
}

/// How many columns a width has, and how wide each is.
fn columns(wide: f64) -> (u32, f64) {
    let inside = wide - 2.0;
    let mut columns = 1_u32;
    while inside / f64::from(columns + 1) >= Legend::COLUMN {
        columns += 1;
    }
    (columns, inside / f64::from(columns))
}

/// The entry of a layer that has figures on it.
fn layer_entry(scene: &Scene, index: usize, layer: &Layer) -> Option<Entry> {
    let mut figures = scene
        .shapes()
        .iter()
        .filter(|shape| shape.layer.0 == index)
        .filter_map(|shape| match &shape.content {
            Content::Figure(figure) => Some(figure),
            _ => None,
        });
    let first = figures.next()?;
    let filled = std::iter::once(first)
        .chain(figures)
        .find_map(|figure| match figure {
            Figure::Area { fill, .. } | Figure::Circle { fill, .. } if *fill != Fill::Open => {
                Some(*fill)
            }
            _ => None,
        });
    Some(filled.map_or_else(
        || Entry::Line(layer.clone()),
        |fill| Entry::Area(layer.clone(), fill),
    ))
}

impl Entry {
    /// What it is called.
    fn name(&self) -> &str {
        match self {
            Entry::Line(layer) | Entry::Area(layer, _) => &layer.name,
            Entry::Symbol(symbol, _) => &symbol.name,
        }
    }

    /// Its height in a column of this width (mm).
    fn height(&self, wide: f64) -> f64 {
        let typist = self.words(0.0, 0.0, wide);
        (0.6 - typist.top).max(TALL + 1.0)
    }

    /// Its words beside the sample.
    fn words(&self, left: f64, top: f64, wide: f64) -> Typist {
        let mut typist = Typist::new(left + SAMPLE + 2.0, top - 0.9, wide - SAMPLE - 4.0);
        typist.set(self.name(), PLAIN);
        typist
    }

    /// The sample and the words.
    fn marks(&self, left: f64, top: f64, wide: f64) -> Vec<Mark> {
        let middle = Spot::new(left + SAMPLE / 2.0, top - TALL / 2.0);
        let mut marks = self.sample(middle);
        marks.extend(self.words(left, top, wide).marks);
        marks
    }

    /// The sample about a spot.
    fn sample(&self, middle: Spot) -> Vec<Mark> {
        let half = Spot::new(SAMPLE / 2.0, 0.0);
        match self {
            Entry::Line(layer) => {
                vec![Mark::line(
                    middle.plus(half, -1.0),
                    middle.plus(half, 1.0),
                    pen_of(Some(layer)),
                )]
            }
            Entry::Area(layer, fill) => {
                let corner = |way: f64| {
                    Point::new(
                        Length::from_base(way * SAMPLE / 2e3),
                        Length::from_base(way * TALL / 2.6e3),
                    )
                };
                let area = Figure::rectangle(corner(-1.0), corner(1.0), *fill);
                figure_marks(
                    &area,
                    &Stand {
                        at: middle,
                        turn: 0.0,
                        times: 1.0,
                    },
                    pen_of(Some(layer)),
                )
            }
            Entry::Symbol(symbol, pen) => symbol_sample(symbol, *pen, middle),
        }
    }
}

/// A symbol, reduced if it must be, centered on a spot.
fn symbol_sample(symbol: &Symbol, pen: Pen, middle: Spot) -> Vec<Mark> {
    let pen = Pen {
        width: pen.width.min(0.35),
        pattern: LinePattern::Unbroken,
        ..pen
    };
    let at = |times: f64, at: Spot| {
        symbol_marks(
            symbol,
            Stand {
                at,
                turn: 0.0,
                times,
            },
            pen,
        )
    };
    let Some(patch) = patch_around(&at(1.0, Spot::new(0.0, 0.0))) else {
        return Vec::new();
    };
    let wide = SAMPLE / (patch.half_width * 2.0).max(1e-9);
    let tall = TALL / (patch.half_height * 2.0).max(1e-9);
    let times = wide.min(tall).min(1.0);
    at(times, middle.plus(patch.center, -times))
}
