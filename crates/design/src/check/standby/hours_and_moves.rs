//! Whether a battery carries everything for the hours and cycles wanted, in the cold and in its last year.
//!
//! Everything runs as it does in use; warning lights, and locks that a spring holds shut, draw only while the gate
//! moves. Converters between battery and load take their loss. A lead-acid battery is enlarged for the cold by IEEE 485,
//! most of whose table is recalled, and gives less the faster it is drained, by Peukert's law at the mean current of the
//! outage; slower than its rated time it is taken for no larger. A lithium battery is not enlarged: its data sheet's usable
//! share has to say so. What is lost first as the battery falls follows from the voltages of the circuit as the gate starts.

use super::load::Bank;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::power::{Lost, order_of_loss, shown};
use crate::subject::About;
use formula::power::{BatteryStandby, Ieee485TemperatureFactor, PeukertDischargeTime};
use quantity::{Charge, Current, Quantity as _, Ratio, Time};
use site::{Battery, Chemistry, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "standby-hours-and-moves",
    codes: BOTH,
    leaves_open: "what a lithium battery loses in the cold, and what single moves at a high current take from a lead-acid one beyond its mean rate",
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
    let fast = fast(asking, battery);
    let (capacity, needed, fast) = (capacity?, needed?, fast?);
    let gives = asking.work(&needed)?;
    let share = at_rate(asking, capacity, &needed, gives.drawn, fast)?;
    let asked = gives.capacity / share.base();
    asking.say(|print| {
        let rate = if fast.is_some() { ", at that rate" } else { "" };
        let lost = order_of_loss(site, &shown(site));
        format!(
            "{} and {} cycles draw {}; cold and old{rate}, that asks for a battery of {}, and {} has {}.{}",
            print.q(needed.standby_time),
            needed.cycles,
            print.q(gives.drawn),
            print.q(asked),
            battery.id,
            print.q(capacity),
            first_lost(print, battery, &lost)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("capacity that is needed", asked),
        Labeled::new("capacity of the battery", capacity),
    ))
}

/// What is lost first as the battery falls, and at which of its voltages.
fn first_lost(print: Print, battery: &Battery, lost: &[Lost]) -> String {
    let mut own = lost.iter().filter(|one| battery.id == *one.battery);
    match own
        .next()
        .and_then(|first| Some((first, first.at?, first.cut_off?)))
    {
        Some((first, at, cut_off)) if at <= cut_off => format!(
            " As it falls, nothing is known to be lost before its loads are switched off at {}; {} would be first, at {}.",
            print.q(cut_off),
            first.id,
            print.q(at)
        ),
        Some((first, at, _)) => format!(
            " As it falls, {} is lost first: when the gate starts with the battery at {}.",
            first.id,
            print.q(at)
        ),
        None => String::new(),
    }
}

/// Peukert's constant of a lead-acid battery, and the time for which its capacity is stated.
fn fast<'s>(asking: &mut Asking<'s>, battery: &'s Battery) -> Result<Option<(Ratio, Time)>, Halt> {
    if battery.chemistry != Some(Chemistry::LeadAcid) {
        return Ok(None);
    }
    let constant = read!(asking, battery.peukert);
    let rated = read!(asking, battery.rated_time);
    Ok(Some((constant?, rated?)))
}

/// Share of its capacity that the battery gives at the mean current of the outage.
fn at_rate(
    asking: &mut Asking<'_>,
    capacity: Charge,
    needed: &BatteryStandby,
    drawn: Charge,
    fast: Option<(Ratio, Time)>,
) -> Result<Ratio, Halt> {
    let whole = Ratio::from_base(1.0);
    let Some((exponent, rated_time)) = fast else {
        return Ok(whole);
    };
    if drawn.base() <= 0.0 || needed.standby_time.base() <= 0.0 {
        return Ok(whole);
    }
    let gives = asking.work(&PeukertDischargeTime {
        capacity,
        rated_time,
        exponent,
        current: Current::from_base(drawn.base() / needed.standby_time.base()),
    })?;
    let share = gives.charge.base() / capacity.base();
    Ok(Ratio::from_base(share.min(1.0)))
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
            .replace("30 Ah", "60 Ah\"\npeukert = \"1.1\"\nrated_time = \"20 h");
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

    /// Drained within ten hours a battery rated for twenty gives less: (13.33 Ah / 10 h against 60 Ah / 20 h is slower, so
    /// that it counts whole; at 20 Ah it gives (20 / (1.333 · 20))^1.1 · 20 h · 1.333 A = 19.4 Ah, 97.2 %.
    #[test]
    fn a_lead_battery_gives_less_the_faster_it_is_drained() {
        let lead = |amperes: &str| {
            let with = format!("{amperes}\"\npeukert = \"1.1\"\nrated_time = \"20 h");
            let text = SITE
                .replace("lithium iron phosphate", "lead-acid")
                .replace("coldest = \"5 °C\"", "coldest = \"25 °C\"")
                .replace("30 Ah", &with);
            only(&CHECK, &text).demand.unwrap().value.unwrap() / 3600.0
        };
        let slow = 13.333_333 / 0.8 / 0.9;
        assert!((lead("60 Ah") - slow).abs() < 1e-3, "{}", lead("60 Ah"));
        let current: f64 = 1.333_333_3;
        let share = (20.0 / (current * 20.0)).powf(1.1) * 20.0 * current / 20.0;
        assert!(
            (lead("20 Ah") - slow / share).abs() < 1e-3,
            "{}",
            lead("20 Ah")
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
