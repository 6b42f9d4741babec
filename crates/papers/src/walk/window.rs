//! The part of a view that is shown: what lies beyond it is cut off.

use super::moments::Seen;
use draw::Point;
use quantity::{Length, Quantity as _};
use sim::walk::Spot;

/// The part of a view that is shown (m).
#[derive(Debug, Clone, Copy)]
pub(crate) struct Window {
    pub(super) left: f64,
    pub(super) low: f64,
    pub(super) right: f64,
    pub(super) high: f64,
}

impl Window {
    /// Whether a body is seen in it.
    pub(super) fn sees(&self, seen: &Seen) -> bool {
        seen.body.iter().any(|part| {
            let (x, y) = part.middle();
            (self.left..self.right).contains(&x) && (self.low..self.high).contains(&y)
        })
    }

    pub(super) fn width(&self) -> f64 {
        self.right - self.left
    }

    pub(super) fn height(&self) -> f64 {
        self.high - self.low
    }

    /// The part of a line that lies within.
    pub(super) fn line(&self, from: Point, to: Point) -> Option<(Point, Point)> {
        let (x, y) = (from.x.base(), from.y.base());
        let (dx, dy) = (to.x.base() - x, to.y.base() - y);
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for (start, step, low, high) in
            [(x, dx, self.left, self.right), (y, dy, self.low, self.high)]
        {
            if step.abs() < 1e-12 {
                if start < low || start > high {
                    return None;
                }
                continue;
            }
            let (one, other) = ((low - start) / step, (high - start) / step);
            first = first.max(one.min(other));
            last = last.min(one.max(other));
        }
        (first < last).then(|| {
            (
                at(x + first * dx, y + first * dy),
                at(x + last * dx, y + last * dy),
            )
        })
    }

    /// The part of an outline that lies within.
    pub(super) fn outline(&self, corners: &[Point]) -> Vec<Point> {
        let mut corners: Vec<(f64, f64)> = corners
            .iter()
            .map(|corner| (corner.x.base(), corner.y.base()))
            .collect();
        corners = kept(&corners, |(x, _)| x - self.left);
        corners = kept(&corners, |(x, _)| self.right - x);
        corners = kept(&corners, |(_, y)| y - self.low);
        corners = kept(&corners, |(_, y)| self.high - y);
        corners.into_iter().map(|(x, y)| at(x, y)).collect()
    }
}

/// The part of an outline on the side of a line where a measure is not below zero.
fn kept(corners: &[(f64, f64)], measure: impl Fn((f64, f64)) -> f64) -> Vec<(f64, f64)> {
    let mut found = Vec::new();
    for (index, corner) in corners.iter().enumerate() {
        let next = corners[(index + 1) % corners.len()];
        let (here, there) = (measure(*corner), measure(next));
        if here >= 0.0 {
            found.push(*corner);
        }
        if (here < 0.0) != (there < 0.0) {
            let share = here / (here - there);
            found.push((
                corner.0 + share * (next.0 - corner.0),
                corner.1 + share * (next.1 - corner.1),
            ));
        }
    }
    found
}

/// A place in plain numbers.
pub(super) fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}

/// A place of a walk.
pub(super) fn point(spot: Spot) -> Point {
    Point::new(spot.x, spot.y)
}
