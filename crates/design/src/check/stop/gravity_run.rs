//! Whether a leaf that is let go starts to move by itself, anywhere on its travel.
//!
//! What pulls it, a slope, a hinge line out of plumb, a rising hinge, a balance that is off, is held against the least
//! friction: that of a pull scale on the released leaf where the site has it, else half of what the wheels or hinges are
//! reckoned to cost, without rims, seals, debris and wind. A leaf that rises needs the pull scale: what its pivot or its
//! rails take cannot be reckoned from here. A barrier arm may rise by itself when it is let go; it may not come down.

use crate::asking::{Asking, Wants, read};
use crate::check::force::rising::{Rising, RisingAt, hardest, places, rises, rising};
use crate::check::force::sliding::{Conditions, on_the_level};
use crate::check::force::turning::{At, torque_at};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{SlideGateForce, SwingGateTorque};
use formula::{Evidence, Formula as _, Source};
use quantity::{Angle, Force, Quantity as _, Ratio, Torque};
use site::{Direction, Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "stop-gravity-run",
    codes: BOTH,
    leaves_open: "a dip or a hump in the track, wind on the released leaf, and ice: let it go at five places of the travel and watch",
    concerns: "each leaf of each gate",
    ask,
};

static STAYS: Source = Source {
    work: "ASTM F2200, reprints of 2005 to 2018",
    clause: "general requirements: gravity does not start the gate with its drive disconnected",
    evidence: Evidence::Seen,
    seen: "installation manuals of gate operators that reprint it; addresses withheld, they carry company names",
};

static HALF: Source = Source {
    work: "half of the reckoned friction is counted on to hold a leaf",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice: what helps is taken at its least; fresh wheels and oiled hinges run far more easily than worn ones",
};

/// Share of the reckoned friction that is counted on.
const LEAST: f64 = 0.5;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if gate.leaf.is_empty() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(
                    &gate.origin,
                    "leaf",
                    Wants::Written("[{ id = \"leaf\", mass = \"640 lb\" }]"),
                )
            });
        }
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                asking.rest_on(&STAYS);
                match gate.kind {
                    GateKind::TrackSlide | GateKind::CantileverSlide => {
                        slide(asking, site, gate, leaf)
                    }
                    _ if rises(gate) => rise(asking, site, gate, leaf),
                    _ => swing(asking, site, gate, leaf),
                }
            });
        }
    }
}

fn slide<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let slope = read!(asking, gate.slope);
    let level = on_the_level(asking, site, gate, leaf, Conditions::FREE);
    let pulled = asking.read_if_there(&gate.origin, "least_friction", gate.least_friction.as_ref());
    let (slope, level) = (slope?, level?);
    let forces = asking.work(&SlideGateForce {
        slope,
        load_factor: Ratio::from_base(1.0),
        lever_arm: level.lever_arm * LEAST,
        bearing_friction: level.bearing_friction * LEAST,
        rim_factor: Ratio::from_base(0.0),
        ..level
    })?;
    let pull = Force::from_base(forces.slope_force.base().abs());
    let friction = counted(asking, pulled, forces.rolling);
    let way = if slope.base() > 0.0 {
        Direction::Closing
    } else {
        Direction::Opening
    };
    let comparison = Comparison::below(
        Labeled::new("pull along the slope", pull),
        Labeled::new("least friction of the wheels", friction),
    );
    asking.say(|print| {
        format!(
            "Let go, {} is pulled down its slope with {}, the way it goes while {way}; its wheels hold it with {} at the \
             least.{}",
            leaf.id,
            print.q(pull),
            print.q(friction),
            advice(
                comparison,
                "Level the track, or fit what holds the leaf with the drive released."
            )
        )
    });
    Ok(Outcome::Compared(comparison))
}

/// What to do, where friction does not hold the leaf.
fn advice(comparison: Comparison, what: &str) -> String {
    if comparison.holds() {
        String::new()
    } else {
        format!(" {what}")
    }
}

