//! Plain geometry: lines, paths, areas, circles and arcs.

use crate::{Ink, Point};
use quantity::{Angle, Length, Quantity};

/// A piece of geometry, on the site in a scene or on the paper in a symbol.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure {
    /// A straight line.
    Line {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
    },
    /// An open run of straight lines.
    Path {
        /// The corners in order.
        points: Vec<Point>,
    },
    /// A closed outline.
    Area {
        /// The corners in order; the last is joined to the first.
        points: Vec<Point>,
        /// What fills it.
        fill: Fill,
    },
    /// A full circle.
    Circle {
        /// Its center.
        center: Point,
        /// Its radius, above zero.
        radius: Length,
        /// What fills it.
        fill: Fill,
    },
    /// A part of a circle.
    Arc {
        /// Its center.
        center: Point,
        /// Its radius, above zero.
        radius: Length,
        /// Direction of its beginning, counter-clockwise from +x.
        start: Angle,
        /// How far it goes from there, counter-clockwise when positive; up to a full turn.
        sweep: Angle,
    },
}

impl Figure {
    /// A straight line.
    pub fn line(from: Point, to: Point) -> Self {
        Figure::Line { from, to }
    }

    /// An open run of straight lines.
    pub fn path(points: impl Into<Vec<Point>>) -> Self {
        Figure::Path {
            points: points.into(),
        }
    }

    /// A closed outline and what fills it.
    pub fn area(points: impl Into<Vec<Point>>, fill: Fill) -> Self {
        Figure::Area {
            points: points.into(),
            fill,
        }
    }

    /// An upright rectangle between two opposite corners.
    pub fn rectangle(one: Point, opposite: Point, fill: Fill) -> Self {
        let corners = [
            one,
            Point::new(opposite.x, one.y),
            opposite,
            Point::new(one.x, opposite.y),
        ];
        Figure::area(corners, fill)
    }

    /// A full circle and what fills it.
    pub fn circle(center: Point, radius: Length, fill: Fill) -> Self {
        Figure::Circle {
            center,
            radius,
            fill,
        }
    }

    /// A part of a circle, counter-clockwise from `start` by `sweep`.
    pub fn arc(center: Point, radius: Length, start: Angle, sweep: Angle) -> Self {
        Figure::Arc {
            center,
            radius,
            start,
            sweep,
        }
    }

    /// Every number that the figure is made of, in coherent SI units, for checking that all are finite.
    pub(crate) fn numbers(&self) -> Vec<f64> {
        let of = |point: &Point| [point.x.base(), point.y.base()];
        match self {
            Figure::Line { from, to } => [of(from), of(to)].concat(),
            Figure::Path { points } | Figure::Area { points, .. } => {
                points.iter().flat_map(of).collect()
            }
            Figure::Circle { center, radius, .. } => {
                vec![center.x.base(), center.y.base(), radius.base()]
            }
            Figure::Arc {
                center,
                radius,
                start,
                sweep,
            } => {
                vec![
                    center.x.base(),
                    center.y.base(),
                    radius.base(),
                    start.base(),
                    sweep.base(),
                ]
            }
        }
    }
}

/// What fills a closed outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fill {
    /// Nothing: what lies beneath shows.
    Open,
    /// An even tone.
    Solid(Ink),
    /// Slanted lines, such as for a cut section or for what is not known.
    Hatched(Hatch),
}

/// Evenly spaced slanted lines, in the ink of the layer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hatch {
    /// Direction of the lines, counter-clockwise from +x.
    pub angle: Angle,
    /// Distance between lines on paper; less than 0.6 mm is drawn as 0.6 mm.
    pub spacing: Length,
    /// A second set of lines square to the first.
    pub crossed: bool,
}

impl Hatch {
    /// Lines at 45°, 1.5 mm apart: a cut through solid material.
    pub fn cut() -> Self {
        Self {
            angle: Angle::from_base(std::f64::consts::FRAC_PI_4),
            spacing: Length::from_base(0.0015),
            crossed: false,
        }
    }

    /// Lines at 60°, 3.5 mm apart: a cut through something large, on which other things are drawn.
    pub fn wide() -> Self {
        Self {
            angle: Angle::from_base(std::f64::consts::FRAC_PI_3),
            spacing: Length::from_base(0.0035),
            crossed: false,
        }
    }

    /// Crossed lines at 45°, 2 mm apart: not known.
    pub fn unknown() -> Self {
        Self {
            angle: Angle::from_base(std::f64::consts::FRAC_PI_4),
            spacing: Length::from_base(0.002),
            crossed: true,
        }
    }
}
