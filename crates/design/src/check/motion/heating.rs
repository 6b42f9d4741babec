//! The pull of a slide over the busiest hour, as steady as it would have to be to heat the motor as much.

use crate::asking::{Asking, read};
use crate::check::force::sliding::{Conditions, leaf, on_the_level};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::motion::{RmsForce, SlideGateForce};
use quantity::{Quantity as _, Ratio, Time};
use site::{Gate, GateKind, Operator, Site};

/// How well the motor cools at rest beside running: a third with a fan of its own, the safe side.
const COOLING_AT_REST: f64 = 1.0 / 3.0;

/// The pull that heats as much, uphill in the operating wind both ways, against the force that the operator may give
/// without end; nothing for leaves that do not slide and where the data sheet gives no such force.
pub(super) fn heating<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, operator): (&'s Gate, &'s Operator),
    (travel, between): (Time, Time),
) -> Result<Option<Comparison>, Halt> {
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    if !slides || operator.rated_force.is_none() {
        return Ok(None);
    }
    let leaf = leaf(asking, gate, operator)?;
    let level = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND);
    let slope = read!(asking, gate.slope);
    let cruise = read!(asking, gate.motion?.cruise_speed);
    let acceleration = read!(asking, gate.motion?.acceleration);
    let rated = read!(asking, operator.rated_force);
    let (level, slope, cruise) = (level?, slope?, cruise?);
    let uphill = Ratio::from_base(slope.base().abs());
    let pull = asking.work(&SlideGateForce {
        slope: uphill,
        ..level
    })?;
    let start = Time::from_base((cruise.base() / acceleration?.base()).min(travel.base()));
    let nothing = Time::from_base(0.0);
    let heats = asking.work(&RmsForce {
        start_force: pull.total,
        start_time: start,
        run_force: pull.steady,
        run_time: travel - start,
        slow_force: pull.steady,
        slow_time: nothing,
        rest_time: Time::from_base((between - travel).base().max(0.0)),
        rest_cooling: Ratio::from_base(COOLING_AT_REST),
    })?;
    Ok(Some(Comparison::at_most(
        Labeled::new("steady pull that heats the motor as much", heats.rms_force),
        Labeled::new("force given without end", rated?),
    )))
}
