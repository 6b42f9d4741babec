//! Whether panel and service can give what the gate takes, and whether anything or anybody can switch it off.

use super::branch::{LICENSED, circuit, circuits};
use super::load::{motors, steady};
use crate::asking::{Asking, Wants, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Current, Quantity as _, Word as _};
use site::{Interrupter, Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-source",
    codes: BOTH,
    leaves_open: "the load calculation behind the spare capacity, and a service that somebody loads further",
    concerns: "each mains circuit that feeds the gate",
    ask,
};

static OWN: Source = Source {
    work: "a gate has a circuit of its own, traced to its breaker and labeled, that nothing else can drop",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for supply in circuits(site) {
        round.ask(About::new(&supply.origin, &supply.id), |asking| {
            gives(asking, site, supply)
        });
    }
}

fn gives<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Answer {
    asking.rest_on(&OWN);
    let circuit = circuit(asking, supply)?;
    let at = &circuit.origin;
    let panel = asking.need(
        at,
        "panel",
        circuit.panel.as_ref(),
        "\"office panel, place 12\"",
    );
    let spare = read!(asking, circuit.spare);
    let dedicated = told(asking, at, "dedicated", circuit.dedicated);
    let labeled = told(asking, at, "labeled", circuit.labeled);
    let interrupters = if circuit.interrupted_by.is_empty() {
        asking.lack(at, "interrupted_by", Wants::Written("[\"nothing\"]"))
    } else {
        Ok(&circuit.interrupted_by)
    };
    let voltage = read!(asking, supply.voltage);
    let steady = steady(asking, site, supply);
    let mut running = Ok(Current::from_base(0.0));
    for operator in motors(site, supply) {
        let current = read!(asking, operator.running_current);
        running = running.and_then(|sum: Current| Ok(sum + current?));
    }
    let drops: Vec<String> = circuit
        .interrupted_by
        .iter()
        .filter(|one| **one != Interrupter::Nothing)
        .map(|one| format!("a {}", one.word()))
        .collect();
    let fault = if !drops.is_empty() {
        Some(format!(
            "The gate's circuit can be dropped by {}: take it off that.",
            and(&drops)
        ))
    } else if matches!(dedicated, Ok(false)) {
        Some("Something else hangs on the gate's circuit and drops it one day: give the gate its own.".to_owned())
    } else if matches!(labeled, Ok(false)) {
        Some("Its breaker does not say what it feeds: trace it and label it.".to_owned())
    } else {
        None
    };
    if let Some(fault) = fault {
        asking.say(|_| format!("{fault} {LICENSED}"));
        return Ok(Outcome::Rule(false));
    }
    let (panel, spare, voltage, steady) = (panel?, spare?, voltage?, steady?);
    let (running, _) = (running?, interrupters?);
    let _ = (dedicated?, labeled?);
    let takes = steady.current(voltage) + running;
    asking.say(|print| {
        format!(
            "From {panel}: the gate takes up to {}, and {} are left there; nothing else can drop it. {LICENSED}",
            print.q(takes),
            print.q(spare)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("current that the gate takes", takes),
        Labeled::new("current that is left at the source", spare),
    ))
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
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        voltage = "120 V"
        [supply.circuit]
        panel = "office panel, place 12"
        spare = "40 A"
        dedicated = true
        labeled = true
        interrupted_by = ["nothing"]
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        fed_by = "mains"
        voltage = "24 V"
        rated_current = "20 A"
        efficiency = "90 %"
        [supply.intake]
        power_factor = "1"
    "#;

    #[test]
    fn holds_with_a_circuit_of_its_own() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_a_timer_shared_unlabeled_and_without_room() {
        for (from, to) in [
            ("[\"nothing\"]", "[\"timer\"]"),
            ("dedicated = true", "dedicated = false"),
            ("labeled = true", "labeled = false"),
            ("\"40 A\"", "\"3 A\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{from}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_until_it_was_traced() {
        let finding = only(&CHECK, &SITE.replace("interrupted_by = [\"nothing\"]", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
