//! The line that the middle of the front axle follows: straights joined by arcs.

use super::{Flat, along, apart, cross, dot, left};
use crate::walk::Spot;
use formula::OutOfReach;
use quantity::{Length, Quantity as _};

/// Corners that turn by less than this are driven without an arc of their own (rad).
const STRAIGHT: f64 = 1e-4;

/// A straight or an arc.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    pub(super) start: Flat,
    pub(super) direction: Flat,
    /// One over the radius; above zero to the left.
    pub(super) curvature: f64,
    pub(super) length: f64,
}

/// A line of straights and arcs without a kink.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    pub(super) pieces: Vec<Piece>,
}

impl Piece {
    /// Place and direction so far along it.
    pub(super) fn at(&self, way: f64) -> (Flat, Flat) {
        if self.curvature == 0.0 {
            return (along(self.start, self.direction, way), self.direction);
        }
        let turned = self.curvature * way;
        let direction = turn(self.direction, turned);
        let center = along(self.start, left(self.direction), 1.0 / self.curvature);
        (
            along(center, left(direction), -1.0 / self.curvature),
            direction,
        )
    }

    /// How far along it, and how far to its left, a point lies; held to its ends.
    fn beside(&self, point: Flat) -> (f64, f64) {
        if self.curvature == 0.0 {
            let off = (point.0 - self.start.0, point.1 - self.start.1);
            let way = dot(off, self.direction).clamp(0.0, self.length);
            return (way, apart(point, self.at(way).0));
        }
        let center = along(self.start, left(self.direction), 1.0 / self.curvature);
        let first = (self.start.0 - center.0, self.start.1 - center.1);
        let now = (point.0 - center.0, point.1 - center.1);
        let turned = cross(first, now).atan2(dot(first, now)) * self.curvature.signum();
        let way = (turned / self.curvature.abs()).clamp(0.0, self.length);
        (way, apart(point, self.at(way).0))
    }
}

fn turn(direction: Flat, by: f64) -> Flat {
    let (sine, cosine) = by.sin_cos();
    (
        direction.0 * cosine - direction.1 * sine,
        direction.1 * cosine + direction.0 * sine,
    )
}

impl Path {
    /// The line through corners, each rounded by an arc of its radius: one radius for each corner between the ends.
    ///
    /// # Errors
    ///
    /// Where corners coincide, turn back on themselves, or leave no room for their arcs.
    pub fn rounded(corners: &[Spot], radii: &[Length]) -> Result<Self, OutOfReach> {
        if corners.iter().any(|corner| !corner.is_finite()) {
            return Err(OutOfReach::new("corners", "each corner is at a place"));
        }
        let corners: Vec<Flat> = corners
            .iter()
            .map(|corner| (corner.x.base(), corner.y.base()))
            .collect();
        let radii: Vec<f64> = radii.iter().map(|radius| radius.base()).collect();
        Self::of(&corners, &radii)
    }

    pub(super) fn of(corners: &[Flat], radii: &[f64]) -> Result<Self, OutOfReach> {
        if corners.len() < 2 || radii.len() + 2 != corners.len() {
            return Err(OutOfReach::new(
                "corners",
                "a line has two ends, and one radius for each corner between them",
            ));
        }
        let legs: Vec<(Flat, f64)> = corners
            .windows(2)
            .map(|pair| leg(pair[0], pair[1]))
            .collect();
        if legs.iter().any(|(_, length)| *length < 1e-6) {
            return Err(OutOfReach::new("corners", "two corners are at one place"));
        }
        let mut pieces = Vec::with_capacity(2 * legs.len());
        let mut begun = 0.0;
        for (index, (direction, length)) in legs.iter().enumerate() {
            let (cut, turned, radius) = match (legs.get(index + 1), radii.get(index)) {
                (Some((next, _)), Some(radius)) => corner(*direction, *next, *radius)?,
                _ => (0.0, 0.0, 1.0),
            };
            let straight = length - begun - cut;
            if straight < -1e-9 {
                return Err(OutOfReach::new(
                    "corners",
                    "the straight between two corners is too short for their arcs",
                ));
            }
            let start = along(corners[index], *direction, begun);
            if straight > 1e-9 {
                pieces.push(Piece {
                    start,
                    direction: *direction,
                    curvature: 0.0,
                    length: straight,
                });
            }
            if turned != 0.0 {
                pieces.push(Piece {
                    start: along(start, *direction, straight.max(0.0)),
                    direction: *direction,
                    curvature: turned.signum() / radius,
                    length: turned.abs() * radius,
                });
            }
            begun = cut;
        }
        Ok(Self { pieces })
    }

