//! What balances a leaf that rises: counterweight and springs, from what the site says of them.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use formula::motion::{ExtensionSpringTorque, TorsionSpringLift, TorsionSpringTorque};
use quantity::{Angle, Force, Length, Mass, Quantity as _, Ratio, Torque};
use site::{Balance, BalanceKind, Gate};

/// The balance of a gate that must have one.
pub(super) fn balance<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<&'s Balance, Halt> {
    match &gate.balance {
        Some(balance) => Ok(balance),
        None => asking.lack(&gate.origin, "balance", Wants::Table(BALANCE)),
    }
}

/// How a balance is written.
pub(crate) const BALANCE: &str =
    "[gate.balance]\nkind = \"counterweight\"\nmass = \"110 lb\"\nradius = \"18 in\"";

/// A counterweight on the arm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Counterweight {
    pub(super) mass: Mass,
    pub(super) radius: Length,
    pub(super) offset: Angle,
}

pub(super) fn counterweight<'s>(
    asking: &mut Asking<'s>,
    balance: &'s Balance,
) -> Result<Counterweight, Halt> {
    let none = Counterweight {
        mass: Mass::from_base(0.0),
        radius: Length::from_base(0.0),
        offset: Angle::from_base(0.0),
    };
    if balance.kind != BalanceKind::Counterweight && balance.mass.is_none() {
        return Ok(none);
    }
    let mass = read!(asking, balance.mass);
    let radius = read!(asking, balance.radius);
    let offset = asking.read_if_there(
        &balance.origin,
        "offset_angle",
        balance.offset_angle.as_ref(),
    );
    Ok(Counterweight {
        mass: mass?,
        radius: radius?,
        offset: offset.unwrap_or(none.offset),
    })
}

/// Mass of a counterweight on the rope of a lift.
pub(super) fn hung_mass<'s>(asking: &mut Asking<'s>, balance: &'s Balance) -> Result<Mass, Halt> {
    if balance.kind == BalanceKind::Counterweight {
        return read!(asking, balance.mass);
    }
    let mass = asking.read_if_there(&balance.origin, "mass", balance.mass.as_ref());
    Ok(mass.unwrap_or(Mass::from_base(0.0)))
}

/// Torque with which the springs of an arm lift at an angle.
pub(super) fn spring_torque<'s>(
    asking: &mut Asking<'s>,
    balance: &'s Balance,
    angle: Angle,
) -> Result<Torque, Halt> {
    match balance.kind {
        BalanceKind::Counterweight => Ok(Torque::from_base(0.0)),
        BalanceKind::TorsionSpring => {
            let wound = wound(asking, balance)?;
            let gives = asking.work(&TorsionSpringTorque {
                torque_per_turn: wound.torque_per_turn,
                turns_closed: wound.turns_closed,
                count: wound.count,
                angle,
            })?;
            Ok(gives.torque)
        }
        BalanceKind::ExtensionSpring => extension(asking, balance, angle),
    }
}

/// Torsion springs as they are wound with the gate closed.
#[derive(Debug, Clone, Copy)]
struct Wound {
    torque_per_turn: Torque,
    turns_closed: Ratio,
    count: u32,
}

fn wound<'s>(asking: &mut Asking<'s>, balance: &'s Balance) -> Result<Wound, Halt> {
    let torque_per_turn = read!(asking, balance.torque_per_turn);
    let turns_closed = read!(asking, balance.turns_closed);
    let count = asking.pick(&balance.origin, "count", balance.count);
    Ok(Wound {
        torque_per_turn: torque_per_turn?,
        turns_closed: turns_closed?,
        count: count?,
    })
}

fn extension<'s>(
    asking: &mut Asking<'s>,
    balance: &'s Balance,
    angle: Angle,
) -> Result<Torque, Halt> {
    let stiffness = read!(asking, balance.stiffness);
    let pull_closed = read!(asking, balance.pull_closed);
    let hook_radius = read!(asking, balance.hook_radius);
    let anchor_depth = read!(asking, balance.anchor_depth);
    let count = asking.pick(&balance.origin, "count", balance.count);
    let gives = asking.work(&ExtensionSpringTorque {
        stiffness: stiffness?,
        pull_closed: pull_closed?,
        hook_radius: hook_radius?,
        anchor_depth: anchor_depth?,
        count: count?,
        angle,
    })?;
    Ok(gives.torque)
}

/// Force with which the springs of a lift pull at a height.
pub(super) fn spring_lift<'s>(
    asking: &mut Asking<'s>,
    balance: &'s Balance,
    rise: Length,
) -> Result<Force, Halt> {
    match balance.kind {
        BalanceKind::Counterweight => Ok(Force::from_base(0.0)),
        BalanceKind::TorsionSpring => {
            let wound = wound(asking, balance);
            let drum_radius = read!(asking, balance.drum_radius);
            let (wound, drum_radius) = (wound?, drum_radius?);
            let gives = asking.work(&TorsionSpringLift {
                torque_per_turn: wound.torque_per_turn,
                turns_closed: wound.turns_closed,
                count: wound.count,
                drum_radius,
                rise,
            })?;
            Ok(gives.lift)
        }
        BalanceKind::ExtensionSpring => asking.refuse(
            "how extension springs are reeved to a lift is not in a site file; weigh the leaf with a scale under it at five heights",
        ),
    }
}
