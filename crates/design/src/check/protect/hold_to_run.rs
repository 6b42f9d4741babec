//! Whether a gate that runs only while a control is held has nothing else that can move it, and stops soon when it is let go.
//!
//! No timer, loop, reader, remote or other control may start it. How far the leaf runs on is measured; 100 mm at most by the
//! text read, 50 mm near the end of travel from memory. That the whole gate is in view is asked of every held control.

use super::means::of_gate;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    HOLD_TO_RUN_OVERTRAVEL_RECALLED, HoldToRunOvertravel, hold_to_run_overtravel_recalled,
};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, CommandKind, Device, DeviceKind, Gate, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-hold-to-run",
    codes: BOTH,
    leaves_open: "whether the whole gate is in view of whoever holds it, which is asked of each control; a button that sticks or is wedged; the speed of the edge",
    concerns: "each held control that counts as protection (type D)",
    ask,
};

static NOTHING_ELSE: Source = Source {
    work: "UL 325, installation instructions on type D",
    clause: "the user sees the gate; no timer, loop or other automatic or extra activation",
    evidence: Evidence::Seen,
    seen: "two gate-operator manuals that reprint the instructions (addresses withheld)",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let held = |device: &&Device| device.protection == Some(ProtectionType::D);
    for device in site.device.iter().filter(held) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            held_only(asking, site, device)
        });
    }
}

fn held_only<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let gate = gate_of(asking, site, device)?;
    let held = is_held(asking, device);
    let overtravel = match site.site.code_basis {
        CodeBasis::Eu => overtravel(asking, gate),
        CodeBasis::Us => Ok(None),
    };
    let (held, overtravel) = (held?, overtravel?);
    asking.rest_on(&NOTHING_ELSE);
    let others = starters(site, gate, device);
    asking.say(|_| {
        if !held {
            format!(
                "{} moves the gate with one touch: it is no held control.",
                device.id
            )
        } else if others.is_empty() {
            format!("The gate moves only while {} is held.", device.id)
        } else {
            format!(
                "{} is a held control, but {} moves the gate too.",
                device.id,
                others.join(", ")
            )
        }
    });
    if !held || !others.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Ok(overtravel.map_or(Outcome::Rule(true), Outcome::Compared))
}

/// Everything that this control moves, it moves only while it is held.
fn is_held<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<bool, Halt> {
    let mut moves = device
        .does
        .iter()
        .filter(|command| starts(command.what))
        .peekable();
    if moves.peek().is_none() {
        let write =
            Wants::Written("[{ what = \"open\", held = true }, { what = \"close\", held = true }]");
        return asking.lack(&device.origin, "does", write);
    }
    Ok(moves.all(|command| command.held == Some(true)))
}

/// The command sets the leaf moving.
fn starts(what: CommandKind) -> bool {
    matches!(
        what,
        CommandKind::Open | CommandKind::Close | CommandKind::FireOpen
    )
}

/// What else can move the gate, by name.
fn starters(site: &Site, gate: &Gate, held: &Device) -> Vec<String> {
    let timer = gate.hold_time.map(|_| "auto-close".to_owned());
    let starts_it = |device: &&Device| {
        let by_kind = matches!(
            device.kind,
            DeviceKind::Reader
                | DeviceKind::Keypad
                | DeviceKind::Radio
                | DeviceKind::Intercom
                | DeviceKind::AccessController
        );
        let by_command = device
            .does
            .iter()
            .any(|command| starts(command.what) && command.held != Some(true));
        let told = !device.does.is_empty();
        device.id != held.id && if told { by_command } else { by_kind }
    };
    let devices = of_gate(site, gate)
        .filter(starts_it)
        .map(|device| device.id.to_string());
    let only = site.gate.len() == 1;
    let remotes = site
        .remote
        .iter()
        .filter(|remote| remote.gate.as_ref().map_or(only, |name| *name == gate.id))
        .filter(|remote| remote.does.iter().any(|what| starts(*what)))
        .map(|remote| remote.id.to_string());
    timer.into_iter().chain(devices).chain(remotes).collect()
}

/// How far the leaf runs on, against the text read; near the end of travel against what is recalled.
fn overtravel<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Option<Comparison>, Halt> {
    let overtravel = read!(asking, gate.motion?.held_overtravel)?;
    let read = asking.work(&HoldToRunOvertravel { overtravel })?;
    let near_end = hold_to_run_overtravel_recalled(Length::from_base(0.0));
    let limit = if overtravel > near_end && overtravel <= read.limit {
        asking.rest_on(&HOLD_TO_RUN_OVERTRAVEL_RECALLED);
        near_end
    } else {
        read.limit
    };
    Ok(Some(Comparison::at_most(
        Labeled::new("way on after the control is let go", overtravel),
        Labeled::new("greatest way on", limit),
    )))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [gate.motion]
        held_overtravel = "40 mm"
        [[device]]
        id = "button"
        kind = "control"
        protection = "D"
        does = [{ what = "open", held = true }, { what = "close", held = true }, { what = "stop" }]
    "#;

    #[test]
    fn holds_where_nothing_else_moves_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_timer_a_radio_a_remote_a_touch_and_a_long_way_on() {
        for text in [
            SITE.replace(
                "kind = \"track-slide\"",
                "kind = \"track-slide\"\nhold_time = \"30 s\"",
            ),
            format!("{SITE}\n[[device]]\nid = \"receiver\"\nkind = \"radio\"\n"),
            format!("{SITE}\n[[remote]]\nid = \"fob\"\nby = \"fob\"\ndoes = [\"open\"]\n"),
            SITE.replace("\"close\", held = true", "\"close\", held = false"),
            SITE.replace("40 mm", "120 mm"),
            SITE.replace("40 mm", "70 mm"),
        ] {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_its_commands_and_the_way_on() {
        let bare = SITE
            .replace("held_overtravel = \"40 mm\"", "")
            .replace("does = ", "# ");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_gate_without_held_protection_is_not_asked() {
        assert!(all(&CHECK, &SITE.replace("protection = \"D\"", "")).is_empty());
    }
}
