//! Which input wins when two speak at once: every pair that the site can bring about.
//!
//! Stop beats everything but an opening for the fire service to which the authority has agreed. What protects people beats
//! every command but a control that is held. Opening beats closing. The order has to be written, and is then gone through
//! pair by pair.

use super::{behavior_of, commands, devices_of};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{Behavior, CodeBasis, CommandKind, Gate, InputKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-priority",
    codes: BOTH,
    leaves_open: "whether the controller really keeps the order that is written: each pair is given together on site",
    concerns: "each gate",
    ask,
};

static FAULT_MODE: Source = Source {
    work: "UL 325, in force from January 2016",
    clause: "sensor blocked: a gate at rest stays at rest unless a control is held",
    evidence: Evidence::Seen,
    seen: "gate-operator manuals that retell it (addresses withheld)",
};

static ORDER: Source = Source {
    work: "order of commands: stop first, then what protects people, then opening before closing",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as controllers of gates are commonly set",
};

static STOP: Source = Source {
    work: "EN ISO 13850 and EN 12453",
    clause: "a stop overrides every other function",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            priority(asking, site, gate)
        });
    }
}

fn priority<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&ORDER);
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &FAULT_MODE,
        CodeBasis::Eu => &STOP,
    });
    let behavior = behavior_of(asking, site, gate)?;
    asking.need(
        &behavior.origin,
        "order",
        behavior.order.first(),
        "[\"stop\", \"protection\", \"fire open\", \"held control\", \"open\", \"close\"]",
    )?;
    said_by_every_control(asking, site, gate)?;
    let inputs = inputs(site, gate);
    let absent: Vec<String> = inputs
        .iter()
        .filter(|input| !behavior.order.contains(input))
        .map(|input| input.word().to_owned())
        .collect();
    let wrong = wrong_pairs(asking, &inputs, behavior);
    asking.say(|_| match (absent.as_slice(), wrong.as_slice()) {
        ([], []) => format!(
            "The order is {}, and every pair of them is decided rightly.",
            listed(&behavior.order)
        ),
        ([], wrong) => format!(
            "The order is {}: {}.",
            listed(&behavior.order),
            wrong.join("; ")
        ),
        (absent, _) => format!("The written order says nothing about {}.", and(absent)),
    });
    Ok(Outcome::Rule(absent.is_empty() && wrong.is_empty()))
}

/// Every control says what it does.
fn said_by_every_control<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<(), Halt> {
    let mut said = Ok(());
    for device in super::fixed_controls(site, gate) {
        said = said.and(super::does(asking, device).map(drop));
    }
    said
}

fn listed(order: &[InputKind]) -> String {
    let words: Vec<&str> = order.iter().map(|input| input.word()).collect();
    words.join(" before ")
}

/// What can speak to the controller of this gate.
fn inputs(site: &Site, gate: &Gate) -> Vec<InputKind> {
    let does = |what| devices_of(site, gate).any(|device| commands(device, what));
    let held = devices_of(site, gate)
        .any(|device| device.does.iter().any(|command| command.held == Some(true)));
    let protects = devices_of(site, gate).any(|device| !device.guards.is_empty());
    let closes = does(CommandKind::Close) || gate.hold_time.is_some();
    [
        (InputKind::Stop, does(CommandKind::Stop)),
        (InputKind::FireOpen, does(CommandKind::FireOpen)),
        (InputKind::Protection, protects),
        (InputKind::Held, held),
        (InputKind::Open, does(CommandKind::Open)),
        (InputKind::Close, closes),
    ]
    .into_iter()
    .filter(|(_, there)| *there)
    .map(|(input, _)| input)
    .collect()
}

/// The pairs that the written order decides wrongly, in words; every pair goes into the working.
fn wrong_pairs(asking: &mut Asking<'_>, inputs: &[InputKind], behavior: &Behavior) -> Vec<String> {
    let place = |input: &InputKind| behavior.order.iter().position(|other| other == input);
    let mut wrong = Vec::new();
    for (index, one) in inputs.iter().enumerate() {
        for other in &inputs[index + 1..] {
            let (Some(first), Some(second)) = (place(one), place(other)) else {
                continue;
            };
            let (winner, loser) = if first < second {
                (one, other)
            } else {
                (other, one)
            };
            let right = may_win(*winner, *loser, behavior.fire_over_stop.is_some());
            asking.note(|_| {
                let word = if right { "right" } else { "wrong" };
                format!("{one} and {other} together: {winner} wins, which is {word}.")
            });
            if !right {
                wrong.push(format!("{winner} overrides {loser}"));
            }
        }
    }
    wrong
}

/// The first input may win over the second.
fn may_win(winner: InputKind, loser: InputKind, fire_agreed: bool) -> bool {
    use InputKind::{Close, FireOpen, Held, Open, Protection, Stop};
    match (winner, loser) {
        (FireOpen, Stop) => fire_agreed,
        (Close, Open)
        | (Open | Close | FireOpen, Protection)
        | (Open | Close, FireOpen)
        | (_, Stop) => false,
        (Stop | Protection | Held | Open | Close | FireOpen, _) => true,
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
        hold_time = "30 s"
        [[operator]]
        id = "drive"
        gate = "main"
        [operator.behavior]
        order = ["stop", "protection", "fire open", "open", "close"]
        [[device]]
        id = "button"
        kind = "control"
        does = [{ what = "open" }, { what = "stop" }, { what = "fire open" }]
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        guards = ["closing"]
    "#;

    #[test]
    fn holds_with_stop_first() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_closing_or_opening_comes_first() {
        let close = SITE.replace("\"open\", \"close\"]\n", "\"close\", \"open\"]\n");
        let finding = only(&CHECK, &close);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("close overrides open"),
            "{}",
            finding.sentence
        );
        let open = SITE.replace(
            "[\"stop\", \"protection\", \"fire open\", \"open\"",
            "[\"stop\", \"open\", \"protection\", \"fire open\"",
        );
        assert_eq!(only(&CHECK, &open).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_fire_overrides_a_stop_unless_agreed() {
        let fire = SITE.replace(
            "[\"stop\", \"protection\", \"fire open\"",
            "[\"fire open\", \"stop\", \"protection\"",
        );
        assert_eq!(only(&CHECK, &fire).verdict, Verdict::Fails);
        let behind = SITE.replace("[\"stop\", \"protection\"", "[\"protection\", \"stop\"");
        assert_eq!(only(&CHECK, &behind).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_the_order_leaves_an_input_out() {
        let finding = only(&CHECK, &SITE.replace("\"fire open\", \"open\"", "\"open\""));
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("fire open"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_an_order_and_in_europe_until_looked_up() {
        let bare = SITE.replace("order = [", "#");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        assert_eq!(
            only(&CHECK, &SITE.replace("\"us\"", "\"eu\"")).verdict,
            Verdict::UnknownUntil
        );
    }
}
