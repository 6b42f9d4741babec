//! What a touch may do, how far a body may be squeezed, and what every walk test takes for granted.

use super::assumption::Assumption;
use crate::asking::Asking;
use crate::outcome::Halt;
use formula::protection::{En12453PeakForce, GateKind};
use quantity::{Force, ForcePerLength, Length, Quantity as _, Word as _};
use sim::walk::{ContactEdge, Direction, Limits};
use site::{CodeBasis, Gate, Site};

/// How far a body may be squeezed by a leaf without a soft edge before it counts as trapped.
const SQUEEZE: f64 = 0.01;
/// A gap that is wider than the one that crushes.
const WIDE: f64 = 10.0;
/// Gap up to which somebody counts as crushed.
const CRUSHING: f64 = 0.5;

/// The limits of EN 12453 as far as they were seen in print; in the United States they are a yardstick.
pub(super) fn limits<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<Limits, Halt> {
    let Some(kind) = GateKind::from_word(gate.kind.word()) else {
        return asking.refuse("this kind of gate has no limits of force");
    };
    let (narrow, wide) = (Length::from_base(CRUSHING), Length::from_base(WIDE));
    let crushing = asking.work(&En12453PeakForce {
        gate: kind,
        gap: narrow,
    })?;
    let open = asking.work(&En12453PeakForce {
        gate: kind,
        gap: wide,
    })?;
    let print = asking.print();
    let basis = if site.site.code_basis == CodeBasis::Us {
        "EN 12453:2017+A1:2021, as a yardstick: no figure of force for the United States was found to read"
    } else {
        "EN 12453:2017+A1:2021"
    };
    let force = |force: Force| print.q(force);
    defaults.push(Assumption {
        what: "limits of force".to_owned(),
        value: format!(
            "{} in a gap up to {}, {} in a wider one; {} after {}, {} after {}",
            force(crushing.peak),
            print.q(narrow),
            force(open.peak),
            force(crushing.settled),
            print.q(crushing.settled_time),
            force(crushing.end),
            print.q(crushing.end_time)
        ),
        known: "standard, as retold".to_owned(),
        source: basis.to_owned(),
        of_the_site: false,
    });
    Ok(Limits {
        crushing_gap: narrow,
        crushing_force: crushing.peak,
        open_force: open.peak,
        lasting_force: crushing.settled,
        lasting_after: crushing.settled_time,
        rest_force: crushing.end,
        rest_after: crushing.end_time,
        squeeze: Length::from_base(SQUEEZE),
    })
}

/// How far a body may be squeezed: as far as the softest way of every edge that goes ahead; and what a leaf laps past a
/// face counts as gap that is not there.
pub(super) fn squeezed(
    asking: &Asking<'_>,
    limits: Limits,
    overlap: Length,
    edges: &[&ContactEdge],
    defaults: &mut Vec<Assumption>,
) -> Limits {
    let soft = |direction: Direction| {
        let ahead = edges.iter().filter(|edge| edge.guards == direction);
        let softest = ahead
            .map(|edge| (edge.actuation_travel + edge.soft_travel).base())
            .fold(f64::INFINITY, f64::min);
        if softest.is_finite() {
            softest
        } else {
            SQUEEZE
        }
    };
    let least = soft(Direction::Closing).min(soft(Direction::Opening));
    let print = asking.print();
    defaults.push(Assumption::default(
        "how far a body with something fixed behind it may be squeezed",
        print.q(Length::from_base(least)),
        "as far as the softest edge that goes ahead gives; where an end of the leaf has none, 10 mm",
    ));
    let past = overlap.base();
    if past > 0.0 {
        defaults.push(Assumption::default(
            "how far the leaf laps past what it shuts against",
            print.q(overlap),
            "taken off the room before it",
        ));
    }
    Limits {
        squeeze: Length::from_base((least - past).max(1e-3)),
        crushing_gap: Length::from_base(CRUSHING + past),
        ..limits
    }
}

/// What the leaf moves toward, how stiff a body is, and the rules of the test.
pub(super) fn taken_for_granted(
    asking: &Asking<'_>,
    before: &[(&str, String)],
    bare: ForcePerLength,
    defaults: &mut Vec<Assumption>,
) {
    let print = asking.print();
    for (way, before) in before {
        defaults.push(Assumption {
            what: format!("what the {way} leaf moves toward"),
            value: before.clone(),
            known: "by design".to_owned(),
            source: "posts and nearby things of the gate".to_owned(),
            of_the_site: false,
        });
    }
    defaults.push(Assumption::default(
        "a body against a leaf without a soft edge",
        print.q(bare),
        "the stiffest part of a body, its skull: ISO/TS 15066:2016, table A.3, as a public page tabulates it",
    ));
    for (what, value) in RULES {
        defaults.push(Assumption::default(*what, *value, "rule of this test"));
    }
}

/// What the test itself takes for granted.
const RULES: &[(&str, &str)] = &[
    (
        "paths",
        "straight, at one speed, at most 45° off square to the gate, at every place of the opening and every moment; nobody steps aside or falls",
    ),
    (
        "speeds left out",
        "whoever goes slower than the slowest speed of the list and does not stand still",
    ),
    (
        "one at a time",
        "one person; level ground; no clothes, bags or tools beyond the body",
    ),
    (
        "the first touch",
        "decides; walking into a leaf that stands, or into its side, counts as harmless",
    ),
    (
        "a second touch by the same edge",
        "no worse than a first one of whoever is there before the leaf starts: a leaf that starts again on its way is nowhere faster than one that has come all the way, and whoever fell is among those who lie there",
    ),
    (
        "what is not followed after a touch",
        "whoever stands behind the other end of the leaf while it goes back a little way",
    ),
    (
        "devices",
        "all work; a blocked beam at rest keeps the leaf at rest; a body that is seen for less time than the response is not reported",
    ),
    (
        "contact",
        "the body is rigid and held fast, as a force meter is; what gives is the edge. No force measurement, and none is replaced",
    ),
];
