//! Whether water condenses on the boards at dawn, or comes in through the conduits as warm wet air.
//!
//! The air inside is as moist as the air outside on the dampest morning of a usual year. Under a clear sky the faces that
//! the sun strikes by day lose heat by night. Where the inner face of the walls stays above the dew point, nothing gets wet.
//! Where it does not, the walls run: then the box breathes and drains, and the boards, which are no colder than the air
//! inside, stay above the dew point. Conduits are sealed in either case. Steady heat is the safe bound for a night that
//! cools the box; where the site names a weather file, the box is followed through its year for the working, and there its
//! mass counts in both directions.

use super::inside::{area, heat, parts};
use crate::asking::{Asking, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::heat::{in_hours, in_kilowatt_hours, of as followed};
use crate::outcome::{Answer, Comparison, Labeled};
use crate::plain::capitalized;
use crate::subject::About;
use formula::power::{DawnInside, DewPoint, EnclosureDawn};
use formula::{Evidence, Source};
use quantity::{HeatFlux, Quantity as _, Temperature};
use site::{Drain, Enclosure, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-condensation",
    codes: BOTH,
    leaves_open: "a warm wet front over a box that is still cold, an open door in the rain, and the roof sheet, which is the coldest of the walls",
    concerns: "each enclosure",
    ask,
};

static SKY: Source = Source {
    work: "a level face under a clear dry sky loses about 70 W/m² by night",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "balance of long-wave radiation as weather services print it for clear nights",
};

/// Heat lost to a clear sky by night, in W/m².
pub(crate) const CLEAR_SKY: f64 = 70.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            condensation(asking, site, enclosure)
        });
    }
}

fn condensation<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&SKY);
    let air = damp_air(asking, site);
    let inside = parts(site, enclosure);
    let heat = heat(asking, enclosure, &inside);
    let area = area(asking, enclosure);
    let sky_area = read!(asking, enclosure.sunlit_area);
    let transfer = read!(asking, enclosure.heat_transfer);
    let sealed = need!(asking, enclosure.tightness?.conduits_sealed, "true");
    let breather = need!(asking, enclosure.tightness?.breather, "true");
    let drain = pick!(asking, enclosure.tightness?.drain);
    let (air, heat, area, sky_area) = (air?, heat?, area?, sky_area?);
    let (transfer, sealed, breather, drain) = (transfer?, sealed?, breather?, drain?);
    let dew = asking.work(&air)?.dew_point;
    let dawn = asking.work(&EnclosureDawn {
        heat,
        sky: HeatFlux::from_base(CLEAR_SKY),
        sky_area,
        area,
        transfer,
        outside: air.air,
    })?;
    let mut rules = Rules::default();
    rules.keep(
        *sealed,
        "Warm wet air rises into it through the conduits: seal their ends.",
    );
    let dry = dawn.wall >= dew;
    if !dry {
        rules.keep(
            *breather && drain != Drain::None,
            "Its walls get wet and nothing lets the water out: fit a breather and a drain, or a heater that runs on damp nights.",
        );
    }
    rules.compare(coldest(dry, dew, &dawn));
    asking.note(|_| year(site, enclosure));
    asking.say(|print| {
        let walls = if dry {
            "Nothing gets wet."
        } else {
            "The walls run, and what drips off gets out."
        };
        let said = rules.says(|| walls.to_owned());
        format!(
            "{} at dawn: dew falls at {}, the air inside is at {} and the inner face of the walls at {}. {said}",
            capitalized(enclosure.id.as_str()),
            print.q(dew),
            print.q(dawn.inside),
            print.q(dawn.wall)
        )
    });
    Ok(rules.outcome())
}

/// How long the walls are wet through the typical year of the weather file; nothing without one.
fn year(site: &Site, enclosure: &Enclosure) -> Option<String> {
    let year = followed(site, enclosure).year?;
    Some(format!(
        "Through the typical year of the weather file, hour by hour in still air, the inner face of the walls is below the dew point for {}; the heater takes {} in the year.",
        in_hours(year.wet),
        in_kilowatt_hours(year.heater_takes)
    ))
}

/// What must stay above the dew point: the walls, or where they may run the boards.
fn coldest(dry: bool, dew: Temperature, dawn: &DawnInside) -> Comparison {
    let surface = if dry {
        Labeled::new("inner face of the walls", dawn.wall)
    } else {
        Labeled::new("air at the boards", dawn.inside)
    };
    Comparison::at_most(Labeled::new("dew point of the air", dew), surface)
}

fn damp_air<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<DewPoint, crate::outcome::Halt> {
    let Some(climate) = &site.climate else {
        return asking
            .lack_of::<Temperature>(&site.origin, "climate.damp_morning.temperature")
            .map(|air| DewPoint {
                air,
                humidity: quantity::Ratio::from_base(1.0),
            });
    };
    let air = read!(asking, climate.damp_morning?.temperature);
    let humidity = read!(asking, climate.damp_morning?.humidity);
    Ok(DewPoint {
        air: air?,
        humidity: humidity?,
    })
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
        code_basis = "eu"
        [climate.damp_morning]
        temperature = "10 °C"
        humidity = "97 %"
        [[enclosure]]
        id = "box"
        cooling_area = "1.5 m²"
        sunlit_area = "0.3 m²"
        heat_transfer = "5.5 W/(m²·K)"
        mounted = [{ what = "relay", count = 6, heat = "5 W" }]
        [enclosure.tightness]
        conduits_sealed = true
        breather = true
        drain = "screened fitting"
    "#;

    #[test]
    fn holds_dry() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("Nothing gets wet"));
        assert!((finding.capacity.unwrap().value.unwrap() - 283.460_909).abs() < 1e-5);
    }

    #[test]
    fn holds_where_the_walls_run_and_drain() {
        let wet = SITE
            .replace("97 %", "100 %")
            .replace("count = 6", "count = 5")
            .replace("5.5 W", "7.6 W");
        let finding = only(&CHECK, &wet.replace("0.3 m²", "0.35 m²"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_cold_or_unsealed() {
        let cold = SITE.replace("count = 6", "count = 1");
        assert_eq!(only(&CHECK, &cold).verdict, Verdict::Fails);
        let open = SITE.replace("conduits_sealed = true", "conduits_sealed = false");
        assert_eq!(only(&CHECK, &open).verdict, Verdict::Fails);
        let shut = cold.replace("breather = true", "breather = false");
        let finding = only(&CHECK, &shut);
        assert!(
            finding.sentence.contains("nothing lets the water out"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_the_dampest_morning() {
        let bare = SITE
            .replace("humidity = \"97 %\"", "")
            .replace("drain = \"screened fitting\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
