//! How hot an enclosure gets inside on the hottest still afternoon, and what in it gives up first.
//!
//! Heat is the sum of everything mounted in it: devices, supplies, and what has no entry of its own; a heater is off.
//! Where no cooling surface is written, all six faces count. What gives up first is the lowest rating inside; where a
//! device or supply has none, the enclosure's own must be written.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::power::{EnclosureHeatBalance, EnclosureSurface};
use quantity::{Area, Measured, Power, Quantity as _, Temperature};
use site::{DeviceKind, Enclosure, Id, Origin, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-hot",
    codes: BOTH,
    leaves_open: "what a supply or a battery gives less of as it gets warm, hot spots beside a part, and the share of the sunshine that never comes inside (all of it is counted, on the safe side)",
    concerns: "each enclosure",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            hot(asking, site, enclosure)
        });
    }
}

fn hot<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    let inside: Vec<Part> = parts(site, enclosure).collect();
    let heat = heat(asking, enclosure, &inside);
    let balance = balance(asking, site, enclosure);
    let weakest = weakest(asking, enclosure, &inside);
    let (heat, balance, weakest) = (heat?, balance?, weakest?);
    let warmth = asking.work(&EnclosureHeatBalance { heat, ..balance })?;
    asking.say(|print| {
        format!(
            "Inside {}, {} on the hottest afternoon: {} from within and {} from the sun warm it by {}. What gives up first is {}, at {}.",
            enclosure.id,
            print.q(warmth.inside),
            print.q(heat),
            print.q(warmth.solar),
            print.q(warmth.rise),
            weakest.name,
            print.q(weakest.rating)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("temperature inside", warmth.inside),
        Labeled::new("lowest rating inside", weakest.rating),
    ))
}

/// A device or supply inside an enclosure.
struct Part<'s> {
    origin: &'s Origin,
    id: &'s Id,
    heat: Option<&'s Measured<Power>>,
    rating: Option<&'s Measured<Temperature>>,
    /// It gives off heat worth counting; a surge protector does not.
    warms: bool,
}

fn parts<'s>(site: &'s Site, enclosure: &'s Enclosure) -> impl Iterator<Item = Part<'s>> {
    let here = move |name: &Option<Id>| name.as_ref() == Some(&enclosure.id);
    let devices = site
        .device
        .iter()
        .filter(move |device| here(&device.enclosure))
        .map(|device| Part {
            origin: &device.origin,
            id: &device.id,
            heat: device.heat.as_ref(),
            rating: device.hottest.as_ref(),
            warms: device.kind != DeviceKind::SurgeProtector,
        });
    let supplies = site
        .supply
        .iter()
        .filter(move |supply| here(&supply.enclosure))
        .map(|supply| Part {
            origin: &supply.origin,
            id: &supply.id,
            heat: supply.heat.as_ref(),
            rating: supply.hottest.as_ref(),
            warms: true,
        });
    devices.chain(supplies)
}

fn heat<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    parts: &[Part<'s>],
) -> Result<Power, Halt> {
    let mut sum = Power::from_base(0.0);
    let mut whole = Ok(());
    for part in parts.iter().filter(|part| part.warms) {
        match asking.read(part.origin, "heat", part.heat) {
            Ok(heat) => sum += heat,
            Err(halt) => whole = Err(halt),
        }
    }
    for mounted in &enclosure.mounted {
        match read!(asking, mounted.heat) {
            Ok(heat) => sum += heat * f64::from(mounted.count.unwrap_or(1)),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| sum)
}

/// The heat balance but for the heat from within.
fn balance<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<EnclosureHeatBalance, Halt> {
    let outside = read!(asking, site.climate?.hottest);
    let sunshine = read!(asking, site.climate?.sunshine);
    let sunlit_area = read!(asking, enclosure.sunlit_area);
    let absorptance = read!(asking, enclosure.absorptance);
    let transfer = read!(asking, enclosure.heat_transfer);
    let area = area(asking, enclosure);
    Ok(EnclosureHeatBalance {
        heat: Power::from_base(0.0),
        sunshine: sunshine?,
        sunlit_area: sunlit_area?,
        absorptance: absorptance?,
        area: area?,
        transfer: transfer?,
        outside: outside?,
    })
}

/// The surface that gives off heat: as written, else all six faces.
fn area<'s>(asking: &mut Asking<'s>, enclosure: &'s Enclosure) -> Result<Area, Halt> {
    let written = asking.read_if_there(
        &enclosure.origin,
        "cooling_area",
        enclosure.cooling_area.as_ref(),
    );
    if let Some(area) = written {
        return Ok(area);
    }
    let height = read!(asking, enclosure.height);
    let width = read!(asking, enclosure.width);
    let depth = read!(asking, enclosure.depth);
    Ok(asking
        .work(&EnclosureSurface {
            height: height?,
            width: width?,
            depth: depth?,
        })?
        .area)
}

