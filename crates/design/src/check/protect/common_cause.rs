//! Which single fault takes out two means of protection at once, and whether anything notices.
//!
//! Every cable is cut, every conduit dug through, every fuse blown and supply switched off, every enclosure flooded, every
//! input stuck, and every post and everything within a bumper's width of it knocked, one at a time. A sensor that is found
//! dead before the gate moves is no danger; one that nothing tests is. A fault that stops the operator as well leaves the
//! gate standing.

use super::fault::{SingleFault, lacks_its_cable, merged, single_faults};
use super::means::{acts, names, sensors, told};
use super::monitored::{knows, stops_on_fault};
use crate::asking::{Asking, Wants};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Device, Direction, Gate, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-common-cause",
    codes: BOTH,
    leaves_open: "faults inside the controller, a puddle that covers more than one lens, lightning, and a fault that comes before the last one was mended; each shared cable, fuse and connector opened in turn shows that the gate refuses",
    concerns: "each gate with a sensor that protects people",
    ask,
};

static INDEPENDENT: Source = Source {
    work: "UL 325, in force from January 2016",
    clause: "two independent means of protection",
    evidence: Evidence::Seen,
    seen: "a door-and-access trade magazine's article of December 2015 (address withheld)",
};

static LISTING: Source = Source {
    work: "faults listed one at a time from the wiring, the feeding and the places of the sensors; a bumper of 1.8 m",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as the site describes them",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if sensors(site, gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                common_cause(asking, site, gate)
            });
        }
    }
}

fn common_cause<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let unnoticed = unnoticed(asking, site, gate);
    let mut wired = Ok(());
    for device in sensors(site, gate).filter(|device| lacks_its_cable(site, device)) {
        let write = Wants::Table(
            "[[cable]]\nid = \"w-01\"\nfrom = \"supply-24\"\nto = \"edge-leading\"\nroute = [\"c-01\"]",
        );
        wired = asking.lack(&device.origin, "cable", write);
    }
    let unnoticed = unnoticed?;
    wired?;
    asking.rest_on(&INDEPENDENT);
    asking.rest_on(&LISTING);
    let faults = merged(single_faults(site, gate));
    for fault in &faults {
        asking.note(|_| format!("{}: {}.", fault.what, names(fault.lost.iter().copied())));
    }
    let worst = faults
        .iter()
        .flat_map(|fault| {
            [Direction::Opening, Direction::Closing]
                .map(|way| (fault, way, silent(fault, way, &unnoticed)))
        })
        .max_by_key(|(_, _, lost)| kinds(lost));
    let Some((fault, way, lost)) = worst else {
        return asking.refuse("no fault could be listed: nothing says how the sensors are wired");
    };
    asking.say(|_| said(&faults, (fault, way, &lost)));
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new(
            "kinds of protection that one fault takes out unnoticed",
            kinds(&lost),
        ),
        Labeled::new("kinds that may be lost at once", 1_u32),
    )))
}

/// The sensors whose death nothing notices, or does not stop the gate.
fn unnoticed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<&'s Device>, Halt> {
    let operator = operator_of(asking, site, gate)?;
    let tests = told(
        asking,
        &operator.origin,
        "monitors_devices",
        operator.monitors_devices,
    );
    let stops = stops_on_fault(asking, operator);
    let mut blind = Vec::new();
    let mut whole = Ok(());
    for device in sensors(site, gate) {
        match knows(asking, device) {
            Ok(true) => {}
            Ok(false) => blind.push(device),
            Err(halt) => whole = Err(halt),
        }
    }
    let (tests, stops) = (tests?, stops?);
    whole?;
    if tests && stops {
        Ok(blind)
    } else {
        Ok(sensors(site, gate).collect())
    }
}

/// The sensors that a fault takes out in a direction without anybody noticing.
fn silent<'s>(
    fault: &SingleFault<'s>,
    way: Direction,
    unnoticed: &[&'s Device],
) -> Vec<&'s Device> {
    let blind = |device: &&&'s Device| {
        acts(device, way) && unnoticed.iter().any(|other| other.id == device.id)
    };
    fault.lost.iter().filter(blind).copied().collect()
}

