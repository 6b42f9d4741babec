//! Plain symbols for circuit diagrams, as they are common to IEC 60617 and IEEE 315.
//!
//! All are drawn in paper millimeters about their origin on a grid of 2.5 mm, their connections level: the left one at
//! −5 mm and the right one at 5 mm where there are two. Shapes are from memory of the standards.

use crate::{Figure, Fill, Ink, Point, Symbol};
use quantity::units::length::millimeter;
use quantity::{Angle, Length, Quantity};
use std::f64::consts::{FRAC_PI_2, PI};

/// A length on the paper.
fn mm(number: f64) -> Length {
    Length::new::<millimeter>(number)
}

/// A point on the paper.
fn at(x: f64, y: f64) -> Point {
    Point::new(mm(x), mm(y))
}

/// A straight line on the paper.
fn line(from: (f64, f64), to: (f64, f64)) -> Figure {
    Figure::line(at(from.0, from.1), at(to.0, to.1))
}

/// The two connections of a symbol whose body reaches this far (mm) to each side.
fn leads(body: f64) -> [Figure; 2] {
    [
        line((-5.0, 0.0), (-body, 0.0)),
        line((body, 0.0), (5.0, 0.0)),
    ]
}

/// A symbol of a body between its two connections.
fn between_leads(name: &str, reach: f64, body: impl IntoIterator<Item = Figure>) -> Symbol {
    let figures: Vec<Figure> = leads(reach).into_iter().chain(body).collect();
    Symbol::new(name, figures)
}

/// Resistor: a plain rectangle.
pub fn resistor() -> Symbol {
    between_leads(
        "resistor",
        2.5,
        [Figure::rectangle(at(-2.5, -1.0), at(2.5, 1.0), Fill::Open)],
    )
}

/// Fuse: a rectangle with the conductor through it.
pub fn fuse() -> Symbol {
    let body = Figure::rectangle(at(-2.5, -1.0), at(2.5, 1.0), Fill::Open);
    between_leads("fuse", 2.5, [body, line((-2.5, 0.0), (2.5, 0.0))])
}

/// Lamp: a circle with a cross.
pub fn lamp() -> Symbol {
    let arm = 2.5 * std::f64::consts::FRAC_1_SQRT_2;
    let cross = [
        line((-arm, -arm), (arm, arm)),
        line((-arm, arm), (arm, -arm)),
    ];
    let ring = Figure::circle(at(0.0, 0.0), mm(2.5), Fill::Solid(Ink::Paper));
    between_leads("lamp", 2.5, std::iter::once(ring).chain(cross))
}

/// Battery of one cell or more; the long plate, on the left, is positive.
pub fn battery() -> Symbol {
    between_leads(
        "battery",
        0.6,
        [
            line((-0.6, -2.5), (-0.6, 2.5)),
            line((0.6, -1.25), (0.6, 1.25)),
        ],
    )
}

/// Earth: three lines, each shorter than the one above, under a connection that comes from above.
pub fn earth() -> Symbol {
    let lines = [(0.0, 2.5), (-0.9, 1.6), (-1.8, 0.7)];
    let mut figures = vec![line((0.0, 2.5), (0.0, 0.0))];
    figures.extend(lines.map(|(y, half)| line((-half, y), (half, y))));
    Symbol::new("earth", figures)
}

/// Junction: conductors joined.
pub fn junction() -> Symbol {
    Symbol::new(
        "junction",
        vec![Figure::circle(
            at(0.0, 0.0),
            mm(0.6),
            Fill::Solid(Ink::Black),
        )],
    )
}

/// Terminal: an open ring that a conductor ends on.
pub fn terminal() -> Symbol {
    Symbol::new(
        "terminal",
        vec![Figure::circle(
            at(0.0, 0.0),
            mm(0.9),
            Fill::Solid(Ink::Paper),
        )],
    )
}

/// Plug and socket, mated: the solid pin enters the half ring from the left.
pub fn connector() -> Symbol {
    let pin = Figure::area(
        [at(-2.5, -0.4), at(0.0, -0.4), at(0.0, 0.4), at(-2.5, 0.4)],
        Fill::Solid(Ink::Black),
    );
    let socket = Figure::arc(
        at(0.0, 0.0),
        mm(1.5),
        Angle::from_base(-FRAC_PI_2),
        Angle::from_base(PI),
    );
    Symbol::new(
        "connector",
        vec![
            line((-5.0, 0.0), (-2.5, 0.0)),
            pin,
            socket,
            line((1.5, 0.0), (5.0, 0.0)),
        ],
    )
}

/// Normally open contact: the switch is shown at rest.
pub fn open_contact() -> Symbol {
    between_leads(
        "normally open contact",
        2.5,
        [line((-2.5, 0.0), (2.2, 2.0))],
    )
}

/// Normally closed contact: the switch is shown at rest.
pub fn closed_contact() -> Symbol {
    let figures = [
        line((-2.5, 0.0), (2.9, -1.9)),
        line((2.5, 0.0), (2.5, -2.4)),
    ];
    between_leads("normally closed contact", 2.5, figures)
}
