//! Whether a battery carries everything for the hours and cycles wanted, in the cold and in its last year.
//!
//! Everything runs as it does in use; warning lights, and locks that a spring holds shut, draw only while the gate
//! moves. Converters between battery and load take their loss. A lead-acid battery is enlarged for the cold by IEEE 485,
//! most of whose table is recalled. A lithium battery is not enlarged: its data sheet's usable share has to say so.

use super::load::Bank;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::power::{BatteryStandby, Ieee485TemperatureFactor};
use quantity::{Quantity as _, Ratio};
use site::{Battery, Chemistry, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "standby-hours-and-moves",
    codes: BOTH,
    leaves_open: "which device drops out first, the voltage at the end of the discharge, what a lithium battery loses in the cold, and a discharge within an hour or two",
    concerns: "each battery",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for battery in &site.battery {
        round.ask(About::new(&battery.origin, &battery.id), |asking| {
            standby(asking, site, battery)
        });
    }
}

fn standby<'s>(asking: &mut Asking<'s>, site: &'s Site, battery: &'s Battery) -> Answer {
    let capacity = read!(asking, battery.capacity);
    let needed = needed(asking, site, battery);
    let (capacity, needed) = (capacity?, needed?);
    let gives = asking.work(&needed)?;
    asking.say(|print| {
        format!(
            "{} and {} cycles draw {}; cold and old, that asks for a battery of {}, and {} has {}.",
            print.q(needed.standby_time),
            needed.cycles,
            print.q(gives.drawn),
            print.q(gives.capacity),
            battery.id,
            print.q(capacity)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("capacity that is needed", gives.capacity),
        Labeled::new("capacity of the battery", capacity),
    ))
}

/// What the hours and cycles wanted of a battery ask for.
pub(crate) fn needed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<BatteryStandby, Halt> {
    let usable = read!(asking, battery.usable);
    let aging_factor = aging(asking, battery);
    let temperature_factor = cold(asking, battery);
    let outage = outage(asking, site, battery);
    Ok(BatteryStandby {
        temperature_factor: temperature_factor?,
        aging_factor: aging_factor?,
        allowed_discharge: usable?,
        ..outage?
    })
}

/// The outage that a battery is meant for, as a battery would carry it that is warm and new and may be emptied.
pub(super) fn outage<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<BatteryStandby, Halt> {
    let standby_time = read!(asking, battery.wanted_standby);
    let cycles = pick!(asking, battery.wanted_cycles);
    let bank = Bank::new(asking, site, battery);
    let (standing, moving, cycle) = match bank {
        Ok(bank) => (
            bank.standing(asking),
            bank.moving(asking),
            bank.cycle(asking),
        ),
        Err(halt) => (Err(halt), Err(halt), Err(halt)),
    };
    let one = Ratio::from_base(1.0);
    Ok(BatteryStandby {
        standing_current: standing?,
        standby_time: standby_time?,
        cycle_current: moving?,
        cycle_time: cycle?,
        cycles: cycles?,
        temperature_factor: one,
        aging_factor: one,
        design_margin: one,
        allowed_discharge: one,
    })
}

/// One over the share of its capacity that the battery has left when it is replaced.
fn aging<'s>(asking: &mut Asking<'s>, battery: &'s Battery) -> Result<Ratio, Halt> {
    let left = read!(asking, battery.end_of_life)?;
    if left.base() <= 0.0 {
        return asking.refuse("a battery that has nothing left at the end of its life is never replaced in time; 80 % is usual");
    }
    Ok(Ratio::from_base(1.0 / left.base()))
}

fn cold<'s>(asking: &mut Asking<'s>, battery: &'s Battery) -> Result<Ratio, Halt> {
    let chemistry = pick!(asking, battery.chemistry);
    let temperature = read!(asking, battery.coldest);
    match (chemistry?, temperature?) {
        (Chemistry::LithiumIronPhosphate, _) => Ok(Ratio::from_base(1.0)),
        (Chemistry::LeadAcid, temperature) => {
            let factor = asking
                .work(&Ieee485TemperatureFactor { temperature })?
                .factor;
            Ok(Ratio::from_base(factor.base().max(1.0)))
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
        travel = "20 ft"
        [gate.motion]
        cruise_speed = "1 ft/s"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[supply]]
        id = "charger"
        kind = "charge controller"
        [[supply]]
        id = "twelve"
        kind = "power supply"
        fed_by = "charger"
        voltage = "12 V"
        efficiency = "80 %"
        [[battery]]
        id = "battery"
        supply = "charger"
        chemistry = "lithium iron phosphate"
        voltage = "24 V"
        capacity = "30 Ah"
        usable = "90 %"
        end_of_life = "80 %"
        coldest = "5 °C"
        wanted_standby = "10 h"
        wanted_cycles = 20
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "charger"
        standing_current = "100 mA"
        running_current = "9 A"
        battery_speed = "100 %"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "twelve"
        current = "1.6 A"
        [[device]]
        id = "light"
        kind = "warning light"
        supply = "charger"
        current = "1 A"
    "#;

    #[test]
    fn holds_with_enough() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 1.6 A at 12 V through 80 % is 1 A at 24 V, and 0.1 A: 11 Ah. 20 cycles of 42 s at 10 A: 2.333 Ah.
        let ampere_hours = (11.0 + 20.0 * 42.0 * 10.0 / 3600.0) / 0.8 / 0.9;
        let needed = finding.demand.unwrap().value.unwrap() / 3600.0;
        assert!(
            (needed - ampere_hours).abs() < 1e-9,
            "{needed} {ampere_hours}"
        );
    }

    #[test]
    fn fails_with_too_little() {
        assert_eq!(
            only(&CHECK, &SITE.replace("30 Ah", "15 Ah")).verdict,
            Verdict::Fails
        );
    }

    #[test]
    fn lead_acid_rests_on_a_recalled_table() {
        let lead = SITE
            .replace("lithium iron phosphate", "lead-acid")
            .replace("30 Ah", "60 Ah");
        let finding = only(&CHECK, &lead);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("IEEE 485"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_a_current_and_a_wish() {
        let bare = SITE
            .replace("current = \"1.6 A\"", "")
            .replace("wanted_cycles = 20", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
