//! What the gate does when one control wire is cut, shorted or soaked: every fault of every command, one after the other.
//!
//! A soaked pair conducts a little and counts as shorted. A lost stop has to be noticed or to stop the gate; no single
//! short and no single cut may start a closing; a command to open that never ends has to be noticed. What an opening for
//! the fire service does is agreed with the authority. A device that protects people has to be tested in every cycle.

use super::{behavior_of, devices_of, does, fixed_controls};
use crate::asking::{Asking, Wants, pick};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Command, CommandKind, ContactKind, Device, DeviceKind, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-wire-cut",
    codes: BOTH,
    leaves_open: "two faults at once, a contact that is welded or stuck, a stop line with a closed contact that is shorted and not supervised, category and performance level, and where the wires run",
    concerns: "each gate",
    ask,
};

static FAULTS: Source = Source {
    work: "each wire cut, and each pair shorted, one at a time",
    clause: "",
    evidence: Evidence::Physics,
    seen: "what an open and a closed circuit say to the controller",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            wire_cut(asking, site, gate)
        });
    }
}

/// One command with what is known of its wires.
struct Wired<'s> {
    device: &'s Device,
    what: CommandKind,
    contact: ContactKind,
    supervised: bool,
}

fn wire_cut<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&FAULTS);
    let mut wires = Ok(Vec::new());
    for device in fixed_controls(site, gate) {
        let Ok(commands) = does(asking, device) else {
            wires = Err(Halt);
            continue;
        };
        for command in commands
            .iter()
            .filter(|command| command.what != CommandKind::Nothing)
        {
            let wire = wired(asking, device, command);
            wires = wires.and_then(|mut wires: Vec<Wired<'s>>| {
                wires.push(wire?);
                Ok(wires)
            });
        }
    }
    let sensors = untested(asking, site, gate);
    let stuck_noticed = stuck_noticed(asking, site, gate);
    let (wires, sensors, stuck_noticed) = (wires?, sensors?, stuck_noticed?);
    let mut unsafe_faults = sensors;
    for wire in &wires {
        unsafe_faults.extend(faults(asking, wire, stuck_noticed));
    }
    asking.say(|_| {
        if unsafe_faults.is_empty() {
            format!(
                "{} commands were gone through with a wire cut and a pair shorted: none starts a closing, and none loses a stop unseen.",
                wires.len()
            )
        } else {
            format!("{}.", crate::plain::capitalized(&unsafe_faults.join("; ")))
        }
    });
    Ok(Outcome::Rule(unsafe_faults.is_empty()))
}

fn wired<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    command: &'s Command,
) -> Result<Wired<'s>, Halt> {
    let contact = pick!(asking, command.contact);
    let message = command.contact == Some(ContactKind::Message);
    let supervised = if message && command.what != CommandKind::Stop {
        Ok(&true)
    } else {
        let supervised = command.supervised.as_ref();
        asking.need(&command.origin, "supervised", supervised, "true")
    };
    let agreed = if command.what == CommandKind::FireOpen {
        let agreed = command.agreed.as_ref();
        asking
            .need(
                &command.origin,
                "agreed",
                agreed,
                "\"fire marshal, by letter: a cut wire leaves it shut\"",
            )
            .map(drop)
    } else {
        Ok(())
    };
    let (contact, supervised) = (contact?, *supervised?);
    agreed?;
    Ok(Wired {
        device,
        what: command.what,
        contact,
        supervised,
    })
}

/// The controller notices a command that never ends.
fn stuck_noticed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<bool, Halt> {
    let behavior = behavior_of(asking, site, gate)?;
    let noticed = behavior.stuck_noticed.as_ref();
    asking
        .need(&behavior.origin, "stuck_noticed", noticed, "true")
        .copied()
}

/// Devices that protect people and are not tested in every cycle.
fn untested<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<String>, Halt> {
    let mut found = Ok(Vec::new());
    let protects = |device: &&Device| !device.guards.is_empty() && device.kind != DeviceKind::Loop;
    for device in devices_of(site, gate).filter(protects) {
        match device.monitored {
            Some(true) => {}
            Some(false) => {
                if let Ok(list) = &mut found {
                    list.push(format!(
                        "nothing tests {}: a fault in its wires stays hidden",
                        device.id
                    ));
                }
            }
            None => found = asking.lack(&device.origin, "monitored", Wants::Written("true")),
        }
    }
    found
}

