//! The days of an enclosure against what follows by hand.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
use super::{Warmth, warmth};
use quantity::{Quantity as _, celsius};
use site::{SourceFile, load};

const SITE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "eu"
    [place]
    latitude = "47°"
    longitude = "9°"
    north = "90°"
    [climate]
    hottest = "35 °C"
    coldest = "-15 °C"
    sunshine = "900 W/m²"
    [climate.damp_morning]
    temperature = "10 °C"
    humidity = "97 %"
    [[enclosure]]
    id = "box"
    cooling_area = "1.5 m²"
    sunlit_area = "0.5 m²"
    absorptance = "0.4"
    heat_transfer = "6 W/(m²·K)"
    heater = "200 W"
    hottest_inside = "55 °C"
    mounted = [{ what = "relay", count = 4, heat = "5 W" }]
    [enclosure.climate_control]
    heater_on = "5 °C"
    heater_off = "10 °C"
    cut_out = "38 °C"
    cut_out_in_feed = true
    [enclosure.layout]
    mass = "50 kg"
"#;

fn one(text: &str) -> Warmth {
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    warmth(&load(file, Vec::new()).site.unwrap()).remove(0)
}

#[test]
fn the_days_are_what_the_balance_asks_for() {
    let found = one(SITE);
    assert_eq!(found.missing, Vec::<String>::new());
    // At night 220 W over 2 · 6 · 1.5 W/K are 12.2 K: the heater cannot hold 5 °C at -15 °C, and is on in its hour.
    let night = found.night.unwrap();
    let coldest = night.inside.coldest.1;
    assert!(
        coldest < celsius(5.0) && coldest > celsius(-15.0),
        "{coldest:?}"
    );
    // By day at most 35 + (20 + 0.4 · 0.5 · 900) / 9 = 57.2 °C, the steady bound.
    let day = found.day.unwrap().inside.hottest.1;
    assert!(
        day < celsius(35.0 + 200.0 / 9.0) && day > celsius(48.0),
        "{day:?}"
    );
    let (stuck, unchecked) = (found.stuck.unwrap(), found.unchecked.unwrap());
    assert!(unchecked.inside.hottest.1 < celsius(35.0 + 400.0 / 9.0));
    assert!(unchecked.inside.hottest.1.base() > stuck.inside.hottest.1.base() + 5.0);
    assert!(stuck.inside.cut_out_opens.is_some());
    let damp = found.damp.unwrap();
    // 20 W against 35 W to the sky over 9 W/K: colder inside than the air of 10 °C.
    assert!((damp.inside.base() - celsius(10.0 - 15.0 / 9.0).base()).abs() < 1e-6);
    assert!(damp.dew_point < celsius(10.0));
    assert!(found.year.is_none());
}

/// A door that looks west is hottest late; one that looks east early. North lies along +y, so west is 180° from +x.
#[test]
fn the_sun_goes_around_the_box() {
    let lit = |facing: &str| {
        let sun = format!(
            "{SITE}\n[enclosure.in_sun]\nfacing = \"{facing}\"\nlit = [{{ face = \"front\", area = \"0.5 m²\" }}]"
        );
        let found = one(&sun);
        assert!(found.by_face);
        found.day.unwrap().inside
    };
    let (west, east, south) = (lit("180°"), lit("0°"), lit("-90°"));
    assert!(
        west.hottest.0 > east.hottest.0,
        "{:?} {:?}",
        west.hottest,
        east.hottest
    );
    assert!(west.hottest.1 > south.hottest.1);
    // Left of a door that looks south is west.
    let left = format!(
        "{SITE}\n[enclosure.in_sun]\nfacing = \"-90°\"\nlit = [{{ face = \"left\", area = \"0.5 m²\" }}]"
    );
    let left = one(&left).day.unwrap().inside;
    assert!((left.hottest.1.base() - west.hottest.1.base()).abs() < 1e-9);
}

#[test]
fn what_is_missing_is_named_and_only_that_is_left_out() {
    let found = one(&SITE
        .replace("mass = \"50 kg\"", "")
        .replace("hottest = \"35 °C\"", ""));
    assert_eq!(
        found.missing,
        ["mass with all in it", "hottest air of a usual year"]
    );
    assert!(found.night.is_none() && found.day.is_none());
    let bare = one(&SITE.replace("heater = \"200 W\"", "heater = \"0 W\""));
    assert!(bare.stuck.is_none() && bare.unchecked.is_none() && bare.night.is_some());
}
