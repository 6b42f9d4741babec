//! What stops first in an enclosure on the coldest night, and how large its heater must be.
//!
//! Steady heat through the walls in the coldest hour, in wind: twice the coefficient of still air. With the heater on, the
//! inside is as warm as at least the part that needs most warmth asks for. Where nothing stops without the heater, it may
//! fail and may be off during an outage. Where something does, a heater that is fed by the mains alone is gone in an outage.

use super::inside::{area, heat, parts, tenderest};
use crate::asking::{Asking, read};
use crate::check::standby::load::Bank;
use crate::check::{BOTH, Check, Round};
use crate::heat::{IN_WIND, STORES};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::power::EnclosureHeatBalance;
use formula::{Evidence, Source};
use quantity::{Area, Energy, HeatFlux, Power, Quantity as _, Ratio, Temperature};
use sim::enclosure::{Day, Heater, Walls};
use site::{Enclosure, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-cold",
    codes: BOTH,
    leaves_open: "how long the inside takes to cool, what a battery gives less of in the cold, and grease and displays that get slow before they stop",
    concerns: "each enclosure",
    ask,
};

static WIND: Source = Source {
    work: "in wind a wall loses about twice the heat that it loses in still air",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "sheets for sizing enclosure heaters: studylib.net/doc/13682565/",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            cold(asking, site, enclosure)
        });
    }
}

fn cold<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&WIND);
    let inside = parts(site, enclosure);
    let own = heat(asking, enclosure, &inside);
    let heater = read!(asking, enclosure.heater);
    let outside = read!(asking, site.climate?.coldest);
    let transfer = read!(asking, enclosure.heat_transfer);
    let area = area(asking, enclosure);
    let least = tenderest(asking, enclosure, &inside);
    let (own, heater, outside) = (own?, heater?, outside?);
    let (transfer, area, least) = (transfer?, area?, least?);
    let still = EnclosureHeatBalance {
        heat: own,
        sunshine: HeatFlux::from_base(0.0),
        sunlit_area: Area::from_base(0.0),
        absorptance: Ratio::from_base(0.0),
        area,
        transfer: transfer * IN_WIND,
        outside,
    };
    let without = asking.work(&still)?.inside;
    let with = asking
        .work(&EnclosureHeatBalance {
            heat: own + heater,
            ..still
        })?
        .inside;
    night(asking, enclosure, &still, heater);
    let lacking = (least.rating.base() - without.base()).max(0.0);
    let needed = Power::from_base(lacking * still.transfer.base() * area.base());
    if lacking <= 0.0 {
        asking.say(|print| {
            format!(
                "{}: {} inside in the coldest hour with the heater off; what stops first is {}, at {}. It needs no heater to run.",
                capitalized(enclosure.id.as_str()),
                print.q(without),
                least.name,
                print.q(least.rating)
            )
        });
        return Ok(against(least.rating, without));
    }
    let in_outage = heated_in_outage(asking, site, enclosure)?;
    asking.say(|print| {
        let outage = if in_outage {
            "the battery feeds it too"
        } else {
            "in an outage it is off"
        };
        format!(
            "{}: {} inside in the coldest hour without heater, {} with its {}; what stops first is {}, at {}. It takes a heater of {}, and {outage}.",
            capitalized(enclosure.id.as_str()),
            print.q(without),
            print.q(with),
            print.q(heater),
            least.name,
            print.q(least.rating),
            print.q(needed)
        )
    });
    Ok(against(
        least.rating,
        if in_outage { with } else { without },
    ))
}

