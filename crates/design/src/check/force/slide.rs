//! The hardest pull along a slide, both ways, against the operator's curve.
//!
//! The pull is greatest while the leaf speeds up, against seal, debris and operating wind, in the direction that climbs.
//! It is held against the operator's curve at cruise speed with a quarter in hand, which is common practice and shown as
//! such; the pull at the start against the starting force; the steady pull against the force that the operator may give
//! without end. The guides are taken to carry the whole wind, and more where they sit below the middle of the leaf.

use super::operator_curve::force_at;
use super::sliding::{Conditions, on_the_level};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::SlideGateForce;
use formula::{Evidence, Source};
use quantity::Force;
use site::{Direction, Gate, GateKind, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-slide",
    codes: BOTH,
    leaves_open: "a slope that changes along the track, a stuck wheel, a damaged track, and the cold",
    concerns: "each slide gate with its operator",
    ask,
};

/// Share of the pull that is kept in hand.
const IN_HAND: f64 = 0.25;

static MARGIN: Source = Source {
    work: "a quarter of the pull kept in hand; turning parts of the drive as a fifth of the leaf's mass",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let slides =
        |gate: &Gate| matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    round.ask_operators(site, slides, |asking, gate, operator| {
        slide(asking, site, gate, operator)
    });
}

fn slide<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let leaf = leaf_of(asking, gate, operator)?;
    let level = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND);
    let slope = read!(asking, gate.slope);
    let speed = read!(asking, gate.motion?.cruise_speed);
    let (level, slope, speed) = (level?, slope?, speed?);
    let opening = asking.work(&SlideGateForce { slope, ..level })?;
    let closing = asking.work(&SlideGateForce {
        slope: -slope,
        ..level
    })?;
    let (direction, hardest) = if opening.total >= closing.total {
        (Direction::Opening, opening)
    } else {
        (Direction::Closing, closing)
    };
    asking.rest_on(&MARGIN);
    let at_speed = force_at(asking, operator, speed)?;
    let starting = asking.read_if_there(
        &operator.origin,
        "starting_force",
        operator.starting_force.as_ref(),
    );
    let rated = asking.read_if_there(
        &operator.origin,
        "rated_force",
        operator.rated_force.as_ref(),
    );
    let with_margin = hardest.total * (1.0 + IN_HAND);
    asking.say(|print| {
        format!(
            "The hardest pull comes while {direction}: {} steady, {} speeding up, {} with a quarter in hand (common practice); \
             the operator has {} at {}.",
            print.q(hardest.steady),
            print.q(hardest.total),
            print.q(with_margin),
            print.q(at_speed),
            print.q(speed)
        )
    });
    let at_cruise = compared(
        ("hardest pull with a quarter in hand", with_margin),
        ("operator force at cruise speed", at_speed),
    );
    let at_start =
        starting.map(|force| compared(("hardest pull", hardest.total), ("starting force", force)));
    let for_ever = rated.map(|force| {
        compared(
            ("steady pull", hardest.steady),
            ("force given without end", force),
        )
    });
    let comparisons = [Some(at_cruise), at_start, for_ever];
    Outcome::worst(comparisons.into_iter().flatten()).ok_or(Halt)
}

fn compared(demand: (&'static str, Force), capacity: (&'static str, Force)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::{only, windy_slide};
    use crate::{Method, Standing, Verdict};

    const SITE: &str = windy_slide!(
        "0.01 ± 0.002",
        "5 lbf ± 1 lbf",
        "80 %",
        "640 lb ± 5 %",
        r#"
        starting_force = "300 lbf"
        curve = [{ speed = "0.5 ft/s", force = "250 lbf" }, { speed = "1.5 ft/s", force = "150 lbf" }]
    "#
    );

    #[test]
    fn holds_with_enough_in_hand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        let capacity = finding.capacity.unwrap();
        assert!(
            (capacity.value.unwrap() / 4.448222 - 200.0).abs() < 0.01,
            "half way between the points"
        );
        assert!(
            finding.sentence.contains("while opening"),
            "it climbs as it opens: {}",
            finding.sentence
        );
        assert!(
            finding
                .sources
                .iter()
                .any(|source| source.evidence == "common practice")
        );
        assert_eq!(finding.worst.unwrap().method, Method::EveryCorner);
    }

    #[test]
    fn fails_with_a_weak_operator() {
        let weak = SITE
            .replace("250 lbf", "60 lbf")
            .replace("150 lbf", "40 lbf");
        let finding = only(&CHECK, &weak);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.ratio.unwrap() > 1.0);
    }

    #[test]
    fn unknown_without_the_mass_and_the_wind() {
        let bare = SITE
            .replace("mass = \"640 lb ± 5 %\"", "")
            .replace("operating_wind_speed = \"30 mph\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let paths: Vec<&str> = finding
            .missing
            .iter()
            .map(|missing| missing.path.as_str())
            .collect();
        assert_eq!(paths.len(), 2, "{paths:?}");
    }

    #[test]
    fn a_speed_past_the_curve_is_outside() {
        let fast = SITE.replace("cruise_speed = \"1 ft/s\"", "cruise_speed = \"2 ft/s\"");
        assert_eq!(only(&CHECK, &fast).verdict, Verdict::OutsideThisTool);
    }

    fn cantilever() -> String {
        SITE.replace("track-slide\"", "cantilever-slide\"\ntravel = \"15 ft\"")
            .replace(
                "mass = \"640 lb ± 5 %\"",
                "mass = \"640 lb ± 5 %\"\nclosed_end = \"-4 in\"\ncenter_along = \"10 ft\"",
            )
            .replace(
                "axle_diameter = \"3/4 in\"",
                "axle_diameter = \"3/4 in\"\nfront_at = \"15 ft\"\nspacing = \"6 ft\"",
            )
    }

    #[test]
    fn holds_for_a_cantilever_whose_trolleys_carry_more_than_its_weight() {
        let finding = only(&CHECK, &cantilever());
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        let track = only(&CHECK, SITE).demand.unwrap().value.unwrap();
        assert!(finding.demand.unwrap().value.unwrap() > track);
    }

    #[test]
    fn fails_for_a_cantilever_on_trolleys_close_together() {
        let close = cantilever()
            .replace("spacing = \"6 ft\"", "spacing = \"6 in\"")
            .replace("250 lbf", "160 lbf")
            .replace("150 lbf", "100 lbf");
        let finding = only(&CHECK, &close);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_for_a_cantilever_without_the_places_of_its_trolleys() {
        let bare = cantilever().replace("front_at = \"15 ft\"\nspacing = \"6 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
