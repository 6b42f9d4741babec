//! The room that is left beside everything: for bodies beside what stands there, for wheels inside the lane's edges.

use super::body::{Gap, body_to, foot, wheels};
use super::path::{Path, spot};
use super::rig::{Rig, Unit};
use super::roll::{Moment, Pose, roll};
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

/// A drive step by step: where each unit is, kept apart so that one of them is looked at along the whole way.
struct Track {
    ways: Vec<f64>,
    units: [Vec<Pose>; MOST],
}

enum Shape {
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

/// Steps between the looks with which the search for the nearest place begins.
const COARSE: usize = 64;

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
        let mut track = Track::new(self.units.len());
        let (mut straightest, mut bent) = (1.0_f64, [1.0_f64; MOST]);
        roll(self, path, step, |moment| {
            straightest = straightest.min(dot(moment.steered, moment.poses[0].heading));
            for (least, pair) in bent.iter_mut().zip(moment.poses.windows(2)) {
                *least = least.min(dot(pair[0].heading, pair[1].heading));
            }
            track.take(moment);
        });
        let speeds = self.speeds();
        let shapes = place.shapes();
        let nearest = shapes
            .iter()
            .filter_map(|(target, shape)| self.nearest(&track, *target, shape, &speeds));
        let angle = |cosine: f64| cosine.clamp(-1.0, 1.0).acos();
        let bent: Vec<f64> = bent.iter().map(|cosine| angle(*cosine)).collect();
        let steered = angle(straightest);
        Room {
            nearest: nearest.collect(),
            steered: Angle::from_base(steered),
            beyond: self.beyond(path, steered, &bent),
            bent: bent
                .into_iter()
                .take(self.units.len().saturating_sub(1))
                .map(Angle::from_base)
                .collect(),
        }
    }

    /// The least room beside one thing: each unit in turn along the whole way.
    fn nearest(
        &self,
        track: &Track,
        target: Target,
        shape: &Shape,
        speeds: &[f64; MOST],
    ) -> Option<Nearest> {
        let mut best = (Gap::none(), 0, 0);
        for (index, unit) in self.units.iter().enumerate().take(MOST) {
            let search = Search {
                unit,
                poses: &track.units[index],
                ways: &track.ways,
                shape,
                speed: speeds[index],
                steers: index == 0,
            };
            let (gap, at) = search.least(best.0);
            if gap.room < best.0.room {
                best = (gap, index, at);
            }
        }
        let (gap, unit, at) = best;
        gap.room.is_finite().then(|| Nearest {
            target,
            room: Length::from_base(gap.room),
            unit,
            way: Length::from_base(track.ways.get(at).copied().unwrap_or_default()),
            on: spot(gap.on),
            at: spot(gap.at),
        })
    }

    fn beyond(&self, path: &Path, steered: f64, bent: &[f64]) -> Option<&'static str> {
        let lock = self.lock().clamp(0.0, 1.0).asin();
        let tight = path
            .tightest()
            .is_some_and(|radius| radius.base() < self.least_radius.base() * (1.0 - 1e-9));
        if tight || steered > lock + 1e-6 {
            return Some("its steering does not turn that far");
        }
        let mut couplings = self.units.iter().skip(1).zip(bent);
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

    fn shapes(&self) -> Vec<(Target, Shape)> {
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

impl Track {
    fn new(units: usize) -> Self {
        let room = |unit| if unit < units { 1024 } else { 0 };
        Self {
            ways: Vec::with_capacity(1024),
            units: std::array::from_fn(|unit| Vec::with_capacity(room(unit))),
        }
    }

    fn take(&mut self, moment: &Moment<'_>) {
        self.ways.push(moment.way);
        for (kept, pose) in self.units.iter_mut().zip(moment.poses) {
            kept.push(*pose);
        }
    }
}

/// The search for the place at which one unit is nearest to one thing.
///
/// No point of a unit moves faster than its greatest speed, so that between two looks it comes no nearer than both tell:
/// stretches that cannot hold the nearest place are left out, the others halved.
struct Search<'s> {
    unit: &'s Unit,
    poses: &'s [Pose],
    ways: &'s [f64],
    shape: &'s Shape,
    speed: f64,
    steers: bool,
}

impl Search<'_> {
    fn gap(&self, at: usize) -> Gap {
        self.poses.get(at).map_or(Gap::none(), |pose| {
            self.shape.gap(self.unit, pose, self.steers)
        })
    }

    /// The least room, where it is less than that of another unit.
    fn least(&self, other: Gap) -> (Gap, usize) {
        let mut best = (other, 0);
        let last = self.poses.len().saturating_sub(1);
        let mut looks: Vec<(usize, f64)> = Vec::with_capacity(last / COARSE + 2);
        let mut at = 0;
        while at <= last {
            let gap = self.gap(at);
            looks.push((at, gap.room));
            if gap.room < best.0.room {
                best = (gap, at);
            }
            at = if at < last {
                (at + COARSE).min(last)
            } else {
                last + 1
            };
        }
        for pair in looks.windows(2) {
            self.halve(pair[0], pair[1], &mut best);
        }
        best
    }

    fn halve(&self, from: (usize, f64), to: (usize, f64), best: &mut (Gap, usize)) {
        if to.0 - from.0 < 2 || self.comes_no_nearer(from, to, best.0.room) {
            return;
        }
        let middle = usize::midpoint(from.0, to.0);
        let gap = self.gap(middle);
        let look = (middle, gap.room);
        if gap.room < best.0.room {
            *best = (gap, middle);
        }
        self.halve(from, look, best);
        self.halve(look, to, best);
    }

    /// Between two looks it comes no nearer than the best; what it lies over is looked at in full, since how far it
    /// reaches over that may leap.
    fn comes_no_nearer(&self, from: (usize, f64), to: (usize, f64), best: f64) -> bool {
        let way = self.ways[to.0] - self.ways[from.0];
        (from.1 + to.1 - self.speed * way) / 2.0 >= best.max(0.0)
    }
}

impl Shape {
    fn gap(&self, unit: &Unit, pose: &Pose, steers: bool) -> Gap {
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
