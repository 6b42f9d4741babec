//! The lengths on the plan of a foundation: edges, anchors, conduits.

use super::figure::Block;
use super::layers::Layers;
use super::pattern::{Outline, distinct};
use super::plan::meters;
use draw::{Dimension, DimensionLine, Point, Scene};
use quantity::{Length, Quantity as _};

/// From the plan to the first row of dimensions, and from row to row (mm).
const FIRST_ROW: f64 = 7.0;
const NEXT_ROW: f64 = 7.0;

/// Draws the dimensions of the plan: anchors under it and to its left, conduits over it and to its right.
pub(super) fn of_plan(scene: &mut Scene, layers: &Layers, block: &Block<'_>) {
    let anchors: Vec<Point> = block
        .patterns
        .iter()
        .flat_map(|pattern| pattern.places.iter().copied())
        .collect();
    let stubs: Vec<Point> = block.stubs.iter().map(|stub| stub.at).collect();
    let rows = Rows {
        scene,
        layers,
        block,
    };
    rows.draw(&anchors, &stubs);
}

/// What the rows are drawn with.
struct Rows<'a, 'b> {
    scene: &'a mut Scene,
    layers: &'a Layers,
    block: &'a Block<'b>,
}

impl Rows<'_, '_> {
    fn draw(mut self, anchors: &[Point], stubs: &[Point]) {
        let (length, width) = (meters(self.block.half.0), meters(self.block.half.1));
        let along = |points: &[Point]| chain(points.iter().map(|at| at.x), length);
        let across = |points: &[Point]| chain(points.iter().map(|at| at.y), width);
        let mut under = FIRST_ROW;
        let mut left = FIRST_ROW;
        if !anchors.is_empty() {
            self.level("anchors from the edges, along", &along(anchors), -under);
            self.upright("anchors from the edges, across", &across(anchors), -left);
            under += NEXT_ROW;
            left += NEXT_ROW;
        }
        self.whole(under, left);
        if !stubs.is_empty() {
            self.level("conduits from the edges, along", &along(stubs), FIRST_ROW);
            self.upright("conduits from the edges, across", &across(stubs), FIRST_ROW);
        }
    }

    /// Length and width, or the diameter.
    fn whole(&mut self, under: f64, left: f64) {
        let (length, width) = (meters(self.block.half.0), meters(self.block.half.1));
        let outline = self.block.outline;
        if let (true, Outline::Block { length: whole, .. }) = (self.block.shortened, outline) {
            let said = draw::dimension_text(whole, self.scene.units);
            let ends = [-length, length].map(|x| Point::new(x, -width));
            let dimension = Dimension::horizontal(ends, self.below(under))
                .words([format!("{said}, drawn shortened")]);
            self.scene
                .add_titled(self.layers.dimensions, "length", dimension);
        } else {
            let words = if matches!(outline, Outline::Round { .. }) {
                "diameter"
            } else {
                "length along the gate line"
            };
            self.level(words, &[-length, length], -under);
        }
        if matches!(outline, Outline::Block { .. }) {
            self.upright("width across the gate line", &[-width, width], -left);
        }
    }

    fn below(&self, away: f64) -> DimensionLine {
        let edge = Point::new(meters(0.0), meters(-self.block.half.1));
        DimensionLine::Beyond(edge, meters(-away / 1000.0))
    }

    /// A level chain, above the plan when positive (mm).
    fn level(&mut self, what: &str, places: &[Length], away: f64) {
        let edge = Point::new(meters(0.0), meters(self.block.half.1.copysign(away)));
        let points: Vec<Point> = places.iter().map(|x| Point::new(*x, edge.y)).collect();
        let line = DimensionLine::Beyond(edge, meters(away / 1000.0));
        self.scene.add_titled(
            self.layers.dimensions,
            what,
            Dimension::horizontal(points, line),
        );
    }

    /// An upright chain, to the right of the plan when positive (mm).
    fn upright(&mut self, what: &str, places: &[Length], away: f64) {
        let edge = Point::new(meters(self.block.half.0.copysign(away)), meters(0.0));
        let points: Vec<Point> = places.iter().map(|y| Point::new(edge.x, *y)).collect();
        let line = DimensionLine::Beyond(edge, meters(away / 1000.0));
        self.scene.add_titled(
            self.layers.dimensions,
            what,
            Dimension::vertical(points, line),
        );
    }
}

/// Both edges and every place between them.
fn chain(places: impl Iterator<Item = Length>, half: Length) -> Vec<Length> {
    let inside = places.filter(|place| place.base().abs() < half.base());
    distinct(inside.chain([-half, half]))
}
