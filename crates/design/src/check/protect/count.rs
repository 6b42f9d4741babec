//! How many independent means of protection each direction of a gate has, and how many it needs.
//!
//! Means of one type count once. The operator's own sensing is type A and acts both ways. A sensor counts only when the
//! operator tests it in every cycle. Loops see steel, not people, and never count, whatever they are written down as.
//! The numbers by kind of gate in the table of 2018 are recalled: the working mentions them, nothing passes on them.

use super::means::of_gate;
use crate::asking::{Asking, Wants, pick};
use crate::check::drive::operator_of;
use crate::check::{Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    Entrapment, EntrapmentProtectionCount, EntrapmentProtectionRecalled, GateKind, TravelDirection,
};
use formula::{Evidence, Formula as _, Source};
use quantity::Word as _;
use site::{CodeBasis, Device, DeviceKind, Direction, Gate, ProtectionCode, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-count",
    codes: &[CodeBasis::Us],
    leaves_open: "whether each device is on the operator's list of compatible sensors, whether every hazard zone is covered, and the numbers by kind of gate in UL 325's own table",
    concerns: "each gate",
    ask,
};

static MONITORED: Source = Source {
    work: "UL 325, in force from January 2016",
    clause: "general entrapment protection provisions",
    evidence: Evidence::Seen,
    seen: "a gate-operator manual and a trade article of December 2015 that retell them (addresses withheld): two means of different types, each sensor tested in every cycle",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            count(asking, site, gate)
        });
    }
}

pub(crate) fn count<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let about = &site.site;
    let edition = pick!(asking, about.protection_code);
    let own_sensing = own_sensing(asking, site, gate);
    let mine: Vec<&Device> = sensors(site, gate).collect();
    let tested = tested(asking, site, gate, &mine);
    let (edition, own_sensing) = (edition?, own_sensing?);
    tested?;
    match edition {
        ProtectionCode::Ul325Before2016 => {
            return asking.refuse("before 2016 the rule was one primary and one secondary means, which this tool does not hold; today's rule is worth asking for");
        }
        ProtectionCode::En12453 => {
            return asking.refuse(
                "EN 12453 asks for levels of protection at each danger point, not for a count",
            );
        }
        ProtectionCode::Ul325From2016 | ProtectionCode::Ul325From2018 => {}
    }
    asking.rest_on(&MONITORED);
    let opening = means(Direction::Opening, own_sensing, &mine);
    let closing = means(Direction::Closing, own_sensing, &mine);
    let needed_opening = needed(asking, gate, Direction::Opening)?;
    let needed_closing = needed(asking, gate, Direction::Closing)?;
    asking.say(|_| {
        format!(
            "Opening asks for {needed_opening} means of types that differ, and has {}; closing asks for {needed_closing}, and has {}.{}",
            named(&opening),
            named(&closing),
            loops(site, gate)
        )
    });
    let compared = |label, needed: u32, have: &[ProtectionType]| {
        let have = u32::try_from(have.len()).unwrap_or(u32::MAX);
        Comparison::at_most(
            Labeled::new(label, needed),
            Labeled::new("means of different types", have),
        )
    };
    Outcome::worst([
        compared("means needed while opening", needed_opening, &opening),
        compared("means needed while closing", needed_closing, &closing),
    ])
    .ok_or(Halt)
}

/// The operator senses obstructions itself.
fn own_sensing<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<bool, Halt> {
    let operator = operator_of(asking, site, gate)?;
    asking
        .need(
            &operator.origin,
            "inherent_sensing",
            operator.inherent_sensing.as_ref(),
            "true",
        )
        .copied()
}

/// The sensors of a gate that may count: those with a type, loops left out.
fn sensors<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    of_gate(site, gate)
        .filter(|device| device.protection.is_some() && device.kind != DeviceKind::Loop)
}

