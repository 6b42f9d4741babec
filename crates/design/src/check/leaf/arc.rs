//! What stands near the arc of a swing leaf.

use super::covers::lengths;
use crate::asking::{Asking, pick, read};
use crate::outcome::{Comparison, Halt, Labeled};
use quantity::{Angle, Length, Quantity as _};
use site::{FixedThing, Gate, GateKind, Leaf, SwingSide};

/// Steps in which the arc is walked through.
const STEPS: u32 = 180;

type Point = (f64, f64);

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

fn things<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<[Point; 2]>, Halt> {
    let things: Vec<_> = gate
        .nearby
        .iter()
        .map(|thing| thing_of(asking, thing))
        .collect();
    things.into_iter().collect()
}

fn thing_of<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<[Point; 2], Halt> {
    let from = asking.position(&thing.origin, "from", thing.from.as_ref());
    let to = asking.position(&thing.origin, "to", thing.to.as_ref());
    let flat = |[x, y, _]: [Length; 3]| (x.base(), y.base());
    Ok([flat(from?), flat(to?)])
}

/// A leaf that turns about its hinge line: from where it points when closed, one way round.
#[derive(Debug, Clone, Copy)]
struct Sweep {
    hinge: Point,
    length: f64,
    /// Along x from the hinge to the free end: 1 or −1.
    toward: f64,
    /// Along y to the side to which it opens: 1 or −1.
    side: f64,
    travel: f64,
}

/// The arcs of the leaves: the first of two hangs at the latching side of the drawing, x = 0.
fn sweeps(
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
    /// Least distance from a thing over the whole travel; infinite where it lies on the other side of the gate line or
    /// on the gate line itself, where the closed leaf meets its posts.
    fn distance(&self, thing: &[Point; 2]) -> f64 {
        if thing.iter().all(|point| point.1 * self.side <= 0.0) {
            return f64::INFINITY;
        }
        (0..=STEPS)
            .map(|step| {
                let angle = self.travel * f64::from(step) / f64::from(STEPS);
                let tip = (
                    self.hinge.0 + self.toward * self.length * angle.cos(),
                    self.hinge.1 + self.side * self.length * angle.sin(),
                );
                between(&[self.hinge, tip], thing)
            })
            .fold(f64::INFINITY, f64::min)
    }
}

/// Distance between two straight pieces in the plane; nothing where they cross.
fn between(one: &[Point; 2], other: &[Point; 2]) -> f64 {
    if cross(one, other) {
        return 0.0;
    }
    let ends = [
        from(one[0], other),
        from(one[1], other),
        from(other[0], one),
        from(other[1], one),
    ];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Distance of a point from a straight piece.
fn from(point: Point, piece: &[Point; 2]) -> f64 {
    let (along_x, along_y) = (piece[1].0 - piece[0].0, piece[1].1 - piece[0].1);
    let squared = along_x.powi(2) + along_y.powi(2);
    let (off_x, off_y) = (point.0 - piece[0].0, point.1 - piece[0].1);
    let share = if squared > 0.0 {
        ((off_x * along_x + off_y * along_y) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (off_x - share * along_x).hypot(off_y - share * along_y)
}

fn cross(one: &[Point; 2], other: &[Point; 2]) -> bool {
    let turn = |a: Point, b: Point, c: Point| (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
    let apart = |piece: &[Point; 2], ends: &[Point; 2]| {
        turn(piece[0], piece[1], ends[0]) * turn(piece[0], piece[1], ends[1]) < 0.0
    };
    apart(one, other) && apart(other, one)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_of_pieces() {
        let level = [(0.0, 0.0), (2.0, 0.0)];
        assert!((between(&level, &[(1.0, 1.0), (1.0, 3.0)]) - 1.0).abs() < 1e-12);
        assert!(between(&level, &[(1.0, -1.0), (1.0, 3.0)]).abs() < 1e-12);
        assert!((from((3.0, 4.0), &[(0.0, 0.0), (0.0, 0.0)]) - 5.0).abs() < 1e-12);
    }
}
