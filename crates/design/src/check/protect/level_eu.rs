//! Which level of protection the European standard asks at the closing edge, and whether the devices there reach it.
//!
//! Who uses the gate and how it is commanded give the level; a gate that closes by itself is automatic. Limited force comes
//! from a contact edge or from the operator's own sensing, presence detection from a beam or a scanner, and detection that
//! prevents any contact only from a device that was tried to do so. Whether forces are truly limited is a question of its
//! own, proved by measuring. Cells of the table that are recalled warn and pass nothing.

use super::means::{acts, of_gate, sensors, told};
use crate::asking::{Asking, pick};
use crate::check::drive::operator_of;
use crate::check::{Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::Formula as _;
use formula::protection::{
    EN12453_MINIMUM_LEVEL_RECALLED, En12453MinimumLevel, GateControl, ProtectionLevel, UseType,
    en12453_minimum_level_recalled,
};
use quantity::Word as _;
use site::{CodeBasis, Device, Direction, Gate, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-level-eu",
    codes: &[CodeBasis::Eu],
    leaves_open: "danger points beside the closing edge, each of which is looked at in its zone; whether the forces are within their limits, which a force meter proves; whether a held control is keyed or out of the public's reach",
    concerns: "each gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            level(asking, site, gate)
        });
    }
}

/// What works at the closing edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Measure {
    Held,
    Force,
    Presence,
    Prevents,
}

fn level<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let control = commanded(asking, gate);
    level_for(asking, site, gate, control)
}

/// The level for a way of commanding the gate, and whether it is reached.
pub(crate) fn level_for<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    control: Result<GateControl, Halt>,
) -> Answer {
    let about = &site.site;
    let users = pick!(asking, about.use_type);
    let measures = measures(asking, site, gate);
    let (users, control, measures) = (asked_of(users?), control?, measures?);
    let place = En12453MinimumLevel { users, control };
    let level = if place.evaluate().is_ok() {
        asking.work(&place)?.level
    } else {
        asking.rest_on(&EN12453_MINIMUM_LEVEL_RECALLED);
        match en12453_minimum_level_recalled(users, control) {
            Ok(recalled) => recalled.level,
            Err(_) => return asking.refuse("the table has no level for this use and control"),
        }
    };
    asking.say(|_| {
        format!(
            "Used by {users} and commanded {control}, the closing edge asks for {level}; there is {}.",
            in_words(&measures)
        )
    });
    Ok(Outcome::Rule(reach(&measures, level)))
}

/// Who uses the gate, in the words of the table.
fn asked_of(users: site::UseType) -> UseType {
    match users {
        site::UseType::Trained => UseType::Trained,
        site::UseType::TrainedInPublic => UseType::TrainedInPublic,
        site::UseType::Untrained => UseType::Public,
    }
}

/// How the closing movement is commanded: by itself where there is a time for it, otherwise as the site says.
fn commanded<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<GateControl, Halt> {
    if gate.hold_time.is_some() {
        return Ok(GateControl::Automatic);
    }
    let commanded = pick!(asking, gate.commanded)?;
    GateControl::from_word(commanded.word()).ok_or(Halt)
}

/// The measures that are there.
fn measures<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Measure>, Halt> {
    let closing = |kind: ProtectionType| {
        sensors(site, gate)
            .any(|device| device.protection == Some(kind) && acts(device, Direction::Closing))
    };
    let force = closing(ProtectionType::B2) || own_sensing(asking, site, gate)?;
    let prevents =
        |device: &Device| device.prevents_contact == Some(true) && acts(device, Direction::Closing);
    let held = of_gate(site, gate).any(|device| device.protection == Some(ProtectionType::D));
    let all = [
        (held, Measure::Held),
        (force, Measure::Force),
        (closing(ProtectionType::B1), Measure::Presence),
        (sensors(site, gate).any(prevents), Measure::Prevents),
    ];
    let there = all.into_iter();
    Ok(there
        .filter_map(|(there, measure)| there.then_some(measure))
        .collect())
}

fn own_sensing<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<bool, Halt> {
    let operator = operator_of(asking, site, gate)?;
    told(
        asking,
        &operator.origin,
        "inherent_sensing",
        operator.inherent_sensing,
    )
}

/// The measures reach the level.
fn reach(measures: &[Measure], level: ProtectionLevel) -> bool {
    let has = |measure| measures.contains(&measure);
    match level {
        ProtectionLevel::Held | ProtectionLevel::HeldByKey => has(Measure::Held),
        ProtectionLevel::One => has(Measure::Force) || has(Measure::Prevents),
        ProtectionLevel::Two => {
            (has(Measure::Force) && has(Measure::Presence)) || has(Measure::Prevents)
        }
        ProtectionLevel::NotAllowed => false,
    }
}

fn in_words(measures: &[Measure]) -> String {
    let word = |measure: &Measure| match measure {
        Measure::Held => "a held control",
        Measure::Force => "limited force",
        Measure::Presence => "presence detection",
        Measure::Prevents => "detection that prevents contact",
    };
    let words: Vec<&str> = measures.iter().map(word).collect();
    if words.is_empty() {
        "nothing".to_owned()
    } else {
        words.join(" and ")
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        use_type = "3"
        [[gate]]
        id = "court"
        kind = "single-swing"
        hold_time = "30 s"
        [[operator]]
        id = "drive"
        gate = "court"
        inherent_sensing = true
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        guards = ["closing"]
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
    "#;

    #[test]
    fn holds_with_limited_force_and_a_beam() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let trusted = SITE.replace(
            "kind = \"contact edge\"\n        protection = \"B2\"",
            "kind = \"contact edge\"",
        );
        assert_eq!(
            only(&CHECK, &trusted).verdict,
            Verdict::Holds,
            "the operator's own sensing limits the force"
        );
    }

    #[test]
    fn fails_without_presence_detection_or_held_by_the_public() {
        let blind = SITE.replace("protection = \"B1\"", "");
        assert_eq!(only(&CHECK, &blind).verdict, Verdict::Fails);
        let opening = SITE.replace(
            "protection = \"B1\"\n        guards = [\"closing\"]",
            "protection = \"B1\"\n        guards = [\"opening\"]",
        );
        assert_eq!(only(&CHECK, &opening).verdict, Verdict::Fails);
        let held = SITE.replace("hold_time = \"30 s\"", "commanded = \"hold-to-run\"");
        assert_eq!(only(&CHECK, &held).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_on_a_cell_that_is_only_remembered_and_without_facts() {
        let trained = SITE
            .replace("use_type = \"3\"", "use_type = \"1\"")
            .replace(
                "hold_time = \"30 s\"",
                "commanded = \"impulse, gate in view\"",
            );
        assert_eq!(only(&CHECK, &trained).verdict, Verdict::UnknownUntil);
        let bare = SITE
            .replace("use_type = \"3\"", "")
            .replace("hold_time = \"30 s\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
