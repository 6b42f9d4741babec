//! What is unbalanced on an arm or a leaf that rises, anywhere on its travel, with or without wind and speeding up.

use super::counterbalance::{balance, counterweight, hung_mass, spring_lift, spring_torque};
use crate::asking::{Asking, read};
use crate::check::leaf::{center_along, center_up, mass};
use crate::check::wind::load::{Wind, on_leaf};
use crate::outcome::Halt;
use formula::motion::{
    VerticalLiftForce, VerticalLiftForces, VerticalPivotTorque, VerticalPivotTorques,
};
use quantity::{
    Acceleration, Angle, Argument as _, Force, Length, Pressure, Quantity as _, Torque, Value,
};
use site::{Gate, GateKind, Leaf, Site};

/// Where on the travel, and what works on the leaf beside its weight and its balance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct RisingAt {
    /// Share of the travel: 0 closed, 1 open.
    pub(crate) share: f64,
    /// Wind along the gate line; none on a calm day, and of no account for a leaf that lifts.
    pub(crate) wind: Option<Wind>,
    /// The leaf and its counterweight are being sped up.
    pub(crate) speeding_up: bool,
}

impl RisingAt {
    /// Standing free on a calm day.
    pub(crate) fn free(share: f64) -> Self {
        Self {
            share,
            wind: None,
            speeding_up: false,
        }
    }

    /// Standing or running steadily in the operating wind.
    pub(crate) fn steady(share: f64) -> Self {
        Self {
            wind: Some(Wind::Operating),
            ..Self::free(share)
        }
    }

    /// Speeding up in the operating wind.
    pub(crate) fn starting(share: f64) -> Self {
        Self {
            speeding_up: true,
            ..Self::steady(share)
        }
    }
}

/// What is unbalanced at one place of the travel: above zero the leaf falls closed.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Rising {
    /// About a level pivot, at this angle above the closed position.
    Turning(Angle, VerticalPivotTorques),
    /// Straight up, at this height above the closed position.
    Lifting(Length, VerticalLiftForces),
}

impl Rising {
    /// What falls closed when nothing holds the leaf; below zero it rises.
    pub(crate) fn unbalanced(&self) -> f64 {
        match self {
            Self::Turning(_, torques) => torques.unbalanced.base(),
            Self::Lifting(_, forces) => forces.unbalanced.base(),
        }
    }

    /// What the drive must push or hold here in the worse direction, the wind taken to hinder.
    pub(crate) fn demand(&self) -> f64 {
        let unbalanced = self.unbalanced().abs();
        match self {
            Self::Turning(_, torques) => unbalanced + (torques.wind + torques.speeding_up).base(),
            Self::Lifting(_, forces) => unbalanced + forces.speeding_up.base(),
        }
    }

    /// A number as what it is here: a torque or a force.
    pub(crate) fn value(&self, base: f64) -> Value {
        match self {
            Self::Turning(..) => Torque::from_base(base).to_value(),
            Self::Lifting(..) => Force::from_base(base).to_value(),
        }
    }

    /// Where on the travel: an angle or a height.
    pub(crate) fn place(&self) -> Value {
        match self {
            Self::Turning(angle, _) => angle.to_value(),
            Self::Lifting(rise, _) => rise.to_value(),
        }
    }
}

/// Steps into which the travel is cut to find the hardest place; the torque of an arm changes by less than a hundredth
/// of its largest value within half a step near its peak.
const STEPS: u32 = 12;

/// The places of the travel at which it is asked, closed first.
pub(crate) fn places() -> impl Iterator<Item = f64> {
    (0..=STEPS).map(|step| f64::from(step) / f64::from(STEPS))
}

/// The place of the travel at which a figure is largest. Only that place stands in the working.
pub(crate) fn hardest<'s>(
    asking: &mut Asking<'s>,
    at: impl Fn(f64) -> RisingAt,
    ask: impl Fn(&mut Asking<'s>, RisingAt) -> Result<Rising, Halt>,
    figure: impl Fn(&Rising) -> f64,
) -> Result<Rising, Halt> {
    let record = asking.record.take();
    let mut worst: Option<(f64, f64)> = None;
    let mut found = Ok(());
    for share in places() {
        match ask(asking, at(share)) {
            Ok(rising) => {
                let now = figure(&rising);
                if worst.is_none_or(|(_, before)| now > before) {
                    worst = Some((share, now));
                }
            }
            Err(halt) => {
                found = Err(halt);
                break;
            }
        }
    }
    asking.record = record;
    found?;
    let share = worst.map_or(0.0, |(share, _)| share);
    ask(asking, at(share))
}