/// Friction by a pull scale, else what is reckoned.
fn counted<Q: quantity::Quantity>(asking: &mut Asking<'_>, pulled: Option<Q>, reckoned: Q) -> Q {
    if pulled.is_none() {
        asking.rest_on(&HALF);
    }
    pulled.unwrap_or(reckoned)
}

fn swing<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let free = At {
        angle: Angle::from_base(0.0),
        wind: None,
        direction: Direction::Opening,
        speeding_up: false,
        hindered: false,
    };
    let shut = torque_at(asking, site, gate, leaf, free);
    let pulled = asking.read_if_there(
        &gate.origin,
        "least_friction_torque",
        gate.least_friction_torque.as_ref(),
    );
    let worst = steepest(shut?);
    let torques = asking.work(&worst)?;
    let drives = torques.lean + torques.rising;
    let pull = Torque::from_base(drives.base().abs());
    let friction = counted(asking, pulled, torques.friction * LEAST);
    let way = if drives.base() > 0.0 {
        "closes"
    } else {
        "opens"
    };
    let comparison = Comparison::below(
        Labeled::new("torque of the leaf's own weight", pull),
        Labeled::new("least friction of the hinges", friction),
    );
    asking.say(|print| {
        let turned = if pull.base() > 0.0 {
            format!(
                "Let go at {}, {} {way} by its own weight with {}",
                print.q(worst.angle),
                leaf.id,
                print.q(pull)
            )
        } else {
            format!(
                "Let go, {} is not turned by its own weight anywhere",
                leaf.id
            )
        };
        format!(
            "{turned}; its hinges hold it with {} at the least.{}",
            print.q(friction),
            advice(
                comparison,
                "Plumb the hinge line, or fit what holds the leaf with the drive released."
            )
        )
    });
    Ok(Outcome::Compared(comparison))
}

/// The angle of the travel at which the leaf's own weight turns it hardest.
fn steepest(shut: SwingGateTorque) -> SwingGateTorque {
    let at = |share: f64| SwingGateTorque {
        angle: shut.travel_angle * share,
        ..shut
    };
    let turns = |torque: &SwingGateTorque| {
        torque
            .evaluate()
            .map_or(0.0, |gives| (gives.lean + gives.rising).base().abs())
    };
    places()
        .map(at)
        .max_by(|one, other| turns(one).total_cmp(&turns(other)))
        .unwrap_or(shut)
}

fn rise<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let friction = if gate.kind == GateKind::VerticalLift {
        read!(asking, gate.least_friction).map(Force::base)
    } else {
        read!(asking, gate.least_friction_torque).map(Torque::base)
    };
    let at = |asking: &mut Asking<'s>, at| rising(asking, site, gate, leaf, at);
    let arm = gate.kind == GateKind::BarrierArm;
    let counts = |rising: &Rising| moves(rising, arm);
    let worst = hardest(asking, RisingAt::free, at, counts);
    let (friction, worst) = (friction?, worst?);
    let pull = worst.value(counts(&worst));
    let friction = worst.value(friction);
    let comparison = Comparison::below(
        Labeled {
            label: "unbalanced weight",
            value: pull,
        },
        Labeled {
            label: "least friction",
            value: friction,
        },
    );
    let falls = if worst.unbalanced() > 0.0 {
        "comes down"
    } else {
        "rises"
    };
    asking.say(|print| {
        let moved = if counts(&worst) > 0.0 {
            format!(
                "Let go at {}, {} {falls} with {}",
                print.value(&worst.place()),
                leaf.id,
                print.value(&pull)
            )
        } else {
            format!("Let go anywhere on its travel, {} does not come down", leaf.id)
        };
        format!(
            "{moved}; friction holds it with {}.{}",
            print.value(&friction),
            advice(
                comparison,
                "Nobody stands under it until the balance is set right, or a brake holds it with the drive released."
            )
        )
    });
    Ok(Outcome::Compared(comparison))
}

