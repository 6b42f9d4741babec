//! Puts lines, symbols and words of the diagram on its scene, in millimeters of paper.

use super::layers::Layers;
use super::words::height;
use draw::{Anchor, Figure, LayerId, Placement, Point, Scene, Symbol, Text};
use quantity::{Length, Quantity as _};

/// A point on the paper (mm).
pub(crate) fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0))
}

/// What draws.
pub(super) struct Pen<'a> {
    pub(super) scene: &'a mut Scene,
    pub(super) layers: Layers,
}

impl Pen<'_> {
    pub(super) fn line(&mut self, layer: LayerId, from: (f64, f64), to: (f64, f64)) {
        let line = Figure::line(at(from.0, from.1), at(to.0, to.1));
        self.scene.add(layer, line);
    }

    pub(super) fn symbol(&mut self, title: &str, symbol: Symbol, x: f64, y: f64) {
        let placement = Placement::new(symbol, at(x, y));
        self.scene.add_titled(self.layers.symbols, title, placement);
    }

    pub(super) fn mark(&mut self, layer: LayerId, symbol: Symbol, x: f64, y: f64) {
        self.scene.add(layer, Placement::new(symbol, at(x, y)));
    }

    /// Words that begin at a point on their base line.
    pub(super) fn begin(&mut self, layer: LayerId, words: &str, size: f64, (x, y): (f64, f64)) {
        self.words(layer, (words, size), (x, y), Anchor::Start);
    }

    /// Words that end at a point on their base line.
    pub(super) fn end(&mut self, words: &str, size: f64, (x, y): (f64, f64)) {
        self.words(self.layers.words, (words, size), (x, y), Anchor::End);
    }

    fn words(&mut self, layer: LayerId, words: (&str, f64), place: (f64, f64), anchor: Anchor) {
        write(self.scene, layer, words, place, anchor);
    }
}

/// Writes words of a height (mm) whose base line begins, has its middle or ends at a point on the paper (mm).
pub(crate) fn write(
    scene: &mut Scene,
    layer: LayerId,
    (words, size): (&str, f64),
    (x, y): (f64, f64),
    anchor: Anchor,
) {
    let text = Text::new(at(x, y), words)
        .anchor(anchor)
        .height(height(size));
    scene.add(layer, text);
}
