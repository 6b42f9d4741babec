//! The worst that a touch of a leaf that turns or rises can do when only bounds of it are known.

use super::before::Came;
use super::judge::{Bounded, Meets, Worst, worst_of};
use super::place::Job;
use super::span::{Span, up};
use super::sweeps::{May, Sweeps, Touched};
use crate::walk::course::Back;
use crate::walk::harm::{Bounds, Most, Spring};
use crate::walk::swing::{Outcome, SLACK};

/// The leaf at a touch.
pub(super) struct Moves {
    pub place: Span,
    pub speed: Span,
    pub time: Span,
    pub ago: Option<Span>,
}

impl<S: Sweeps> Job<'_, S> {
    /// A touch of a leaf on its way.
    pub(super) fn onward(&self, moves: &Moves, came: &Came, of: &Touched) -> Option<f64> {
        if moves.speed.hi <= 0.0 || moves.time.hi <= 0.0 {
            return None;
        }
        let speed = moves.speed.at_least(0.0);
        let all = self.shape.may(&Touched {
            place: moves.place,
            speed,
            told: self.told(moves),
            ..*of
        });
        let touch = Bounded {
            time: moves.time,
            place: moves.place,
            speed,
            ago: moves.ago,
            x: Span::of(0.0),
        };
        let mut worst: Vec<Worst> = Vec::new();
        for may in &all {
            for outcome in may.press.outcomes(may.far, may.gap, &self.lane.bounds) {
                let springs = may.springs.iter();
                worst.extend(
                    springs
                        .map(|spring| worst_of(&self.meets(may, spring, outcome, &touch), &touch)),
                );
            }
        }
        let severest = severest(worst.into_iter());
        severest.filter(|_| !self.met_before(moves, came, of))
    }

    /// When the leaves are told to stop, in the time of the pass: by a report, or by the touch or after it.
    fn told(&self, moves: &Moves) -> (f64, f64) {
        let touch = (moves.time.lo + self.delay) - SLACK;
        let Some(ago) = moves.ago else {
            return (touch, f64::INFINITY);
        };
        let said = moves.time - ago + self.delay;
        (said.lo.min(touch), said.hi)
    }

    /// What a touch meets, in ways of the end of the leaf.
    fn meets<'b>(
        &'b self,
        may: &'b May,
        spring: &Spring,
        outcome: Outcome,
        touch: &Bounded,
    ) -> Meets<'b> {
        let (bounds, (least, most)) = (self.lane.bounds, may.share);
        let (less, more) = (1.0 - 1e-14, 1.0 + 1e-14);
        let left = (self.lane.profile.travel - touch.place.lo) * (1.0 + SLACK) + SLACK;
        let limit = limit(may, spring, touch.speed.hi, left);
        let deepest = (limit.deepest * (1.0 + SLACK)).min(may.sinks);
        Meets {
            profile: &self.lane.profile,
            control: &self.lane.control,
            bounds: Bounds {
                squeeze: bounds.squeeze / most * less,
                ..bounds
            },
            // As the place goes that goes the farthest: harder, and longer above a force.
            spring: Spring {
                soft: up(spring.soft * most),
                way: spring.way / most * less,
                hard: up(spring.hard * most),
            },
            after: &may.after,
            gap: if outcome.wide { f64::INFINITY } else { may.gap },
            room: if outcome.forces.is_some() {
                f64::INFINITY
            } else if may.room < 0.0 {
                may.room / least * more
            } else {
                may.room / most * less
            },
            most: Most {
                deepest: deepest / most * more,
                push: limit.push * more,
            },
            forces: outcome.forces,
        }
    }

    /// A touch of a leaf that runs back: nothing but the end of its way back stops it.
    pub(super) fn backward(&self, back: Back, of: &Touched) -> Option<f64> {
        if self.shape.is_in(of.body, of.spots, of.place) {
            return None;
        }
        let all = self.shape.may(of);
        let goes = up(back.distance.min(of.place.hi).max(0.0));
        let mut worst: Vec<Worst> = Vec::new();
        for may in &all {
            for outcome in may.press.outcomes(may.far, may.gap, &self.lane.bounds) {
                let springs = may.springs.iter();
                worst.extend(springs.map(|spring| {
                    let most = limit(may, spring, back.speed, goes + SLACK);
                    let travel = up(goes * may.share.1)
                        .min(may.sinks)
                        .min(most.deepest * (1.0 + SLACK));
                    self.run_back(may, spring, outcome, (travel, most.push * (1.0 + SLACK)))
                }));
            }
        }
        severest(worst.into_iter())
    }

    fn run_back(
        &self,
        may: &May,
        spring: &Spring,
        outcome: Outcome,
        (travel, push): (f64, f64),
    ) -> Worst {
        let bounds = &self.lane.bounds;
        let limit = if outcome.wide {
            bounds.open
        } else {
            bounds.limit(may.gap)
        };
        let (force, travel, stays) = match outcome.forces {
            Some(forces) => (
                forces.peak,
                travel.min(up(spring.pressed(forces.peak))),
                forces.settled > bounds.lasting || forces.end > bounds.rest,
            ),
            None => (
                up(spring.force(travel)) * (1.0 + 1e-14),
                travel,
                travel > spring.pressed(bounds.rest) * (1.0 - 1e-14) && push > bounds.rest,
            ),
        };
        let squeezed = match outcome.forces {
            Some(_) => f64::NEG_INFINITY,
            None => up(travel - may.room),
        };
        Worst {
            severity: (force / limit).max(squeezed / bounds.squeeze),
            kept: force <= limit && !stays && squeezed <= bounds.squeeze,
        }
    }
}

/// The most that a touch can be by what moves, where the leaf goes on so far at most.
fn limit(may: &May, spring: &Spring, speed: f64, left: f64) -> Most {
    let speed = speed * (1.0 + SLACK);
    let most = may.press.most(spring, may.share.0, speed);
    if left * may.share.1 <= may.room {
        most.and(may.press.free(spring, may.share.1, speed))
    } else {
        most
    }
}

/// The worst of those that do not surely keep every limit.
fn severest(all: impl Iterator<Item = Worst>) -> Option<f64> {
    all.filter(|worst| !worst.kept)
        .map(|worst| worst.severity)
        .reduce(f64::max)
}
