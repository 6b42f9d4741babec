//! Whether somebody who cannot hear, or cannot see, knows that a call goes out, is answered, and that the gate is open and
//! about to close.

use crate::asking::{Asking, Wants};
use crate::check::protect::means::{of_gate, told};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::Answer;
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{CallState, Device, DeviceKind, Gate, Signals, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "foot-both-senses",
    codes: BOTH,
    leaves_open: "how loud and how bright the signals are, and whether the words on the station are read by everybody",
    concerns: "each gate with an intercom",
    ask,
};

static BOTH_SENSES: Source = Source {
    work: "2010 ADA Standards 708: signals that are heard and seen, where people are let in by speech",
    clause: "",
    evidence: Evidence::Seen,
    seen: "https://corada.com/documents/ada-aba-guidelines-preamble/708; EN 301 549 was not at hand and asks for no less",
};

/// Every state that a caller has to know.
const STATES: [CallState; 4] = [
    CallState::Calling,
    CallState::Answered,
    CallState::Open,
    CallState::Closing,
];

/// How signals are written.
const SIGNALS: &str = "signals = { by_light = [\"calling\", \"answered\", \"gate open\", \"about to close\"], by_sound = [\"calling\", \"answered\", \"gate open\", \"about to close\"], text = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        let station = of_gate(site, gate).find(|device| device.kind == DeviceKind::Intercom);
        if let Some(station) = station {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                told_twice(asking, site, gate, station)
            });
        }
    }
}

fn told_twice<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    station: &'s Device,
) -> Answer {
    asking.rest_on(&BOTH_SENSES);
    let Some(own) = &station.signals else {
        return asking.lack(&station.origin, "signals", Wants::Table(SIGNALS));
    };
    let text = told(asking, &own.origin, "text", own.text)?;
    let all: Vec<&Signals> = of_gate(site, gate)
        .filter_map(|device| device.signals.as_ref())
        .collect();
    let missing = |told: fn(&Signals) -> &Vec<CallState>| -> Vec<String> {
        STATES
            .iter()
            .filter(|state| !all.iter().any(|signals| told(signals).contains(state)))
            .map(|state| state.word().to_owned())
            .collect()
    };
    let (unseen, unheard) = (
        missing(|signals| &signals.by_light),
        missing(|signals| &signals.by_sound),
    );
    let mut rules = Rules::default();
    rules.keep(
        unseen.is_empty(),
        &format!(
            "Who cannot hear is not told: {}. Give it by a light or a sign.",
            and(&unseen)
        ),
    );
    rules.keep(
        unheard.is_empty(),
        &format!(
            "Who cannot see is not told: {}. Give it by a sound.",
            and(&unheard)
        ),
    );
    rules.keep(
        text,
        &format!(
            "{} has neither text nor symbols beside its voice.",
            station.id
        ),
    );
    asking.say(|_| {
        rules.says(|| "That the call goes out, is answered, and that the gate is open and about to close is both seen and heard.".to_owned())
    });
    Ok(rules.outcome())
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "intercom"
        kind = "intercom"
        signals = { by_light = ["calling", "answered"], by_sound = ["calling", "answered", "gate open"], text = true }
        [[device]]
        id = "lamp"
        kind = "warning light"
        signals = { by_light = ["gate open", "about to close"], by_sound = ["about to close"] }
    "#;

    #[test]
    fn holds_with_lamp_and_sounder() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            all(
                &CHECK,
                &SITE.replace(
                    "\"intercom\"\n        signals",
                    "\"camera\"\n        signals"
                )
            )
            .is_empty()
        );
    }

    #[test]
    fn fails_without_a_sound_and_without_text() {
        let mute = SITE.replace("by_sound = [\"about to close\"] ", "by_sound = [] ");
        let finding = only(&CHECK, &mute);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("about to close"),
            "{}",
            finding.sentence
        );
        assert_eq!(
            only(&CHECK, &SITE.replace("text = true", "text = false")).verdict,
            Verdict::Fails
        );
    }

    #[test]
    fn unknown_without_the_stations_signals() {
        assert_eq!(
            only(&CHECK, &SITE.replace(", text = true", "")).verdict,
            Verdict::UnknownUntil
        );
    }
}
