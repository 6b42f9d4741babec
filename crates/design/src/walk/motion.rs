//! The ways of a sliding leaf, at their fastest, and what stands before each.

use super::faces::{after_open_leaf, before_closed_leaf};
use crate::asking::{Asking, End, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Velocity};
use sim::Plan;
use sim::walk::{Direction, Pass};
use site::{Gate, Leaf};

/// Both ways of a leaf, and by how much it laps past a face that it moves toward.
pub(super) struct Ways {
    pub(super) passes: Vec<Pass>,
    pub(super) overlap: Length,
    /// What stands before each pass, in words.
    pub(super) before: Vec<String>,
}

/// The ways of a sliding leaf.
pub(super) fn ways<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Ways, Halt> {
    let plan = plan(asking, gate);
    let closed = asking.read_at(
        (&leaf.origin, "closed_end"),
        leaf.closed_end.as_ref(),
        End::Nominal,
    );
    let length = asking.read_at((&leaf.origin, "length"), leaf.length.as_ref(), End::Nominal);
    let (plan, closed, length) = (plan?, closed?, length?);
    let (plan, too_late) = as_it_runs(plan);
    let (start, tail) = (closed + plan.travel, closed + length);
    let (face, what_before) = before_closed_leaf(asking, gate, (closed, start))?;
    let (behind, what_behind) = after_open_leaf(asking, gate, tail)?;
    let end = tail + plan.travel;
    let past = |length: Length| length.base().max(0.0);
    let overlap = past(face - closed).max(behind.map_or(0.0, |face| past(end - face)));
    if overlap > 0.15 {
        return asking.refuse(
            "the leaf would run into what stands in its way: look at travel, closed end, leaf length and the places of posts and nearby things",
        );
    }
    let passes = vec![
        Pass {
            direction: Direction::Closing,
            plan,
            edge: start,
            opposing: Some(if face > closed { closed } else { face }),
        },
        Pass {
            direction: Direction::Opening,
            plan,
            edge: tail,
            opposing: behind.map(|face| if face < end { end } else { face }),
        },
    ];
    let told = |before: String| {
        if too_late {
            format!(
                "{before}; the slow-down begins too late to reach the creep: taken as at full speed up to its last stop"
            )
        } else {
            before
        }
    };
    Ok(Ways {
        passes,
        overlap: Length::from_base(overlap),
        before: vec![told(what_before), told(what_behind)],
    })
}

/// The plan as the leaf runs: where the slow-down begins too late to come down to the creep, at full speed up to the last stop;
/// and whether that is so.
fn as_it_runs(plan: Plan) -> (Plan, bool) {
    let stop = |speed: Velocity| speed.base().powi(2) / (2.0 * plan.deceleration.base());
    // The last stop from the creep, and what it takes to come down to it.
    let wanted = stop(plan.cruise_speed);
    let late = plan.set_point.base() < wanted && plan.creep_speed < plan.cruise_speed;
    if !late {
        return (plan, false);
    }
    let plan = Plan {
        creep_speed: plan.cruise_speed,
        set_point: Length::from_base(1.01 * wanted),
        ..plan
    };
    (plan, true)
}

/// The plan of the fastest leaf that the tolerances leave, where it goes along a line.
pub(super) fn plan<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Plan, Halt> {
    let travel = asking.read_at((&gate.origin, "travel"), gate.travel.as_ref(), End::Nominal);
    let cruise = match &gate.motion {
        Some(motion) => {
            let key = (&motion.origin, "cruise_speed");
            asking.read_at(key, motion.cruise_speed.as_ref(), End::High)
        }
        None => read!(asking, gate.motion?.cruise_speed),
    };
    let rest = rest(asking, gate);
    let (travel, cruise_speed) = (travel?, cruise?);
    Ok(Plan {
        travel,
        cruise_speed,
        ..rest?
    })
}

/// The plans of the fastest leaves that the tolerances leave, where they turn: along the arcs of their free ends.
pub(super) fn turning<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    lengths: &[Length],
) -> Result<Vec<Plan>, Halt> {
    let key = (&gate.origin, "travel_angle");
    let travel = asking.read_at(key, gate.travel_angle.as_ref(), End::Nominal);
    let cruise = match &gate.motion {
        Some(motion) => {
            let key = (&motion.origin, "cruise_turning_speed");
            asking.read_at(key, motion.cruise_turning_speed.as_ref(), End::High)
        }
        None => read!(asking, gate.motion?.cruise_turning_speed),
    };
    let rest = rest(asking, gate);
    let (travel, cruise, rest) = (travel?.base(), cruise?.base(), rest?);
    let plans = lengths.iter().map(|length| Plan {
        travel: *length * travel,
        cruise_speed: Velocity::from_base(length.base() * cruise),
        ..rest
    });
    Ok(plans.collect())
}

/// What a plan has beside its travel and its running speed.
fn rest<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Plan, Halt> {
    let Some(motion) = &gate.motion else {
        // Each of them is missing: one reading after another says so.
        let _ = read!(asking, gate.motion?.acceleration);
        let _ = read!(asking, gate.motion?.deceleration);
        let _ = read!(asking, gate.motion?.creep_speed);
        let _ = read!(asking, gate.motion?.slow_down_distance);
        let missing = read!(asking, gate.motion?.stopping_deceleration);
        return missing.and(Err(Halt));
    };
    let of = |key| (&motion.origin, key);
    let faster = asking.read_at(of("acceleration"), motion.acceleration.as_ref(), End::High);
    let slower = asking.read_at(of("deceleration"), motion.deceleration.as_ref(), End::Low);
    let creep = asking.read_at(of("creep_speed"), motion.creep_speed.as_ref(), End::High);
    let set_point = asking.read_at(
        of("slow_down_distance"),
        motion.slow_down_distance.as_ref(),
        End::Low,
    );
    Ok(Plan {
        travel: Length::from_base(0.0),
        cruise_speed: Velocity::from_base(0.0),
        acceleration: faster?,
        deceleration: slower?,
        set_point: set_point?,
        creep_speed: creep?,
    })
}
