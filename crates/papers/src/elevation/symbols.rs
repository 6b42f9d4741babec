//! Symbols of running gear, a few millimeters across whatever the scale.

use draw::{Figure, Fill, Ink, Point, Symbol};
use quantity::{Length, Quantity as _};

/// A point on the paper, in millimeters from the symbol's origin.
fn mm(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0))
}

fn disc(radius: f64, fill: Fill) -> Figure {
    Figure::circle(mm(0.0, 0.0), Length::from_base(radius / 1000.0), fill)
}

/// A guide roller or block.
pub(super) fn guide() -> Symbol {
    let paper = Fill::Solid(Ink::Paper);
    let body = Figure::rectangle(mm(-0.9, -1.4), mm(0.9, 1.4), paper);
    Symbol::new("guide", [body, Figure::line(mm(0.0, -2.0), mm(0.0, 2.0))])
}

/// A hinge.
pub(super) fn hinge() -> Symbol {
    let body = Figure::rectangle(mm(-0.7, -1.3), mm(0.7, 1.3), Fill::Solid(Ink::Black));
    Symbol::new("hinge", [body])
}

/// A level pivot.
pub(super) fn pivot() -> Symbol {
    let ring = disc(1.5, Fill::Solid(Ink::Paper));
    let cross = [
        Figure::line(mm(-2.2, 0.0), mm(2.2, 0.0)),
        Figure::line(mm(0.0, -2.2), mm(0.0, 2.2)),
    ];
    Symbol::new(
        "pivot",
        std::iter::once(ring).chain(cross).collect::<Vec<_>>(),
    )
}

/// A wheel or a trolley whose diameter is not given.
pub(super) fn wheel() -> Symbol {
    Symbol::new(
        "wheel, size not given",
        [
            disc(1.6, Fill::Solid(Ink::Paper)),
            disc(0.3, Fill::Solid(Ink::Black)),
        ],
    )
}

/// A counterweight.
pub(super) fn counterweight() -> Symbol {
    Symbol::new(
        "counterweight",
        [
            disc(2.0, Fill::Solid(Ink::Tint)),
            disc(0.5, Fill::Solid(Ink::Black)),
        ],
    )
}

/// A ground track, cut across.
pub(super) fn track() -> Symbol {
    let rail = Figure::area(
        [mm(-1.2, 0.0), mm(1.2, 0.0), mm(0.0, 1.1)],
        Fill::Solid(Ink::Black),
    );
    Symbol::new("ground track", [rail])
}

/// A level of the ground: a point under the surface, and its number.
pub(super) fn level(words: &str) -> Symbol {
    let mark = Figure::area([mm(-1.0, -2.2), mm(1.0, -2.2), mm(0.0, -0.5)], Fill::Open);
    let height = Length::from_base(0.0022);
    Symbol::new("level of the ground", [mark]).lettered(mm(0.0, -4.4), words, height)
}