/// How many kinds of protection are among sensors.
fn kinds(devices: &[&Device]) -> u32 {
    let has = |kind: ProtectionType| devices.iter().any(|device| device.protection == Some(kind));
    u32::from(has(ProtectionType::B1)) + u32::from(has(ProtectionType::B2))
}

fn said(
    faults: &[SingleFault<'_>],
    (fault, way, lost): (&SingleFault<'_>, Direction, &[&Device]),
) -> String {
    let looked_at = faults.len();
    if kinds(lost) > 1 {
        return format!(
            "One fault ({}) takes out {} at once while {way}, and nothing notices.",
            fault.what,
            names(lost.iter().copied())
        );
    }
    if kinds(lost) == 1 {
        return format!(
            "Of {looked_at} places where one fault takes out sensors, none takes out beam and edge together unnoticed; {} takes out {}, and nothing notices.",
            fault.what,
            names(lost.iter().copied())
        );
    }
    let most = faults.iter().max_by_key(|fault| fault.lost.len());
    let most = most.map_or_else(String::new, |most| {
        format!(
            " The worst ({}) takes out {}.",
            most.what,
            names(most.lost.iter().copied())
        )
    });
    format!(
        "Of {looked_at} places where one fault takes out sensors, each is noticed before the gate moves.{most}"
    )
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Finding, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.post]]
        id = "post-catch"
        role = "catch"
        at = ["0 ft", "0 ft", "0 ft"]
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "psu"
        monitors_devices = true
        [operator.behavior]
        on_fault = "held control in sight"
        [[supply]]
        id = "psu"
        kind = "power supply"
        [[fuse]]
        id = "f3"
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        at = ["1 ft", "0 ft", "0 ft"]
        monitored = true
        monitoring = "end resistor"
        supply = "psu"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        at = ["20 ft", "1 ft", "2 ft"]
        to = ["0 ft", "10 ft", "2 ft"]
        monitored = true
        monitoring = "sender test"
        supply = "psu"
        [[cable]]
        id = "w-1"
        from = "psu"
        to = "edge"
        [[cable]]
        id = "w-2"
        from = "psu"
        to = "beam"
        [[conduit]]
        id = "c-1"
    "#;

    /// Both sensors untested.
    fn blind(text: &str) -> String {
        text.replace("end resistor", "closed contact only")
            .replace("sender test", "nothing")
    }

    fn fails_by(text: &str, fault: &str) -> Finding {
        let finding = only(&CHECK, text);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains(fault), "{}", finding.sentence);
        finding
    }

    #[test]
    fn holds_where_each_fault_is_noticed_or_takes_one_kind_only() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let finding = only(&CHECK, &blind(SITE));
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "apart from each other: {}",
            finding.sentence
        );
    }

    #[test]
    fn fails_by_a_shared_conduit_fuse_input_post_or_supply() {
        let blind = blind(SITE);
        let conduit = blind
            .replace("to = \"edge\"", "to = \"edge\"\nroute = [\"c-1\"]")
            .replace("to = \"beam\"", "to = \"beam\"\nroute = [\"c-1\"]");
        fails_by(&conduit, "conduit c-1 dug through");
        let fuse = blind.replace("monitored = true", "monitored = true\nfuse = \"f3\"");
        fails_by(&fuse, "fuse f3 blown");
        let input = blind.replace("monitored = true", "monitored = true\ninput = \"IN2\"");
        fails_by(&input, "input IN2 stuck");
        let post = blind.replace("to = [\"0 ft\", \"10 ft\"", "to = [\"0 ft\", \"2 ft\"");
        fails_by(&post, "post-catch knocked");
        let own = blind.replacen("supply = \"psu\"", "", 1);
        fails_by(&own, "supply psu dead");
        let runs_on = fuse.replace("held control in sight", "runs as usual");
        fails_by(&runs_on, "edge, beam");
    }

    #[test]
    fn holds_on_a_shared_fuse_that_is_noticed() {
        let fuse = SITE.replace("monitored = true", "monitored = true\nfuse = \"f3\"");
        let finding = only(&CHECK, &fuse);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("fuse f3 blown"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_wiring_and_behavior() {
        let bare = SITE
            .replace("on_fault = \"held control in sight\"", "")
            .replace("to = \"edge\"", "to = \"drive\"");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
