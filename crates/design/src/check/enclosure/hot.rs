//! How hot an enclosure gets inside on the hottest still afternoon, and what in it gives up first.
//!
//! Heat is the sum of everything mounted in it: devices, supplies, and what has no entry of its own; a heater is off.
//! Where no cooling surface is written, all six faces count. What gives up first is the lowest rating inside; where a
//! device or supply has none, the enclosure's own must be written. Heat is taken as steady, all of the sun at the hottest air:
//! a box with mass never gets hotter than that. The day itself is followed for the working and the heat sheet.

use super::inside::{balance, heat, parts, weakest};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::heat::{note, of as followed};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use formula::power::EnclosureHeatBalance;
use site::{Enclosure, Site};

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
    let inside = parts(site, enclosure);
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
    asking.note(|print| note(print, &followed(site, enclosure)));
    Ok(Outcome::at_most(
        Labeled::new("temperature inside", warmth.inside),
        Labeled::new("lowest rating inside", weakest.rating),
    ))
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
