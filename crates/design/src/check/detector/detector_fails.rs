//! What the gate does when a detector of vehicles or its loop dies: each detector that acts on the gate.
//!
//! What holds the leaf open, stops it or keeps it from opening onto a vehicle must say "vehicle there" when it is dead. What
//! opens the gate says what security chose. Either way somebody has to see that it is dead.

use crate::asking::{Asking, Wants, need, pick};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Device, DeviceKind, OnVehicle, OutputState, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-detector-fails",
    codes: BOTH,
    leaves_open: "relays that weld, a loop whose insulation fails slowly, a detector that locks up: open and short the loop at the detector and pull its supply at every visit",
    concerns: "each loop, and each other device that does something when it sees a vehicle",
    ask,
};

static FAILS: Source = Source {
    work: "detectors that hold or shadow fail to vehicle there, those that open to what security chose; the failure is shown",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "relay states on the data sheets of loop detectors: fail-safe and fail-secure outputs",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let acts = |device: &&Device| device.kind == DeviceKind::Loop || !device.on_vehicle.is_empty();
    for device in site.device.iter().filter(acts) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            fails_well(asking, device)
        });
    }
}

/// What a detector is there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Use {
    Holds,
    Opens,
    Reports,
}

fn use_of(device: &Device) -> Use {
    use OnVehicle::{HoldsOpen, Opens, StopsClosing, StopsOpening};
    let any = |wanted: &[OnVehicle]| device.on_vehicle.iter().any(|does| wanted.contains(does));
    if any(&[HoldsOpen, StopsClosing, StopsOpening]) {
        Use::Holds
    } else if any(&[Opens]) {
        Use::Opens
    } else {
        Use::Reports
    }
}

fn fails_well<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Answer {
    if device.on_vehicle.is_empty() {
        let write = Wants::Written("[\"holds open\", \"stops closing\"]");
        return asking.lack(&device.origin, "on_vehicle", write);
    }
    let open = pick!(asking, device.failing?.open);
    let shorted = if device.kind == DeviceKind::Loop {
        pick!(asking, device.failing?.shorted)
    } else {
        open
    };
    let lost = pick!(asking, device.failing?.supply_lost);
    let shown = need!(asking, device.failing?.shown, "true");
    let chosen = match use_of(device) {
        Use::Opens => chosen(asking, device).map(Some),
        Use::Holds => Ok(Some(OutputState::Vehicle)),
        Use::Reports => Ok(None),
    };
    let states = [
        ("its loop or wire open", open?),
        ("its loop shorted", shorted?),
        ("its supply lost", lost?),
    ];
    let (shown, wanted) = (*shown?, chosen?);
    asking.rest_on(&FAILS);
    let wrong: Vec<&str> = states
        .iter()
        .filter(|(_, state)| wanted.is_some_and(|wanted| wanted != *state))
        .map(|(when, _)| *when)
        .collect();
    let said = said(device, wanted, &wrong, shown);
    let holds = wrong.is_empty() && shown;
    asking.say(|_| said);
    Ok(Outcome::Rule(holds))
}

fn chosen<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
) -> Result<OutputState, crate::outcome::Halt> {
    let chosen = pick!(asking, device.failing?.chosen);
    let by = need!(asking, device.failing?.chosen_by, "\"owner, 2026-05-01\"");
    by?;
    chosen
}

fn said(device: &Device, wanted: Option<OutputState>, wrong: &[&str], shown: bool) -> String {
    let purpose = match use_of(device) {
        Use::Holds => {
            "keeps the leaf off vehicles and has to say \"vehicle there\" when it is dead"
        }
        Use::Opens if wanted == Some(OutputState::Vehicle) => {
            "opens the gate, and security chose that it opens when it is dead"
        }
        Use::Opens => "opens the gate, and security chose that it stays shut when it is dead",
        Use::Reports => "only reports",
    };
    let does = if wrong.is_empty() {
        "; tried, it does as is wanted".to_owned()
    } else if use_of(device) == Use::Holds {
        format!(
            "; with {} it says \"no vehicle\" and the leaf closes on whoever stands there. Take the other contact of its relay, or set it to fail safe",
            wrong.join(" and with ")
        )
    } else {
        format!("; with {} it does the opposite", wrong.join(" and with "))
    };
    let shown = if shown {
        "; its failure is shown."
    } else {
        "; nobody is shown that it has failed."
    };
    format!("{} {purpose}{does}{shown}", device.id)
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
        [[device]]
        id = "loop-in"
        kind = "loop"
        on_vehicle = ["holds open", "stops closing"]
        failing = { open = "vehicle there", shorted = "vehicle there", supply_lost = "vehicle there", shown = true }
    "#;

    #[test]
    fn holds_where_every_failure_says_vehicle_there() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_dead_supply_says_no_vehicle_or_nobody_is_told() {
        let dead = SITE.replace(
            "supply_lost = \"vehicle there\"",
            "supply_lost = \"no vehicle\"",
        );
        let finding = only(&CHECK, &dead);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("its supply lost"),
            "{}",
            finding.sentence
        );
        let silent = SITE.replace("shown = true", "shown = false");
        assert_eq!(only(&CHECK, &silent).verdict, Verdict::Fails);
    }

    #[test]
    fn an_exit_does_what_security_chose() {
        let exit = SITE.replace("\"holds open\", \"stops closing\"", "\"opens\"");
        let finding = only(&CHECK, &exit);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:#?}", finding.missing);
        let chosen = |state: &str| {
            exit.replace(
                "shown = true",
                &format!("shown = true, chosen = \"{state}\", chosen_by = \"owner\""),
            )
        };
        assert_eq!(
            only(&CHECK, &chosen("vehicle there")).verdict,
            Verdict::Holds
        );
        assert_eq!(only(&CHECK, &chosen("no vehicle")).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_where_nobody_tried() {
        let untried = SITE.split("failing").next().unwrap_or_default();
        let finding = only(&CHECK, untried);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 4, "{:#?}", finding.missing);
    }
}
