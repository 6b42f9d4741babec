//! What the design wind presses on each leaf.
//!
//! The figure feeds other answers: posts, hinges, guides, anchors and the drive all carry it. There is nothing to hold
//! it against by itself, so its verdict is "figure only".

use super::load::{Wind, on_leaf};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use site::{Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "wind-pressure",
    codes: BOTH,
    leaves_open: "whether the map or the authority gives this spot its own wind speed, and what a gap between buildings does to it",
    concerns: "each leaf",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for leaf in site.gate.iter().flat_map(|gate| &gate.leaf) {
        round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
            pressure(asking, site, leaf)
        });
    }
}

fn pressure<'s>(asking: &mut Asking<'s>, site: &'s Site, leaf: &'s Leaf) -> Answer {
    let wind = on_leaf(asking, site, leaf, Wind::Design)?;
    asking.say(|print| {
        format!(
            "{} of wind presses up to {} on {}, and {} on all of it.",
            print.q(wind.speed),
            print.q(wind.pressure),
            leaf.id,
            print.q(wind.force)
        )
    });
    Ok(Outcome::Figure(Labeled::new(
        "wind pressure on the leaf",
        wind.pressure,
    )))
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
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph ± 5 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "100 %"
    "#;

    #[test]
    fn gives_a_figure_that_rises_with_the_wind() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Figure, "{}", finding.sentence);
        let nominal = finding.demand.unwrap().value.unwrap();
        let worst = finding.worst.unwrap().demand.unwrap().value.unwrap();
        // Pressure goes with the square of the speed, whatever the coefficients.
        assert!((worst / nominal - (120.0_f64 / 115.0).powi(2)).abs() < 1e-9);
        assert!(
            finding
                .deciding
                .unwrap()
                .reading
                .path
                .contains("basic_wind_speed")
        );
    }

    #[test]
    fn a_leaf_of_pickets_is_an_open_frame() {
        let open = only(&CHECK, &SITE.replace("100 %", "40 %"));
        let names: Vec<&str> = open
            .working
            .iter()
            .map(|step| step.calculation.as_str())
            .collect();
        assert!(names.contains(&"asce7-open-sign-force"), "{names:?}");
    }

    #[test]
    fn a_code_of_the_other_basis_is_outside() {
        let finding = only(&CHECK, &SITE.replace("ASCE 7-16", "EN 1991-1-4"));
        assert_eq!(finding.verdict, Verdict::OutsideThisTool);
    }

    #[test]
    fn unknown_names_every_missing_fact() {
        let bare = SITE
            .replace("exposure = \"C\"", "")
            .replace("solidity = \"100 %\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let keys: Vec<&str> = finding
            .missing
            .iter()
            .map(|missing| missing.write.as_str())
            .collect();
        assert_eq!(keys.len(), 2, "{keys:?}");
    }
}
