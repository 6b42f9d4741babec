//! Leaves that rise, lowered: an arm, a leaf that pivots upward, a leaf that is lifted.

use super::assumption::Assumption;
use super::devices::Sensing;
use super::lower::{common, first_leaf, prism, settled};
use super::motion::{plan, turning};
use super::press::{hefts, measured};
use super::strip::{Places, on_rising};
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::Plan;
use sim::walk::{
    AnyWorld, Direction, Leaf as Prism, LiftingLeaf, RisingLeaf, RisingPass, RisingWorld, Toward,
    TurningLeaf,
};
use site::{Gate, GateKind, Leaf, Site};

/// Lowers a gate with a leaf that rises.
pub(super) fn lower<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<(AnyWorld, Vec<Sensing>), Halt> {
    let first = first_leaf(asking, gate)?;
    let moves = moves(asking, gate, first, defaults);
    let places: &Places<'_> = &|device, ends| match &moves {
        Ok((leaf, _)) => on_rising(leaf, device, ends),
        Err(_) => Err("the leaf is not known"),
    };
    let common = common(asking, site, gate, places, defaults);
    let (common, (leaf, plan)) = (common?, moves?);
    let before = [(
        "closing",
        "the ground, on which whoever is below it stands".to_owned(),
    )];
    let limits = settled(asking, &common, Length::from_base(0.0), &before, defaults);
    let ends = [end_of(&leaf)];
    let measured = measured(asking, gate, &ends, defaults);
    let hefts = hefts(asking, site, gate, defaults);
    let pass = |direction| RisingPass { direction, plan };
    let world = RisingWorld {
        leaf,
        passes: vec![pass(Direction::Closing), pass(Direction::Opening)],
        beams: common.devices.beams,
        scanners: common.devices.scanners,
        edges: common.devices.edges,
        drive: common.drive,
        bare_stiffness: common.bare,
        controller: common.controller,
        limits,
        bodies: common.bodies,
        greatest_slant: common.slant,
        heft: hefts.first().copied(),
        measured,
        housing: housing(site, gate, &leaf, defaults),
    };
    Ok((AnyWorld::Rising(world), common.devices.sensing))
}

/// Distance from its pivot line to its free end; of a leaf that is lifted none.
fn end_of(leaf: &RisingLeaf) -> Length {
    match leaf {
        RisingLeaf::Turning(leaf) => leaf.length,
        RisingLeaf::Lifting(_) => Length::from_base(0.0),
    }
}

/// Where the drive of an arm stands, whose cover holds its heel: nobody is there.
fn housing(
    site: &Site,
    gate: &Gate,
    leaf: &RisingLeaf,
    defaults: &mut Vec<Assumption>,
) -> Option<(Length, Length)> {
    let covered = site
        .operators_of(gate)
        .any(|operator| operator.arm_covered == Some(true));
    let RisingLeaf::Turning(leaf) = leaf else {
        return None;
    };
    if !covered || gate.kind != GateKind::BarrierArm {
        return None;
    }
    let tall = leaf.above + leaf.below;
    defaults.push(Assumption::default(
        "the housing of the drive",
        "around the shaft, as far as the arm is high; nobody is in it",
        "the heel of the arm turns under its cover",
    ));
    Some((leaf.pivot - tall, leaf.pivot + tall))
}

/// The leaf and its plan.
fn moves<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    defaults: &mut Vec<Assumption>,
) -> Result<(RisingLeaf, Plan), Halt> {
    let of = |key| (&leaf.origin, key);
    let length = asking.read_at(of("length"), leaf.length.as_ref(), End::Nominal);
    let closed = asking.read_at(of("closed_end"), leaf.closed_end.as_ref(), End::Nominal);
    let prism = prism(asking, leaf);
    if gate.kind == GateKind::VerticalLift {
        let plan = plan(asking, gate);
        let (length, closed, prism) = (length?, closed?, prism?);
        let leaf = LiftingLeaf {
            from: closed,
            to: closed + length,
            closed: prism.bottom,
            tall: prism.top - prism.bottom,
            thickness: prism.thickness,
        };
        return Ok((RisingLeaf::Lifting(leaf), plan?));
    }
    let tail = match &leaf.tail {
        Some(tail) => asking.read_at(of("tail"), Some(tail), End::Nominal)?,
        None => Length::from_base(0.0),
    };
    let out = length.map(|length| length - tail);
    let plans = turning(
        asking,
        gate,
        out.iter().copied().collect::<Vec<_>>().as_slice(),
    );
    let up = pivot_up(asking, gate, &prism, defaults);
    let (length, closed, prism, up) = (out?, closed?, prism?, up?);
    let arm = TurningLeaf {
        pivot: closed + length,
        height: prism.bottom + up,
        toward: Toward::Smaller,
        heel: -tail,
        length,
        below: up,
        above: prism.top - prism.bottom - up,
        thickness: prism.thickness,
    };
    let plan = plans?.first().copied().ok_or(Halt)?;
    Ok((RisingLeaf::Turning(arm), plan))
}

/// Height of the pivot above the underside. An arm is taken to lie in line with its pivot, unless the site says how high
/// that is.
fn pivot_up<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    prism: &Result<Prism, Halt>,
    defaults: &mut Vec<Assumption>,
) -> Result<Length, Halt> {
    let key = (&gate.origin, "pivot_up");
    match (gate.kind, prism) {
        (GateKind::BarrierArm, Ok(prism)) if gate.pivot_up.is_none() => {
            let half = (prism.top - prism.bottom) / 2.0;
            defaults.push(Assumption::default(
                "height of the arm's shaft",
                asking.print().q(prism.bottom + half),
                "the middle of the arm",
            ));
            Ok(half)
        }
        (GateKind::BarrierArm, Err(_)) if gate.pivot_up.is_none() => Err(Halt),
        _ => asking.read_at(key, gate.pivot_up.as_ref(), End::Nominal),
    }
}
