//! Whether the gate still moves in the wind that the owner wants it to move in.
//!
//! A slide is pulled against the friction of its guides, a swing leaf is turned against the wind itself, taken square
//! to the leaf at every angle, an arm against the wind along the gate line. The drive must have that force or torque at its speed, and it must stay below the
//! force at which the controller takes the wind for an obstacle.

use super::still_turns::{swings, turns_up};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::force::operator_curve::force_at;
use crate::check::force::sliding::{Conditions, on_the_level};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::{SlideGateForce, SlideGateForces};
use formula::wind::BeaufortForce;
use quantity::Velocity;
use site::{CodeBasis, Gate, GateKind, Leaf, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "wind-still-moves",
    codes: BOTH,
    leaves_open: "gusts above the stated wind, a stronger wind between buildings, and a drive that slows before it stalls",
    concerns: "each gate with its operator",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(
        site,
        |_| true,
        |asking, gate, operator| moves(asking, site, gate, operator),
    );
}

fn moves<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let leaf = leaf_of(asking, gate, operator)?;
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            slides(asking, site, (gate, leaf), operator)
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            swings(asking, site, (gate, leaf), operator)
        }
        GateKind::VerticalPivot | GateKind::BarrierArm => {
            turns_up(asking, site, (gate, leaf), operator)
        }
        GateKind::VerticalLift => asking.refuse(
            "wind presses a lifted leaf against its rails, whose friction a site file cannot say yet: raise it in a fresh wind and read the motor's current",
        ),
    }
}

fn slides<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Answer {
    let wind = read!(asking, site.climate?.operating_wind_speed);
    let hardest = hardest_slide(asking, site, (gate, leaf));
    let speed = read!(asking, gate.motion?.cruise_speed);
    let threshold = read!(asking, operator.obstruction_force);
    let capacity = speed.and_then(|speed| force_at(asking, operator, speed));
    let (wind, hardest) = (wind?, hardest?);
    let (threshold, capacity) = (threshold?, capacity?);
    let called = called(asking, site, wind);
    asking.say(|print| {
        format!(
            "In {}{called} the leaf asks {}, {} of it for the guides; the drive has {} and takes {} for an obstacle. {ABOVE}",
            print.q(wind),
            print.q(hardest.total),
            print.q(hardest.guides),
            print.q(capacity),
            print.q(threshold)
        )
    });
    // The force taken for an obstacle is measured on a calm day with the leaf running: it comes on top of that pull.
    let added = Labeled::new(
        "what wind, seals and debris add to the pull",
        hardest.guides + hardest.seals + hardest.debris,
    );
    let starting = Labeled::new("hardest pull in the wind", hardest.total);
    let force = Labeled::new("operator force at cruise speed", capacity);
    let obstacle = Labeled::new("force taken for an obstacle", threshold);
    let comparisons = [
        Comparison::at_most(starting, force),
        Comparison::below(added, obstacle),
    ];
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The pull along a slide in the operating wind, in the direction that asks more.
pub(crate) fn hardest_slide<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
) -> Result<SlideGateForces, Halt> {
    let level = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND);
    let slope = read!(asking, gate.slope);
    let (level, slope) = (level?, slope?);
    let opening = asking.work(&SlideGateForce { slope, ..level })?;
    let closing = asking.work(&SlideGateForce {
        slope: -slope,
        ..level
    })?;
    Ok(if opening.total >= closing.total {
        opening
    } else {
        closing
    })
}

/// What the owner's sheet says of more wind than that.
pub(super) const ABOVE: &str = "Above that wind leave it shut and locked, or open and pinned.";

/// The name of the wind, where its speed is a mean of ten minutes as the scale wants it.
pub(super) fn called(asking: &mut Asking<'_>, site: &Site, speed: Velocity) -> String {
    if site.site.code_basis != CodeBasis::Eu {
        return String::new();
    }
    asking
        .work_if_in_reach(&BeaufortForce { speed })
        .map_or_else(String::new, |wind| {
            format!(" ({}, force {})", wind.name, wind.force)
        })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, windy_slide};

    const SLIDE: &str = windy_slide!(
        "0.01",
        "5 lbf",
        "80 %",
        "640 lb",
        r#"
        rated_force = "200 lbf"
        obstruction_force = "150 lbf"
    "#
    );

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        units = "si"
        [climate]
        operating_wind_speed = "6 m/s"
        terrain_category = "II"
        topographic_factor = "1"
        [[gate]]
        id = "court"
        kind = "single-swing"
        travel_angle = "90°"
        [[gate.leaf]]
        id = "leaf"
        length = "3 m"
        height = "1.5 m"
        ground_clearance = "0.1 m"
        solidity = "90 %"
        mass = "120 kg"
        center_along = "1.5 m"
        [gate.leaf.hinges]
        spacing = "1.2 m"
        pin_diameter = "20 mm"
        friction = "0.2"
        lean_along = "0"
        lean_across = "0"
        [[operator]]
        id = "drive"
        gate = "court"
        rated_torque = "700 N·m"
        obstruction_force = "250 N"
    "#;

    #[test]
    fn holds_with_force_in_hand() {
        let slide = only(&CHECK, SLIDE);
        assert_eq!(slide.verdict, Verdict::Holds, "{}", slide.sentence);
        let swing = only(&CHECK, SWING);
        assert_eq!(swing.verdict, Verdict::Holds, "{}", swing.sentence);
        assert!(swing.sentence.contains("force 4"), "{}", swing.sentence);
    }

    #[test]
    fn fails_where_the_controller_takes_the_wind_for_an_obstacle() {
        let slide = only(&CHECK, &SLIDE.replace("150 lbf", "40 lbf"));
        assert_eq!(slide.verdict, Verdict::Fails, "{}", slide.sentence);
        let swing = only(&CHECK, &SWING.replace("250 N", "60 N"));
        assert_eq!(swing.verdict, Verdict::Fails, "{}", swing.sentence);
        let weak = only(&CHECK, &SWING.replace("700 N·m", "100 N·m"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
    }

    #[test]
    fn unknown_without_threshold_and_wind() {
        for text in [SLIDE, SWING] {
            let bare = text
                .replace("obstruction_force = \"150 lbf\"", "")
                .replace("obstruction_force = \"250 N\"", "")
                .replace("operating_wind_speed = \"30 mph\"", "")
                .replace("operating_wind_speed = \"6 m/s\"", "");
            let finding = only(&CHECK, &bare);
            assert_eq!(finding.verdict, Verdict::UnknownUntil);
            assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        }
    }

    #[test]
    fn an_arm_is_turned_against_the_wind_and_a_lift_is_outside() {
        let arm = SWING
            .replace("single-swing", "barrier-arm")
            .replace("height = \"1.5 m\"", "height = \"0.1 m\"\nthickness = \"0.05 m\"")
            .replace("[gate.leaf.hinges]", "[gate.balance]\nkind = \"counterweight\"\nmass = \"180 kg\"\nradius = \"0.9 m\"\n[gate.leaf.hinges]");
        let finding = only(&CHECK, &arm);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let weak = only(&CHECK, &arm.replace("700 N·m", "100 N·m"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
        let lift = SWING.replace("single-swing", "vertical-lift");
        assert_eq!(only(&CHECK, &lift).verdict, Verdict::OutsideThisTool);
    }
}
