//! Symbols of the single-line diagram, as they are common to IEC 60617 and IEEE 315: shapes from memory of the standards, in
//! our own drawing. Each is connected at its left, at −5 mm, and at its right, at 5 mm, where it has two connections.

use draw::{Figure, Fill, Ink, Point, Symbol};
use quantity::{Length, Quantity as _};
use std::f64::consts::PI;

fn length(millimeters: f64) -> Length {
    Length::from_base(millimeters / 1000.0)
}

fn at(x: f64, y: f64) -> Point {
    Point::new(length(x), length(y))
}

fn line(from: (f64, f64), to: (f64, f64)) -> Figure {
    Figure::line(at(from.0, from.1), at(to.0, to.1))
}

fn body(half_width: f64, half_height: f64) -> Figure {
    let paper = Fill::Solid(Ink::Paper);
    Figure::rectangle(
        at(-half_width, -half_height),
        at(half_width, half_height),
        paper,
    )
}

fn ring(radius: f64) -> Figure {
    Figure::circle(at(0.0, 0.0), length(radius), Fill::Solid(Ink::Paper))
}

/// A sine about a point, this wide.
fn sine(x: f64, y: f64, wide: f64) -> Figure {
    let points: Vec<Point> = (0..=24_u32)
        .map(|step| {
            let share = f64::from(step) / 24.0;
            at(
                x + (share - 0.5) * wide,
                y + (share * 2.0 * PI).sin() * wide / 4.0,
            )
        })
        .collect();
    Figure::path(points)
}

/// Two level strokes about a point, this wide.
fn level(x: f64, y: f64, wide: f64) -> [Figure; 2] {
    let stroke = |up: f64| line((x - wide / 2.0, y + up), (x + wide / 2.0, y + up));
    [stroke(0.5), stroke(-0.5)]
}

/// The mains.
pub(super) fn mains() -> Symbol {
    Symbol::new("mains circuit", [ring(4.0), sine(0.0, 0.0, 5.0)])
}

/// A breaker: a switch with a cross at its fixed contact.
pub(super) fn breaker() -> Symbol {
    let figures = [
        line((-5.0, 0.0), (-2.5, 0.0)),
        line((2.5, 0.0), (5.0, 0.0)),
        line((-2.5, 0.0), (2.2, 2.0)),
        line((1.7, -0.8), (3.3, 0.8)),
        line((1.7, 0.8), (3.3, -0.8)),
    ];
    Symbol::new("breaker", figures)
}

/// A disconnect: a switch with a stroke across at its fixed contact.
pub(super) fn disconnect() -> Symbol {
    let figures = [
        line((-5.0, 0.0), (-2.5, 0.0)),
        line((2.5, 0.0), (5.0, 0.0)),
        line((-2.5, 0.0), (2.2, 2.0)),
        line((2.5, -1.0), (2.5, 1.0)),
    ];
    Symbol::new("disconnect", figures)
}

/// What comes in and what goes out of a supply.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Flow {
    Alternating,
    Direct,
}

/// A supply: its input over the diagonal, its output under it.
pub(super) fn converter(name: &str, input: Flow, output: Flow) -> Symbol {
    let mut figures = vec![body(4.0, 4.0), line((-4.0, -4.0), (4.0, 4.0))];
    for (flow, x, y) in [(input, -1.7, 1.9), (output, 1.7, -1.9)] {
        match flow {
            Flow::Alternating => figures.push(sine(x, y, 2.8)),
            Flow::Direct => figures.extend(level(x, y, 2.6)),
        }
    }
    Symbol::new(name, figures)
}

/// A battery: two cells, the long stroke of each positive.
pub(super) fn battery() -> Symbol {
    let figures = [
        line((-1.5, -2.5), (-1.5, 2.5)),
        line((-0.5, -1.2), (-0.5, 1.2)),
        line((0.5, -2.5), (0.5, 2.5)),
        line((1.5, -1.2), (1.5, 1.2)),
        line((1.5, 0.0), (5.0, 0.0)),
    ];
    Symbol::new("battery", figures)
}

/// A solar panel: a rectangle with light upon it.
pub(super) fn panel() -> Symbol {
    let figures = [
        body(3.0, 1.8),
        line((-3.0, 1.8), (-1.2, 0.0)),
        line((-3.0, -1.8), (-1.2, 0.0)),
        line((3.0, 0.0), (5.0, 0.0)),
    ];
    Symbol::new("solar panel", figures)
}

/// A gate operator: a motor.
pub(super) fn motor() -> Symbol {
    Symbol::new("gate operator", [ring(3.0)]).lettered(at(0.0, 0.0), "M", length(2.4))
}

/// A lock: its coil.
pub(super) fn coil() -> Symbol {
    Symbol::new(
        "lock or release",
        [body(2.2, 2.6), line((-2.2, -2.6), (2.2, 2.6))],
    )
}

/// A heater: a body with bars across.
pub(super) fn heater() -> Symbol {
    let bar = |x| line((x, -1.3), (x, 1.3));
    let figures = [body(2.2, 1.3), bar(-1.1), bar(0.0), bar(1.1)];
    Symbol::new("heater", figures)
}

/// A lamp: a circle with a cross.
pub(super) fn lamp() -> Symbol {
    let arm = 2.5 * std::f64::consts::FRAC_1_SQRT_2;
    let figures = [
        ring(2.5),
        line((-arm, -arm), (arm, arm)),
        line((-arm, arm), (arm, -arm)),
    ];
    Symbol::new("light", figures)
}

/// Anything with electronics.
pub(super) fn electronics() -> Symbol {
    Symbol::new("electronics", [body(2.8, 2.2)])
}

/// A line that comes from, or goes to, another place of the diagram.
pub(super) fn flag() -> Symbol {
    let corners = [
        at(-5.0, 1.8),
        at(1.5, 1.8),
        at(5.0, 0.0),
        at(1.5, -1.8),
        at(-5.0, -1.8),
    ];
    Symbol::new(
        "goes on elsewhere in the diagram",
        [Figure::area(corners, Fill::Solid(Ink::Paper))],
    )
}

/// Not known: crossed lines.
pub(super) fn unknown() -> Symbol {
    let hatch = Fill::Hatched(draw::Hatch {
        spacing: length(1.1),
        ..draw::Hatch::unknown()
    });
    let area = Figure::rectangle(at(-3.0, -1.3), at(3.0, 1.3), hatch);
    Symbol::new("not known: facts are missing", [area])
}

/// Fails: a cross in a box.
pub(super) fn fails() -> Symbol {
    let figures = [
        body(1.4, 1.4),
        line((-0.9, -0.9), (0.9, 0.9)),
        line((-0.9, 0.9), (0.9, -0.9)),
    ];
    Symbol::new("too low, or above its rating: fails", figures)
}

/// Not sure: a box with its lower half filled.
pub(super) fn not_sure() -> Symbol {
    let half = [at(-1.4, -1.4), at(1.4, 1.4), at(1.4, -1.4)];
    Symbol::new(
        "not sure: too low at the bad end of tolerances",
        [body(1.4, 1.4), Figure::area(half, Fill::Solid(Ink::Black))],
    )
}
