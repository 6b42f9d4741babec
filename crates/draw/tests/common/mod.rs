//! A small plan of our own invention: a 20-ft opening between two posts.
#![allow(dead_code, reason = "each test file uses its own part")]

use draw::{
    Dimension, DimensionLine, Figure, Fill, Hatch, Ink, Label, Layer, LinePattern, LineWeight,
    North, Note, Orientation, Paper, Placement, Point, Scene, Sheet, Symbol, Text, TitleBlock,
};
use quantity::units::angle::degree;
use quantity::units::length::{foot, millimeter};
use quantity::{Angle, Length, UnitSystem};

/// Feet.
pub(crate) fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

/// Millimeters.
pub(crate) fn millimeters(number: f64) -> Length {
    Length::new::<millimeter>(number)
}

/// Degrees.
pub(crate) fn degrees(number: f64) -> Angle {
    Angle::new::<degree>(number)
}

/// A point in feet.
pub(crate) fn at(x: f64, y: f64) -> Point {
    Point::new(feet(x), feet(y))
}

/// A lamp as a circle with a cross, in paper millimeters.
fn lamp() -> Symbol {
    let mm = |x: f64, y: f64| Point::new(millimeters(x), millimeters(y));
    Symbol::new(
        "lamp",
        vec![
            Figure::circle(mm(0.0, 0.0), millimeters(2.0), Fill::Solid(Ink::Paper)),
            Figure::line(mm(-1.41, -1.41), mm(1.41, 1.41)),
            Figure::line(mm(-1.41, 1.41), mm(1.41, -1.41)),
        ],
    )
}

/// A junction box as a lettered square, in paper millimeters.
fn box_symbol() -> Symbol {
    let mm = |x: f64, y: f64| Point::new(millimeters(x), millimeters(y));
    let square = Figure::rectangle(mm(-2.2, -2.2), mm(2.2, 2.2), Fill::Solid(Ink::Paper));
    Symbol::new("junction box", vec![square]).lettered(mm(0.0, 0.0), "J", millimeters(2.2))
}

/// Posts, leaf, drive and buried conduit.
fn geometry(scene: &mut Scene) {
    let drive = scene.layer(Layer::new("edge of drive", LineWeight::Medium).ink(Ink::Gray));
    let posts = scene
        .layer(Layer::new("posts", LineWeight::Heavy).describe("Steel posts, cut at knee height."));
    let leaf = scene.layer(Layer::new("leaf, closed", LineWeight::Heavy));
    let swing =
        scene.layer(Layer::new("path of the leaf", LineWeight::Fine).pattern(LinePattern::Dotted));
    let buried =
        scene.layer(Layer::new("buried conduit", LineWeight::Medium).pattern(LinePattern::Dashed));
    let axis =
        scene.layer(Layer::new("center line", LineWeight::Fine).pattern(LinePattern::DashDot));
    for x in [1.0, 19.0] {
        scene.add(drive, Figure::path([at(x, -6.0), at(x, 24.0)]));
    }
    let steel = |x: f64| {
        Figure::rectangle(
            at(x - 0.25, -0.25),
            at(x + 0.25, 0.25),
            Fill::Hatched(Hatch::cut()),
        )
    };
    scene.add_titled(posts, "latch post, 6 in square", steel(-0.25));
    scene.add_titled(posts, "hinge post, 6 in square", steel(20.25));
    scene.add_titled(
        leaf,
        "leaf, closed",
        Figure::rectangle(at(0.3, -0.08), at(19.7, 0.08), Fill::Open),
    );
    scene.add(
        swing,
        Figure::arc(at(20.0, 0.0), feet(19.7), degrees(90.0), degrees(90.0)),
    );
    scene.add(
        buried,
        Figure::path([at(20.25, -1.5), at(-2.5, -1.5), at(-2.5, 6.0)]),
    );
    scene.add(axis, Figure::line(at(10.0, -7.0), at(10.0, 25.0)));
}

/// Dimensions, notes, labels and symbols.
fn words(scene: &mut Scene) {
    let dimensions = scene.layer(Layer::new("dimensions", LineWeight::Fine));
    let notes = scene.layer(Layer::new("notes", LineWeight::Fine));
    let devices = scene.layer(Layer::new("devices", LineWeight::Medium));
    let row = |number: f64| DimensionLine::Away(millimeters(number));
    let below = |number: f64| DimensionLine::Beyond(at(0.0, -6.0), millimeters(number));
    scene.add(
        dimensions,
        Dimension::horizontal([at(0.0, -0.25), at(20.0, -0.25)], below(-24.0)),
    );
    let chain = [
        at(-0.5, -0.25),
        at(0.0, -0.25),
        at(1.0, -6.0),
        at(19.0, -6.0),
        at(20.0, -0.25),
        at(20.5, -0.25),
    ];
    scene.add(dimensions, Dimension::horizontal(chain, below(-11.0)));
    scene.add(
        dimensions,
        Dimension::vertical([at(20.5, 0.0), at(20.5, 19.7)], row(10.0)),
    );
    scene.add(
        dimensions,
        Dimension::aligned(
            [at(20.0, 0.0), at(6.07, 13.93)],
            DimensionLine::Through(at(20.0, 0.0)),
        ),
    );
    scene.add(
        notes,
        Note::new(
            at(-0.25, 0.25),
            "Latch post,\n6 in square tube",
            degrees(135.0),
        ),
    );
    scene.add(
        notes,
        Note::new(at(20.25, 0.25), "Hinge post", degrees(45.0)),
    );
    scene.add(
        notes,
        Note::new(at(-2.5, 4.0), "1 in conduit,\n24 in deep", degrees(160.0)),
    );
    scene.add(notes, Text::new(at(10.0, 21.5), "PROPERTY"));
    scene.add(notes, Text::new(at(10.0, -4.6), "ROAD"));
    scene.add(devices, Placement::new(lamp(), at(-0.25, 1.4)));
    scene.add(devices, Placement::new(box_symbol(), at(-2.5, 6.6)));
    scene.add(devices, Label::new(at(-0.25, 1.4), "H1"));
    scene.add(devices, Label::new(at(-2.5, 6.6), "J1"));
}

/// The plan.
pub(crate) fn plan(units: UnitSystem) -> Scene {
    let mut scene = Scene::new("Plan of the entrance", units)
        .describe("A 20-ft opening between two posts, the leaf closed, with conduit and devices.");
    geometry(&mut scene);
    words(&mut scene);
    scene
}

/// A sheet for it.
pub(crate) fn sheet(paper: Paper, orientation: Orientation) -> Sheet {
    let north = North::Toward {
        direction: degrees(62.0),
        caption: "Leaf line bears 28°".to_owned(),
    };
    let words = TitleBlock {
        site: "Quarry Lane 7".to_owned(),
        date: "3 May 2031".to_owned(),
        sheet_number: "1 of 2".to_owned(),
        revision: "A".to_owned(),
        caution: "This drawing supports a competent person. Local codes and the authority having jurisdiction prevail. \
                  Structural, mains-electrical and life-safety work is for whoever is licensed for it."
            .to_owned(),
    };
    Sheet::new(paper, orientation, north, words)
}
