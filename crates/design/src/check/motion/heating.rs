//! What a slide or a swing leaf asks over the busiest hour, as steady as it would have to be to heat the motor as much.

use super::profile::cruise_of;
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::force::sliding::{Conditions, on_the_level};
use crate::check::force::swing_drive::{hold, swings};
use crate::check::force::turning::{At, torque_at, way};
use crate::check::wind::load::Wind;
use crate::outcome::{Comparison, Halt, Labeled};
use formula::Formula as _;
use formula::motion::{RmsForce, RmsTorque, SlideGateForce, SwingGateTorque};
use quantity::{Angle, Quantity as _, Ratio, Time, Torque};
use site::{Direction, Gate, GateKind, Operator, Site};

/// How well the motor cools at rest beside running: a third with a fan of its own, the safe side.
const COOLING_AT_REST: f64 = 1.0 / 3.0;

/// Angles at which a swing leaf is looked at.
const STEPS: u32 = 18;

/// What heats as much, in the operating wind both ways, against what the operator may give without end; nothing for
/// leaves that rise and where the data sheet gives no such figure.
pub(super) fn heating<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    of: (&'s Gate, &'s Operator),
    times: (Time, Time),
) -> Result<Option<Comparison>, Halt> {
    match of.0.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide if of.1.rated_force.is_some() => {
            sliding(asking, site, of, times).map(Some)
        }
        _ if swings(of.0) && (of.1.rated_force.is_some() || of.1.rated_torque.is_some()) => {
            turning(asking, site, of, times)
        }
        _ => Ok(None),
    }
}

/// The time of speeding up, at most the whole travel.
fn start_time<'s>(asking: &mut Asking<'s>, gate: &'s Gate, travel: Time) -> Result<Time, Halt> {
    let cruise = cruise_of(asking, gate);
    let acceleration = read!(asking, gate.motion?.acceleration);
    let seconds = cruise?.base() / acceleration?.base();
    Ok(Time::from_base(seconds.min(travel.base())))
}

/// A swing leaf at its hardest angle all the way, against what its drive lastingly brings to the hinge line where that is least.
fn turning<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, operator): (&'s Gate, &'s Operator),
    (travel, between): (Time, Time),
) -> Result<Option<Comparison>, Halt> {
    let leaf = leaf_of(asking, gate, operator)?;
    let at = At {
        angle: Angle::from_base(0.0),
        wind: Some(Wind::Operating),
        direction: Direction::Opening,
        speeding_up: true,
        hindered: false,
    };
    let closed = torque_at(asking, site, gate, leaf, at);
    let start = start_time(asking, gate, travel);
    let width = read!(asking, leaf.length);
    let held = width.and_then(|width| hold(asking, operator, width));
    let (closed, start, held) = (closed?, start?, held?);
    let mut least: Option<Torque> = None;
    let (mut starting, mut running) = (0.0_f64, 0.0_f64);
    for step in 0..=STEPS {
        let angle = closed.travel_angle * (f64::from(step) / f64::from(STEPS));
        let Some(lasting) = held.lasting_torque(asking, operator, angle)? else {
            return Ok(None);
        };
        least = Some(least.map_or(
            lasting,
            |least| if lasting < least { lasting } else { least },
        ));
        for direction in [Direction::Opening, Direction::Closing] {
            let way = way(direction);
            let here = SwingGateTorque {
                angle,
                way,
                ..closed
            };
            if let Ok(torques) = here.evaluate() {
                starting = starting.max(torques.total.base().abs());
                running = running.max(torques.steady.base().abs());
            }
        }
    }
    let heats = asking.work(&RmsTorque {
        start_torque: Torque::from_base(starting),
        start_time: start,
        run_torque: Torque::from_base(running),
        run_time: travel - start,
        slow_torque: Torque::from_base(running),
        slow_time: Time::from_base(0.0),
        rest_time: Time::from_base((between - travel).base().max(0.0)),
        rest_cooling: Ratio::from_base(COOLING_AT_REST),
    })?;
    Ok(least.map(|least| {
        Comparison::at_most(
            Labeled::new(
                "steady torque that heats the motor as much",
                heats.rms_torque,
            ),
            Labeled::new("torque given without end", least),
        )
    }))
}

/// A slide, uphill both ways.
fn sliding<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, operator): (&'s Gate, &'s Operator),
    (travel, between): (Time, Time),
) -> Result<Comparison, Halt> {
    let leaf = leaf_of(asking, gate, operator)?;
    let level = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND);
    let slope = read!(asking, gate.slope);
    let start = start_time(asking, gate, travel);
    let rated = read!(asking, operator.rated_force);
    let (level, slope, start) = (level?, slope?, start?);
    let uphill = Ratio::from_base(slope.base().abs());
    let pull = asking.work(&SlideGateForce {
        slope: uphill,
        ..level
    })?;
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
    Ok(Comparison::at_most(
        Labeled::new("steady pull that heats the motor as much", heats.rms_force),
        Labeled::new("force given without end", rated?),
    ))
}
