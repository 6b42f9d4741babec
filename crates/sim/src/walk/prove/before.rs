//! Whom a leaf met before: who walked into its side, or was there as it came by, is not touched a moment later.

use super::heard::Body;
use super::place::Job;
use super::pressed::Moves;
use super::space::Kind;
use super::span::Span;
use super::sweeps::{Spot, Sweeps, Touched};
use crate::walk::sequence::Habit;

/// Shares of the way of the leaf at which it may have come by where a body stands.
const SHARES: [f64; 4] = [0.0, 0.25, 0.5, 0.75];
/// Depths that the body has come from that are looked at.
const DEPTHS: u32 = 12;

/// How a body came to its touch.
#[derive(Clone, Copy)]
pub(super) struct Came {
    pub body: Body,
    pub slant: Span,
}

impl<S: Sweeps> Job<'_, S> {
    /// Whether the leaf surely is in the body at a touch, or was before it.
    pub(super) fn met_before(&self, moves: &Moves, came: &Came, of: &Touched) -> bool {
        if self.shape.is_in(of.body, of.spots, moves.place) {
            return true;
        }
        match (self.kind, self.family.habit) {
            // One who comes and stays may have come only now.
            (Kind::Standing, Habit::Stop) => false,
            (Kind::Standing, _) => SHARES.iter().any(|share| {
                let place = Span::of(share * moves.place.lo);
                self.shape.is_in(of.body, of.spots, place)
            }),
            _ => (0..=DEPTHS).any(|step| self.met_at(self.depth(step), moves, came, of)),
        }
    }

    fn depth(&self, step: u32) -> f64 {
        let reach = self.lane.people[self.family.body].reach;
        2.0 * reach * f64::from(step) / f64::from(DEPTHS)
    }

    /// Whether the leaf surely was in the body that was so much less deep.
    fn met_at(&self, depth: f64, moves: &Moves, came: &Came, of: &Touched) -> bool {
        let before = came.body.stood + came.body.per_depth * depth;
        let (time, leaf) = (moves.time - before, self.leaf());
        let place = match moves.ago {
            Some(ago) => leaf.commanded(time, ago - before),
            None => leaf.place(time),
        };
        let spots = of.spots.iter().map(|spot| Spot {
            x: spot.x - came.slant * depth,
            y: spot.y - self.side() * depth,
        });
        let spots: Vec<Spot> = spots.collect();
        self.shape.is_in(of.body, &spots, place)
    }
}
