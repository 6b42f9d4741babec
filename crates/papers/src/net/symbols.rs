//! Symbols of the network and bus diagram, in our own drawing: boxes with what a device does inside. Each is 8 mm wide.

use crate::power::pen::at;
use draw::{Figure, Fill, Ink, Point, Symbol};
use quantity::{Length, Quantity as _};

fn line(from: (f64, f64), to: (f64, f64)) -> Figure {
    Figure::line(at(from.0, from.1), at(to.0, to.1))
}

fn path(points: &[(f64, f64)]) -> Figure {
    let points: Vec<Point> = points.iter().map(|(x, y)| at(*x, *y)).collect();
    Figure::path(points)
}

fn body(half_width: f64, half_height: f64) -> Figure {
    Figure::rectangle(
        at(-half_width, -half_height),
        at(half_width, half_height),
        Fill::Solid(Ink::Paper),
    )
}

fn ring(x: f64, y: f64, radius: f64) -> Figure {
    Figure::circle(
        at(x, y),
        Length::from_base(radius / 1000.0),
        Fill::Solid(Ink::Paper),
    )
}

/// An arrow whose point is at the second place.
fn arrow(from: (f64, f64), to: (f64, f64)) -> [Figure; 2] {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = dx.hypot(dy).max(0.1);
    let (ux, uy) = (dx / long, dy / long);
    let barb = |side: f64| (to.0 - ux - side * 0.6 * uy, to.1 - uy + side * 0.6 * ux);
    [line(from, to), path(&[barb(1.0), to, barb(-1.0)])]
}

/// A switch: a box with arrows both ways.
pub(super) fn switch() -> Symbol {
    let mut figures = vec![body(4.0, 3.0)];
    figures.extend(arrow((-2.8, 1.0), (2.8, 1.0)));
    figures.extend(arrow((2.8, -1.0), (-2.8, -1.0)));
    Symbol::new("network switch", figures)
}

/// A router: a ring with arrows in and out.
pub(super) fn router() -> Symbol {
    let mut figures = vec![ring(0.0, 0.0, 4.0)];
    figures.extend(arrow((-3.2, 0.0), (-0.8, 0.0)));
    figures.extend(arrow((3.2, 0.0), (0.8, 0.0)));
    figures.extend(arrow((0.0, 0.8), (0.0, 3.2)));
    figures.extend(arrow((0.0, -0.8), (0.0, -3.2)));
    Symbol::new("router", figures)
}

/// An injector: a box with a bolt.
pub(super) fn injector() -> Symbol {
    let bolt = path(&[(0.6, 2.2), (-1.0, 0.0), (0.8, 0.0), (-0.6, -2.2)]);
    Symbol::new("power injector", [body(4.0, 3.0), bolt])
}

/// An extender: a box with a triangle, as an amplifier has.
pub(super) fn extender() -> Symbol {
    let triangle = path(&[(-1.8, 2.0), (2.2, 0.0), (-1.8, -2.0), (-1.8, 2.0)]);
    Symbol::new("extender", [body(4.0, 3.0), triangle])
}

/// A camera: a housing and a lens.
pub(super) fn camera() -> Symbol {
    let lens = path(&[(1.6, 1.0), (4.0, 2.0), (4.0, -2.0), (1.6, -1.0)]);
    let housing = Figure::rectangle(at(-4.0, -2.0), at(1.6, 2.0), Fill::Solid(Ink::Paper));
    Symbol::new("camera", [housing, lens])
}

/// An intercom: a loudspeaker over a button.
pub(super) fn intercom() -> Symbol {
    let figures = [
        body(2.8, 3.4),
        line((-1.6, 2.2), (1.6, 2.2)),
        line((-1.6, 1.4), (1.6, 1.4)),
        line((-1.6, 0.6), (1.6, 0.6)),
        ring(0.0, -1.6, 0.9),
        line((-4.0, 0.0), (-2.8, 0.0)),
    ];
    Symbol::new("intercom", figures)
}

/// A recorder: a box with two reels.
pub(super) fn recorder() -> Symbol {
    let figures = [
        body(4.0, 2.6),
        ring(-1.7, 0.0, 1.3),
        ring(1.7, 0.0, 1.3),
        line((-1.7, -1.3), (1.7, -1.3)),
    ];
    Symbol::new("recorder", figures)
}

/// A radio: a mast with its fork.
pub(super) fn radio() -> Symbol {
    let figures = [
        body(4.0, 3.0),
        line((0.0, -2.2), (0.0, 2.2)),
        line((0.0, 0.2), (-1.8, 2.2)),
        line((0.0, 0.2), (1.8, 2.2)),
    ];
    Symbol::new("radio", figures)
}

/// Any other device with electronics.
pub(super) fn other() -> Symbol {
    Symbol::new("other device on the network", [body(4.0, 2.6)])
}

/// A reader: a card before its waves.
pub(super) fn reader() -> Symbol {
    let figures = [
        body(4.0, 3.0),
        Figure::rectangle(at(-2.8, -1.4), at(-0.2, 1.4), Fill::Open),
        path(&[(0.8, 1.0), (1.3, 0.0), (0.8, -1.0)]),
        path(&[(1.9, 1.8), (2.8, 0.0), (1.9, -1.8)]),
    ];
    Symbol::new("reader", figures)
}

/// A keypad: rows of keys.
pub(super) fn keypad() -> Symbol {
    let mut figures = vec![body(4.0, 3.4)];
    for row in [-1.9, 0.0, 1.9] {
        figures.extend([-2.0, 0.0, 2.0].map(|across| ring(across, row, 0.6)));
    }
    Symbol::new("keypad", figures)
}

/// Two wires that are joined.
pub(super) fn joined() -> Symbol {
    let dot = Figure::circle(
        at(0.0, 0.0),
        Length::from_base(0.000_5),
        Fill::Solid(Ink::Black),
    );
    Symbol::new("joined", [dot])
}

/// A resistor across a pair whose wires lie 6 mm apart.
pub(super) fn across() -> Symbol {
    let wires = [line((0.0, 3.0), (0.0, 1.8)), line((0.0, -1.8), (0.0, -3.0))];
    let mut figures = vec![body(0.5, 1.8)];
    figures.extend(wires);
    Symbol::new("resistor across the pair", figures)
}

/// A resistor from a wire of the pair to its side of the supply.
pub(super) fn bias() -> Symbol {
    Symbol::new("bias resistor", [body(0.5, 1.8)])
}

/// A line that goes on elsewhere in the diagram.
pub(super) fn onward() -> Symbol {
    let corners = [
        at(-4.0, 1.8),
        at(1.2, 1.8),
        at(4.0, 0.0),
        at(1.2, -1.8),
        at(-4.0, -1.8),
    ];
    Symbol::new(
        "goes on elsewhere in the diagram",
        [Figure::area(corners, Fill::Solid(Ink::Paper))],
    )
}
