//! Leaves and their gates.

use super::report::{Report, above};
use crate::Id;
use crate::model::{Gate, GateKind, Leaf, Site};
use crate::origin::Origin;
use crate::problem::Code;
use quantity::{Length, Quantity, UnitSystem, print};

/// Gap that a swing leaf may leave at each of its ends, in meters: wider ones are no closed gate. Common practice.
const SWING_GAP: f64 = 0.10;

/// The leaf, or the leaves together, cover the opening.
pub(super) fn shorter_than_opening(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        let Some(leaves) = covered(gate) else {
            continue;
        };
        let Some(opening) = gate
            .clear_opening
            .map(|opening| opening.low().base() - allowed_gap(gate))
        else {
            continue;
        };
        if leaves < opening {
            let (Some(first), Some(system)) = (gate.leaf.first(), Some(site.site.unit_system()))
            else {
                continue;
            };
            let what = format!(
                "the leaf covers {} of an opening of {}",
                meters(leaves, system),
                gate.clear_opening
                    .map(|opening| print(opening.nominal(), system))
                    .unwrap_or_default()
            );
            let expected = "a leaf that reaches across `clear_opening`, its tail not counted";
            report.wrong(
                Code::LeafShorterThanOpening,
                &first.origin,
                "length",
                &what,
                expected,
            );
        }
    }
}

/// A length in the units of the site.
fn meters(meters: f64, system: UnitSystem) -> String {
    print(Length::from_base(meters), system)
}

/// What the leaves cover at most, in meters; nothing while a length is unknown or where the leaf need not cover it.
fn covered(gate: &Gate) -> Option<f64> {
    if gate.leaf.is_empty() || gate.kind == GateKind::BarrierArm {
        return None;
    }
    gate.leaf.iter().map(covered_by).sum()
}

fn covered_by(leaf: &Leaf) -> Option<f64> {
    let tail = leaf.tail.map_or(0.0, |tail| tail.low().base());
    leaf.length.map(|length| length.high().base() - tail)
}

/// Gaps at hinges and latches together, in meters.
fn allowed_gap(gate: &Gate) -> f64 {
    match gate.kind {
        GateKind::SingleSwing => 2.0 * SWING_GAP,
        GateKind::DoubleSwing => 3.0 * SWING_GAP,
        _ => 0.0,
    }
}

/// A gate has as many leaves as its kind; none at all while nobody has measured them.
pub(super) fn count(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        let (leaves, wanted) = (
            gate.leaf.len(),
            if gate.kind == GateKind::DoubleSwing {
                2
            } else {
                1
            },
        );
        let what = format!(
            "a {} gate with {leaves} {}",
            gate.kind,
            if leaves == 1 { "leaf" } else { "leaves" }
        );
        let expected = format!(
            "{wanted} {}",
            if wanted == 1 {
                "leaf; two leaves that open apart are two gates"
            } else {
                "leaves"
            }
        );
        if leaves > wanted {
            report.wrong(Code::LeafCount, &gate.origin, "kind", &what, &expected);
        } else if leaves == 1 && wanted == 2 {
            report.doubtful(Code::LeafCount, &gate.origin, "kind", &what, &expected);
        }
    }
}

/// The tail is a part of the leaf.
pub(super) fn tail_too_long(site: &Site, report: &mut Report<'_>) {
    for leaf in site.gate.iter().flat_map(|gate| &gate.leaf) {
        let equal = leaf
            .tail
            .zip(leaf.length)
            .is_some_and(|(tail, length)| tail.nominal() == length.nominal());
        if equal || above(leaf.tail, leaf.length) {
            let expected = "less than `length`, of which the tail is a part";
            report.wrong(
                Code::TailTooLong,
                &leaf.origin,
                "tail",
                "the tail is as long as the whole leaf",
                expected,
            );
        }
    }
}

/// The axle is thinner than the wheel.
pub(super) fn axle_too_thick(site: &Site, report: &mut Report<'_>) {
    for wheels in site.gate.iter().filter_map(|gate| gate.wheels.as_ref()) {
        if above(wheels.axle_diameter, wheels.diameter) {
            let what = "the axle is thicker than the wheel";
            report.wrong(
                Code::AxleTooThick,
                &wheels.origin,
                "axle_diameter",
                what,
                "less than `diameter`",
            );
        }
    }
}

/// A leaf belongs to the gate that is named beside it.
pub(super) fn of_another_gate(site: &Site, report: &mut Report<'_>) {
    for operator in &site.operator {
        belongs(
            site,
            report,
            &operator.origin,
            "leaf",
            (Some(&operator.gate), operator.leaf.as_ref()),
        );
    }
    for device in &site.device {
        belongs(
            site,
            report,
            &device.origin,
            "carried_by",
            (device.gate.as_ref(), device.carried_by.as_ref()),
        );
    }
}

fn belongs(
    site: &Site,
    report: &mut Report<'_>,
    origin: &Origin,
    key: &str,
    (gate, leaf): (Option<&Id>, Option<&Id>),
) {
    let (Some(gate), Some(leaf)) = (gate, leaf) else {
        return;
    };
    let owner = site
        .gate
        .iter()
        .find(|candidate| candidate.leaf.iter().any(|its| its.id == *leaf));
    if let Some(owner) = owner.filter(|owner| owner.id != *gate) {
        let what = format!(
            "leaf `{leaf}` belongs to gate `{}`, not to `{gate}`",
            owner.id
        );
        report.wrong(
            Code::LeafOfAnotherGate,
            origin,
            key,
            &what,
            &format!("a leaf of gate `{gate}`"),
        );
    }
}