/// The gate's leaf turns up about a level pivot or rises straight up.
pub(crate) fn rises(gate: &Gate) -> bool {
    matches!(
        gate.kind,
        GateKind::BarrierArm | GateKind::VerticalPivot | GateKind::VerticalLift
    )
}

/// What is unbalanced on a leaf that rises, at a share of its travel.
pub(crate) fn rising<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    at: RisingAt,
) -> Result<Rising, Halt> {
    if gate.kind == GateKind::VerticalLift {
        lifting(asking, gate, leaf, at)
    } else {
        turning(asking, site, (gate, leaf), at)
    }
}

fn turning<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    at: RisingAt,
) -> Result<Rising, Halt> {
    let mass = mass(asking, leaf);
    let reach = reach(asking, leaf);
    let center = center_along(asking, leaf);
    let up = center_above_pivot(asking, gate, leaf);
    let depth = read!(asking, leaf.height);
    let travel = read!(asking, gate.travel_angle);
    let wind = wind(asking, site, leaf, at);
    let acceleration = acceleration(asking, gate, at);
    let balance = balance(asking, gate);
    let angle = travel.map_or(Angle::from_base(0.0), |travel| travel * at.share);
    let counterweight = balance.and_then(|balance| counterweight(asking, balance));
    let springs = balance.and_then(|balance| spring_torque(asking, balance, angle));
    let (counterweight, wind, reach) = (counterweight?, wind?, reach?);
    travel?;
    let torques = asking.work(&VerticalPivotTorque {
        mass: mass?,
        center_along: reach - center?,
        center_up: up?,
        reach,
        depth: depth?,
        angle,
        counterweight_mass: counterweight.mass,
        counterweight_radius: counterweight.radius,
        offset_angle: counterweight.offset,
        spring_torque: springs?,
        wind_pressure: wind.0,
        wind_width: wind.1,
        acceleration: acceleration?,
    })?;
    Ok(Rising::Turning(angle, torques))
}

fn lifting<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    at: RisingAt,
) -> Result<Rising, Halt> {
    let mass = mass(asking, leaf);
    let travel = read!(asking, gate.travel);
    let acceleration = acceleration(asking, gate, at);
    let balance = balance(asking, gate);
    let rise = travel.map_or(Length::from_base(0.0), |travel| travel * at.share);
    let counterweight = balance.and_then(|balance| hung_mass(asking, balance));
    let springs = balance.and_then(|balance| spring_lift(asking, balance, rise));
    travel?;
    let forces = asking.work(&VerticalLiftForce {
        mass: mass?,
        counterweight_mass: counterweight?,
        spring_lift: springs?,
        friction: Force::from_base(0.0),
        acceleration: acceleration?,
    })?;
    Ok(Rising::Lifting(rise, forces))
}

/// Distance from the pivot to the free end: the length without the part behind the pivot.
fn reach<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    let length = read!(asking, leaf.length)?;
    let tail = asking.read_if_there(&leaf.origin, "tail", leaf.tail.as_ref());
    Ok(length - tail.unwrap_or(Length::from_base(0.0)))
}

/// How far the center of gravity lies above the pivot. An arm is taken to lie in line with its pivot, unless the site
/// says how high its pivot is.
fn center_above_pivot<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Length, Halt> {
    let slender = gate.kind == GateKind::BarrierArm;
    if slender && gate.pivot_up.is_none() {
        return Ok(Length::from_base(0.0));
    }
    let pivot = read!(asking, gate.pivot_up);
    let center = center_up(asking, leaf);
    Ok(center? - pivot?)
}

/// Pressure of the wind along the gate line, and the width that meets it.
fn wind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    at: RisingAt,
) -> Result<(Pressure, Length), Halt> {
    let Some(wind) = at.wind else {
        return Ok((Pressure::from_base(0.0), Length::from_base(0.0)));
    };
    let pressure = on_leaf(asking, site, leaf, wind);
    let width = read!(asking, leaf.thickness);
    Ok((pressure?.pressure, width?))
}

fn acceleration<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    at: RisingAt,
) -> Result<Acceleration, Halt> {
    if at.speeding_up {
        read!(asking, gate.motion?.acceleration)
    } else {
        Ok(Acceleration::from_base(0.0))
    }
}
