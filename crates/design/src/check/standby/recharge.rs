//! How long until a battery is full again after an outage, and whether its charger also carries the standing load.
//!
//! What was drawn in the outage that the battery is meant for goes back in with what the charger can spare. A lithium
//! battery that gets colder than it may be charged at needs a charger that waits. Where panels charge it alone, what counts
//! is the longest time of the year from full to full again.

use super::hours_and_moves::outage;
use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::rules::Rules;
use crate::check::solar::carried::{carried, panels_of};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::capitalized;
use crate::subject::About;
use formula::power::BatteryRecharge;
use site::{Battery, Chemistry, Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "standby-recharge",
    codes: BOTH,
    leaves_open: "the last fifth of a lead battery, which takes hours more, the voltage of the charger over the temperature, and openings while it charges",
    concerns: "each battery",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for battery in &site.battery {
        let about = About::new(&battery.origin, &battery.id);
        if panels_of(site, battery).next().is_some() {
            round.ask_in_full(about, |asking| by_sun(asking, site, battery));
        } else {
            round.ask(about, |asking| recharge(asking, site, battery));
        }
    }
}

fn recharge<'s>(asking: &mut Asking<'s>, site: &'s Site, battery: &'s Battery) -> Answer {
    let mut rules = Rules::default();
    let charger = charger(asking, site, battery);
    let given = charger.and_then(|charger| read!(asking, charger.rated_current));
    let accepted = read!(asking, battery.charging?.current);
    let efficiency = read!(asking, battery.charging?.efficiency);
    let wanted = read!(asking, battery.charging?.wanted_recharge);
    let cold = cold(asking, battery, &mut rules);
    let outage = outage(asking, site, battery);
    let (given, accepted, efficiency, wanted) = (given?, accepted?, efficiency?, wanted?);
    let outage = outage?;
    let standing = outage.standing_current;
    cold?;
    let drawn = asking.work(&outage)?.drawn;
    rules.compare(Comparison::below(
        Labeled::new("standing load", standing),
        Labeled::new("current of the charger", given),
    ));
    if standing >= given {
        asking.say(|print| {
            format!(
                "The standing load of {} takes all of the {} of the charger: {} is never full again.",
                print.q(standing),
                print.q(given),
                battery.id
            )
        });
        return Ok(rules.outcome());
    }
    let back = asking.work(&BatteryRecharge {
        drawn,
        efficiency,
        charger: given,
        standing,
        accepted,
    })?;
    rules.compare(Comparison::at_most(
        Labeled::new("time until it is full again", back.time),
        Labeled::new("time asked for", wanted),
    ));
    asking.say(|print| {
        let said = rules.says(|| {
            format!(
                "it charges with {} beside a standing load of {}",
                print.q(back.surplus),
                print.q(standing)
            )
        });
        format!(
            "{}: {} drawn in the outage are back in {}; {said}.",
            capitalized(battery.id.as_str()),
            print.q(drawn),
            print.q(back.time)
        )
    });
    Ok(rules.outcome())
}

/// How long the sun takes to fill it, in the worst weeks of the year.
fn by_sun<'s>(asking: &mut Asking<'s>, site: &'s Site, battery: &'s Battery) -> Answer {
    let mut rules = Rules::default();
    let wanted = read!(asking, battery.charging?.wanted_recharge);
    let cold = cold(asking, battery, &mut rules);
    let carried = carried(asking, site, battery);
    let (wanted, carried) = (wanted?, carried?);
    cold?;
    let longest = carried.through.longest_below_full;
    rules.compare(Comparison::at_most(
        Labeled::new("longest time from full to full again", longest),
        Labeled::new("time asked for", wanted),
    ));
    asking.say(|print| {
        let said = rules.says(|| format!("{} is asked for", print.q(wanted)));
        format!(
            "{}: by the sun alone it takes up to {} in the year from full to full again; {said}.",
            capitalized(battery.id.as_str()),
            print.q(longest)
        )
    });
    Ok(rules.outcome())
}

fn charger<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<&'s Supply, Halt> {
    let named = battery.supply.as_ref();
    let found = named.and_then(|name| site.supply.iter().find(|supply| supply.id == *name));
    match found {
        Some(supply) => Ok(supply),
        None => asking.lack(&battery.origin, "supply", Wants::Written("\"supply-24\"")),
    }
}

/// A lithium battery is not charged colder than it stands.
fn cold<'s>(asking: &mut Asking<'s>, battery: &'s Battery, rules: &mut Rules) -> Result<(), Halt> {
    if pick!(asking, battery.chemistry)? != Chemistry::LithiumIronPhosphate {
        return Ok(());
    }
    let coldest = read!(asking, battery.coldest);
    let least = read!(asking, battery.charging?.coldest);
    if coldest? < least? {
        let held = need!(asking, battery.charging?.held_off_in_cold, "true")?;
        rules.keep(
            *held,
            "charging goes on below the least temperature of its cells and ruins them: hold it off",
        );
    }
    Ok(())
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
        kind = "power supply"
        rated_current = "5 A"
        [[battery]]
        id = "battery"
        supply = "charger"
        chemistry = "lithium iron phosphate"
        voltage = "24 V"
        capacity = "30 Ah"
        usable = "90 %"
        end_of_life = "80 %"
        coldest = "-5 °C"
        wanted_standby = "10 h"
        wanted_cycles = 0
        [battery.charging]
        current = "6 A"
        efficiency = "95 %"
        wanted_recharge = "5 h"
        coldest = "0 °C"
        held_off_in_cold = true
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "charger"
        standing_current = "1 A"
        running_current = "9 A"
        battery_speed = "100 %"
    "#;

    #[test]
    fn holds_in_time() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 10 Ah at 95 % with 5 A less 1 A: 2.63 h.
        let hours = finding.demand.unwrap().value.unwrap() / 3600.0;
        assert!((hours - 10.0 / 0.95 / 4.0).abs() < 1e-9, "{hours}");
    }

    #[test]
    fn fails_late_never_or_in_the_cold() {
        for (from, to) in [
            ("wanted_recharge = \"5 h\"", "wanted_recharge = \"2 h\""),
            ("standing_current = \"1 A\"", "standing_current = \"6 A\""),
            ("held_off_in_cold = true", "held_off_in_cold = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_charger_and_wish() {
        let bare = SITE
            .replace("rated_current = \"5 A\"", "")
            .replace("wanted_recharge = \"5 h\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
