//! What is left at a lock as it pulls in at night, and at everything that shares its conductors.
//!
//! Infrared, lamps and heaters are on. What hangs on the same conductors as the lock is judged with it; what has its own
//! pair from a supply that holds its voltage feels nothing of the pull but through the supply's own limit.

use super::supplied::momentary;
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Part, PowerCase, State, Takes, outputs, states};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::Voltage;
use site::{Device, DeviceKind, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-voltage-at-release",
    codes: BOTH,
    leaves_open: "how long the pull lasts, and a bolt that is pressed by the leaf and pulls for longer",
    concerns: "each lock that draws current",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    let locks = site
        .device
        .iter()
        .filter(|device| device.kind == DeviceKind::Lock);
    for lock in locks.filter(|lock| lock.supply.is_some() || lock.current.is_some()) {
        round.ask(About::new(&lock.origin, &lock.id), |asking| {
            release(asking, &circuits, lock)
        });
    }
}

/// Something on the lock's conductors, as the lock pulls in.
struct Beside<'s> {
    name: &'s Id,
    least: Voltage,
    voltage: Voltage,
}

fn release<'s>(asking: &mut Asking<'s>, circuits: &Circuits<'s>, lock: &'s Device) -> Answer {
    let source = circuits.feeding(asking, Takes::Device(lock))?;
    let mut felt = Vec::new();
    let mut whole = Ok(());
    for part in circuits
        .parts
        .iter()
        .filter(|part| part.takers_named(&lock.id).next().is_some())
    {
        match beside(asking, circuits, part, lock) {
            Ok(mut here) => felt.append(&mut here),
            Err(halt) => whole = Err(halt),
        }
    }
    let drawn = outputs(circuits, asking, source);
    let limit = momentary(asking, circuits, source);
    whole?;
    let (drawn, limit) = (drawn?.in_case(PowerCase::Release), limit?);
    let worst = felt.iter().min_by(|a, b| {
        (a.voltage - a.least)
            .partial_cmp(&(b.voltage - b.least))
            .unwrap_or(std::cmp::Ordering::Equal)
    });
    let Some(worst) = worst else {
        return asking.refuse("nothing feeds this lock");
    };
    let name = circuits.sources[source].id();
    asking.say(|print| {
        format!(
            "As {} pulls in at night, {} is left at {}, which needs {}; {name} gives {} of the {} that it can for a moment.",
            lock.id,
            print.q(worst.voltage),
            if *worst.name == lock.id { "it".to_owned() } else { worst.name.to_string() },
            print.q(worst.least),
            print.q(drawn),
            print.q(limit)
        )
    });
    let comparisons = felt
        .iter()
        .map(|beside| {
            Comparison::at_most(
                Labeled::new("least voltage at which it works", beside.least),
                Labeled::new("voltage as the lock pulls in", beside.voltage),
            )
        })
        .chain([Comparison::at_most(
            Labeled::new("current as the lock pulls in", drawn),
            Labeled::new("current that the supply gives for a moment", limit),
        )]);
    match Outcome::worst(comparisons) {
        Some(outcome) => Ok(outcome),
        None => asking.refuse("nothing feeds this lock"),
    }
}

/// Everything on the lock's conductors.
fn beside<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    part: &Part<'s>,
    lock: &'s Device,
) -> Result<Vec<Beside<'s>>, Halt> {
    let found = states(circuits, asking, part, Some(&lock.id));
    let mut least = Vec::new();
    let mut whole = Ok(());
    for taker in &part.takers {
        let needed = match taker.takes {
            Takes::Device(device) => read!(asking, device.least_voltage),
            Takes::Operator(operator) => read!(asking, operator.least_voltage),
            Takes::Supply(supply) => read!(asking, supply.least_input),
            Takes::Heater(_) => continue,
        };
        match needed {
            Ok(needed) => least.push((taker.takes.id(), needed)),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let found = found?;
    let Some(state) = found
        .iter()
        .find(|state| state.case() == PowerCase::Release)
    else {
        return asking.refuse("nothing feeds this lock");
    };
    if let State::Collapses { .. } = state {
        asking.note(|_| "The voltage collapses as the lock pulls in.".to_owned());
    }
    let felt = least.into_iter().enumerate();
    Ok(felt
        .map(|(at, (name, least))| Beside {
            name,
            least,
            voltage: state.voltage(at),
        })
        .collect())
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
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "24 V"
        rated_current = "5 A"
        [[joint]]
        id = "splice"
        [[device]]
        id = "bolt"
        kind = "lock"
        supply = "source"
        on_power_loss = "fail-secure"
        least_voltage = "20.4 V"
        current = "600 mA"
        peak_current = "900 mA"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "source"
        least_voltage = "20 V"
        current = "200 mA"
        night_current = "400 mA"
        [[cable]]
        id = "trunk"
        from = "source"
        to = "splice"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "20 °C"
        length = "100 ft"
        [[cable]]
        id = "to-bolt"
        from = "splice"
        to = "bolt"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "20 °C"
        length = "10 ft"
        [[cable]]
        id = "to-reader"
        from = "splice"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "20 °C"
        length = "10 ft"
    "#;

    #[test]
    fn holds_on_a_short_trunk_and_counts_the_reader_by_night() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("1.3 A"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_trunk_is_long_and_where_the_supply_is_small() {
        let long = SITE.replace("\"100 ft\"", "\"250 ft\"");
        assert_eq!(only(&CHECK, &long).verdict, Verdict::Fails);
        let small = SITE.replace("\"5 A\"", "\"1 A\"");
        assert_eq!(only(&CHECK, &small).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_what_the_reader_beside_it_needs() {
        let bare = SITE.replace("least_voltage = \"20 V\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
