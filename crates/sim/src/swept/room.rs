//! The room that is left beside everything: for bodies beside what stands there, for wheels inside the lane's edges.

use super::again::is_among;
use super::path::{Path, leg, spot};
use super::rig::{Rig, Unit};
use super::shape::Shape;
use super::track::{Search, Track};
use super::{Flat, MOST};
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

/// What front wheels and couplings may turn beyond their limits, for the figures that are rounded (rad).
const AT_LOCK: f64 = 1e-6;
pub(super) const AT_COUPLING: f64 = 1e-9;

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
        let track = Track::of(self, path, step.base());
        Ok(self.room((path, &track), place))
    }

    pub(super) fn room(&self, (path, track): (&Path, &Track), place: &Place) -> Room {
        let couplings = self.units.len().saturating_sub(1);
        Room {
            nearest: self.nearest_of(track, place.shapes()),
            steered: Angle::from_base(track.steered()),
            beyond: self.beyond(path, track),
            bent: track
                .bent()
                .into_iter()
                .take(couplings)
                .map(Angle::from_base)
                .collect(),
        }
    }

    /// The room along a drive of which it is known what it left beside all but the changed obstacles.
    pub(super) fn room_beside_others(
        &self,
        track: &Track,
        place: &Place,
        (known, changed): (&Room, &[bool]),
    ) -> Room {
        let is_changed = |target: Target| is_among(changed, target);
        let mut shapes = place.shapes();
        shapes.retain(|(target, _)| is_changed(*target));
        let mut room = known.clone();
        if shapes.is_empty() {
            return room;
        }
        room.nearest.retain(|one| !is_changed(one.target));
        room.nearest.extend(self.nearest_of(track, shapes));
        room.nearest.sort_by_key(|one| match one.target {
            Target::Obstacle(index) => (0, index),
            Target::Edge(index) => (1, index),
        });
        room
    }

    /// The least room beside each of these along a drive.
    fn nearest_of(&self, track: &Track, shapes: Vec<(Target, Shape)>) -> Vec<Nearest> {
        let speeds = self.speeds();
        let mut looks = Vec::new();
        let bounds = (f64::NEG_INFINITY, f64::INFINITY);
        let nearest = shapes.into_iter().filter_map(|(target, shape)| {
            let (_, unit, at) = self.nearest((track, &mut looks), &shape, &speeds, bounds)?;
            let gap = shape.gap(&self.units[unit], &track.units[unit][at], unit == 0);
            Some(Nearest {
                target,
                room: Length::from_base(gap.room),
                unit,
                way: Length::from_base(track.ways.get(at).copied().unwrap_or_default()),
                on: spot(gap.on),
                at: spot(gap.at),
            })
        });
        nearest.collect()
    }

    /// The least room beside one thing with the unit and the step at which it is, each unit in turn along the whole way; any
    /// room that is no more than enough will do, and what is no less than anybody asks need not be found.
    pub(super) fn nearest(
        &self,
        (track, looks): (&Track, &mut Vec<(usize, f64)>),
        shape: &Shape,
        speeds: &[f64; MOST],
        (enough, asked): (f64, f64),
    ) -> Option<(f64, usize, usize)> {
        let mut best: Option<(f64, usize, usize)> = None;
        for (index, unit) in self.units.iter().enumerate().take(MOST) {
            let search = Search {
                unit,
                poses: &track.units[index],
                ways: &track.ways,
                shape,
                speed: speeds[index],
                steers: index == 0,
                enough,
                asked,
            };
            let known = best.map_or(f64::INFINITY, |(room, ..)| room);
            if let Some((room, at)) = search.least(known, looks) {
                best = Some((room, index, at));
            }
        }
        best
    }

    pub(super) fn greatest_lock(&self) -> f64 {
        self.lock().clamp(0.0, 1.0).asin() + AT_LOCK
    }

    pub(super) fn is_tight(&self, path: &Path) -> bool {
        path.tightest()
            .is_some_and(|radius| radius.base() < self.least_radius.base() * (1.0 - 1e-9))
    }

    pub(super) fn beyond(&self, path: &Path, track: &Track) -> Option<&'static str> {
        if self.is_tight(path) || track.steered() > self.greatest_lock() {
            return Some("its steering does not turn that far");
        }
        let mut couplings = self.units.iter().skip(1).zip(track.bent());
        let beyond = |(unit, bent): (&Unit, f64)| {
            unit.widest
                .is_some_and(|most| bent > most.base() + AT_COUPLING)
        };
        couplings
            .any(beyond)
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
            let line: Vec<Flat> = edge.line.iter().map(flat).collect();
            let runs = line.windows(2).map(|pair| leg(pair[0], pair[1]).0);
            let shape = Shape::Edge {
                runs: runs.collect(),
                line,
                lane_is_left: edge.lane_is_left,
            };
            (Target::Edge(index), shape)
        });
        solid.chain(edges).collect()
    }
}
