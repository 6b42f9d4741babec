//! A point of a drawing, and the few ways to come from one point to the next.

use quantity::{Angle, Length, Quantity};

/// A point in site coordinates, or, inside a symbol, a point on the paper about the symbol's origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Distance to the right of the origin, on the site along the closed leaf (m).
    pub x: Length,
    /// Distance up the sheet from the origin, on the site into the property (m).
    pub y: Length,
}

impl Point {
    /// The point at these two distances from the origin.
    pub fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The origin.
    pub fn origin() -> Self {
        Self::from_base(0.0, 0.0)
    }

    /// This point moved right by `right` and up the sheet by `up`.
    #[must_use]
    pub fn moved(self, right: Length, up: Length) -> Self {
        Self::new(self.x + right, self.y + up)
    }

    /// The point at a distance from this one in a direction, counter-clockwise from +x.
    #[must_use]
    pub fn toward(self, direction: Angle, distance: Length) -> Self {
        let (sine, cosine) = direction.base().sin_cos();
        self.moved(distance * cosine, distance * sine)
    }

    /// This point turned about another, counter-clockwise.
    #[must_use]
    pub fn turned(self, about: Point, by: Angle) -> Self {
        let (sine, cosine) = by.base().sin_cos();
        let (dx, dy) = (self.x - about.x, self.y - about.y);
        about.moved(dx * cosine - dy * sine, dx * sine + dy * cosine)
    }

    /// Halfway between this point and another.
    #[must_use]
    pub fn middle(self, other: Point) -> Self {
        Self::new((self.x + other.x) / 2.0, (self.y + other.y) / 2.0)
    }

    /// The straight distance to another point.
    pub fn distance(self, other: Point) -> Length {
        Length::from_base((self.x - other.x).base().hypot((self.y - other.y).base()))
    }

    /// The direction to another point, counter-clockwise from +x, from −180° to 180°; 0 when both are one point.
    pub fn direction_to(self, other: Point) -> Angle {
        Angle::from_base((other.y - self.y).base().atan2((other.x - self.x).base()))
    }

    /// Points along an arc, both ends included, close enough together to draw as an arc at any scale.
    pub fn along_arc(center: Point, radius: Length, start: Angle, sweep: Angle) -> Vec<Point> {
        let steps = 90_u32;
        (0..=steps)
            .map(|step| center.toward(start + sweep * (f64::from(step) / f64::from(steps)), radius))
            .collect()
    }

    /// The point at these numbers of meters.
    pub(crate) fn from_base(x: f64, y: f64) -> Self {
        Self::new(Length::from_base(x), Length::from_base(y))
    }
}
