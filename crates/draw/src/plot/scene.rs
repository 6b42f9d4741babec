//! A plot as a scene on paper.

use super::axis::Axis;
use super::chart::{Chart, Curve};
use super::{Part, Plot};
use crate::{
    Anchor, Figure, Fill, Ink, Layer, LayerId, LinePattern, LineWeight, Note, Placement, Point,
    Scene, Symbol, Text, TextHeight,
};
use quantity::{Angle, Length, Quantity, UnitSystem};

/// Width and height of the room between the axes (mm).
const ROOM: (f64, f64) = (270.0, 120.0);
/// Length of a tick (mm).
const TICK: f64 = 1.8;
/// Height of the numbers beside the axes (mm).
const NUMBERS: f64 = 2.2;
/// Radius of a marked point (mm).
const DOT: f64 = 1.1;
/// Height of the row of named stretches over the plot (mm).
const ROW: f64 = 5.0;

/// A point on the paper (mm).
fn at(x: f64, y: f64) -> Point {
    Point::from_base(x / 1000.0, y / 1000.0)
}

/// The layers that every plot has.
struct Layers {
    grid: LayerId,
    axes: LayerId,
    points: LayerId,
    words: LayerId,
}

impl<X: Quantity, Y: Quantity> Plot<X, Y> {
    /// The plot as a scene in the units of a site; lay it out without scale at full size.
    pub fn scene(&self, units: UnitSystem) -> Scene {
        self.chart(units).scene()
    }
}

impl Chart {
    /// The chart as a scene on paper; lay it out without scale at full size.
    pub fn scene(&self) -> Scene {
        let mut scene =
            Scene::new(self.title.as_str(), self.units).describe(self.description.as_str());
        scene.remarks.clone_from(&self.remarks);
        let layers = layers(&mut scene);
        let axes = Axes {
            across: &self.across,
            up: &self.up,
        };
        axes.draw(&mut scene, &layers);
        for curve in &self.curves {
            axes.draw_curve(&mut scene, curve);
        }
        self.draw_spans(&mut scene, &layers, &axes);
        for mark in &self.marks {
            let center = axes.point(mark.at);
            let dot = Figure::circle(at(0.0, 0.0), length(DOT), Fill::Solid(Ink::Paper));
            let dot = Placement::new(Symbol::new("marked point", [dot]), center);
            scene.add_titled(layers.points, mark.words.replace('\n', " "), dot);
            let toward = Angle::from_base(std::f64::consts::FRAC_PI_4);
            scene.add(layers.words, Note::new(center, mark.words.as_str(), toward));
        }
        scene
    }

    /// The named stretches as a row over the plot, with a fine line down at each end.
    fn draw_spans(&self, scene: &mut Scene, layers: &Layers, axes: &Axes<'_>) {
        for span in &self.spans {
            let (from, to) = (axes.x(span.from), axes.x(span.to));
            for x in [from, to] {
                let line = Figure::line(at(x, 0.0), at(x, ROOM.1 + ROW));
                scene.add(layers.axes, line);
            }
            let middle = at(f64::midpoint(from, to), ROOM.1 + ROW * 0.35);
            scene.add(
                layers.words,
                Text::new(middle, span.name.as_str()).height(small()),
            );
        }
    }
}

fn layers(scene: &mut Scene) -> Layers {
    let grid = scene.layer(
        Layer::new("grid", LineWeight::Fine)
            .ink(Ink::Gray)
            .pattern(LinePattern::Dotted),
    );
    let axes = scene.layer(Layer::new("axes", LineWeight::Fine));
    let points = scene.layer(Layer::new("marked points", LineWeight::Medium));
    let words = scene.layer(Layer::new("words", LineWeight::Fine));
    Layers {
        grid,
        axes,
        points,
        words,
    }
}

fn length(millimeters: f64) -> Length {
    Length::from_base(millimeters / 1000.0)
}

fn small() -> TextHeight {
    TextHeight::Paper(length(NUMBERS))
}

/// Both axes of a plot.
struct Axes<'c> {
    across: &'c Axis,
    up: &'c Axis,
}

impl Axes<'_> {
    fn x(&self, value: f64) -> f64 {
        self.across.share(value) * ROOM.0
    }

    fn point(&self, (x, y): (f64, f64)) -> Point {
        at(self.x(x), self.up.share(y) * ROOM.1)
    }

    /// Axes, ticks with their numbers, grid, and what is measured along each.
    fn draw(&self, scene: &mut Scene, layers: &Layers) {
        for (share, number) in self.across.ticks() {
            let x = share * ROOM.0;
            scene.add(layers.grid, Figure::line(at(x, 0.0), at(x, ROOM.1)));
            scene.add(layers.axes, Figure::line(at(x, -TICK), at(x, 0.0)));
            let words = Text::new(at(x, -TICK - 1.2 - NUMBERS), number).height(small());
            scene.add(layers.words, words);
        }
        for (share, number) in self.up.ticks() {
            let y = share * ROOM.1;
            scene.add(layers.grid, Figure::line(at(0.0, y), at(ROOM.0, y)));
            scene.add(layers.axes, Figure::line(at(-TICK, y), at(0.0, y)));
            let words = Text::new(at(-TICK - 1.0, y - NUMBERS / 2.0), number);
            scene.add(layers.words, words.height(small()).anchor(Anchor::End));
        }
        if let Some(share) = self.up.zero() {
            let y = share * ROOM.1;
            scene.add(layers.axes, Figure::line(at(0.0, y), at(ROOM.0, y)));
        }
        let frame = Figure::rectangle(at(0.0, 0.0), at(ROOM.0, ROOM.1), Fill::Open);
        scene.add(layers.axes, frame);
        let below = Text::new(at(ROOM.0 / 2.0, -13.0), self.across.named());
        scene.add(layers.words, below);
        let beside = Text::new(at(-18.0, ROOM.1 / 2.0), self.up.named());
        let upright = Angle::from_base(std::f64::consts::FRAC_PI_2);
        scene.add(layers.words, beside.rotation(upright));
    }

    fn draw_curve(&self, scene: &mut Scene, curve: &Curve) {
        let weight = match curve.part {
            Part::Demand | Part::Capacity => LineWeight::Heavy,
            Part::OtherDemand | Part::Limit | Part::Aside => LineWeight::Medium,
        };
        let layer = Layer::new(curve.name.as_str(), weight).pattern(curve.part.pattern());
        let layer = scene.layer(layer);
        let way: Vec<Point> = curve
            .points
            .iter()
            .map(|point| self.point(*point))
            .collect();
        if way.len() > 1 {
            scene.add_titled(layer, curve.name.as_str(), Figure::path(way));
        }
    }
}
