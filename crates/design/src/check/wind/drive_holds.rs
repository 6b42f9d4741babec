//! What a standing drive holds, engaged and without power.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::force::swing_drive::{Hold, hold};
use crate::check::motion::OPERATOR;
use crate::outcome::Halt;
use formula::motion::LinearActuatorGeometry;
use quantity::{Force, Quantity as _};
use site::{DriveKind, Gate, Leaf, Site};

/// What the drive of a leaf holds.
pub(super) fn standing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    match site.operators_of_leaf(gate, leaf).next() {
        Some(operator) => read!(asking, operator.holding_force),
        None => asking.lack(&gate.origin, "operator", Wants::Table(OPERATOR)),
    }
}

/// What the drive of a swing leaf holds at its free end, wherever it has stopped: of a linear drive its ram with the
/// least leverage it has, which is at one of the ends.
pub(super) fn at_free_end<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    let held = standing(asking, site, gate, leaf);
    let width = read!(asking, leaf.length);
    let travel = read!(asking, gate.travel_angle);
    let Some(operator) = site.operators_of_leaf(gate, leaf).next() else {
        return Err(Halt);
    };
    let kind = pick!(asking, operator.drive);
    let (width, held) = (width?, held?);
    if kind? != DriveKind::Linear {
        return Ok(held);
    }
    let Hold::Ram(ram) = hold(asking, operator, width)? else {
        return Err(Halt);
    };
    let closed = asking.work(&ram)?.lever_arm;
    let open = asking.work(&LinearActuatorGeometry {
        angle: travel?,
        ..ram
    })?;
    let least = if closed < open.lever_arm {
        closed
    } else {
        open.lever_arm
    };
    Ok(Force::from_base(held.base() * least.base() / width.base()))
}
