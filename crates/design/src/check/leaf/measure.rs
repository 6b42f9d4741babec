//! Mass and center of a leaf, and what its wheels carry, as far as the site says.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Length, Mass, Quantity as _, Ratio};
use site::{Gate, Leaf};

/// Mass of the finished leaf.
pub(crate) fn mass<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Mass, Halt> {
    read!(asking, leaf.mass)
}

/// Distance of the center of gravity from the latching end.
pub(crate) fn center_along<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    read!(asking, leaf.center_along)
}

/// Sum of the loads on the trolleys of a cantilever leaf over its weight, at the worse end of its travel.
pub(crate) fn load_factor<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Ratio, Halt> {
    let center = center_along(asking, leaf);
    let closed_end = read!(asking, leaf.closed_end);
    let travel = read!(asking, gate.travel);
    let front = read!(asking, gate.wheels?.front_at);
    let spacing = read!(asking, gate.wheels?.spacing);
    let (front, spacing) = (front?, spacing?);
    let closed = front - (closed_end? + center?);
    let open = closed - travel?;
    let sum = |ahead: Length| {
        let rear = ahead.base() / spacing.base();
        rear.abs() + (1.0 + rear).abs()
    };
    if spacing.base() <= 0.0 {
        return asking.refuse("the trolleys must stand apart");
    }
    Ok(Ratio::from_base(sum(closed).max(sum(open))))
}
