//! The ground that a leaf passes over in its whole travel, seen from above: exact distances to it.
//!
//! A leaf that slides passes over a band, its tail and its run-back included; one that swings over a sector; an arm and a
//! leaf that turns up or rises over the strip below it. Half the thickness is added all around.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::leaf::arc::{Sweep, sweeps};
use crate::check::plane::{Piece, Point, between};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Gate, GateKind, Leaf};

/// The ground that one leaf passes over.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Envelope {
    pub(crate) ground: Ground,
    /// Half the thickness of the leaf.
    pub(crate) half: f64,
    /// Height of its lower edge.
    pub(crate) bottom: f64,
    /// Height of its upper edge.
    pub(crate) top: f64,
}

/// The middle line of a leaf, and how it moves.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Ground {
    /// It stays on one straight piece.
    Strip(Piece),
    /// It turns about its hinge line.
    Sector(Sweep),
}

/// What every leaf of a gate passes over.
pub(crate) fn envelopes<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
) -> Result<Vec<Envelope>, Halt> {
    if gate.leaf.is_empty() {
        return asking.lack(
            &gate.origin,
            "leaf",
            Wants::Written("[{ id = \"leaf\", length = \"20 ft\", thickness = \"2 in\" }]"),
        );
    }
    let grounds = match gate.kind {
        GateKind::SingleSwing | GateKind::DoubleSwing => sectors(asking, gate),
        _ => strips(asking, gate),
    };
    let bodies: Vec<_> = gate.leaf.iter().map(|leaf| body(asking, leaf)).collect();
    let (grounds, bodies) = (grounds?, bodies.into_iter().collect::<Result<Vec<_>, _>>()?);
    let pair = |(ground, (half, bottom, top))| Envelope {
        ground,
        half,
        bottom,
        top,
    };
    Ok(grounds.into_iter().zip(bodies).map(pair).collect())
}

/// Half the thickness, and the heights of the edges.
fn body<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<(f64, f64, f64), Halt> {
    let thickness = read!(asking, leaf.thickness);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let (thickness, height, clearance) = (thickness?, height?, clearance?);
    let bottom = clearance.base();
    Ok((thickness.base() / 2.0, bottom, bottom + height.base()))
}

fn strips<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Ground>, Halt> {
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    let travel = if slides {
        read!(asking, gate.travel)
    } else {
        Ok(Length::default())
    };
    let ends: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| {
            let start = read!(asking, leaf.closed_end);
            let length = read!(asking, leaf.length);
            Ok((start?, length?))
        })
        .collect();
    let travel = travel?.base();
    let of = |end: Result<(Length, Length), Halt>| {
        end.map(|(start, length)| {
            let (from, to) = (start.base(), start.base() + length.base() + travel);
            Ground::Strip([(from, 0.0), (to, 0.0)])
        })
    };
    ends.into_iter().map(of).collect()
}

fn sectors<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Ground>, Halt> {
    let opening = read!(asking, gate.clear_opening);
    let travel = read!(asking, gate.travel_angle);
    let side = pick!(asking, gate.swings);
    let lengths: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| read!(asking, leaf.length))
        .collect();
    let lengths: Result<Vec<_>, _> = lengths.into_iter().collect();
    let (opening, travel, side, lengths) = (opening?, travel?, side?, lengths?);
    let turning = sweeps(gate, opening, &lengths, (travel, side));
    Ok(turning.into_iter().map(Ground::Sector).collect())
}

impl Envelope {
    /// Least distance from a straight piece on the ground, a point as one of no length; zero where the leaf comes over it.
    pub(crate) fn distance(&self, piece: &Piece) -> f64 {
        let to_middle = match &self.ground {
            Ground::Strip(line) => between(line, piece),
            Ground::Sector(sweep) => to_sector(sweep, piece),
        };
        (to_middle - self.half).max(0.0)
    }

