//! What stands near the arc of a swing leaf.

use super::covers::lengths;
use crate::asking::{Asking, pick, read};
use crate::check::plane::{Piece, Point};
use crate::outcome::{Comparison, Halt, Labeled};
use crate::zone::sector::over_sweep;
use quantity::{Angle, Length, Quantity as _};
use site::{FixedThing, Gate, GateKind, Leaf, SwingSide};

/// The least distance that each leaf keeps from each fixed thing, against its thickness: the worst one a leaf.
pub(super) fn nearest<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
) -> Result<Vec<Comparison>, Halt> {
    let things = things(asking, gate);
    let opening = read!(asking, gate.clear_opening);
    let travel = read!(asking, gate.travel_angle);
    let side = pick!(asking, gate.swings);
    let lengths = lengths(asking, gate);
    let thicknesses: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| thickness(asking, leaf))
        .collect();
    let (things, opening, travel, side, lengths) = (things?, opening?, travel?, side?, lengths?);
    let mut all = Vec::new();
    for (sweep, thickness) in sweeps(gate, opening, &lengths, (travel, side))
        .iter()
        .zip(thicknesses)
    {
        let thickness = thickness?;
        let free = things.iter().map(|thing| sweep.distance(thing));
        let free = free.fold(f64::INFINITY, f64::min);
        if free.is_finite() {
            all.push(Comparison::below(
                Labeled::new("thickness of the leaf", thickness),
                Labeled::new("free beside its arc", Length::from_base(free)),
            ));
        }
    }
    Ok(all)
}

fn thickness<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    read!(asking, leaf.thickness)
}

fn things<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Piece>, Halt> {
    let things: Vec<_> = gate
        .nearby
        .iter()
        .map(|thing| thing_of(asking, thing))
        .collect();
    things.into_iter().collect()
}

fn thing_of<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<Piece, Halt> {
    let from = asking.position(&thing.origin, "from", thing.from.as_ref());
    let to = asking.position(&thing.origin, "to", thing.to.as_ref());
    let flat = |[x, y, _]: [Length; 3]| (x.base(), y.base());
    Ok([flat(from?), flat(to?)])
}

/// The arcs of the leaves of a swing gate.
pub(crate) fn of_gate<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Sweep>, Halt> {
    let opening = read!(asking, gate.clear_opening);
    let travel = read!(asking, gate.travel_angle);
    let side = pick!(asking, gate.swings);
    let lengths: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| read!(asking, leaf.length))
        .collect();
    let lengths: Result<Vec<_>, Halt> = lengths.into_iter().collect();
    Ok(sweeps(gate, opening?, &lengths?, (travel?, side?)))
}

/// A leaf that turns about its hinge line: from where it points when closed, one way round.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sweep {
    pub(crate) hinge: Point,
    pub(crate) length: f64,
    /// Along x from the hinge to the free end: 1 or −1.
    pub(crate) toward: f64,
    /// Along y to the side to which it opens: 1 or −1.
    pub(crate) side: f64,
    pub(crate) travel: f64,
}

/// The arcs of the leaves: the first of two hangs at the latching side of the drawing, x = 0.
pub(crate) fn sweeps(
    gate: &Gate,
    opening: Length,
    lengths: &[Length],
    (travel, side): (Angle, SwingSide),
) -> Vec<Sweep> {
    let together: f64 = lengths.iter().map(|length| length.base()).sum();
    let before = (opening.base() - together) / 2.0;
    let side = match side {
        SwingSide::IntoProperty => 1.0,
        SwingSide::TowardRoad => -1.0,
    };
    let double = gate.kind == GateKind::DoubleSwing;
    let of = |(index, length): (usize, &Length)| {
        let first = double && index == 0;
        Sweep {
            hinge: (
                if first {
                    before
                } else {
                    opening.base() - before
                },
                0.0,
            ),
            length: length.base(),
            toward: if first { 1.0 } else { -1.0 },
            side,
            travel: travel.base(),
        }
    };
    lengths.iter().enumerate().map(of).collect()
}

impl Sweep {
    /// A leaf of a length about a hinge line, that points along x and opens along y as told by the signs.
    #[cfg(test)]
    pub(crate) fn new(hinge: Point, length: f64, (toward, side): (f64, f64), travel: f64) -> Self {
        Self {
            hinge,
            length,
            toward,
            side,
            travel,
        }
    }

    /// Least distance from a thing over the whole travel; infinite where it lies on the other side of the gate line or
    /// on the gate line itself, where the closed leaf meets its posts.
    fn distance(&self, thing: &Piece) -> f64 {
        if thing.iter().all(|point| point.1 * self.side <= 0.0) {
            return f64::INFINITY;
        }
        over_sweep(self, thing).gap
    }

    /// Angle from the closed leaf to the direction of a point, seen from the hinge, counted the way the leaf opens.
    pub(crate) fn bearing(&self, point: Point) -> f64 {
        let (x, y) = (point.0 - self.hinge.0, point.1 - self.hinge.1);
        (self.side * y).atan2(self.toward * x)
    }

    /// A point of the leaf's own lines: so far along it and so far off it toward the side to which it opens.
    pub(crate) fn place(&self, angle: f64, along: f64, off: f64) -> Point {
        let (sin, cos) = angle.sin_cos();
        (
            self.hinge.0 + self.toward * (along * cos - off * sin),
            self.hinge.1 + self.side * (along * sin + off * cos),
        )
    }

    /// The angle from the closed leaf toward a point, in the sense in which the leaf opens: 0 to a whole turn.
    pub(crate) fn angle_of(&self, point: Point) -> f64 {
        let along = (point.0 - self.hinge.0) * self.toward;
        let across = (point.1 - self.hinge.1) * self.side;
        let angle = across.atan2(along);
        if angle < -1e-12 {
            angle + std::f64::consts::TAU
        } else {
            angle
        }
    }

    /// The leaf turned by an angle from its closed position.
    pub(crate) fn at(&self, angle: f64) -> Piece {
        let tip = (
            self.hinge.0 + self.toward * self.length * angle.cos(),
            self.hinge.1 + self.side * self.length * angle.sin(),
        );
        [self.hinge, tip]
    }
}
