//! The room that is left beside everything: for bodies beside what stands there, for wheels inside the lane's edges.

use super::body::{Gap, body_to, foot, wheels};
use super::path::{Path, spot};
use super::rig::{Rig, Unit};
use super::roll::Pose;
use super::track::{Search, Track};
use super::{Flat, MOST, cross, dot};
use crate::walk::Spot;
use formula::OutOfReach;
use quantity::{Angle, Length, Quantity as _};

/// Something that stands there: a post, a bollard, an open leaf, a fence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Obstacle {
    /// Its two ends; one place twice for what is round.
    pub ends: [Spot; 2],
    /// Half its thickness.
    pub radius: Length,
    /// Its top: bodies pass over what is lower than their underside, wheels do not.
    pub top: Length,
}

/// An edge that wheels stay inside.
#[derive(Debug, Clone, PartialEq)]
pub struct Edge {
    /// Its corners, one after the other; beyond its ends it counts no more.
    pub line: Vec<Spot>,
    /// The ground for wheels is to its left as it is drawn.
    pub lane_is_left: bool,
}

/// What stands beside a way, and its edges.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Place {
    /// What stands there.
    pub obstacles: Vec<Obstacle>,
    /// Edges that wheels stay inside.
    pub edges: Vec<Edge>,
}

/// What the room is beside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Target {
    /// An obstacle, by its place in the list.
    Obstacle(usize),
    /// An edge, by its place in the list.
    Edge(usize),
}

/// The least room beside one thing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nearest {
    /// Beside what.
    pub target: Target,
    /// The room; below zero where the vehicle would be over it, by as much as it reaches in from the side.
    pub room: Length,
    /// Which unit comes so near.
    pub unit: usize,
    /// How far the middle of the front axle has come then.
    pub way: Length,
    /// Where on the vehicle.
    pub on: Spot,
    /// Where on the thing.
    pub at: Spot,
}

/// What a drive along a path leaves.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// The least room beside each thing, obstacles first.
    pub nearest: Vec<Nearest>,
    /// The greatest angle of the front wheels.
    pub steered: Angle,
    /// The greatest angle at each coupling.
    pub bent: Vec<Angle>,
    /// What limits the path: it asks more of the steering or of a coupling than they give.
    pub beyond: Option<&'static str>,
}

pub(super) enum Shape {
    Solid {
        ends: [Flat; 2],
        radius: f64,
        top: f64,
    },
    Edge {
        line: Vec<Flat>,
        lane_is_left: bool,
    },
}

impl Rig {
    /// The room that is left along a path, looked at every so often.
    ///
    /// # Errors
    ///
    /// Where the rig, the place or the step cannot be as given.
    pub fn sweep(&self, path: &Path, place: &Place, step: Length) -> Result<Room, OutOfReach> {
        self.check()?;
        place.check()?;
        crate::plan::above_zero("step", step)?;
        Ok(self.room(path, place, step.base()))
    }

    pub(super) fn room(&self, path: &Path, place: &Place, step: f64) -> Room {
        let track = Track::of(self, path, step);
        let speeds = self.speeds();
        let shapes = place.shapes();
        let nearest = shapes.iter().filter_map(|(target, shape)| {
            let (gap, unit, at) = self.nearest(&track, shape, &speeds, f64::NEG_INFINITY);
            gap.room.is_finite().then(|| Nearest {
                target: *target,
                room: Length::from_base(gap.room),
                unit,
                way: Length::from_base(track.ways.get(at).copied().unwrap_or_default()),
                on: spot(gap.on),
                at: spot(gap.at),
            })
        });
        Room {
            nearest: nearest.collect(),
            steered: Angle::from_base(track.steered),
            beyond: self.beyond(path, &track),
            bent: track
                .bent
                .into_iter()
                .take(self.units.len().saturating_sub(1))
                .map(Angle::from_base)
                .collect(),
        }
    }

