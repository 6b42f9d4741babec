//! How near a body or a wheel is to something: signed, below zero where it lies over it.

use super::rig::Unit;
use super::roll::Pose;
use super::{Flat, along, apart, cross, dot, left};
use quantity::Quantity as _;

/// Two points that are nearest to each other, and the room between them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Gap {
    pub(super) room: f64,
    /// On the body or the wheel.
    pub(super) on: Flat,
    /// On the thing.
    pub(super) at: Flat,
}

impl Gap {
    pub(super) fn none() -> Self {
        Self {
            room: f64::INFINITY,
            on: (0.0, 0.0),
            at: (0.0, 0.0),
        }
    }

    pub(super) fn nearer(self, other: Self) -> Self {
        if other.room < self.room { other } else { self }
    }
}

/// A rectangle in its own frame: from its axle forward, and to its left.
struct Rectangle {
    rear: f64,
    front: f64,
    half: f64,
}

/// Between the body of a unit and a straight piece.
pub(super) fn body_to(unit: &Unit, pose: &Pose, piece: &[Flat; 2]) -> Gap {
    let Some((over, local)) = seen_from(unit, pose, piece) else {
        return Gap::none();
    };
    let gap = over.to(&local);
    let world = |at: Flat| {
        along(
            along(pose.axle, pose.heading, at.0),
            left(pose.heading),
            at.1,
        )
    };
    Gap {
        room: gap.room,
        on: world(gap.on),
        at: world(gap.at),
    }
}

/// The room of [`body_to`] alone.
pub(super) fn room_to(unit: &Unit, pose: &Pose, piece: &[Flat; 2]) -> f64 {
    seen_from(unit, pose, piece).map_or(f64::INFINITY, |(over, local)| over.room_to(&local))
}

/// A body and a piece in the frame of the body.
fn seen_from(unit: &Unit, pose: &Pose, piece: &[Flat; 2]) -> Option<(Rectangle, [Flat; 2])> {
    let body = unit.body?;
    let over = Rectangle {
        rear: -body.behind.base(),
        front: (unit.wheelbase + body.ahead).base(),
        half: body.width.base() / 2.0,
    };
    let local = piece.map(|point| {
        let off = (point.0 - pose.axle.0, point.1 - pose.axle.1);
        (dot(pose.heading, off), cross(pose.heading, off))
    });
    Some((over, local))
}

impl Rectangle {
    /// The room of [`Rectangle::to`] alone: the root of the least square is the least root.
    fn room_to(&self, piece: &[Flat; 2]) -> f64 {
        if let Some(inside) = self.cut(piece) {
            return self.depth(&inside).room;
        }
        let squared = |on: Flat, at: Flat| {
            let off = (on.0 - at.0, on.1 - at.1);
            dot(off, off)
        };
        let from_end = |at: Flat| squared(self.held(at), at);
        if piece[0] == piece[1] {
            return from_end(piece[0]).sqrt();
        }
        let ends = from_end(piece[0]).min(from_end(piece[1]));
        let corners = self.corners().into_iter();
        let all = corners.map(|corner| squared(corner, foot(corner, piece)));
        all.fold(ends, f64::min).sqrt()
    }

    /// The point of the rectangle that is nearest to a point.
    fn held(&self, point: Flat) -> Flat {
        (
            point.0.clamp(self.rear, self.front),
            point.1.clamp(-self.half, self.half),
        )
    }

    fn corners(&self) -> [Flat; 4] {
        [
            (self.rear, -self.half),
            (self.rear, self.half),
            (self.front, -self.half),
            (self.front, self.half),
        ]
    }

    fn to(&self, piece: &[Flat; 2]) -> Gap {
        if let Some(inside) = self.cut(piece) {
            return self.depth(&inside);
        }
        let gap = |on: Flat, at: Flat| Gap {
            room: apart(on, at),
            on,
            at,
        };
        let ends = gap(self.held(piece[0]), piece[0]).nearer(gap(self.held(piece[1]), piece[1]));
        if piece[0] == piece[1] {
            return ends;
        }
        self.corners().into_iter().fold(ends, |nearest, corner| {
            nearest.nearer(gap(corner, foot(corner, piece)))
        })
    }

    /// How far a piece that lies over the body reaches in from the side.
    fn depth(&self, inside: &[Flat; 2]) -> Gap {
        let low = inside[0].1.min(inside[1].1);
        let high = inside[0].1.max(inside[1].1);
        let (from_left, from_right) = (self.half - low, self.half + high);
        let lower = usize::from(inside[1].1 < inside[0].1);
        if from_left < from_right {
            let at = inside[lower];
            Gap {
                room: -from_left,
                on: (at.0, self.half),
                at,
            }
        } else {
            let at = inside[1 - lower];
            Gap {
                room: -from_right,
                on: (at.0, -self.half),
                at,
            }
        }
    }

    /// The part of a piece that lies over the rectangle (Liang and Barsky's way of cutting).
    fn cut(&self, piece: &[Flat; 2]) -> Option<[Flat; 2]> {
        let (x, y) = piece[0];
        let (run, rise) = (piece[1].0 - x, piece[1].1 - y);
        let (mut start, mut end) = (0.0_f64, 1.0_f64);
        for (step, room) in [
            (-run, x - self.rear),
            (run, self.front - x),
            (-rise, y + self.half),
            (rise, self.half - y),
        ] {
            if step == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if step < 0.0 {
                start = start.max(room / step);
            } else {
                end = end.min(room / step);
            }
        }
        let at = |share: f64| (x + share * run, y + share * rise);
        (start <= end).then(|| [at(start), at(end)])
    }
}

/// The place of a straight piece that is nearest to a point.
pub(super) fn foot(point: Flat, piece: &[Flat; 2]) -> Flat {
    let run = (piece[1].0 - piece[0].0, piece[1].1 - piece[0].1);
    let squared = dot(run, run);
    let off = (point.0 - piece[0].0, point.1 - piece[0].1);
    let share = if squared > 0.0 {
        (dot(off, run) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    along(piece[0], run, share)
}

/// The outsides of the tires of a unit: those of its axle, and of the first unit its steered ones too.
pub(super) fn wheels(unit: &Unit, pose: &Pose, steers: bool) -> impl Iterator<Item = Flat> {
    let half = unit.over_tires.base() / 2.0;
    let aside = left(pose.heading);
    let (axle, pulled) = (pose.axle, pose.pulled);
    let of = move |middle: Flat| [along(middle, aside, half), along(middle, aside, -half)];
    of(axle)
        .into_iter()
        .chain(of(pulled).into_iter().take(if steers { 2 } else { 0 }))
}
