//! What the trolleys of a cantilever leaf carry, over its travel.

use super::measure::{center_along, mass};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::leaf::{CantileverGateRollers, RollerLoads};
use quantity::{Force, Length, Quantity as _, Ratio};
use site::{Gate, Leaf};

/// The leaf at both ends of its travel, without anyone on it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ends {
    /// Fully closed.
    pub(crate) closed: CantileverGateRollers,
    /// Fully open.
    pub(crate) open: CantileverGateRollers,
}

impl Ends {
    /// The same with a load at the tip.
    pub(crate) fn with(self, tip_load: Force) -> Self {
        let climbed = |end| CantileverGateRollers { tip_load, ..end };
        Self {
            closed: climbed(self.closed),
            open: climbed(self.open),
        }
    }
}

/// The leaf at both ends of its travel.
pub(crate) fn ends<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Ends, Halt> {
    let mass = mass(asking, leaf);
    let center = center_along(asking, leaf);
    let closed_end = read!(asking, leaf.closed_end);
    let travel = read!(asking, gate.travel);
    let front = read!(asking, gate.wheels?.front_at);
    let spacing = read!(asking, gate.wheels?.spacing);
    let (mass, center, closed_end, travel) = (mass?, center?, closed_end?, travel?);
    let (front, spacing) = (front?, spacing?);
    let at = |moved: Length| CantileverGateRollers {
        mass,
        center_ahead: front - closed_end - center - moved,
        spacing,
        tip_load: Force::from_base(0.0),
        tip_ahead: front - closed_end - moved,
    };
    Ok(Ends {
        closed: at(Length::from_base(0.0)),
        open: at(travel),
    })
}

/// Loads at both ends: closed, open.
pub(crate) fn loads(asking: &mut Asking<'_>, ends: Ends) -> Result<[RollerLoads; 2], Halt> {
    Ok([asking.work(&ends.closed)?, asking.work(&ends.open)?])
}

/// Sum of the loads on the trolleys of a cantilever leaf over its weight, at the worse end of its travel.
pub(crate) fn load_factor<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Ratio, Halt> {
    let ends = ends(asking, gate, leaf)?;
    let [closed, open] = loads(asking, ends)?;
    if closed.load_factor > open.load_factor {
        Ok(closed.load_factor)
    } else {
        Ok(open.load_factor)
    }
}
