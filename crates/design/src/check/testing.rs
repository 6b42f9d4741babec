//! Sites from a few lines of text, for the tests of checks.

#![allow(
    clippy::panic,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use super::{Check, round};
use crate::Finding;
use site::{Site, SourceFile};
use std::num::NonZeroUsize;

/// One cable through a conduit that bends once, harder to pull from its beginning.
pub(crate) const ONE_PULL: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [pulling]
        feed = "reel on a stand"
        drag = "2 lbf"
        helper = false
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[conduit]]
        id = "c-01"
        bore = "1 in"
        from = "box"
        to = "pole"
        friction = "0.35"
        segment = [{ straight = "100 ft", bend = "90°", radius = "6 in" }, { straight = "4 ft" }]
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        diameter = "0.29 in"
        mass_per_length = "0.045 lb/ft"
        route = ["c-01"]
    "#;

/// The site of a text that must be without problems that cannot be so.
pub(crate) fn site(text: &str) -> Site {
    bought(text, None)
}

/// The site of a text whose parts file is another text.
fn bought(text: &str, parts: Option<&str>) -> Site {
    let file = |name: &str, text: &str| SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    };
    let parts = parts.map(|text| file("parts.toml", text));
    let loaded = site::load(file("site.toml", text), parts.into_iter().collect());
    let problems: Vec<String> = loaded
        .problems
        .iter()
        .map(|problem| format!("{} {}", problem.path, problem.what))
        .collect();
    assert!(problems.is_empty(), "{problems:#?}");
    loaded.site.expect("the site has a name and a code basis")
}

/// The findings of one check on the site of a text.
pub(crate) fn all(check: &Check, text: &str) -> Vec<Finding> {
    round::findings(&site(text), std::slice::from_ref(check), NonZeroUsize::MIN)
}

/// The only finding of one check on a site with parts; the site says `parts = ["parts.toml"]`.
pub(crate) fn only_bought(check: &Check, text: &str, parts: &str) -> Finding {
    let mut findings = round::findings(
        &bought(text, Some(parts)),
        std::slice::from_ref(check),
        NonZeroUsize::MIN,
    );
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

/// The only finding of one check on a site with a price book; the site says `price_book = "price-book.toml"`, or names none.
pub(crate) fn with_price_book(check: &Check, text: &str, book: &str) -> Finding {
    let file = |name: &str, text: &str| SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    };
    let named = text.contains("price_book = ");
    let book = named.then(|| file("price-book.toml", book));
    let loaded = site::load(file("site.toml", text), book.into_iter().collect());
    assert_eq!(loaded.problems.to_string(), "");
    let site = loaded.site.expect("the site has a name and a code basis");
    let mut findings = round::findings(&site, std::slice::from_ref(check), NonZeroUsize::MIN);
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

/// The only finding of one check on the site of a text.
pub(crate) fn only(check: &Check, text: &str) -> Finding {
    let mut findings = all(check, text);
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

/// A leaf of 21 ft that slides 20 ft, closed where the first text says, followed by the lines of the second.
macro_rules! short_slide {
    ($closed_end:literal, $more:literal) => {
        concat!(
            r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = ""#,
            $closed_end,
            r#""
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
    "#,
            $more
        )
    };
}
pub(crate) use short_slide;

/// A leaf of 3 m that swings 90° into the property about a hinge at its full length, followed by the lines of the text.
macro_rules! short_swing {
    ($more:literal) => {
        concat!(
            r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "single-swing"
        clear_opening = "3 m"
        travel_angle = "90°"
        swings = "into the property"
        [[gate.leaf]]
        id = "leaf"
        length = "3 m"
        height = "1.4 m"
        thickness = "40 mm"
        ground_clearance = "60 mm"
    "#,
            $more
        )
    };
}
pub(crate) use short_swing;

/// A sliding leaf with wheels, guides and wind: slope, pull of the seals, solidity and mass as told, then the lines of its
/// drive.
macro_rules! windy_slide {
    ($slope:literal, $seals:literal, $solidity:literal, $mass:literal, $drive:literal) => {
        concat!(
            r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        operating_wind_speed = "30 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = ""#,
            $slope,
            r#""
        seal_force = ""#,
            $seals,
            r#""
        debris_force = "10 lbf"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = ""#,
            $solidity,
            r#""
        mass = ""#,
            $mass,
            r#""
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [gate.guide]
        friction = "0.15"
        height = "6 ft"
        [gate.motion]
        cruise_speed = "1 ft/s"
        acceleration = "0.8 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
    "#,
            $drive
        )
    };
}
pub(crate) use windy_slide;
