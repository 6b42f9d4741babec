//! Whether warning signs hang on both sides and beside each held control, are readable from where people stand, in words
//! that they read, and are still there.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::control::{belongs, devices_of};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, capitalized};
use crate::subject::About;
use formula::protection::{PlacardVerdict, SignLetterHeight, WarningPlacards};
use quantity::Length;
use site::{Device, Gate, Sign, SignKind, SignSide, Site, Text};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "sign-both-sides",
    codes: BOTH,
    leaves_open: "planting and vehicles before a sign, a sign that the open leaf carries out of sight, dusk and glare, and what else the law wants written at the gate",
    concerns: "each gate",
    ask,
};

/// How a sign is written.
const SIGN: &str = "[[sign]]\nid = \"placard-out\"\nwhat = \"warning placard\"\nside = \"outside\"\nletter_height = \"1 in\"\nread_from = \"20 ft\"\nlanguages = [\"English\"]\npicture = true\nseen = 2026-06-01";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            both_sides(asking, site, gate)
        });
    }
}

fn both_sides<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let signs: Vec<&Sign> = site
        .sign
        .iter()
        .filter(|sign| belongs(site, gate, sign.gate.as_ref()))
        .filter(|sign| matches!(sign.what, SignKind::Warning | SignKind::HeldControl))
        .collect();
    if signs.is_empty() {
        return asking.lack(&site.origin, "sign", Wants::Table(SIGN));
    }
    let about = &site.site;
    let spoken = asking.need(
        &about.origin,
        "languages",
        about.languages.first(),
        "[\"English\", \"Spanish\"]",
    );
    let read: Vec<_> = signs.iter().map(|sign| legible(asking, sign)).collect();
    let read: Result<Vec<_>, Halt> = read.into_iter().collect();
    let counted = counted(asking, site, gate, &signs);
    spoken?;
    let (read, counted) = (read?, counted?);
    let foreign: Vec<String> = signs
        .iter()
        .filter(|sign| !understood(sign, &about.languages))
        .map(|sign| sign.id.as_str().to_owned())
        .collect();
    let small: Vec<&str> = signs
        .iter()
        .zip(&read)
        .filter(|(_, comparison)| !comparison.holds())
        .map(|(sign, _)| sign.id.as_str())
        .collect();
    asking.say(|_| {
        let mut said = vec![match counted {
            PlacardVerdict::Kept => {
                "Warning signs hang on both sides and by every held control".to_owned()
            }
            PlacardVerdict::SideMissing => "One side has no warning sign".to_owned(),
            PlacardVerdict::ControlMissing => "A held control has no sign beside it".to_owned(),
        }];
        if !small.is_empty() {
            said.push(format!(
                "too small to be read from where people have to: {}",
                small.join(", ")
            ));
        }
        if !foreign.is_empty() {
            said.push(format!(
                "{} say it neither by a picture nor in every language that people here read",
                and(&foreign)
            ));
        }
        format!("{}.", capitalized(&said.join("; ")))
    });
    if counted != PlacardVerdict::Kept || !foreign.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst(read).ok_or(Halt)
}

/// The letters of a sign against the distance from which it has to be read; and the day on which it was last seen there.
fn legible<'s>(asking: &mut Asking<'s>, sign: &'s Sign) -> Result<Comparison, Halt> {
    let height = read!(asking, sign.letter_height);
    let from = read!(asking, sign.read_from);
    let seen = asking.need(&sign.origin, "seen", sign.seen.as_ref(), "2026-06-01");
    let (letter_height, distance): (Length, Length) = (height?, from?);
    seen?;
    let rule = asking.work(&SignLetterHeight {
        distance,
        letter_height,
    })?;
    Ok(Comparison::at_most(
        Labeled::new("height of letters for that distance", rule.least),
        Labeled::new("height of its letters", letter_height),
    ))
}

/// Placards of each side, and those beside held controls.
fn counted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    signs: &[&'s Sign],
) -> Result<PlacardVerdict, Halt> {
    let warnings = signs.iter().filter(|sign| sign.what == SignKind::Warning);
    let sides: Vec<_> = warnings.map(|sign| pick!(asking, sign.side)).collect();
    let sides = sides.into_iter().collect::<Result<Vec<_>, Halt>>()?;
    let count = |side| u32::try_from(sides.iter().filter(|found| **found == side).count());
    let held: Vec<&Device> = devices_of(site, gate)
        .filter(|device| device.does.iter().any(|command| command.held == Some(true)))
        .collect();
    let beside = held.iter().filter(|device| {
        signs
            .iter()
            .any(|sign| sign.beside.as_ref() == Some(&device.id))
    });
    let (beside, held) = (u32::try_from(beside.count()), u32::try_from(held.len()));
    let rule = asking.work(&WarningPlacards {
        outside: count(SignSide::Outside).unwrap_or(u32::MAX),
        inside: count(SignSide::Inside).unwrap_or(u32::MAX),
        held_controls: held.unwrap_or(u32::MAX),
        beside_controls: beside.unwrap_or(u32::MAX),
    })?;
    Ok(rule.verdict)
}

/// It says so by a picture, or in every language that people here read.
fn understood(sign: &Sign, languages: &[Text]) -> bool {
    let speaks = |language: &Text| {
        let asked = language.to_string().to_lowercase();
        sign.languages
            .iter()
            .any(|own| own.to_string().to_lowercase() == asked)
    };
    sign.picture == Some(true) || languages.iter().all(speaks)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        languages = ["English", "Spanish"]
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "button"
        kind = "control"
        does = [{ what = "close", held = true }]
        [[sign]]
        id = "placard-out"
        what = "warning placard"
        side = "outside"
        letter_height = "1 in"
        read_from = "25 ft"
        languages = ["English", "Spanish"]
        seen = 2026-05-01
        [[sign]]
        id = "placard-in"
        what = "warning placard"
        side = "inside"
        letter_height = "1 in"
        read_from = "20 ft"
        picture = true
        seen = 2026-05-01
        [[sign]]
        id = "placard-button"
        what = "held-control placard"
        beside = "button"
        letter_height = "1/2 in"
        read_from = "5 ft"
        picture = true
        seen = 2026-05-01
    "#;

    #[test]
    fn holds_on_both_sides_and_by_the_held_control() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_one_side_bare_or_a_control_without() {
        let bare = only(&CHECK, &SITE.replace("\"inside\"", "\"outside\""));
        assert_eq!(bare.verdict, Verdict::Fails);
        assert!(bare.sentence.contains("One side"), "{}", bare.sentence);
        let control = only(&CHECK, &SITE.replace("beside = \"button\"", ""));
        assert_eq!(control.verdict, Verdict::Fails);
    }

    #[test]
    fn fails_too_small_or_in_the_wrong_language() {
        // 1 in is read from 30 ft.
        let small = only(&CHECK, &SITE.replace("25 ft", "31 ft"));
        assert_eq!(small.verdict, Verdict::Fails);
        assert!(small.sentence.contains("placard-out"), "{}", small.sentence);
        let foreign = SITE.replace(
            "languages = [\"English\", \"Spanish\"]\n        seen",
            "seen",
        );
        assert_eq!(only(&CHECK, &foreign).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_signs_and_without_the_day_they_were_seen() {
        let none = SITE.split("[[sign]]").next().unwrap();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
        let unseen = SITE.replacen("seen = 2026-05-01", "", 1);
        let finding = only(&CHECK, &unseen);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
