//! Whether a gate moves by itself when power comes back or its controller starts again.

use super::behavior_of;
use crate::asking::{Asking, pick};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Behavior, CodeBasis, Gate, Homing, PowerReturn, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-power-return",
    codes: BOTH,
    leaves_open: "a short dip of the supply that upsets the controller, and a command that was given and kept while power was away",
    concerns: "each gate",
    ask,
};

static FRESH: Source = Source {
    work: "no movement after power returns until somebody commands it: whoever works at a dead gate does not expect it to move",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as controllers of gates are commonly set",
};

static UNEXPECTED: Source = Source {
    work: "EN 60204-1",
    clause: "prevention of unexpected start",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            power_return(asking, site, gate)
        });
    }
}

fn power_return<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&FRESH);
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&UNEXPECTED);
    }
    let behavior = behavior_of(asking, site, gate)?;
    let after = pick!(asking, behavior.power_return);
    let homing = homing(asking, behavior);
    let closes = if gate.hold_time.is_some() {
        let closes = behavior.closes_after_return.as_ref();
        asking
            .need(&behavior.origin, "closes_after_return", closes, "false")
            .copied()
    } else {
        Ok(false)
    };
    let (after, homing, closes) = (after?, homing?, closes?);
    let moves = match after {
        PowerReturn::Stands => None,
        PowerReturn::Opens => Some("it opens by itself when power comes back"),
        PowerReturn::Closes => Some("it closes by itself when power comes back"),
        PowerReturn::GoesOn => Some("it goes on by itself where it was interrupted"),
    };
    let faults: Vec<&str> = [
        moves,
        homing,
        closes.then_some("its hold time closes it without a fresh command"),
    ]
    .into_iter()
    .flatten()
    .collect();
    asking.say(|_| {
        if faults.is_empty() {
            "When power comes back the gate stands until somebody commands it.".to_owned()
        } else {
            format!("After power was away {}.", faults.join("; "))
        }
    });
    Ok(Outcome::Rule(faults.is_empty()))
}

/// What is wrong with how the leaf finds its ends again.
fn homing<'s>(
    asking: &mut Asking<'s>,
    behavior: &'s Behavior,
) -> Result<Option<&'static str>, Halt> {
    match pick!(asking, behavior.homing)? {
        Homing::None => Ok(None),
        Homing::ByItself => Ok(Some("it looks for its ends by itself")),
        Homing::AtSpeed => Ok(Some("it looks for its ends at its usual speed")),
        Homing::OnCommand => {
            let protected = behavior.homes_protected.as_ref();
            let protected = *asking.need(&behavior.origin, "homes_protected", protected, "true")?;
            Ok((!protected).then_some("it looks for its ends with its protection dead"))
        }
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
        power_return = "stands still"
        homing = "slowly on a command"
        homes_protected = true
        closes_after_return = false
    "#;

    #[test]
    fn holds_where_it_waits_for_a_command() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_anything_moves_it() {
        for (one, other) in [
            ("stands still", "closes"),
            ("slowly on a command", "slowly by itself"),
            ("homes_protected = true", "homes_protected = false"),
            ("closes_after_return = false", "closes_after_return = true"),
        ] {
            let finding = only(&CHECK, &SITE.replace(one, other));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{other}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_the_facts_and_in_europe_until_looked_up() {
        let bare = SITE.split("[operator.behavior]").next().unwrap();
        assert_eq!(only(&CHECK, bare).verdict, Verdict::UnknownUntil);
        let empty = format!("{bare}[operator.behavior]\n");
        assert_eq!(only(&CHECK, &empty).missing.len(), 3);
        assert_eq!(
            only(&CHECK, &SITE.replace("\"us\"", "\"eu\"")).verdict,
            Verdict::UnknownUntil
        );
    }
}
