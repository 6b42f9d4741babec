//! Whether each sensor that protects people is one made for it.
//!
//! In the United States the operator's maker names the sensors that work with it, by model. In Europe the sensor's maker
//! declares it as a safety component, and it reaches category 2 at least as it is wired; performance level c in its place
//! is from memory. A photo-eye without a type of protection is a convenience and is not asked about.

use super::means::{names, sensors, told};
use crate::asking::{Asking, Wants, pick};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{CodeBasis, Device, Gate, PerformanceLevel, SafetyCategory, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-right-kind",
    codes: BOTH,
    leaves_open: "whether the label on the device is that of the papers, and whether it is wired as they show",
    concerns: "each gate with a sensor that protects people",
    ask,
};

static NAMED: Source = Source {
    work: "UL 325",
    clause: "compatible external sensors named by brand and model",
    evidence: Evidence::Seen,
    seen: "an installer's page that quotes DASMA Technical Data Sheet 353, 2018 (address withheld)",
};

static DECLARED: Source = Source {
    work: "EN 12978 and EN 12453",
    clause: "presence detectors as safety components, category 2 as installed",
    evidence: Evidence::Seen,
    seen: "DHF, Powered Gate Myth Buster 4; the standards themselves were not at hand",
};

static LEVEL: Source = Source {
    work: "EN 12453",
    clause: "performance level c in place of category 2",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if sensors(site, gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                match site.site.code_basis {
                    CodeBasis::Us => named(asking, site, gate),
                    CodeBasis::Eu => declared(asking, site, gate),
                }
            });
        }
    }
}

fn named<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let operator = operator_of(asking, site, gate)?;
    let mut whole = Ok(());
    if operator.named_sensors.is_empty() {
        let write = Wants::Written("[\"beam-pair-24v\"]");
        whole = asking.lack(&operator.origin, "named_sensors", write);
    }
    let mut strangers: Vec<&Device> = Vec::new();
    for device in sensors(site, gate) {
        match &device.part {
            Some(part) => {
                let known = |name: &site::Text| name.as_str() == part.as_str();
                if !operator.named_sensors.iter().any(known) {
                    strangers.push(device);
                }
            }
            None => {
                whole = asking.lack(&device.origin, "part", Wants::Written("\"beam-pair-24v\""));
            }
        }
    }
    whole?;
    asking.rest_on(&NAMED);
    asking.say(|_| {
        if strangers.is_empty() {
            format!(
                "The papers of {} name every sensor here that protects people: {}.",
                operator.id,
                names(sensors(site, gate))
            )
        } else {
            format!(
                "The papers of {} do not name {}: it does not count as protection until they do.",
                operator.id,
                names(strangers.iter().copied())
            )
        }
    });
    Ok(Outcome::Rule(strangers.is_empty()))
}

fn declared<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let mut whole = Ok(());
    let mut short: Vec<&Device> = Vec::new();
    for device in sensors(site, gate) {
        match is_declared(asking, device) {
            Ok(true) => {}
            Ok(false) => short.push(device),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    asking.rest_on(&DECLARED);
    asking.say(|_| {
        if short.is_empty() {
            format!(
                "Every sensor here that protects people is declared as a safety component and good enough as wired: {}.",
                names(sensors(site, gate))
            )
        } else {
            format!(
                "Not declared as a safety component, or too low as wired: {}. A convenience sensor protects nobody.",
                names(short.iter().copied())
            )
        }
    });
    Ok(Outcome::Rule(short.is_empty()))
}

/// The device is a safety component of category 2 or more as wired, or of performance level c or more.
fn is_declared<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<bool, Halt> {
    let declared = match &device.safety {
        Some(safety) => told(asking, &safety.origin, "declared", safety.declared),
        None => told(asking, &device.origin, "safety.declared", None),
    };
    let by_level = device
        .safety
        .as_ref()
        .filter(|safety| safety.category.is_none())
        .and_then(|safety| safety.performance_level);
    if let Some(level) = by_level {
        asking.rest_on(&LEVEL);
        let enough = !matches!(level, PerformanceLevel::A | PerformanceLevel::B);
        return Ok(declared? && enough);
    }
    let category = pick!(asking, device.safety?.category);
    let (declared, category) = (declared?, category?);
    Ok(declared && !matches!(category, SafetyCategory::B | SafetyCategory::One))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only, only_bought};

    const US: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        parts = ["parts.toml"]
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        named_sensors = ["edge-8k2"]
        [[device]]
        id = "edge"
        part = "edge-8k2"
        kind = "contact edge"
        protection = "B2"
    "#;

    const EU: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "single-swing"
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        [device.safety]
        declared = true
        category = "2"
    "#;

    const PARTS: &str = "[[device]]\nid = \"edge-8k2\"\nkind = \"contact edge\"\n";

    #[test]
    fn holds_for_a_model_that_the_papers_name_and_fails_for_a_stranger() {
        let finding = only_bought(&CHECK, US, PARTS);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let other = US.replace("[\"edge-8k2\"]", "[\"edge-deep\"]");
        let finding = only_bought(&CHECK, &other, PARTS);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn holds_for_a_declared_sensor_of_category_2() {
        let finding = only(&CHECK, EU);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_for_a_convenience_beam_and_for_category_1() {
        for (was, is) in [("declared = true", "declared = false"), ("\"2\"", "\"1\"")] {
            let finding = only(&CHECK, &EU.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
            assert!(finding.sentence.contains("edge"), "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_on_a_performance_level_that_is_only_remembered() {
        let level = EU.replace("category = \"2\"", "performance_level = \"d\"");
        assert_eq!(only(&CHECK, &level).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn unknown_without_list_and_part() {
        let bare = US
            .replace("named_sensors = [\"edge-8k2\"]", "")
            .replace("part = \"edge-8k2\"", "")
            .replace("parts = [\"parts.toml\"]", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_gate_without_sensors_is_not_asked() {
        assert!(all(&CHECK, &EU.replace("protection = \"B2\"", "")).is_empty());
    }
}