    /// Points on the rim of the ground: corners, and for an arc its turning points along the axes.
    pub(crate) fn rim(&self) -> Vec<Point> {
        match &self.ground {
            Ground::Strip([from, to]) => vec![
                (from.0, from.1 - self.half),
                (from.0, from.1 + self.half),
                (to.0, to.1 - self.half),
                (to.0, to.1 + self.half),
            ],
            Ground::Sector(sweep) => {
                let tips = turning_points(sweep).into_iter().map(|angle| {
                    let [hinge, tip] = sweep.at(angle);
                    beyond(hinge, tip, self.half)
                });
                std::iter::once(sweep.hinge).chain(tips).collect()
            }
        }
    }

    /// The middle line of the leaf closed.
    pub(crate) fn closed(&self) -> Piece {
        match &self.ground {
            Ground::Strip(line) => *line,
            Ground::Sector(sweep) => sweep.at(0.0),
        }
    }

    /// The middle line of the leaf open.
    pub(crate) fn open(&self) -> Piece {
        match &self.ground {
            Ground::Strip(line) => *line,
            Ground::Sector(sweep) => sweep.at(sweep.travel),
        }
    }
}

/// The tip pushed on along the leaf.
fn beyond(hinge: Point, tip: Point, by: f64) -> Point {
    let (x, y) = (tip.0 - hinge.0, tip.1 - hinge.1);
    let length = x.hypot(y);
    if length > 0.0 {
        let more = (length + by) / length;
        (hinge.0 + x * more, hinge.1 + y * more)
    } else {
        tip
    }
}

/// Angles at which the tip is farthest along an axis: both ends, and every quarter turn between.
fn turning_points(sweep: &Sweep) -> Vec<f64> {
    use std::f64::consts::FRAC_PI_2;
    let quarters = (1..4_u32)
        .map(|quarter| FRAC_PI_2 * f64::from(quarter))
        .filter(|angle| *angle < sweep.travel);
    std::iter::once(0.0)
        .chain(quarters)
        .chain(std::iter::once(sweep.travel))
        .collect()
}

/// Least distance of a straight piece from a sector: to its two straight sides, to its arc, or nothing within it.
fn to_sector(sweep: &Sweep, piece: &Piece) -> f64 {
    let sides = [sweep.at(0.0), sweep.at(sweep.travel)];
    let straight = sides
        .iter()
        .map(|side| between(side, piece))
        .fold(f64::INFINITY, f64::min);
    let nearest = crate::check::plane::nearest(sweep.hinge, piece);
    let crossings = across_circle(sweep.hinge, sweep.length, piece);
    let arc = piece
        .iter()
        .copied()
        .chain([nearest])
        .chain(crossings)
        .filter(|point| within(sweep, *point))
        .map(|point| (distance(sweep.hinge, point) - sweep.length).max(0.0));
    arc.fold(straight, f64::min)
}

fn distance(one: Point, other: Point) -> f64 {
    (one.0 - other.0).hypot(one.1 - other.1)
}

/// A point lies in the angle that the leaf turns through.
fn within(sweep: &Sweep, point: Point) -> bool {
    let angle = sweep.angle_of(point);
    (-1e-12..=sweep.travel + 1e-12).contains(&angle)
}

/// Where a straight piece crosses a circle.
fn across_circle(center: Point, radius: f64, piece: &Piece) -> Vec<Point> {
    let along = (piece[1].0 - piece[0].0, piece[1].1 - piece[0].1);
    let off = (piece[0].0 - center.0, piece[0].1 - center.1);
    let square = along.0.powi(2) + along.1.powi(2);
    let half = off.0 * along.0 + off.1 * along.1;
    let rest = off.0.powi(2) + off.1.powi(2) - radius.powi(2);
    let root = half * half - square * rest;
    if square <= 0.0 || root < 0.0 {
        return Vec::new();
    }
    [-root.sqrt(), root.sqrt()]
        .into_iter()
        .map(|root| (-half + root) / square)
        .filter(|share| (0.0..=1.0).contains(share))
        .map(|share| (piece[0].0 + along.0 * share, piece[0].1 + along.1 * share))
        .collect()
}