/// What moves a leaf that is let go. An arm that rises by itself opens the lane and falls on nobody; a leaf that rises
/// takes along what is caught on it.
fn moves(rising: &Rising, arm: bool) -> f64 {
    let unbalanced = rising.unbalanced();
    if arm {
        unbalanced.max(0.0)
    } else {
        unbalanced.abs()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SLIDE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    units = "si"
    [[gate]]
    id = "main"
    kind = "track-slide"
    slope = "0.001 ± 0.0005"
    [[gate.leaf]]
    id = "leaf"
    mass = "300 kg"
    [gate.wheels]
    diameter = "152.4 mm"
    rolling = "steel on steel"
    bearing_friction = "0.01"
    axle_diameter = "19 mm"
"#;

    const SWING: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "eu"
    [[gate]]
    id = "main"
    kind = "single-swing"
    travel_angle = "100°"
    [[gate.leaf]]
    id = "leaf"
    length = "3 m"
    mass = "180 kg"
    center_along = "1.5 m"
    [gate.leaf.hinges]
    spacing = "1.2 m"
    pin_diameter = "25 mm"
    friction = "0.2"
    lean_along = "0.0005"
    lean_across = "0"
"#;

    const ARM: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "eu"
    [[gate]]
    id = "arm"
    kind = "barrier-arm"
    travel_angle = "90°"
    least_friction_torque = "12 N·m"
    [gate.balance]
    kind = "counterweight"
    mass = "57 kg ± 1 kg"
    radius = "0.45 m"
    [[gate.leaf]]
    id = "boom"
    length = "4.1 m"
    height = "100 mm"
    mass = "14 kg"
    center_along = "2.2 m"
"#;

    #[test]
    fn holds_on_a_track_nearly_level() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: half of (0.508 mm + 0.01 · 9.5 mm) over 76.2 mm, times 300 kg · 9.80665 m/s².
        let least = 0.5 * (0.508 + 0.095) / 76.2 * 300.0 * 9.80665;
        assert!((finding.capacity.unwrap().value.unwrap() - least).abs() < 0.01);
    }

    #[test]
    fn fails_on_a_slope_of_one_in_a_hundred() {
        let steep = SLIDE.replace("0.001 ± 0.0005", "-0.01");
        let finding = only(&CHECK, &steep);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("while opening"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn a_pull_scale_replaces_what_is_reckoned() {
        let pulled = SLIDE.replace("0.001 ± 0.0005", "0.01").replace(
            "kind = \"track-slide\"",
            "kind = \"track-slide\"\nleast_friction = \"45 N\"",
        );
        assert_eq!(only(&CHECK, &pulled).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_slope_and_wheels() {
        let bare = SLIDE
            .replace("slope = \"0.001 ± 0.0005\"", "")
            .replace("rolling = \"steel on steel\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn holds_on_plumb_hinges_and_fails_on_leaning_ones() {
        let plumb = only(&CHECK, SWING);
        assert_eq!(plumb.verdict, Verdict::Holds, "{}", plumb.sentence);
        let leaning = only(&CHECK, &SWING.replace("\"0.0005\"", "\"0.02\""));
        assert_eq!(leaning.verdict, Verdict::Fails, "{}", leaning.sentence);
        // Statics by hand: 180 kg · 9.80665 m/s² · 1.5 m · 0.02 with the leaf square to its closed line.
        let torque = leaning.demand.unwrap().value.unwrap();
        assert!((torque - 52.96).abs() < 0.2, "{torque}");
    }

    #[test]
    fn holds_within_the_friction_of_an_arms_pivot_and_fails_beyond() {
        let balanced = only(&CHECK, ARM);
        assert_eq!(balanced.verdict, Verdict::Holds, "{}", balanced.sentence);
        let cut = only(&CHECK, &ARM.replace("57 kg", "40 kg"));
        assert_eq!(cut.verdict, Verdict::Fails, "{}", cut.sentence);
        assert!(cut.sentence.contains("comes down"), "{}", cut.sentence);
        let unknown = only(
            &CHECK,
            &ARM.replace("least_friction_torque = \"12 N·m\"", ""),
        );
        assert_eq!(unknown.verdict, Verdict::UnknownUntil);
    }
}
