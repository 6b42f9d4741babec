//! Whether the gate stops for good after a second event, sounds its alarm, and waits for somebody who sees it.
//!
//! After a second obstruction found by its own sensing the gate only stops; after a second report of a sensor it stops, or
//! stops and starts back. In the United States an alarm sounds after two events, for five minutes. Nothing starts it again
//! by itself; who resets it works a control that hangs there, whose sight of the gate is a question of its own. In Europe
//! the same is asked as common practice, without the alarm.

use super::means::behavior_told;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use formula::protection::{AlarmVerdict, EntrapmentAlarm};
use formula::{Evidence, Source};
use site::{Behavior, CodeBasis, Device, DeviceKind, Operator, SecondEvent, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-after-hit",
    codes: BOTH,
    leaves_open: "whether the reset control shows the whole gate, which is asked of each control; how loud the alarm is, recalled as 100 dB at 10 ft and not read; two blocks in one travel, and the reset tried from each control, show it",
    concerns: "each gate with its operator",
    ask,
};

static US: Source = Source {
    work: "UL 325, in force 1 August 2018",
    clause: "second obstruction; reset control in sight after two activations in a row",
    evidence: Evidence::Seen,
    seen: "an installer's page that quotes DASMA Technical Data Sheet 353, and gate-operator manuals that reprint the instructions (addresses withheld)",
};

static EU: Source = Source {
    work: "a gate that has met somebody twice stands until somebody has looked",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; the American rule asks for it",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(
        site,
        |_| true,
        |asking, _, operator| after_hit(asking, site, operator),
    );
}

fn after_hit<'s>(asking: &mut Asking<'s>, site: &'s Site, operator: &'s Operator) -> Answer {
    let Some(behavior) = &operator.behavior else {
        let example = Wants::Table(
            "[operator.behavior]\nsecond_event = \"stops\"\nsecond_report = \"reverses again\"\nalarm_after = 2\nalarm_time = \"5 min\"\nreset_by = [\"button-yard\"]\nrestarts_itself = false",
        );
        return asking.lack(&operator.origin, "behavior", example);
    };
    let own = pick!(asking, behavior.second_event);
    let reported = pick!(asking, behavior.second_report);
    let restarts = behavior_told(
        asking,
        operator,
        ("restarts_itself", "behavior.restarts_itself"),
        behavior.restarts_itself,
    );
    let resets = resets(asking, site, behavior);
    let alarm = match site.site.code_basis {
        CodeBasis::Us => alarm(asking, behavior),
        CodeBasis::Eu => Ok(None),
    };
    let (own, reported, restarts) = (own?, reported?, restarts?);
    let (resets, alarm) = (resets?, alarm?);
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &US,
        CodeBasis::Eu => &EU,
    });
    let from_afar: Vec<&str> = resets
        .iter()
        .filter(|device| !matches!(device.kind, DeviceKind::Control | DeviceKind::Keypad))
        .map(|device| device.id.as_str())
        .collect();
    let faults = [
        (own != SecondEvent::Stops)
            .then(|| "after a second obstruction it does more than stop".to_owned()),
        (reported == SecondEvent::GoesOn)
            .then(|| "after a second report of a sensor it goes on".to_owned()),
        restarts.then(|| "it starts again by itself".to_owned()),
        alarm.map(str::to_owned),
        (!from_afar.is_empty()).then(|| format!("{} resets it from afar", from_afar.join(", "))),
    ];
    let faults: Vec<String> = faults.into_iter().flatten().collect();
    asking.say(|_| {
        if faults.is_empty() {
            let names: Vec<&str> = resets.iter().map(|device| device.id.as_str()).collect();
            format!(
                "After a second event {} stands until {} resets it.",
                operator.id,
                names.join(" or ")
            )
        } else {
            format!("{}: {}.", operator.id, faults.join("; "))
        }
    });
    Ok(Outcome::Rule(faults.is_empty()))
}

/// The controls that reset it.
fn resets<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    behavior: &'s Behavior,
) -> Result<Vec<&'s Device>, Halt> {
    let resets: Vec<&Device> = site
        .device
        .iter()
        .filter(|device| behavior.reset_by.contains(&device.id))
        .collect();
    if resets.is_empty() {
        return asking.lack(
            &behavior.origin,
            "reset_by",
            Wants::Written("[\"button-yard\"]"),
        );
    }
    Ok(resets)
}

/// What is wrong with the alarm; nothing where it is as it should be.
fn alarm<'s>(
    asking: &mut Asking<'s>,
    behavior: &'s Behavior,
) -> Result<Option<&'static str>, Halt> {
    let events = pick!(asking, behavior.alarm_after);
    if events.is_ok_and(|events| events == 0) {
        return Ok(Some("it has no alarm"));
    }
    let duration = read!(asking, behavior.alarm_time);
    let rule = asking.work(&EntrapmentAlarm {
        events: events?,
        duration: duration?,
    })?;
    Ok(match rule.verdict {
        AlarmVerdict::Kept => None,
        AlarmVerdict::Late => Some("its alarm sounds after too many events"),
        AlarmVerdict::Short => Some("its alarm stops too soon"),
    })
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        [operator.behavior]
        second_event = "stops"
        second_report = "reverses again"
        alarm_after = 2
        alarm_time = "5 min"
        reset_by = ["button"]
        restarts_itself = false
        [[device]]
        id = "button"
        kind = "control"
        [[device]]
        id = "phone"
        kind = "intercom"
    "#;

    #[test]
    fn holds_when_it_stands_and_waits() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let quiet = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("alarm_after = 2", "")
            .replace("alarm_time = \"5 min\"", "");
        assert_eq!(only(&CHECK, &quiet).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_on_each_way_of_not_waiting() {
        for (was, is) in [
            (
                "second_event = \"stops\"",
                "second_event = \"reverses again\"",
            ),
            ("\"reverses again\"", "\"goes on\""),
            ("restarts_itself = false", "restarts_itself = true"),
            ("alarm_after = 2", "alarm_after = 3"),
            ("alarm_after = 2", "alarm_after = 0"),
            ("5 min", "2 min"),
            ("[\"button\"]", "[\"button\", \"phone\"]"),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_controller_tried() {
        let bare = SITE
            .replace("second_event = \"stops\"", "")
            .replace("reset_by = [\"button\"]", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