/// What one command does with a wire cut and with its pair shorted; those that are not safe are given back.
fn faults(asking: &mut Asking<'_>, wire: &Wired<'_>, stuck_noticed: bool) -> Vec<String> {
    let Wired {
        device,
        what,
        contact,
        supervised,
    } = wire;
    let worked_by = [
        ("cut", *contact == ContactKind::NormallyClosed),
        ("shorted", *contact == ContactKind::NormallyOpen),
    ];
    let mut found = Vec::new();
    for (fault, given) in worked_by {
        let (does, is_safe) = if *supervised {
            ("is noticed", true)
        } else {
            unsupervised(*what, given, fault, stuck_noticed)
        };
        asking.note(|_| format!("{}, {what}, {fault}: {does}.", device.id));
        if !is_safe {
            found.push(format!(
                "{} {fault} at {}: {does}",
                quoted(*what),
                device.id
            ));
        }
    }
    found
}

fn quoted(what: CommandKind) -> String {
    format!("the wires for {what}")
}

/// What an unsupervised command does with a fault that gives it, or that takes it away; and whether that is safe.
fn unsupervised(
    what: CommandKind,
    given: bool,
    fault: &str,
    stuck_noticed: bool,
) -> (&'static str, bool) {
    match (what, given) {
        (CommandKind::Stop, true) => ("stops the gate", true),
        (CommandKind::Stop, false) if fault == "cut" => {
            ("the stop is lost and nobody knows", false)
        }
        (CommandKind::Stop, false) => ("the stop is lost until it is next tried", true),
        (CommandKind::Close, true) => ("starts a closing", false),
        (CommandKind::Open | CommandKind::Reset, true) if stuck_noticed => {
            ("gives a command that never ends, which is noticed", true)
        }
        (CommandKind::Open | CommandKind::Reset, true) => (
            "gives a command that never ends, and nothing notices",
            false,
        ),
        (CommandKind::FireOpen, true) => ("opens the gate, as agreed", true),
        (CommandKind::FireOpen, false) => (
            "the gate does not open for the fire service, as agreed",
            true,
        ),
        (CommandKind::Close | CommandKind::Open | CommandKind::Reset, false) => {
            ("gives no command", true)
        }
        (CommandKind::Nothing, _) => ("moves nothing", true),
    }
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        [operator.behavior]
        stuck_noticed = true
        [[device]]
        id = "button"
        kind = "control"
        does = [
          { what = "open", contact = "normally open", supervised = false },
          { what = "stop", contact = "normally closed", supervised = false },
          { what = "close", contact = "normally open", supervised = true },
        ]
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        guards = ["closing"]
        monitored = true
    "#;

    #[test]
    fn holds_with_a_closed_stop_and_a_supervised_close() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains('3'), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_short_closes_or_a_cut_loses_the_stop() {
        let bare = SITE.replace(
            "what = \"close\", contact = \"normally open\", supervised = true",
            "what = \"close\", contact = \"normally open\", supervised = false",
        );
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("starts a closing"),
            "{}",
            finding.sentence
        );
        let open_stop = SITE.replace("normally closed", "normally open");
        let finding = only(&CHECK, &open_stop);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("stop is lost"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_a_stuck_command_or_a_dead_beam_stays_hidden() {
        let stuck = SITE.replace("stuck_noticed = true", "stuck_noticed = false");
        assert_eq!(only(&CHECK, &stuck).verdict, Verdict::Fails);
        let dead = SITE.replace("monitored = true", "monitored = false");
        assert_eq!(only(&CHECK, &dead).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_contacts_and_agreement() {
        let fire = SITE.replace(
            "what = \"open\", contact = \"normally open\"",
            "what = \"fire open\"",
        );
        let finding = only(&CHECK, &fire);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
