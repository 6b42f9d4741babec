//! A line tried against all that stands there, for as long as it may leave more than another one.

use super::MOST;
use super::dot;
use super::path::Path;
use super::rig::Rig;
use super::roll::Moment;
use super::room::{AT_COUPLING, Target};
use super::shape::Shape;
use super::track::{Track, is_coarse};
use quantity::Quantity as _;
use std::ops::ControlFlow;

/// Something that a line is tried against.
pub(super) struct Thing {
    target: Target,
    /// The room that it wants beside it.
    wanted: f64,
    shape: Shape,
    /// Which unit came too near to it at last, and how far the front axle had come.
    struck: Option<(usize, f64)>,
}

/// What is told of a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Told {
    /// The least room beside anything, what each wants taken off; no more than another line leaves is any figure no more than
    /// that, and no line at all is below all figures.
    pub(super) score: f64,
    /// The thing that leaves no more; none where there is no line, or nothing beside it.
    pub(super) beside: Option<Target>,
}

impl Told {
    /// It cannot be driven.
    pub(super) const NO_LINE: Self = Self {
        score: f64::NEG_INFINITY,
        beside: None,
    };
}

/// Things to try lines against, each with the room that it wants.
pub(super) fn things(shapes: Vec<(Target, Shape)>, wanted: impl Fn(Target) -> f64) -> Vec<Thing> {
    let thing = |(target, shape)| Thing {
        target,
        wanted: wanted(target),
        shape,
        struck: None,
    };
    shapes.into_iter().map(thing).collect()
}

/// What trial drives take room for, again and again.
#[derive(Default)]
pub(super) struct Trial {
    track: Track,
    looks: Vec<(usize, f64)>,
}

/// What is beyond a cosine by so much is so when it is rounded as well.
const SURELY: f64 = 1e-12;
/// Before and behind the place at which one came too near, so far others are looked at there (m).
const NEAR: f64 = 0.5;
/// Bounds that differ by less than this may be one (m).
const CLOSE: f64 = 1e-9;
/// Things that are looked at while a line is driven: those that stood in the way of the last ones.
const FOREMOST: usize = 3;

impl Rig {
    /// The least that a drive leaves beside all of these, what each wants taken off. Where that is no more than another line
    /// leaves, the thing that told so is looked at first the next time.
    pub(super) fn spare(
        &self,
        path: &Path,
        things: &mut [Thing],
        (step, other): (f64, f64),
        trial: &mut Trial,
    ) -> Told {
        let Trial { track, looks } = trial;
        if self.is_tight(path) {
            return Told::NO_LINE;
        }
        let limits = self.least_cosines();
        let mut in_the_way = None;
        let whole = track.drive(self, path, step, |moment, track| {
            if is_beyond(moment, &limits) {
                return ControlFlow::Break(());
            }
            in_the_way = self.stands_in_the_way(things, moment, track.ways.len() - 1, other);
            in_the_way.map_or(ControlFlow::Continue(()), |_| ControlFlow::Break(()))
        });
        if let Some(index) = in_the_way {
            things[..=index].rotate_right(1);
            let beside = things.first().map(|thing| thing.target);
            return Told {
                beside,
                ..Told::NO_LINE
            };
        }
        if whole.is_break() || self.beyond(path, track).is_some() {
            return Told::NO_LINE;
        }
        let speeds = self.speeds();
        let (mut least, mut beside) = (f64::MAX, None);
        for index in 0..things.len() {
            let Thing {
                target,
                wanted,
                shape,
                ..
            } = &things[index];
            // How far a wheel is inside an edge leaps at the edge's ends.
            let asked = match shape {
                Shape::Solid { .. } => least + wanted + CLOSE,
                Shape::Edge { .. } => f64::INFINITY,
            };
            let bounds = (other + wanted, asked);
            let found = self.nearest((&*track, &mut *looks), shape, &speeds, bounds);
            let Some((room, unit, at)) = found else {
                continue;
            };
            if room - wanted < least {
                (least, beside) = (room - wanted, Some(*target));
            }
            if least <= other {
                things[index].struck = Some((unit, track.ways[at]));
                things[..=index].rotate_right(1);
                break;
            }
        }
        Told {
            score: least,
            beside,
        }
    }

    /// Which of the foremost things leaves no more than another line does at a moment that the search for the nearest
    /// place looks at too, or, where looks tell of each other, at any.
    fn stands_in_the_way(
        &self,
        things: &[Thing],
        moment: &Moment<'_>,
        at: usize,
        other: f64,
    ) -> Option<usize> {
        let room = |thing: &Thing, unit: usize| {
            let shape = &thing.shape;
            shape.room(&self.units[unit], &moment.poses[unit], unit == 0) - thing.wanted
        };
        let each = things.iter().take(FOREMOST);
        each.enumerate().find_map(|(index, thing)| {
            let (unit, way) = thing.struck?;
            let is_near = match thing.shape {
                Shape::Solid { .. } => {
                    (moment.way - way).abs() < NEAR && room(thing, unit) <= other - CLOSE
                }
                Shape::Edge { .. } => is_coarse(at) && room(thing, unit) <= other,
            };
            is_near.then_some(index)
        })
    }

    /// Cosines below which the front wheels, and the couplings, are surely turned farther than they can be.
    fn least_cosines(&self) -> [f64; MOST] {
        let surely = |angle: f64| {
            if angle < std::f64::consts::PI {
                angle.cos() - SURELY
            } else {
                f64::NEG_INFINITY
            }
        };
        let mut least = [f64::NEG_INFINITY; MOST];
        least[0] = surely(self.greatest_lock());
        for (least, unit) in least.iter_mut().zip(&self.units).skip(1) {
            *least = unit.widest.map_or(f64::NEG_INFINITY, |most| {
                surely(most.base().max(0.0) + AT_COUPLING)
            });
        }
        least
    }
}

/// The front wheels or a coupling are turned farther than they can be.
fn is_beyond(moment: &Moment<'_>, limits: &[f64; MOST]) -> bool {
    let bent = moment.poses.windows(2).zip(&limits[1..]);
    dot(moment.steered, moment.poses[0].heading) < limits[0]
        || bent
            .into_iter()
            .any(|(pair, least)| dot(pair[0].heading, pair[1].heading) < *least)
}
