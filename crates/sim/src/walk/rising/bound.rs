//! Whether a leaf that rises may touch a cylinder that is known within bounds, and what that may meet.
//!
//! Two upright boxes that touch without being in each other are parted by a line along a side of one of them (the theorem
//! of separating axes): for one of eight directions n, the leaf's farthest point along n is as far as the nearest of the
//! body. Where that is so for none of them, the two are apart, or were in each other before.

use super::super::evaluate::{Found, IN_POST};
use super::super::path::Case;
use super::super::prove::span::Span;
use super::super::prove::sweeps::{May, Spot, Sweeps, Touched};
use super::super::swing::SLACK;
use super::apart::{All, Coming, Crate, Turning};
use super::evaluate::HOUSED;
use super::lane::{RisingLane, Shape};
use super::lift::Lifted;

/// A leaf in one pass.
pub(super) struct Bound<'a>(pub &'a RisingLane);

impl Sweeps for Bound<'_> {
    fn may(&self, of: &Touched) -> Vec<May<'_>> {
        let lane = self.0;
        if !in_thickness(lane, of) || surely_in_housing(lane, of) {
            return Vec::new();
        }
        match &lane.shape {
            Shape::Turning { .. } => match lane.turned(of.place) {
                Some(leaf) => self.turning(&leaf, of),
                None => Vec::new(),
            },
            Shape::Lifting(lifted) => self.lifting(lifted, of).into_iter().collect(),
        }
    }

    fn is_in(&self, body: usize, spots: &[Spot], place: Span) -> bool {
        let lane = self.0;
        let leaf = lane.turned(place);
        (spots.iter().zip(&lane.people[body].parts).enumerate()).any(|(at, (spot, part))| {
            spot.y.abs().hi < part.radius + lane.half - SLACK
                && match (&lane.shape, &leaf) {
                    (Shape::Lifting(lifted), _) => {
                        let heights = lane.heights[body][at];
                        lifted.is_in(place, (spot.x, part.radius), heights)
                    }
                    (_, Some(leaf)) => leaf.is_in(&leaf.sees(lane, (body, at), spot)),
                    _ => false,
                }
        })
    }

    fn reach(&self, body: usize, part: usize) -> (Span, Span) {
        let lane = self.0;
        let radius = lane.people[body].parts[part].radius;
        let (low, high) = lane.along;
        let wide = match &lane.shape {
            Shape::Turning { swung, .. } => swung.reach - swung.slab.to,
            Shape::Lifting(_) => 0.0,
        };
        let off = radius + wide.max(0.0) + SLACK;
        // Seen from the pivot line it turns a tail up to the other side.
        let (low, high) = match &lane.shape {
            Shape::Turning { swung, pivot, .. } => {
                let across = swung.slab.low.abs().max(swung.slab.high.abs());
                (low.min(pivot - across), high.max(pivot + across))
            }
            Shape::Lifting(_) => (low, high),
        };
        let half = radius + lane.half;
        (Span::new(low - off, high + off), Span::new(-half, half))
    }

    fn crosses(&self) -> Span {
        Span::new(self.0.along.0, self.0.along.1)
    }

    fn run(&self, case: &Case) -> Found {
        self.0.run(case)
    }
}

/// Whether the touched cylinder may be in the thickness of the leaf.
fn in_thickness(lane: &RisingLane, of: &Touched) -> bool {
    let radius = lane.people[of.body].parts[of.part].radius;
    of.spots[of.part].y.abs().lo <= radius + lane.half + SLACK
}

/// Whether a part of the body surely is where the housing of the drive is, so that nobody is there.
fn surely_in_housing(lane: &RisingLane, of: &Touched) -> bool {
    let Some((from, to)) = lane.housing else {
        return false;
    };
    (0..of.spots.len()).any(|at| {
        let (spot, radius) = (of.spots[at], lane.people[of.body].parts[at].radius);
        spot.y.abs().hi < radius + lane.half + HOUSED - SLACK
            && (spot.x + radius).lo > from + SLACK + IN_POST
            && (spot.x - radius).hi < to - SLACK - IN_POST
    })
}

impl Bound<'_> {
    fn lifting(&self, lifted: &Lifted, of: &Touched) -> Option<May<'_>> {
        let lane = self.0;
        let (bottom, top) = lane.heights[of.body][of.part];
        let radius = lane.people[of.body].parts[of.part].radius;
        let spot = of.spots[of.part];
        let beside = Span::new(lifted.from - radius, lifted.to + radius);
        let down = (lifted.way < 0.0) == of.onward;
        let underside = of.place * lifted.way + lifted.start;
        if !down || underside.lo > top + SLACK || underside.hi < top - SLACK {
            return None;
        }
        spot.x.both(beside)?;
        let room = (top.max(0.0) - lane.bounds.gap).max(0.0);
        debug_assert!(bottom <= top, "a cylinder stands on its lower end");
        let along = spot.x - lifted.from;
        Some(self.met(
            of,
            (along.lo, along.hi),
            (1.0, 1.0),
            true,
            (top, room),
            f64::INFINITY,
        ))
    }

    /// What a touch within bounds may meet.
    fn met(
        &self,
        of: &Touched,
        along: (f64, f64),
        share: (f64, f64),
        ahead: bool,
        (gap, room): (f64, f64),
        sinks: f64,
    ) -> May<'_> {
        let skin = &self.0.skin;
        let which = (of.body, of.part);
        let (springs, after) = if of.onward {
            let within = skin.within(which, along, share.0, ahead);
            (within.springs, within.after)
        } else {
            (vec![skin.bare()], Vec::new())
        };
        May {
            springs,
            after,
            share,
            gap,
            room,
            sinks,
            press: if of.onward {
                &skin.press
            } else {
                &skin.press_back
            },
            far: (skin.far(share.0), skin.far(share.1)),
        }
    }

    fn turning(&self, leaf: &Turning, of: &Touched) -> Vec<May<'_>> {
        let touched = leaf.sees(self.0, (of.body, of.part), &of.spots[of.part]);
        let Some(shared) = leaf.shared(&touched) else {
            return Vec::new();
        };
        let parted = leaf.parted(&touched, shared);
        let Some(all) = All::of(leaf, &parted) else {
            return Vec::new();
        };
        let coming = Coming {
            onward: of.onward,
            turns: of.speed * leaf.swung.turn,
            speed: of.goes.0 * leaf.along,
        };
        let may = parted.iter().flatten();
        may.filter(|one| one.may_press(leaf, &coming))
            .map(|_| self.pressed(leaf, of, &touched, &all))
            .take(1)
            .collect()
    }

    fn pressed(&self, leaf: &Turning, of: &Touched, touched: &Crate, all: &All) -> May<'_> {
        let (along, across) = all.at;
        let distance = (along.square() + across.square()).root();
        let skin = &self.0.skin;
        let share = (
            skin.share(distance.lo - SLACK),
            skin.share(distance.hi + SLACK),
        );
        let under = if all.upward {
            (f64::INFINITY, f64::INFINITY)
        } else {
            let height = leaf.lowest(along, across, touched).max(0.0);
            (height, (height - self.0.bounds.gap).max(0.0) - SLACK)
        };
        let along = (along.lo - SLACK, along.hi + SLACK);
        self.met(of, along, share, all.ahead, under, all.deepest)
    }
}