    /// Its length.
    pub fn length(&self) -> Length {
        Length::from_base(self.pieces.iter().map(|piece| piece.length).sum())
    }

    /// Its tightest radius; none where it is straight.
    pub fn tightest(&self) -> Option<Length> {
        let most = self.pieces.iter().map(|piece| piece.curvature.abs());
        let most = most.fold(0.0, f64::max);
        (most > 0.0).then(|| Length::from_base(1.0 / most))
    }

    /// Places along it, no farther apart than a step, for drawings.
    pub fn places(&self, step: Length) -> Vec<Spot> {
        let mut places = Vec::new();
        for piece in &self.pieces {
            let count = (piece.length / step.base().max(1e-3))
                .ceil()
                .clamp(1.0, 1e5);
            let mut at = 0.0;
            while at < count {
                places.push(spot(piece.at(piece.length * at / count).0));
                at += 1.0;
            }
        }
        if let Some(last) = self.pieces.last() {
            places.push(spot(last.at(last.length).0));
        }
        places
    }

    /// The end, and the direction there.
    pub(super) fn end(&self) -> (Flat, Flat) {
        let last = self.pieces.last().map(|piece| piece.at(piece.length));
        last.unwrap_or(((0.0, 0.0), (1.0, 0.0)))
    }

    pub(super) fn start(&self) -> (Flat, Flat) {
        let first = self.pieces.first();
        first.map_or(((0.0, 0.0), (1.0, 0.0)), |piece| {
            (piece.start, piece.direction)
        })
    }

    /// How far along it a point lies, and how far to its left; straight on beyond its ends.
    pub(super) fn beside(&self, point: Flat) -> (f64, f64) {
        let mut begun = 0.0;
        let mut nearest = (0.0, f64::INFINITY);
        for piece in &self.pieces {
            let (way, off) = piece.beside(point);
            if off < nearest.1.abs() {
                let (at, direction) = piece.at(way);
                let side = cross(direction, (point.0 - at.0, point.1 - at.1));
                nearest = (begun + way, off.copysign(side));
            }
            begun += piece.length;
        }
        let whole = begun;
        if nearest.0 >= whole - 1e-9 {
            let (end, direction) = self.end();
            let off = (point.0 - end.0, point.1 - end.1);
            return (whole + dot(off, direction).max(0.0), cross(direction, off));
        }
        if nearest.0 <= 1e-9 {
            let (start, direction) = self.start();
            let off = (point.0 - start.0, point.1 - start.1);
            return (dot(off, direction).min(0.0), cross(direction, off));
        }
        nearest
    }
}

pub(super) fn spot(at: Flat) -> Spot {
    Spot {
        x: Length::from_base(at.0),
        y: Length::from_base(at.1),
    }
}

pub(super) fn leg(from: Flat, to: Flat) -> (Flat, f64) {
    let length = apart(from, to);
    let direction = ((to.0 - from.0) / length, (to.1 - from.1) / length);
    (direction, length)
}

/// Angle from one direction to another, above zero to the left.
pub(super) fn turning(from: Flat, to: Flat) -> f64 {
    cross(from, to).atan2(dot(from, to))
}

/// What an arc takes of each of its legs, how far it turns, its radius.
fn corner(from: Flat, to: Flat, radius: f64) -> Result<(f64, f64, f64), OutOfReach> {
    let turned = turning(from, to);
    if turned.abs() < STRAIGHT {
        return Ok((0.0, 0.0, 1.0));
    }
    if turned.abs() > 3.0 {
        return Err(OutOfReach::new("corners", "a corner turns back on itself"));
    }
    if radius.is_finite() && radius > 0.0 {
        return Ok((radius * (turned.abs() / 2.0).tan(), turned, radius));
    }
    Err(OutOfReach::new("radii", "a radius is above zero"))
}
