//! Who is under a barrier arm, and what keeps it from coming down on them.
//!
//! No entrance is for vehicles only, so whoever comes by is written down first. Europe: the arm's force is limited, by its
//! drive or by a contact edge under it, and a device without contact watches low under it; or nothing is touched at all,
//! tried with a test body; or it moves only while a control is held. United States: a device sees somebody under it; the note
//! that an arm more than 2 ft from anything rigid needs none is known from memory only and passes nothing.

use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::zone::means::covering;
use crate::zone::{CLOSING, Zone, rising};
use formula::protection::{BARRIER_ARM_RECALLED, barrier_arm_stays_clear_recalled};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Device, Gate, GateControl, GateKind, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-falling-arm",
    codes: BOTH,
    leaves_open: "the forces themselves, which are measured at the tip and a third along, tall loads and riders above the devices, and who comes by another day",
    concerns: "each barrier arm",
    ask,
};

static BARRIER: Source = Source {
    work: "EN 12453:2017+A1:2021, barriers",
    clause: "",
    evidence: Evidence::Seen,
    seen: "a door trade journal's account of a trade federation's guidance (address withheld); the standard itself was not at hand",
};

/// How people are written.
const PEOPLE: &str =
    "[[people]]\nwho = \"adults\"\nhow = \"walk out beside the arm\"\nspeed = \"5 ft/s\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked = |gate: &&Gate| gate.kind == GateKind::BarrierArm;
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            under(asking, site, gate)
        });
    }
}

fn under<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let mine = |people: &&site::People| people.gate.as_ref().is_none_or(|name| *name == gate.id);
    let people = site.people.iter().filter(mine).count();
    if people == 0 {
        return asking.lack(&site.origin, "people", Wants::Table(PEOPLE));
    }
    let zones = rising::arm(asking, site, gate)?;
    let Some(zone) = zones.first() else {
        return Err(Halt);
    };
    let devices = covering(asking, site, gate, (zone, CLOSING[0]))?;
    match site.site.code_basis {
        CodeBasis::Us => us(asking, site, gate, &devices),
        CodeBasis::Eu => eu(asking, site, gate, (zone, &devices)),
    }
}

fn us<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, devices: &[&Device]) -> Answer {
    if !devices.is_empty() {
        asking.say(|_| {
            format!(
                "Somebody under the arm of {} is seen or felt while it comes down: {}.",
                gate.id,
                super::open::names(devices)
            )
        });
        return Ok(Outcome::Rule(true));
    }
    let nearest = rising::nearest_rigid(asking, site, gate)?;
    let nearest = nearest.unwrap_or(Length::from_base(f64::INFINITY));
    asking.rest_on(&BARRIER_ARM_RECALLED);
    let clear = barrier_arm_stays_clear_recalled(nearest).unwrap_or(false);
    if clear {
        asking.say(|_| {
            format!(
                "No device sees anybody under the arm of {}; nothing rigid stands within 2 ft of it.",
                gate.id
            )
        });
        return Ok(Outcome::Rule(true));
    }
    asking.say(|print| {
        format!(
            "No device sees anybody under the arm of {}, and it comes within {} of something rigid. Photo-eyes along it, a contact \
             edge under it, or room on its whole length would answer it.",
            gate.id,
            print.q(nearest)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new(
            "room that needs no device",
            Length::from_base(24.0 * 0.0254),
        ),
        Labeled::new("nearest rigid thing", nearest),
    ))
}

fn eu<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (zone, devices): (&Zone, &[&Device]),
) -> Answer {
    asking.rest_on(&BARRIER);
    let held = gate.hold_time.is_none() && gate.commanded == Some(GateControl::HoldToRun);
    let senses = site
        .operators_of(gate)
        .map(|operator| {
            asking
                .need(
                    &operator.origin,
                    "inherent_sensing",
                    operator.inherent_sensing.as_ref(),
                    "true",
                )
                .copied()
        })
        .collect::<Result<Vec<bool>, Halt>>()?;
    let limited = (!senses.is_empty() && senses.iter().all(|senses| *senses))
        || devices
            .iter()
            .any(|device| device.protection == Some(ProtectionType::B2));
    let clearance = zone.extent.high()[2];
    let low = devices
        .iter()
        .filter(|device| device.protection == Some(ProtectionType::B1))
        .filter(|device| device.at.is_some_and(|at| at.z.nominal() < clearance));
    let low: Vec<&Device> = low.copied().collect();
    let untouched = devices
        .iter()
        .any(|device| device.prevents_contact == Some(true));
    let kept = held || untouched || (limited && !low.is_empty());
    asking.say(|_| words(gate, (held, untouched, limited), &low));
    Ok(Outcome::Rule(kept))
}

