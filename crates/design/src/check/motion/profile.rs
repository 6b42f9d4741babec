//! How fast a leaf's edge moves, whatever kind of gate it belongs to, and what drives it.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Velocity};
use site::{Gate, Leaf, Operator, Site};

/// The operator of a gate; the first where it has several.
pub(crate) fn operator_of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<&'s Operator, Halt> {
    match site.operators_of(gate).next() {
        Some(operator) => Ok(operator),
        None => asking.lack(&gate.origin, "operator", Wants::Table(OPERATOR)),
    }
}

/// How an operator is written.
pub(crate) const OPERATOR: &str = "[[operator]]\nid = \"drive\"\ngate = \"main\"";

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