/// Adds to the working how the heater goes on and off through a night that stays as cold, where its thermostat and the mass
/// of the box are known.
fn night<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    still: &EnclosureHeatBalance,
    heater: Power,
) {
    let (Some(control), Some(layout)) = (&enclosure.climate_control, &enclosure.layout) else {
        return;
    };
    let on = asking.read_if_there(&control.origin, "heater_on", control.heater_on.as_ref());
    let off = asking.read_if_there(&control.origin, "heater_off", control.heater_off.as_ref());
    let mass = asking.read_if_there(&layout.origin, "mass", layout.mass.as_ref());
    let (Some(on_below), Some(off_above), Some(mass)) = (on, off, mass) else {
        return;
    };
    if heater.base() <= 0.0 {
        return;
    }
    let one = sim::enclosure::Enclosure {
        walls: Walls {
            transfer: still.transfer,
            area: still.area,
            stores: Energy::from_base(mass.base() * STORES),
        },
        inside: still.heat,
        heater: Some(Heater {
            power: heater,
            on_below,
            off_above,
            stuck: false,
        }),
        cut_out: None,
        vent: None,
    };
    asking.note(|print| {
        match one.through(&Day::dark(still.outside, still.outside)) {
            Ok(found) => format!(
                "With its thermostat from {} to {} and {} in it at 600 J/(kg·K), the heater is on for {} of the coldest night; the inside stays between {} and {}.",
                print.q(on_below),
                print.q(off_above),
                print.q(mass),
                print.q(found.heater_on),
                print.q(found.coldest.1),
                print.q(found.hottest.1)
            ),
            Err(reach) => format!("The night could not be followed: {}.", reach.why),
        }
    });
}

fn against(least: Temperature, inside: Temperature) -> Outcome {
    Outcome::Compared(Comparison::at_most(
        Labeled::new("least temperature that everything works at", least),
        Labeled::new("temperature inside", inside),
    ))
}

/// The heater goes on while the mains are away, or there is no battery that anything should run on.
fn heated_in_outage<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<bool, Halt> {
    if site.battery.is_empty() {
        return Ok(true);
    }
    let control = enclosure.climate_control.as_ref();
    let named: Option<&Id> = control.and_then(|control| control.heater_supply.as_ref());
    let origin = control.map_or(&enclosure.origin, |control| &control.origin);
    let key = match control {
        Some(_) => "heater_supply",
        None => "climate_control.heater_supply",
    };
    let named = asking.need(origin, key, named, "\"battery\"")?;
    Ok(site
        .battery
        .iter()
        .any(|battery| Bank::feeds(site, battery, named)))
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
        coldest = "-20 °C"
        [[enclosure]]
        id = "box"
        cooling_area = "1.5 m²"
        heat_transfer = "6 W/(m²·K)"
        heater = "180 W"
        mounted = [{ what = "relay", count = 2, heat = "5 W" }]
        [enclosure.climate_control]
        heater_supply = "source"
        [[supply]]
        id = "source"
        kind = "power supply"
        enclosure = "box"
        heat = "20 W"
        coldest = "-10 °C"
    "#;

    #[test]
    fn holds_with_the_heater() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 210 W through 2 · 6 W/(m²·K) · 1.5 m² is 11.667 K over -20 °C.
        let inside = finding.capacity.unwrap().value.unwrap();
        assert!((inside - (273.15 - 20.0 + 210.0 / 18.0)).abs() < 1e-9);
        assert!(
            finding.sentence.contains("heater of 150 W"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn the_night_is_followed_where_thermostat_and_mass_are_known() {
        let told = SITE.replace(
            "heater_supply = \"source\"",
            "heater_supply = \"source\"\nheater_on = \"-12 °C\"\nheater_off = \"-9 °C\"\n[enclosure.layout]\nmass = \"60 kg\"",
        );
        let working = format!("{:?}", only(&CHECK, &told).working);
        // On it strives for -8.33 °C, off for -18.33 °C: ln(3.667 / 0.667) = 1.705 up, ln(9.333 / 6.333) = 0.388 down.
        // 1.705 of 2.093 is 81.5 %, but for the cycle that the day cuts off.
        assert!(working.contains("is on for 81."), "{working}");
    }

    #[test]
    fn holds_without_one_where_nothing_minds() {
        let hardy = SITE.replace("-10 °C", "-25 °C").replace("180 W", "0 W");
        assert_eq!(only(&CHECK, &hardy).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_too_little_and_in_an_outage() {
        let small = SITE.replace("180 W", "40 W");
        assert_eq!(only(&CHECK, &small).verdict, Verdict::Fails);
        let backed = format!(
            "{SITE}\n[[battery]]\nid = \"battery\"\nsupply = \"other\"\n[[supply]]\nid = \"other\"\nkind = \"power supply\""
        );
        let finding = only(&CHECK, &backed);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("in an outage it is off"));
    }

    #[test]
    fn unknown_without_heater_and_rating() {
        let bare = SITE
            .replace("heater = \"180 W\"", "")
            .replace("coldest = \"-10 °C\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
