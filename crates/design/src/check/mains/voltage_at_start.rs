//! What voltage is left at the far end of the mains run while an operator starts.
//!
//! A power supply takes the same power whatever its voltage: its current is taken at its lowest voltage, where it is
//! greatest. An operator that runs on the mains itself draws its starting current. Heaters run all the while.

use super::branch::{LICENSED, cable, circuits};
use super::circuit::run;
use super::load::{fed_by, motors, steady};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::power::VoltageDrop;
use quantity::{Current, Quantity as _, Voltage};
use site::{Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-voltage-at-start",
    codes: BOTH,
    leaves_open: "the inrush of a power supply that is switched on, lamps on the same feed that flicker, and a generator in place of the mains",
    concerns: "each mains circuit on which an operator or its power supply hangs",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for supply in circuits(site) {
        let drives = fed_by(site, supply).next().is_some() || motors(site, supply).next().is_some();
        if drives {
            round.ask(About::new(&supply.origin, &supply.id), |asking| {
                at_start(asking, site, supply)
            });
        }
    }
}

fn at_start<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Answer {
    let voltage = read!(asking, supply.voltage);
    let cable = cable(asking, site, supply);
    let run = cable.and_then(|cable| run(asking, cable));
    let steady = steady(asking, site, supply);
    let least = least(asking, site, supply);
    let mut starting = Ok(Current::from_base(0.0));
    for operator in motors(site, supply) {
        let current = read!(asking, operator.starting_current);
        starting = starting.and_then(|sum: Current| Ok(sum + current?));
    }
    let (voltage, run, steady, least, starting) = (voltage?, run?, steady?, least?, starting?);
    let current = steady.current(least) + starting;
    let lost = asking.work(&VoltageDrop {
        source: voltage,
        current,
        ..run
    })?;
    asking.say(|print| {
        format!(
            "At the start up to {} flow through the run, and {} of {} are left at its end; what hangs there needs {}. {LICENSED}",
            print.q(current),
            print.q(lost.far_end),
            print.q(voltage),
            print.q(least)
        )
    });
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new("least voltage at which it works", least),
        Labeled::new("voltage at the end of the run", lost.far_end),
    )))
}

/// The highest of the lowest voltages at which what hangs on the circuit still works.
fn least<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Result<Voltage, Halt> {
    let mut highest = Ok(Voltage::from_base(0.0));
    let mut count = |found: Result<Voltage, Halt>| {
        highest = highest.and_then(|known: Voltage| {
            let found = found?;
            Ok(if found > known { found } else { known })
        });
    };
    for fed in fed_by(site, supply) {
        count(read!(asking, fed.intake?.least_voltage));
    }
    for operator in motors(site, supply) {
        count(read!(asking, operator.least_voltage));
    }
    highest
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

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
        supply = "supply-24"
        starting_current = "30 A"
        [[enclosure]]
        id = "box"
        heater = "60 W"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        voltage = "120 V ± 5 %"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        enclosure = "box"
        fed_by = "mains"
        voltage = "24 V"
        rated_current = "20 A"
        efficiency = "90 %"
        [supply.intake]
        power_factor = "1"
        least_voltage = "90 V"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "supply-24"
        size = "12 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "75 °C"
        length = "300 ft"
    "#;

    #[test]
    fn holds_with_a_supply_that_takes_little() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // By hand: 30 A · 24 V / 0.9 + 60 W is 860 W, 9.556 A at 90 V; 600 ft of 1.98 Ω/kft lose 11.35 V.
        let volts = finding.capacity.unwrap().value.unwrap();
        assert!(
            (volts - (120.0 - 860.0 / 90.0 * 0.6 * 1.98)).abs() < 0.01,
            "{volts}"
        );
    }

    #[test]
    fn fails_over_a_very_long_run_and_turns_on_a_low_source() {
        let far = SITE.replace("300 ft", "1500 ft");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Fails);
        let near = SITE.replace("300 ft", "700 ft");
        assert_eq!(only(&CHECK, &near).standing, Standing::TurnsWithinTolerance);
    }

    #[test]
    fn an_operator_on_the_mains_draws_its_own_start() {
        let direct = SITE
            .replace(
                "supply = \"supply-24\"",
                "supply = \"mains\"\nleast_voltage = \"105 V\"",
            )
            .replace("300 ft", "60 ft");
        let finding = only(&CHECK, &direct);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_the_least_voltage_and_the_start() {
        let bare = SITE
            .replace("least_voltage = \"90 V\"", "")
            .replace("starting_current = \"30 A\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
