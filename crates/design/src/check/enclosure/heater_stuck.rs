//! What stops a heater whose thermostat sticks on the hottest day.
//!
//! Steady heat with the heater on and the sun on the box, which a box with mass only nears: the safe bound. A cut-out of its own in the feed of the heater holds the inside at
//! its setting, or where the day itself takes it; it opens above the thermostat, else the heater never works in winter.
//! Near 100 °F is usual. A cut-out that only reports, or that is the thermostat itself, counts for nothing.

use super::inside::{Weakest, balance, heat, parts, weakest};
use crate::asking::{Asking, need, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::power::EnclosureHeatBalance;
use quantity::{Quantity as _, Temperature};
use site::{Enclosure, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-heater-stuck",
    codes: BOTH,
    leaves_open: "hot spots beside the heater, a cut-out that sticks as well, and what a battery on trickle charge does in the heat",
    concerns: "each enclosure",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            stuck(asking, site, enclosure)
        });
    }
}

fn stuck<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let heater = read!(asking, enclosure.heater);
    if heater.is_ok_and(|heater| heater.base() <= 0.0) {
        asking.say(|_| {
            format!(
                "{} has no heater that could stick.",
                capitalized(enclosure.id.as_str())
            )
        });
        return Ok(Outcome::Rule(true));
    }
    let inside = parts(site, enclosure);
    let own = heat(asking, enclosure, &inside);
    let balance = balance(asking, site, enclosure);
    let weakest = weakest(asking, enclosure, &inside);
    let battery = battery(asking, site, enclosure);
    let cut_out = cut_out(asking, enclosure);
    let (heater, own, balance) = (heater?, own?, balance?);
    let (weakest, battery, cut_out) = (weakest?, battery?, cut_out?);
    let first = battery
        .filter(|battery| battery.rating < weakest.rating)
        .unwrap_or(weakest);
    let off = asking.work(&EnclosureHeatBalance {
        heat: own,
        ..balance
    })?;
    let on = asking.work(&EnclosureHeatBalance {
        heat: own + heater,
        ..balance
    })?;
    let mut rules = Rules::default();
    let reached = match cut_out {
        Some(opens) => {
            let thermostat = read!(asking, enclosure.climate_control?.heater_off)?;
            rules.keep(
                thermostat < opens,
                "The cut-out opens before the thermostat does: the heater never works.",
            );
            cooler(on.inside, warmer(off.inside, opens))
        }
        None => on.inside,
    };
    rules.compare(Comparison::at_most(
        Labeled::new("temperature inside with the heater stuck on", reached),
        Labeled::new("lowest rating inside", first.rating),
    ));
    asking.say(|print| {
        let stops = match cut_out {
            Some(opens) if reached > opens => format!(
                "The cut-out in its feed opens at {}; the day alone takes it to {}.",
                print.q(opens),
                print.q(reached)
            ),
            Some(opens) => format!("The cut-out in its feed opens at {}.", print.q(opens)),
            None => "No cut-out of its own stops it.".to_owned(),
        };
        let said = rules.says(|| stops);
        format!(
            "{}: its heater of {}, stuck on, takes the inside to {} on the hottest day; what gives up first is {}, at {}. {said}",
            capitalized(enclosure.id.as_str()),
            print.q(heater),
            print.q(on.inside),
            first.name,
            print.q(first.rating)
        )
    });
    Ok(rules.outcome())
}

/// Where the cut-out opens that counts; nothing where there is none, or where it does not open the feed.
fn cut_out<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
) -> Result<Option<Temperature>, Halt> {
    let Some(control) = &enclosure.climate_control else {
        return Ok(None);
    };
    let Some(opens) = asking.read_if_there(&control.origin, "cut_out", control.cut_out.as_ref())
    else {
        return Ok(None);
    };
    let counts = need!(asking, control.cut_out_in_feed, "true")?;
    Ok(counts.then_some(opens))
}

/// The battery in the box, which stands less than boards do.
fn battery<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<Option<Weakest<'s>>, Halt> {
    let here = |one: &&site::Battery| one.enclosure.as_ref() == Some(&enclosure.id);
    let mut found: Option<Weakest<'s>> = None;
    for battery in site.battery.iter().filter(here) {
        let rating = read!(asking, battery.charging?.hottest)?;
        if found.is_none_or(|known| rating < known.rating) {
            let name = battery.id.as_str();
            found = Some(Weakest { name, rating });
        }
    }
    Ok(found)
}

fn cooler(one: Temperature, other: Temperature) -> Temperature {
    if one < other { one } else { other }
}

fn warmer(one: Temperature, other: Temperature) -> Temperature {
    if one > other { one } else { other }
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
        units = "si"
        [climate]
        hottest = "35 °C"
        sunshine = "900 W/m²"
        [[enclosure]]
        id = "box"
        cooling_area = "1.5 m²"
        sunlit_area = "0.5 m²"
        absorptance = "0.4"
        heat_transfer = "6 W/(m²·K)"
        heater = "200 W"
        [enclosure.climate_control]
        heater_off = "10 °C"
        cut_out = "38 °C"
        cut_out_in_feed = true
        [[supply]]
        id = "source"
        kind = "power supply"
        enclosure = "box"
        heat = "20 W"
        hottest = "65 °C"
        [[battery]]
        id = "battery"
        enclosure = "box"
        [battery.charging]
        hottest = "60 °C"
    "#;

    #[test]
    fn holds_where_the_cut_out_opens() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The day alone takes it to 35 + (20 + 180) / 9 = 57.2 °C, above the cut-out: the heater is off.
        let reached = finding.demand.unwrap().value.unwrap();
        assert!(
            (reached - (273.15 + 35.0 + 200.0 / 9.0)).abs() < 1e-9,
            "{reached}"
        );
    }

    #[test]
    fn holds_with_no_heater() {
        assert_eq!(
            only(&CHECK, &SITE.replace("\"200 W\"", "\"0 W\"")).verdict,
            Verdict::Holds
        );
    }

    #[test]
    fn fails_with_none_that_counts_or_one_that_opens_too_early() {
        for (from, to) in [
            ("cut_out_in_feed = true", "cut_out_in_feed = false"),
            ("cut_out = \"38 °C\"", ""),
            ("heater_off = \"10 °C\"", "heater_off = \"40 °C\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_heater_and_battery_limit() {
        let bare = SITE
            .replace("heater = \"200 W\"", "")
            .replace("hottest = \"60 °C\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
