//! The controller of a gate as the walk test takes it.

use super::assumption::Assumption;
use crate::asking::{Asking, End};
use crate::check::drive::operator_of;
use crate::check::motion::turns;
use crate::outcome::Halt;
use quantity::{Acceleration, Quantity as _, Ratio, Time};
use sim::walk::{Answer, Controller, Direction, ForceSensing};
use site::{Gate, Operator, Profile, Site};

/// Gravity, for braking down a slope.
const GRAVITY: f64 = 9.806_65;

/// The slowest controller that the tolerances leave, and the weakest brake, down the slope of the travel.
pub(super) fn controller<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<Controller, Halt> {
    let reaction = reaction(asking, site, gate);
    let mut operators = site.operators_of(gate);
    if operators.any(|one| one.inherent_sensing == Some(true) && one.obstruction_response.is_none())
    {
        defaults.push(Assumption::default(
            "the operator's own obstruction sensing",
            "not counted",
            "how long it takes from the force to the braking is not on the site",
        ));
    }
    let slope = if rises(gate) {
        Ok(Ratio::from_base(0.0))
    } else {
        asking.read_at((&gate.origin, "slope"), gate.slope.as_ref(), End::High)
    };
    let Some(motion) = &gate.motion else {
        return Err(Halt);
    };
    let of = |key| (&motion.origin, key);
    let brake = asking.read_at(
        of("stopping_deceleration"),
        motion.stopping_deceleration.as_ref(),
        End::Low,
    );
    let delay = asking.read_at(
        of("reversal_delay"),
        motion.reversal_delay.as_ref(),
        End::High,
    );
    let back = asking.read_at(
        of("reversal_distance"),
        motion.reversal_distance.as_ref(),
        End::Low,
    );
    let creep = asking.read_at(of("creep_speed"), motion.creep_speed.as_ref(), End::High);
    let (reaction, brake, cruise) = (reaction?, brake?, cruise(gate, motion));
    let print = asking.print();
    // The delay counts from the contact at the running speed: what is left of it after reaction and braking.
    let pause = (delay?.base() - reaction.base() - cruise / brake.base()).max(0.0);
    let creep = creep?;
    defaults.push(Assumption::default(
        "the way back after a report",
        format!(
            "begins {} after the leaf stands, at {}",
            print.q(Time::from_base(pause)),
            print.q(creep)
        ),
        "reversal delay less reaction and braking at the running speed; no faster way back than the creep speed is counted",
    ));
    Ok(Controller {
        reaction,
        stopping: Acceleration::from_base(brake.base() - GRAVITY * slope?.base().abs()),
        answer: Answer::Reverse {
            pause: Time::from_base(pause),
            speed: creep,
            distance: back?,
        },
    })
}

/// What the drives feel of a body, where each of them senses obstructions and it is known at which force and how fast: the
/// greatest force, the slowest answer.
pub(super) fn drive<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Option<ForceSensing> {
    let mut drive: Option<ForceSensing> = None;
    for one in site.operators_of(gate) {
        let senses = one.inherent_sensing == Some(true);
        let known = one.obstruction_force.is_some() && one.obstruction_response.is_some();
        if !senses || !known {
            return None;
        }
        let of = |key| (&one.origin, key);
        let force = one.obstruction_force.as_ref();
        let force = asking.read_at(of("obstruction_force"), force, End::High);
        let response = one.obstruction_response.as_ref();
        let response = asking.read_at(of("obstruction_response"), response, End::High);
        let (Ok(force), Ok(response)) = (force, response) else {
            return None;
        };
        let known = drive.get_or_insert(ForceSensing {
            guards: vec![Direction::Opening, Direction::Closing],
            force,
            response,
        });
        if force > known.force {
            known.force = force;
        }
        if response > known.response {
            known.response = response;
        }
    }
    drive
}

/// The slowest reaction of its operators.
fn reaction<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Time, Halt> {
    let first = operator_of(asking, site, gate)?;
    let mut read = |operator: &'s Operator| {
        let key = (&operator.origin, "reaction_time");
        asking.read_at(key, operator.reaction_time.as_ref(), End::High)
    };
    let mut slowest = read(first);
    for operator in site.operators_of(gate).skip(1) {
        let (one, other) = (slowest, read(operator));
        let (one, other) = (one?, other?);
        slowest = Ok(if one > other { one } else { other });
    }
    slowest
}

/// The leaf goes up: what its weight does to the braking is in the braking that was measured.
fn rises(gate: &Gate) -> bool {
    use site::GateKind::{BarrierArm, VerticalLift, VerticalPivot};
    matches!(gate.kind, BarrierArm | VerticalPivot | VerticalLift)
}

/// The running speed of the leaf or its free end, in m/s.
fn cruise(gate: &Gate, motion: &Profile) -> f64 {
    let nominal = if turns(gate) {
        let longest = gate.leaf.iter().filter_map(|leaf| leaf.length.as_ref());
        let longest = longest
            .map(|length| length.nominal().base())
            .fold(0.0, f64::max);
        motion
            .cruise_turning_speed
            .as_ref()
            .map(|speed| speed.nominal().base() * longest)
    } else {
        motion
            .cruise_speed
            .as_ref()
            .map(|speed| speed.nominal().base())
    };
    nominal.unwrap_or(0.0)
}
