//! A foundation seen from above.

use super::figure::Block;
use super::layers::Layers;
use super::pattern::{Outline, Pattern};
use super::standing::{Shape, Thing};
use super::words;
use crate::plan::gate::nominal;
use draw::{Figure, Fill, Ink, Label, Note, Placement, Point, Scene, Symbol};
use quantity::{Angle, Length, Quantity as _};

/// Direction in which the words on anchors stand (rad).
const LOWER_RIGHT: f64 = -0.6;

/// Direction in which the name of what has no known shape stands (rad).
const DOWNWARD: f64 = -1.9;

/// A length in meters.
pub(super) fn meters(length: f64) -> Length {
    Length::from_base(length)
}

/// Draws the plan about the origin.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, block: &Block<'_>) {
    draw_outline(scene, layers, block);
    for pattern in &block.patterns {
        draw_pattern(scene, layers, pattern);
    }
    for stub in &block.stubs {
        if let Some(radius) = stub.radius {
            let circle = Figure::circle(stub.at, radius, Fill::Solid(Ink::Tint));
            scene.add_titled(layers.anchors, format!("conduit {}", stub.name), circle);
        } else {
            draw_cross(scene, layers, stub.at, meters(0.02));
        }
        scene.add(layers.notes, Label::new(stub.at, stub.name.as_str()));
    }
    for thing in &block.things {
        draw_thing(scene, layers, thing);
    }
    let (length, width) = block.half;
    let corner = Point::new(meters(-length), meters(width));
    scene.add(layers.notes, Placement::new(directions(), corner));
}

fn draw_outline(scene: &mut Scene, layers: &Layers, block: &Block<'_>) {
    let (length, width) = block.half;
    let corner = |x: f64, y: f64| Point::new(meters(x), meters(y));
    let title = format!("edge of {}", block.foundation.id);
    if let Outline::Round { diameter } = block.outline {
        let circle = Figure::circle(Point::origin(), diameter / 2.0, Fill::Open);
        scene.add_titled(layers.concrete, title, circle);
        return;
    }
    if !block.shortened {
        let outline = Figure::rectangle(corner(-length, -width), corner(length, width), Fill::Open);
        scene.add_titled(layers.concrete, title, outline);
        return;
    }
    for side in [-width, width] {
        let edge = Figure::line(corner(-length, side), corner(length, side));
        scene.add_titled(layers.concrete, title.as_str(), edge);
    }
    for end in [-length, length] {
        let step = 0.2 * width;
        let broken = Figure::path([
            corner(end, -1.15 * width),
            corner(end, -step),
            corner(end - step, -0.4 * step),
            corner(end + step, 0.4 * step),
            corner(end, step),
            corner(end, 1.15 * width),
        ]);
        scene.add_titled(layers.dimensions, "drawn shortened", broken);
    }
}

fn draw_pattern(scene: &mut Scene, layers: &Layers, pattern: &Pattern<'_>) {
    if let Some((length, width)) = pattern.plate {
        let outline = Figure::rectangle(
            pattern.middle.moved(-length, -width),
            pattern.middle.moved(length, width),
            Fill::Open,
        );
        let title = format!("plate for {}", pattern.anchor.holds);
        scene.add_titled(layers.plate, title, outline);
    }
    let radius = nominal(pattern.anchor.diameter.as_ref()).map_or(meters(0.008), |it| it / 2.0);
    for at in &pattern.places {
        let figure = Figure::circle(*at, radius, Fill::Solid(Ink::Paper));
        let title = format!("anchor for {}", pattern.anchor.holds);
        scene.add_titled(layers.anchors, title, figure);
        draw_cross(scene, layers, *at, radius * 2.2);
    }
    let words = words::short(scene, pattern.anchor);
    let lower_right = |at: &&Point| at.x.base() - at.y.base();
    let named = pattern
        .places
        .iter()
        .max_by(|one, other| lower_right(one).total_cmp(&lower_right(other)));
    match named {
        Some(at) => {
            let toward = Angle::from_base(LOWER_RIGHT);
            scene.add(layers.notes, Note::new(*at, words, toward));
        }
        None => scene.add(layers.notes, Label::new(pattern.middle, words)),
    }
}

/// A cross on a middle.
pub(super) fn draw_cross(scene: &mut Scene, layers: &Layers, at: Point, arm: Length) {
    let zero = meters(0.0);
    for (x, y) in [(arm, zero), (zero, arm)] {
        let line = Figure::line(at.moved(-x, -y), at.moved(x, y));
        scene.add_titled(layers.dimensions, "middle", line);
    }
}

fn draw_thing(scene: &mut Scene, layers: &Layers, thing: &Thing) {
    let title = format!("{} {}", thing.what, thing.name);
    match thing.shape {
        Shape::Square(along, across) => {
            let half = (along / 2.0, across / 2.0);
            let figure = Figure::rectangle(
                thing.at.moved(-half.0, -half.1),
                thing.at.moved(half.0, half.1),
                Fill::Solid(Ink::Tint),
            );
            scene.add_titled(layers.standing, title.as_str(), figure);
        }
        Shape::Round(diameter) => {
            let figure = Figure::circle(thing.at, diameter / 2.0, Fill::Solid(Ink::Tint));
            scene.add_titled(layers.standing, title.as_str(), figure);
        }
        Shape::Unknown => {}
    }
    let words = match thing.what.split_once(", ") {
        Some((_, section)) => format!("{}\n{section}", thing.name),
        None => format!("{} ({})", thing.name, thing.what),
    };
    if matches!(thing.shape, Shape::Unknown) {
        let toward = Angle::from_base(DOWNWARD);
        scene.add(layers.notes, Note::new(thing.at, words, toward));
    } else {
        scene.add(layers.notes, Label::new(thing.at, words));
    }
}

/// Which way the property and the latching side lie, on the paper beside the upper left corner of the plan.
pub(crate) fn directions() -> Symbol {
    let mm = |x: f64, y: f64| Point::new(meters(x / 1000.0), meters(y / 1000.0));
    let black = Fill::Solid(Ink::Black);
    let figures = vec![
        Figure::line(mm(-8.0, 4.0), mm(-8.0, 11.0)),
        Figure::area([mm(-9.0, 11.0), mm(-7.0, 11.0), mm(-8.0, 14.0)], black),
        Figure::line(mm(-8.0, 4.0), mm(-15.0, 4.0)),
        Figure::area([mm(-15.0, 3.0), mm(-15.0, 5.0), mm(-18.0, 4.0)], black),
    ];
    let letters = meters(0.0019);
    Symbol::new("directions: property, latching side", figures)
        .lettered(mm(-8.0, 16.2), "property", letters)
        .lettered(mm(-19.0, 7.2), "latching side", letters)
}
