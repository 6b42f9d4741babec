//! Whether each body in each posture breaks a beam, or is met by a field or an edge, wherever the leaf can catch it.
//!
//! Asked of each direction of motion. A body that is lower than the underside of the leaf or arm is not caught by it. What
//! a device looks at is asked too: a beam with a post or a wall in its line, or one that looks past the opening, and a field
//! that covers none of it, see nobody.

use crate::asking::{Asking, End};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use crate::walk::{heights, of_gate, senses_people};
use formula::{Evidence, Source};
use quantity::{Length, Measured, Quantity as _, Word as _};
use sim::walk::{Body, people};
use site::{Device, DeviceKind, Direction, Gate, GateKind, Site};

use super::line_of_sight::trouble;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-beam-heights",
    codes: BOTH,
    leaves_open: "a drawbar, tools and bags, whoever reaches through, and ground that rises or falls along the beam; an arm that rises goes away from people",
    concerns: "each gate with leaves that move past people",
    ask,
};

static BODIES: Source = Source {
    work: "shapes of children, wheelchair user, cyclist, and of whoever crawls or lies",
    clause: "",
    evidence: Evidence::Memory,
    seen: "sizes of adults and heights of children were seen in print; the shapes are recalled in part",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site
        .gate
        .iter()
        .filter(|gate| gate.kind != GateKind::VerticalLift)
    {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            all_are_met(asking, site, gate)
        });
    }
}

fn all_are_met<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let devices: Vec<&Device> = of_gate(site, gate)
        .filter(|device| senses_people(device))
        .collect();
    let clearance = clearance(asking, gate);
    let mut whole = Ok(());
    for device in &devices {
        if placed(asking, device).is_err() {
            whole = Err(Halt);
        }
    }
    let clearance = clearance?;
    whole?;
    asking.rest_on(&BODIES);
    let troubles: Vec<String> = devices
        .iter()
        .filter_map(|device| trouble(gate, device))
        .collect();
    if !troubles.is_empty() {
        asking.say(|_| troubles.join(" "));
        return Ok(Outcome::Rule(false));
    }
    let missed = missed(gate, &devices, clearance);
    asking.say(|_| said(&devices, &missed));
    Ok(Outcome::Rule(missed.is_empty()))
}

/// What is needed of a device's place.
fn placed<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<(), Halt> {
    let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
    if device.kind == DeviceKind::AreaScanner {
        return at.map(drop);
    }
    let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
    let capability = match device.kind {
        DeviceKind::ContactEdge => Ok(()),
        _ => asking
            .read_at(
                (&device.origin, "detection_capability"),
                device.detection_capability.as_ref(),
                End::High,
            )
            .map(drop),
    };
    at.and(to)?;
    capability
}

/// Height below which nothing of the leaves comes.
fn clearance<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<f64, Halt> {
    let mut least = f64::INFINITY;
    for leaf in &gate.leaf {
        let key = (&leaf.origin, "ground_clearance");
        let clearance = asking.read_at(key, leaf.ground_clearance.as_ref(), End::Low)?;
        least = least.min(clearance.base());
    }
    if least.is_finite() {
        Ok(least)
    } else {
        asking
            .lack_of::<Length>(&gate.origin, "leaf.ground_clearance")
            .map(|_| 0.0)
    }
}

/// Bodies that no device meets, each with the direction.
fn missed(gate: &Gate, devices: &[&Device], clearance: f64) -> Vec<(String, Direction)> {
    let mut missed = Vec::new();
    for direction in [Direction::Closing, Direction::Opening] {
        if direction == Direction::Opening && gate.kind == GateKind::BarrierArm {
            continue;
        }
        let act = |device: &&&Device| device.guards.contains(&direction);
        let acting: Vec<&Device> = devices.iter().filter(act).copied().collect();
        let caught = |body: &Body| {
            let top = body.parts.iter().map(|part| part.top.base());
            top.fold(0.0, f64::max) > clearance
        };
        for body in people().iter().filter(|body| caught(body)) {
            if !acting.iter().any(|device| meets(device, body)) {
                missed.push((body.name.clone(), direction));
            }
        }
    }
    missed
}

/// The device sees or feels a body that is at its place.
fn meets(device: &Device, body: &Body) -> bool {
    let (low, high) = heights(device);
    let object = device
        .detection_capability
        .as_ref()
        .map_or(0.0, |object| Measured::high(object).base());
    let half = 0.5 * object;
    body.parts.iter().any(|part| {
        let (bottom, top, radius) = (part.bottom.base(), part.top.base(), part.radius.base());
        match device.kind {
            DeviceKind::ContactEdge => device.carried_by.is_some() && top > low && bottom < high,
            DeviceKind::AreaScanner => bottom <= low && top >= low && radius > object,
            _ => bottom <= (low - half).max(0.0) && top >= high + half && radius > half,
        }
    })
}

fn said(devices: &[&Device], missed: &[(String, Direction)]) -> String {
    let beams: Vec<String> = devices
        .iter()
        .filter(|device| device.kind != DeviceKind::ContactEdge)
        .map(|device| device.id.to_string())
        .collect();
    let unseen: Vec<String> = people()
        .iter()
        .filter(|body| {
            let seen =
                |device: &&&Device| device.kind != DeviceKind::ContactEdge && meets(device, body);
            !devices.iter().any(|device| seen(&device))
        })
        .map(|body| body.name.clone())
        .collect();
    let low = match (beams.is_empty(), unseen.is_empty()) {
        (true, _) => "No beam or field looks at anybody.".to_owned(),
        (false, true) => format!("Every body breaks one of {}.", and(&beams)),
        (false, false) => format!("At their heights {} miss: {}.", and(&beams), and(&unseen)),
    };
    if missed.is_empty() {
        return format!(
            "{low} Whoever they miss is felt by a contact edge or is lower than the leaf."
        );
    }
    let names: Vec<String> = missed
        .iter()
        .map(|(name, direction)| format!("{name} while {}", direction.word()))
        .collect();
    format!("{low} No edge covers the rest: {}.", and(&names))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::walk::yard::YARD;

    #[test]
    fn holds_once_the_sizes_are_looked_up() {
        let finding = only(&CHECK, YARD);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert!(
            finding.because.starts_with("Would hold"),
            "{}",
            finding.because
        );
        assert!(
            finding.sentence.contains("crawling child"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_without_an_edge_below_the_beams_and_with_a_post_in_the_line() {
        let high = YARD.replace("\"0.05 m\"]", "\"1 m\"]");
        let finding = only(&CHECK, &high);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let hidden = YARD.replace(
            "[[operator]]",
            "[[gate.post]]\nid = \"sign\"\nrole = \"device\"\nat = [\"2 m\", \"-0.1 m\", \"0 m\"]\nwidth = \"60 mm\"\nheight = \"2 m\"\n[[operator]]",
        );
        let finding = only(&CHECK, &hidden);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("sign"), "{}", finding.sentence);
        let past = YARD.replace(
            "[\"4.2 m\", \"-0.1 m\", \"0.5 m\"]",
            "[\"-2 m\", \"-0.1 m\", \"0.5 m\"]",
        );
        assert_eq!(only(&CHECK, &past).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_far_end_of_a_beam() {
        let open = YARD.replace("to = [\"-0.1 m\", \"-0.1 m\", \"0.5 m\"]", "");
        let finding = only(&CHECK, &open);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