    /// The least room beside one thing, each unit in turn along the whole way; any room that is no more than enough will do.
    fn nearest(
        &self,
        track: &Track,
        shape: &Shape,
        speeds: &[f64; MOST],
        enough: f64,
    ) -> (Gap, usize, usize) {
        let mut best = (Gap::none(), 0, 0);
        for (index, unit) in self.units.iter().enumerate().take(MOST) {
            let search = Search {
                unit,
                poses: &track.units[index],
                ways: &track.ways,
                shape,
                speed: speeds[index],
                steers: index == 0,
                enough,
            };
            let (gap, at) = search.least(best.0);
            if gap.room < best.0.room {
                best = (gap, index, at);
            }
        }
        best
    }

    /// The least that a drive leaves beside all of these, what each wants taken off. Where that is no more than another line
    /// leaves, any figure no more than that is told, and the thing that told so is looked at first the next time.
    pub(super) fn spare(
        &self,
        path: &Path,
        things: &mut [(f64, Shape)],
        (step, other): (f64, f64),
    ) -> f64 {
        let track = Track::of(self, path, step);
        if self.beyond(path, &track).is_some() {
            return f64::NEG_INFINITY;
        }
        let speeds = self.speeds();
        let mut least = f64::MAX;
        for index in 0..things.len() {
            let (wanted, shape) = &things[index];
            let (gap, ..) = self.nearest(&track, shape, &speeds, other + wanted);
            least = least.min(gap.room - wanted);
            if least <= other {
                things[..=index].rotate_right(1);
                return least;
            }
        }
        least
    }

    fn beyond(&self, path: &Path, track: &Track) -> Option<&'static str> {
        let lock = self.lock().clamp(0.0, 1.0).asin();
        let tight = path
            .tightest()
            .is_some_and(|radius| radius.base() < self.least_radius.base() * (1.0 - 1e-9));
        if tight || track.steered > lock + 1e-6 {
            return Some("its steering does not turn that far");
        }
        let mut couplings = self.units.iter().skip(1).zip(&track.bent);
        couplings
            .any(|(unit, bent)| unit.widest.is_some_and(|most| *bent > most.base() + 1e-9))
            .then_some("its trailer would turn farther than its coupling lets it")
    }
}

impl Place {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        let solid = self.obstacles.iter().all(|one| {
            one.ends.iter().all(|end| end.is_finite())
                && one.radius.base().is_finite()
                && !one.top.base().is_nan()
        });
        let lines = self
            .edges
            .iter()
            .all(|edge| edge.line.iter().all(|at| at.is_finite()));
        if solid && lines {
            return Ok(());
        }
        Err(OutOfReach::new(
            "place",
            "all that stands there is at a place",
        ))
    }

    pub(super) fn shapes(&self) -> Vec<(Target, Shape)> {
        let flat = |at: &Spot| (at.x.base(), at.y.base());
        let solid = self.obstacles.iter().enumerate().map(|(index, one)| {
            let shape = Shape::Solid {
                ends: [flat(&one.ends[0]), flat(&one.ends[1])],
                radius: one.radius.base(),
                top: one.top.base(),
            };
            (Target::Obstacle(index), shape)
        });
        let edges = self.edges.iter().enumerate().map(|(index, edge)| {
            let shape = Shape::Edge {
                line: edge.line.iter().map(flat).collect(),
                lane_is_left: edge.lane_is_left,
            };
            (Target::Edge(index), shape)
        });
        solid.chain(edges).collect()
    }
}

impl Shape {
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
            Self::Edge { line, lane_is_left } => wheels(unit, pose, steers)
                .fold(Gap::none(), |gap, wheel| {
                    gap.nearer(inside(wheel, line, *lane_is_left))
                }),
        }
    }
}

/// How far a wheel is inside an edge.
fn inside(wheel: Flat, line: &[Flat], lane_is_left: bool) -> Gap {
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
    let run = |index: usize| {
        let pair = (line.get(index), line.get(index + 1));
        let (Some(from), Some(to)) = pair else {
            return None;
        };
        Some(super::path::leg(*from, *to).0)
    };
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
