//! Whether a hand, hair or a sleeve can reach a roller that carries weight, or the place where rack and pinion, chain and
//! sprocket or rope and drum run together.
//!
//! United States: a roller that carries weight and is 8 ft or lower is covered. Europe: what can be reached is covered, and
//! 2.7 m is out of reach. A guard that comes off without a tool does not stay on.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{F2200Construction, GateItem, Iso13857Upward, RiskLevel};
use formula::{Evidence, Source};
use quantity::Length;
use site::{CodeBasis, DriveKind, Gate, GateKind, RunningCovers, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-rollers-rack",
    codes: BOTH,
    leaves_open: "openings in the guards themselves, and whether every guard is still on: look at every visit",
    concerns: "each gate whose leaf slides or lifts",
    ask,
};

static GUARDS: Source = Source {
    work: "guards over what runs together stay on: they come off with a tool only",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of machine guarding; the clauses of the European gate standards were not at hand",
};

/// How covers are written.
const WRITE: &str = "[gate.covers]\nroller_height = \"3 in\"\nrollers_covered = true\ndrive_height = \"8 in\"\ndrive_covered = true\nneed_tool = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let asked = |gate: &&Gate| matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            covered(asking, site, gate)
        });
    }
}

fn covered<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let Some(covers) = &gate.covers else {
        return asking.lack(&gate.origin, "covers", Wants::Table(WRITE));
    };
    let rollers = asking.need(
        &covers.origin,
        "rollers_covered",
        covers.rollers_covered.as_ref(),
        "true",
    );
    let rollers = rollers.copied();
    let low = match rollers {
        Ok(false) => read!(asking, covers.roller_height).map(Some),
        _ => Ok(None),
    };
    let drive = drive(asking, site, gate, covers);
    let tool = asking.need(
        &covers.origin,
        "need_tool",
        covers.need_tool.as_ref(),
        "true",
    );
    let tool = tool.copied();
    rollers?;
    let (low, drive, tool) = (low?, drive?, tool?);
    asking.rest_on(&GUARDS);
    let open: Vec<(&str, Length)> = [
        ("a roller that carries the leaf", low),
        ("the drive", drive),
    ]
    .into_iter()
    .filter_map(|(what, height)| height.map(|height| (what, height)))
    .collect();
    let reached: Vec<_> = open
        .iter()
        .map(|(what, height)| reached(asking, site, what, *height))
        .collect();
    let reached: Vec<Comparison> = reached.into_iter().collect::<Result<_, Halt>>()?;
    asking.say(|print| {
        let bare = open
            .iter()
            .map(|(what, height)| format!("{what}, {} up", print.q(*height)));
        let bare: Vec<String> = bare.collect();
        match (bare.is_empty(), tool) {
            (true, true) => "Rollers and drive are covered, and the guards come off with a tool only.".to_owned(),
            (true, false) => "Rollers and drive are covered, but the guards come off by hand: a guard that can be taken off will be. Screw it down.".to_owned(),
            (false, _) => format!("Not covered: {}. Put a guard over it that comes off with a tool only.", bare.join("; ")),
        }
    });
    let open = Outcome::worst(reached);
    Ok(match open {
        Some(Outcome::Compared(worst)) if !worst.holds() => Outcome::Compared(worst),
        _ if !tool => Outcome::Rule(false),
        Some(told) => told,
        None => Outcome::Rule(true),
    })
}

/// Height of the bare drive; nothing where it is covered, or where nothing runs together in the open.
fn drive<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    covers: &'s RunningCovers,
) -> Result<Option<Length>, Halt> {
    use DriveKind::{Chain, Hoist, Rack};
    let bare = |kind: Option<DriveKind>| matches!(kind, None | Some(Rack | Chain | Hoist));
    if !site.operators_of(gate).any(|operator| bare(operator.drive)) {
        return Ok(None);
    }
    let covered = asking.need(
        &covers.origin,
        "drive_covered",
        covers.drive_covered.as_ref(),
        "true",
    )?;
    if *covered {
        return Ok(None);
    }
    read!(asking, covers.drive_height).map(Some)
}

/// Height of something bare against the height that is out of reach.
fn reached(
    asking: &mut Asking<'_>,
    site: &Site,
    what: &str,
    height: Length,
) -> Result<Comparison, Halt> {
    let us_roller = site.site.code_basis == CodeBasis::Us && what.contains("roller");
    let high = if us_roller {
        asking
            .work(&F2200Construction {
                item: GateItem::OpenRoller,
                measured: height,
            })?
            .limit
    } else {
        asking
            .work(&Iso13857Upward {
                risk: RiskLevel::High,
                height,
            })?
            .least
    };
    let (high, bare) = (
        Labeled::new("height that is out of reach", high),
        Labeled::new("height of what is not covered", height),
    );
    Ok(if us_roller {
        Comparison::below(high, bare)
    } else {
        Comparison::at_most(high, bare)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SLIDE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [gate.covers]
        roller_height = "3 in"
        rollers_covered = true
        drive_height = "8 in"
        drive_covered = true
        need_tool = true
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "rack"
    "#;

    #[test]
    fn holds_with_everything_covered() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_bare_roller_a_bare_pinion_or_a_guard_that_lifts_off() {
        for (before, after, word) in [
            (
                "rollers_covered = true",
                "rollers_covered = false",
                "roller",
            ),
            ("drive_covered = true", "drive_covered = false", "drive"),
            ("need_tool = true", "need_tool = false", "by hand"),
        ] {
            let finding = only(&CHECK, &SLIDE.replace(before, after));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
            assert!(finding.sentence.contains(word), "{}", finding.sentence);
        }
    }

    #[test]
    fn a_trolley_above_eight_feet_may_be_bare_and_one_at_eight_feet_may_not() {
        let bare = SLIDE.replace("rollers_covered = true", "rollers_covered = false");
        let high = bare.replace("\"3 in\"", "\"9 ft\"");
        assert_eq!(only(&CHECK, &high).verdict, Verdict::Holds);
        let at = bare.replace("\"3 in\"", "\"8 ft\"");
        assert_eq!(only(&CHECK, &at).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_until_somebody_looked() {
        let finding = only(&CHECK, &SLIDE.replace("rollers_covered = true", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("rollers_covered"));
    }
}