/// What gives up first, and at which temperature.
#[derive(Clone, Copy)]
struct Weakest<'s> {
    name: &'s str,
    rating: Temperature,
}

fn weakest<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    parts: &[Part<'s>],
) -> Result<Weakest<'s>, Halt> {
    let own = asking.read_if_there(
        &enclosure.origin,
        "hottest_inside",
        enclosure.hottest_inside.as_ref(),
    );
    let mut weakest = own.map(|rating| Weakest {
        name: "the enclosure as a whole",
        rating,
    });
    let mut whole = Ok(());
    for part in parts {
        match asking.read_if_there(part.origin, "hottest", part.rating) {
            Some(rating) => {
                let lower = weakest.is_none_or(|known: Weakest<'_>| rating < known.rating);
                if lower {
                    weakest = Some(Weakest {
                        name: part.id.as_str(),
                        rating,
                    });
                }
            }
            None if own.is_none() => {
                whole = asking
                    .lack_of::<Temperature>(part.origin, "hottest")
                    .map(drop);
            }
            None => {}
        }
    }
    whole?;
    match weakest {
        Some(weakest) => Ok(weakest),
        None => asking.lack(
            &enclosure.origin,
            "hottest_inside",
            Wants::Written("\"131 °F\""),
        ),
    }
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
        units = "si"
        [climate]
        hottest = "35 °C"
        sunshine = "900 W/m²"
        [[enclosure]]
        id = "box"
        cooling_area = "1.5 m²"
        sunlit_area = "0.5 m²"
        absorptance = "0.4"
        heat_transfer = "6 W/(m²·K) ± 10 %"
        hottest_inside = "70 °C"
        mounted = [{ what = "relay", count = 2, heat = "5 W" }]
        [[supply]]
        id = "source"
        kind = "power supply"
        enclosure = "box"
        heat = "20 W"
        hottest = "65 °C"
    "#;

    #[test]
    fn holds_with_the_weakest_part_named() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // (30 W + 0.4 · 900 W/m² · 0.5 m²) / (6 · 1.5) W/K = 23.33 K over 35 °C.
        let kelvin = finding.demand.unwrap().value.unwrap();
        assert!(
            (kelvin - (273.15 + 35.0 + 210.0 / 9.0)).abs() < 1e-9,
            "{kelvin}"
        );
        assert!(
            finding.sentence.contains("What gives up first is source"),
            "{}",
            finding.sentence
        );
        assert_eq!(finding.ratio, None, "a temperature has no ratio");
    }

    #[test]
    fn fails_dark_and_in_the_sun() {
        let dark = SITE.replace("\"0.4\"", "\"0.9\"");
        assert_eq!(only(&CHECK, &dark).verdict, Verdict::Fails);
    }

    #[test]
    fn turns_where_the_walls_decide() {
        let tight = SITE.replace("65 °C", "59 °C");
        let finding = only(&CHECK, &tight);
        assert_eq!(
            finding.standing,
            Standing::TurnsWithinTolerance,
            "{}",
            finding.sentence
        );
        assert!(
            finding
                .deciding
                .unwrap()
                .reading
                .path
                .contains("heat_transfer")
        );
    }

    #[test]
    fn unknown_without_heat_and_rating() {
        let bare = SITE
            .replace("heat = \"20 W\"", "")
            .replace("hottest = \"65 °C\"", "")
            .replace("hottest_inside = \"70 °C\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
