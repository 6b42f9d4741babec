//! What stands there as it is looked at: how much room a unit leaves beside it.

use super::body::{Gap, body_to, foot, room_to, wheels};
use super::rig::Unit;
use super::roll::Pose;
use super::{Flat, cross, dot};
use quantity::Quantity as _;

/// An obstacle or an edge in plain numbers.
pub(super) enum Shape {
    Solid {
        ends: [Flat; 2],
        radius: f64,
        top: f64,
    },
    Edge {
        line: Vec<Flat>,
        /// Directions of its pieces.
        runs: Vec<Flat>,
        lane_is_left: bool,
    },
}

impl Shape {
    /// The room of [`Shape::gap`] alone.
    pub(super) fn room(&self, unit: &Unit, pose: &Pose, steers: bool) -> f64 {
        match self {
            Self::Solid { ends, radius, top } => {
                match unit.body.filter(|body| *top > body.underside.base()) {
                    Some(_) => room_to(unit, pose, ends) - radius,
                    None => self.gap(unit, pose, steers).room,
                }
            }
            Self::Edge { .. } => self.gap(unit, pose, steers).room,
        }
    }

    pub(super) fn gap(&self, unit: &Unit, pose: &Pose, steers: bool) -> Gap {
        match self {
            Self::Solid { ends, radius, top } => {
                let body = unit.body.filter(|body| *top > body.underside.base());
                let mut gap = if body.is_some() {
                    body_to(unit, pose, ends)
                } else {
                    wheels(unit, pose, steers).fold(Gap::none(), |gap, wheel| {
                        let at = foot(wheel, ends);
                        let room = super::apart(wheel, at);
                        gap.nearer(Gap {
                            room,
                            on: wheel,
                            at,
                        })
                    })
                };
                gap.room -= radius;
                gap
            }
            Self::Edge {
                line,
                runs,
                lane_is_left,
            } => wheels(unit, pose, steers).fold(Gap::none(), |gap, wheel| {
                gap.nearer(inside(wheel, (line, runs), *lane_is_left))
            }),
        }
    }
}

/// How far a wheel is inside an edge.
fn inside(wheel: Flat, (line, runs): (&[Flat], &[Flat]), lane_is_left: bool) -> Gap {
    let mut nearest = (f64::INFINITY, 0, (0.0, 0.0));
    for (index, pair) in line.windows(2).enumerate() {
        let at = foot(wheel, &[pair[0], pair[1]]);
        let away = super::apart(wheel, at);
        if away < nearest.0 {
            nearest = (away, index, at);
        }
    }
    let (away, index, at) = nearest;
    if !away.is_finite() {
        return Gap::none();
    }
    let off = (wheel.0 - at.0, wheel.1 - at.1);
    let run = |index: usize| runs.get(index).copied();
    let here = run(index).unwrap_or((0.0, 0.0));
    // At a corner both pieces say on which side a point lies; beyond the ends of the line neither does.
    let is_at = |corner: usize| {
        line.get(corner)
            .is_some_and(|it| super::apart(*it, at) < 1e-9)
    };
    let other = if is_at(index) {
        index.checked_sub(1).and_then(run)
    } else if is_at(index + 1) {
        run(index + 1)
    } else {
        Some(here)
    };
    let along_it = dot(here, off);
    let ends = other.is_none() && along_it.abs() > 1e-9;
    let other = other.unwrap_or(here);
    let side = cross((here.0 + other.0, here.1 + other.1), off);
    let left = side >= 0.0;
    let room = if ends || left == lane_is_left {
        away
    } else {
        -away
    };
    Gap {
        room,
        on: wheel,
        at,
    }
}
