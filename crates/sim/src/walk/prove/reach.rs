//! Proof that no arm through the leaf is held harder or longer than it may be, whenever it comes in.
//!
//! One coordinate is left: when it is held first. Time is halved until each piece is surely within the limits, by bounds
//! that round outward, or the exact evaluator finds a bad end in its middle.

use super::judge::{Bounded, Meets, worst_of};
use super::leaf::Leaf;
use super::span::Span;
use crate::walk::harm::Most;
use crate::walk::lane::{Lane, Walk};
use crate::walk::reach::{Hold, Reach};
use crate::walk::scenario::Outcome;
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Ratio};

/// How a proof about an arm ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReachVerdict {
    /// No arm is held beyond the limits.
    Proved,
    /// Held after the leaf has gone so far, it ends badly; the exact evaluator says so.
    Refuted(Length, Outcome),
    /// This share of the time is open.
    Undecided(Ratio),
}

/// A proof about an arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReachProof {
    /// How it ends.
    pub verdict: ReachVerdict,
    /// Pieces of time that were looked at.
    pub boxes: u64,
}

/// A piece of time shorter than this is not halved.
const SHORT: f64 = 1e-9;

impl Walk {
    /// Proves or refutes one arm, looking at so many pieces of time at most.
    pub fn prove_reach(&self, reach: &Reach, most: u64) -> Result<ReachProof, OutOfReach> {
        let (lane, hold) = self.hold(reach)?;
        let leaf = Leaf {
            profile: &lane.profile,
            stopping: lane.control.stopping,
        };
        let whole = leaf.time_at(Span::new(hold.from, hold.to));
        let mut waiting = vec![whole];
        let (mut boxes, mut open) = (0, 0.0);
        while let Some(time) = waiting.pop() {
            if boxes >= most || time.width() < SHORT {
                open += time.width().max(SHORT);
                continue;
            }
            boxes += 1;
            if is_kept(lane, &leaf, hold, time) {
                continue;
            }
            let place = lane.profile.place_at(time.middle());
            let place = place.clamp(hold.from, hold.to);
            let found = hold.found(lane, place);
            if found.class.is_bad() {
                let verdict =
                    ReachVerdict::Refuted(Length::from_base(place), lane.outcome(0, &found));
                return Ok(ReachProof { verdict, boxes });
            }
            let (one, other) = time.halves();
            waiting.extend([other, one]);
        }
        let verdict = if open > 0.0 {
            let share = (open / whole.width().max(SHORT)).min(1.0);
            ReachVerdict::Undecided(Ratio::from_base(share))
        } else {
            ReachVerdict::Proved
        };
        Ok(ReachProof { verdict, boxes })
    }
}

/// Whether every limit is kept by an arm that is held first within a piece of time.
fn is_kept(lane: &Lane, leaf: &Leaf, hold: &Hold, time: Span) -> bool {
    let place = leaf.place(time);
    let touch = Bounded {
        time,
        place: place.both(Span::new(hold.from, hold.to)).unwrap_or(place),
        speed: leaf.speed(time),
        ago: None,
        x: Span::of(0.0),
    };
    let meets = Meets {
        profile: &lane.profile,
        control: &lane.control,
        bounds: hold.bounds(lane),
        spring: hold.feel.spring,
        after: &hold.feel.after,
        gap: 0.0,
        room: 0.0,
        most: Most::ANY,
        forces: None,
    };
    worst_of(&meets, &touch).kept
}
