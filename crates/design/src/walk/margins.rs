//! How far a value may go before somebody can be hit, by halving.

use super::GateWalk;
use quantity::{Length, Quantity, Time};
use serde::{Deserialize, Serialize};
use sim::walk::{AnyWalk, AnyWorld, Verdict};
use std::num::NonZeroUsize;

/// How far a value may go.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MarginTold {
    /// The value.
    pub what: String,
    /// What it is now, at the bad end of its tolerance.
    pub now: String,
    /// As the site gives it, with its tolerance and how it is known; empty where it gives it in several places.
    pub written: String,
    /// The farthest value at which nobody is hit; missing where somebody is even now.
    pub holds_up_to: Option<String>,
    /// That was proved of every family; else only nothing was found against it.
    pub proved: bool,
    /// The nearest value that was tried at which somebody is hit, or, where it was proved before, one family no longer is;
    /// missing where even the last one held.
    pub not_at: Option<String>,
}

/// How hard a margin is looked for.
#[derive(Debug, Clone, Copy)]
pub struct Effort {
    /// Boxes that a proof looks at in each part of the space of touches; nothing is proved where missing.
    pub most: Option<u64>,
    /// Threads.
    pub threads: NonZeroUsize,
}

/// Halvings of the way between the value as it is and the farthest one that is tried.
const HALVINGS: u32 = 6;
/// Walks of each family that are tried before anything is proved.
const TRIED: u64 = 1024;
/// Places of the leaf at which an arm that reaches through is tried.
const TRIED_REACHES: u32 = 512;

/// One value that is moved: from where, to where, and how it is set.
struct Moved<'a, Q> {
    what: &'static str,
    written: String,
    from: Q,
    to: Q,
    set: &'a dyn Fn(&mut AnyWorld, Q),
}

impl GateWalk<'_> {
    /// How far reaction, speed, height of the beams and softness of the edges may go; tells when one is done.
    pub fn margins(&self, effort: Effort, done: &dyn Fn()) -> Vec<MarginTold> {
        let mut world = self.lowered.world.clone();
        let mut margins = Vec::new();
        let reaction = world.controller().reaction;
        margins.push(self.margin(
            effort,
            &Moved {
                what: "slowest reaction of the controller",
                written: self.written_reaction(),
                from: reaction,
                to: reaction + Time::from_base(1.0),
                set: &|world, value| world.controller().reaction = value,
            },
        ));
        done();
        if let Some(speed) = world.plans().first().map(|plan| plan.cruise_speed) {
            margins.push(self.margin(
                effort,
                &Moved {
                    what: "fastest leaf",
                    written: self.written_speed(),
                    from: speed,
                    to: speed * 2.0,
                    set: &|world, value| {
                        for plan in world.plans() {
                            plan.cruise_speed = value;
                        }
                    },
                },
            ));
        }
        done();
        if let Some(lowest) = lowest(world.beams().iter().map(|beam| beam.height)) {
            margins.push(self.margin(
                effort,
                &Moved {
                    what: "height of the lowest beam, all raised alike",
                    written: String::new(),
                    from: lowest,
                    to: lowest + Length::from_base(1.0),
                    set: &|world, value| {
                        for beam in world.beams() {
                            beam.height = beam.height + value - lowest;
                        }
                    },
                },
            ));
        }
        done();
        if let Some(softest) = lowest(world.edges().into_iter().map(|edge| edge.soft_travel)) {
            margins.push(self.margin(
                effort,
                &Moved {
                    what: "least travel left in the edges after they report",
                    written: self.written_soft_travel(),
                    from: softest,
                    to: Length::from_base(0.0),
                    set: &|world, value| {
                        for edge in world.edges() {
                            edge.soft_travel = value;
                        }
                    },
                },
            ));
        }
        done();
        margins
    }

    fn margin<Q: Quantity>(&self, effort: Effort, moved: &Moved<'_, Q>) -> MarginTold {
        let holds = |value: f64| {
            let mut world = self.lowered.world.clone();
            (moved.set)(&mut world, Q::from_base(value));
            is_sound(&world, effort)
        };
        let said = |value: f64| Some(self.print.q(Q::from_base(value)));
        let (mut good, mut bad) = (moved.from.base(), moved.to.base());
        let mut told = MarginTold {
            what: moved.what.to_owned(),
            now: self.print.q(moved.from),
            written: moved.written.clone(),
            holds_up_to: None,
            proved: effort.most.is_some(),
            not_at: None,
        };
        if !holds(good) {
            told.not_at = said(good);
            return told;
        }
        if holds(bad) {
            told.holds_up_to = said(bad);
            return told;
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(good, bad);
            if holds(middle) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        told.holds_up_to = said(good);
        told.not_at = said(bad);
        told
    }
}

fn lowest<Q: Quantity>(values: impl Iterator<Item = Q>) -> Option<Q> {
    values.min_by(|a, b| a.base().total_cmp(&b.base()))
}

/// Nobody is hit in a first look, and, where that is wanted, every family is proved.
fn is_sound(world: &AnyWorld, effort: Effort) -> bool {
    let Ok(walk) = world.lower() else {
        return false;
    };
    let looked = walk.glance(TRIED);
    let mut worst = looked.families.iter().filter_map(|one| one.worst);
    if worst.any(|worst| worst.class.is_bad()) {
        return false;
    }
    if !holds_no_arm(&walk) {
        return false;
    }
    let Some(most) = effort.most else { return true };
    let proved = |family| {
        walk.prove(family, most, effort.threads)
            .is_ok_and(|proof| proof.verdict == Verdict::Proved)
    };
    walk.provable().iter().all(proved)
}

/// No arm that reaches through the leaf is held beyond the limits at the places that are tried.
fn holds_no_arm(walk: &AnyWalk) -> bool {
    let AnyWalk::Sliding(walk) = walk else {
        return true;
    };
    walk.reaches().iter().all(|reach| {
        walk.worst_reach(reach, TRIED_REACHES)
            .is_ok_and(|(_, worst)| !worst.class.is_bad())
    })
}
