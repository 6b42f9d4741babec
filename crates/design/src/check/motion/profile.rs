//! How fast a leaf's edge moves, whatever kind of gate it belongs to.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Velocity};
use site::{Gate, Leaf};

/// Cruise speed of the leaf's edge: along the line of a leaf that slides or lifts, at the free end of one that turns.
pub(crate) fn cruise_of<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Velocity, Halt> {
    if !turns(gate) {
        return read!(asking, gate.motion?.cruise_speed);
    }
    let turning = read!(asking, gate.motion?.cruise_turning_speed);
    let radius = radius(asking, gate);
    Ok(Velocity::from_base(turning?.base() * radius?.base()))
}

/// The leaf turns about a line rather than moving along one.
pub(crate) fn turns(gate: &Gate) -> bool {
    use site::GateKind::{BarrierArm, DoubleSwing, SingleSwing, VerticalPivot};
    matches!(
        gate.kind,
        BarrierArm | DoubleSwing | SingleSwing | VerticalPivot
    )
}

/// Distance from the line about which a leaf turns to its free end; the longest of several leaves.
pub(crate) fn radius<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let longest = |a: &&Leaf, b: &&Leaf| nominal(a).total_cmp(&nominal(b));
    let leaf = gate.leaf.iter().max_by(longest);
    let leaf = asking.need(
        &gate.origin,
        "leaf",
        leaf,
        "[{ id = \"leaf\", length = \"10 ft\" }]",
    )?;
    read!(asking, leaf.length)
}

fn nominal(leaf: &Leaf) -> f64 {
    leaf.length
        .map_or(f64::INFINITY, |length| length.nominal().base())
}
