//! Whether somebody fits between the beams and the leaf without being seen.
//!
//! On each side of a leaf that slides, the beam nearest to it is asked. The space between it and the leaf's face is held
//! against the thinnest body of the default list; a field on that side, or a contact edge on the leaf's end, covers the
//! space otherwise. Leaves that swing or rise move through the space themselves: there an edge or a field has to cover it.

use crate::asking::{Asking, End};
use crate::check::motion::turns;
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::walk::{of_gate, senses_people};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use sim::walk::people;
use site::{Device, DeviceKind, Direction, Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-person-between",
    codes: BOTH,
    leaves_open: "whether the controller keeps a standing gate at rest while a beam is blocked: try each control with each beam blocked; a contact edge feels whoever it meets, and does not see them",
    concerns: "each gate with a beam, a field or an edge that stops it",
    ask,
};

static THINNEST: Source = Source {
    work: "depth of the thinnest body that stands, a child of about 3",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen in print",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site
        .gate
        .iter()
        .filter(|gate| gate.kind != GateKind::BarrierArm)
    {
        if stopping(site, gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                between(asking, site, gate)
            });
        }
    }
}

/// The devices of a gate that stop its closing.
fn stopping<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    of_gate(site, gate)
        .filter(|device| senses_people(device) && device.guards.contains(&Direction::Closing))
}

fn between<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let edge = stopping(site, gate)
        .find(|device| device.kind == DeviceKind::ContactEdge && device.carried_by.is_some());
    if turns(gate) || gate.kind == GateKind::VerticalLift {
        return Ok(moves_through(asking, site, gate, edge));
    }
    let half = half_thickness(asking, gate);
    let outside = nearest(asking, site, gate, false);
    let inside = nearest(asking, site, gate, true);
    let (half, outside, inside) = (half?, outside?, inside?);
    let thinnest = thinnest();
    let mut compared = Vec::new();
    let mut words = Vec::new();
    for (side, beam, is_inside) in [("road", outside, false), ("property", inside, true)] {
        if let Some((device, distance)) = beam {
            let space = Length::from_base((distance - half).max(0.0));
            let print = asking.print();
            words.push(format!(
                "on the {side} side {} leaves {} between its beam and the leaf",
                device.id,
                print.q(space)
            ));
            if space > thinnest && covered(site, gate, is_inside, edge).is_some() {
                words.push("which an edge or a field covers".to_owned());
                continue;
            }
            compared.push(Comparison::below(
                Labeled::new("space between beam and leaf", space),
                Labeled::new("thinnest body that stands", thinnest),
            ));
        } else if covered(site, gate, is_inside, edge).is_none() {
            asking.say(|_| format!("Nothing sees or feels anybody on the {side} side."));
            return Ok(Outcome::Rule(false));
        } else {
            words.push(format!(
                "on the {side} side an edge or a field covers the space"
            ));
        }
    }
    asking.rest_on(&GEOMETRY);
    asking.say(|_| format!("{}.", crate::walk::capital(&words.join("; "))));
    if compared.is_empty() {
        return Ok(Outcome::Rule(true));
    }
    asking.rest_on(&THINNEST);
    Outcome::worst(compared).ok_or(Halt)
}

/// A leaf that swings or rises through the space: an edge or a field has to cover it.
fn moves_through<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    edge: Option<&'s Device>,
) -> Outcome {
    asking.rest_on(&GEOMETRY);
    let cover =
        edge.or_else(|| stopping(site, gate).find(|device| device.kind == DeviceKind::AreaScanner));
    asking.say(|_| match cover {
        Some(device) => format!(
            "The leaf moves through the space between beams and gate line; whoever stands there is met by {}.",
            device.id
        ),
        None => "The leaf moves through the space between beams and gate line; whoever stands there is neither seen nor felt.".to_owned(),
    });
    Outcome::Rule(cover.is_some())
}

/// An edge on the leaf, or a field on that side.
fn covered<'s>(
    site: &'s Site,
    gate: &'s Gate,
    inside: bool,
    edge: Option<&'s Device>,
) -> Option<&'s Device> {
    let on_that_side = |device: &&Device| {
        device.kind == DeviceKind::AreaScanner
            && device
                .field
                .iter()
                .any(|corner| (corner.y.nominal().base() > 0.0) == inside)
    };
    edge.or_else(|| stopping(site, gate).find(on_that_side))
}

fn half_thickness<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<f64, Halt> {
    let leaf: &Leaf = asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.first(),
        "[{ id = \"leaf\", thickness = \"2 in\" }]",
    )?;
    let key = (&leaf.origin, "thickness");
    let thickness = asking.read_at(key, leaf.thickness.as_ref(), End::Low)?;
    Ok(0.5 * thickness.base())
}

/// The beam nearest to the leaf on one side, and how far its farther end is from the gate line.
fn nearest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    inside: bool,
) -> Result<Option<(&'s Device, f64)>, Halt> {
    let mut nearest: Option<(&Device, f64)> = None;
    let beams = stopping(site, gate).filter(|device| {
        matches!(
            device.kind,
            DeviceKind::ThroughBeam | DeviceKind::Reflective
        )
    });
    let mut whole = Ok(());
    for device in beams {
        let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
        let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
        let (Ok([_, at, _]), Ok([_, to, _])) = (at, to) else {
            whole = Err(Halt);
            continue;
        };
        let distance = at.base().abs().max(to.base().abs());
        let here = (at.base() + to.base() > 0.0) == inside;
        if here && nearest.is_none_or(|(_, known)| distance < known) {
            nearest = Some((device, distance));
        }
    }
    whole.map(|()| nearest)
}

/// Depth of the thinnest body of the default list that stands.
fn thinnest() -> Length {
    let depth = |body: &sim::walk::Body| {
        let widest = body.parts.iter().map(|part| 2.0 * part.radius.base());
        widest.fold(0.0, f64::max)
    };
    let standing = people();
    let depths = standing
        .iter()
        .filter(|body| body.speeds.is_some() && body.parts.iter().any(|part| part.top.base() > 0.8))
        .map(depth);
    Length::from_base(depths.fold(f64::INFINITY, f64::min))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::walk::yard::YARD;

    #[test]
    fn holds_where_an_edge_feels_whom_no_beam_sees() {
        let far = YARD.replace("\"-0.1 m\", \"0.5 m\"", "\"-1 m\", \"0.5 m\"");
        let finding = only(&CHECK, &far);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_nothing_on_one_side() {
        let bare = YARD.replace("carried_by = \"leaf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_until_the_thinnest_body_is_looked_up_and_without_the_place_of_a_beam() {
        let finding = only(&CHECK, YARD);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let open = YARD.replace("to = [\"-0.1 m\", \"-0.1 m\", \"0.5 m\"]", "");
        assert_eq!(only(&CHECK, &open).missing.len(), 1);
    }
}