fn words(gate: &Gate, (held, untouched, limited): (bool, bool, bool), low: &[&Device]) -> String {
    let arm = &gate.id;
    if held {
        return format!("{arm} moves only while a control is held by somebody who sees it.");
    }
    if untouched {
        return format!("{arm} stops before it touches the test body.");
    }
    match (limited, low.is_empty()) {
        (true, false) => format!(
            "The force of {arm} is limited, and {} watches low under it.",
            super::open::names(low)
        ),
        (true, true) => format!(
            "The force of {arm} is limited, but nothing watches low under it while it comes down. A scanner or a photo-eye near \
             the ground along the whole arm would."
        ),
        (false, _) => format!(
            "The force of {arm} is not limited: its drive does not sense what it meets, and no contact edge lies under the arm."
        ),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const ARM: &str = r#"
        [site]
        name = "Test clinic"
        code_basis = "eu"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        hold_time = "12 s"
        [[gate.leaf]]
        id = "boom"
        length = "3.8 m"
        closed_end = "-0.15 m"
        height = "100 mm"
        thickness = "45 mm"
        ground_clearance = "850 mm"
        [[operator]]
        id = "drive"
        gate = "arm"
        inherent_sensing = true
        [[device]]
        id = "scanner"
        kind = "area scanner"
        protection = "B1"
        guards = ["closing"]
        at = ["3.95 m", "-0.2 m", "0.3 m"]
        facing = "180°"
        range = "5.5 m"
        field_angle = "190°"
        [[people]]
        who = "children"
    "#;

    #[test]
    fn holds_with_little_force_and_a_scanner_near_the_ground() {
        let finding = only(&CHECK, ARM);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let untouched = ARM
            .replace("inherent_sensing = true", "inherent_sensing = false")
            .replace("range =", "prevents_contact = true\nrange =");
        assert_eq!(only(&CHECK, &untouched).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_without_either() {
        let blind = only(&CHECK, &ARM.replace("5.5 m", "2 m"));
        assert_eq!(blind.verdict, Verdict::Fails, "{}", blind.sentence);
        assert!(
            blind.sentence.contains("nothing watches"),
            "{}",
            blind.sentence
        );
        let hard = only(
            &CHECK,
            &ARM.replace("inherent_sensing = true", "inherent_sensing = false"),
        );
        assert_eq!(hard.verdict, Verdict::Fails, "{}", hard.sentence);
    }

    #[test]
    fn in_the_united_states_room_alone_is_unknown_and_a_near_post_fails() {
        let us = ARM.replace("\"eu\"", "\"us\"").replace("5.5 m", "2 m");
        let room = only(&CHECK, &us);
        assert_eq!(room.verdict, Verdict::UnknownUntil, "{}", room.sentence);
        let post = us.replace(
            "[[operator]]",
            "[[gate.post]]\nid = \"fork\"\nrole = \"catch\"\nat = [\"-0.1 m\", \"0 m\", \"0 m\"]\nheight = \"0.86 m\"\nwidth = \"80 mm\"\n[[operator]]",
        );
        let near = only(&CHECK, &post);
        assert_eq!(near.verdict, Verdict::Fails, "{}", near.sentence);
    }

    #[test]
    fn unknown_until_people_are_written_down() {
        let finding = only(
            &CHECK,
            &ARM.replace("[[people]]\n        who = \"children\"", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