/// Every sensor says whether it is tested, and in which directions it acts; the operator says whether it tests.
fn tested<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    sensors: &[&'s Device],
) -> Result<(), Halt> {
    let mut whole = Ok(());
    if !sensors.is_empty() {
        let operator = operator_of(asking, site, gate)?;
        let tests = operator.monitors_devices.as_ref();
        whole = asking
            .need(&operator.origin, "monitors_devices", tests, "true")
            .map(drop);
    }
    for device in sensors {
        if device.monitored.is_none() {
            whole = asking.lack(&device.origin, "monitored", Wants::Written("true"));
        }
        if device.guards.is_empty() {
            whole = asking.lack(&device.origin, "guards", Wants::Written("[\"closing\"]"));
        }
    }
    whole
}

/// The types of means that act in a direction, each once.
fn means(direction: Direction, own_sensing: bool, sensors: &[&Device]) -> Vec<ProtectionType> {
    let mut types: Vec<ProtectionType> = sensors
        .iter()
        .filter(|device| device.monitored == Some(true) && device.guards.contains(&direction))
        .filter_map(|device| device.protection)
        .collect();
    if own_sensing {
        types.push(ProtectionType::A);
    }
    types.sort_unstable();
    types.dedup();
    types
}

fn needed(asking: &mut Asking<'_>, gate: &Gate, direction: Direction) -> Result<u32, Halt> {
    let words = (
        GateKind::from_word(gate.kind.word()),
        TravelDirection::from_word(direction.word()),
    );
    let (Some(kind), Some(direction)) = words else {
        return asking.refuse("this kind of gate is not in the rule");
    };
    let needed = asking
        .work(&EntrapmentProtectionCount {
            gate: kind,
            entrapment: Entrapment::Possible,
        })?
        .means;
    asking.note(|_| {
        let recalled = EntrapmentProtectionRecalled { gate: kind, direction }.evaluate();
        recalled.map_or_else(|out| out.why, |recalled| {
            format!(
                "UL 325's table by kind of gate is recalled to ask for {} while {direction}: look it up.",
                recalled.means
            )
        })
    });
    Ok(needed)
}

fn named(types: &[ProtectionType]) -> String {
    if types.is_empty() {
        return "none".to_owned();
    }
    let words: Vec<&str> = types.iter().map(|word| word.word()).collect();
    words.join(", ")
}

/// What is to be said of loops that were written down as protection.
fn loops(site: &Site, gate: &Gate) -> String {
    let counted = |device: &&Device| device.protection.is_some() && device.kind == DeviceKind::Loop;
    let names: Vec<&str> = of_gate(site, gate)
        .filter(counted)
        .map(|device| device.id.as_str())
        .collect();
    if names.is_empty() {
        String::new()
    } else {
        format!(
            " Loops see steel, not people, and are not counted: {}.",
            names.join(", ")
        )
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        protection_code = "UL 325 from 2018"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        inherent_sensing = true
        monitors_devices = true
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        monitored = true
        guards = ["opening", "closing"]
    "#;

    #[test]
    fn holds_with_two_types_each_way() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding
                .sentence
                .starts_with("Opening asks for 2 means of types that differ, and has A, B2;"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_one_way_left_open_and_with_a_sensor_that_nobody_tests() {
        let one_way = SITE.replace("[\"opening\", \"closing\"]", "[\"closing\"]");
        assert_eq!(only(&CHECK, &one_way).verdict, Verdict::Fails);
        let untested = SITE.replace("monitored = true", "monitored = false");
        assert_eq!(only(&CHECK, &untested).verdict, Verdict::Fails);
        let like = SITE.replace("inherent_sensing = true", "inherent_sensing = false");
        assert_eq!(
            only(&CHECK, &like).verdict,
            Verdict::Fails,
            "two of one type are one"
        );
    }

    #[test]
    fn a_loop_never_counts() {
        let loops = SITE.replace("contact edge", "loop").replace("B2", "B1");
        let finding = only(&CHECK, &loops);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("not people"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_somebody_says_what_is_tested() {
        let finding = only(&CHECK, &SITE.replace("monitored = true", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
