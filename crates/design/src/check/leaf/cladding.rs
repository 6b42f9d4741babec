//! What becomes of mass, wind and drive on the day that the leaf is boarded over.
//!
//! The leaf is taken solid and a fifth heavier. Its mass is held against the rated mass of the drive; for a slide the
//! hardest pull with a quarter in hand against the operator's curve, for a swing leaf the hardest torque in the operating
//! wind against the rated torque. Where that turns what held, the owner is to have it in writing that the leaf stays bare.

use super::mass;
use crate::asking::{Asking, read};
use crate::check::drive::operators_of_leaf;
use crate::check::force::operator_curve::force_at;
use crate::check::force::sliding::{Conditions, on_the_level};
use crate::check::force::turning::{At, torque_at, way};
use crate::check::wind::load::{Wind, on_clad_leaf, on_leaf};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{SlideGateForce, SwingGateTorque};
use formula::{Evidence, Source};
use quantity::{Angle, Force, Quantity as _, Torque};
use site::{Direction, Gate, GateKind, Leaf, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-later-cladding",
    codes: BOTH,
    leaves_open: "posts, anchors, hinges and rollers in the design wind with the leaf solid, and the balance of a leaf or arm that rises",
    concerns: "each leaf",
    ask,
};

/// How much heavier a leaf becomes.
const HEAVIER: f64 = 1.2;
/// Share of the pull that is kept in hand.
const IN_HAND: f64 = 0.25;

static ALLOWANCE: Source = Source {
    work: "a leaf that is boarded over taken as solid and a fifth heavier; a quarter of the pull kept in hand",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "allowance of the trade; ivy and signs have been heavier",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                clad(asking, site, gate, leaf)
            });
        }
    }
}

fn clad<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    asking.rest_on(&ALLOWANCE);
    let mass = mass(asking, leaf);
    let mut comparisons = Vec::new();
    for operator in operators_of_leaf(asking, site, (gate, leaf))? {
        let rated = read!(asking, operator.rated_mass);
        let drive = drive(asking, site, (gate, leaf), operator);
        comparisons.push((rated, drive));
    }
    let heavier = mass? * HEAVIER;
    let mut all = Vec::new();
    for (rated, drive) in comparisons {
        all.push(Comparison::at_most(
            Labeled::new("mass of the boarded leaf", heavier),
            Labeled::new("rated mass of the drive", rated?),
        ));
        all.extend(drive?);
    }
    concluded(asking, leaf, all)
}

/// What turns is for the owner to know.
fn concluded<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf, all: Vec<Comparison>) -> Answer {
    let holds = all.iter().all(Comparison::holds);
    let worst = Outcome::worst(all).ok_or(Halt)?;
    let Outcome::Compared(hardest) = worst else {
        return Err(Halt);
    };
    let told = if holds {
        true
    } else {
        *asking.need(
            &leaf.origin,
            "owner_warned",
            leaf.owner_warned.as_ref(),
            "true",
        )?
    };
    asking.say(|print| {
        let owner = match (holds, told) {
            (true, _) => "",
            (false, true) => " The owner has it in writing that the leaf stays bare.",
            (false, false) => " The owner must have it in writing that the leaf stays bare.",
        };
        format!(
            "Boarded over and a fifth heavier (common practice), the {} is {} of {}.{owner}",
            hardest.demand.label,
            print.value(&hardest.demand.value),
            print.value(&hardest.capacity.value)
        )
    });
    Ok(if holds || !told {
        worst
    } else {
        Outcome::Rule(true)
    })
}

/// The drive in the operating wind, for leaves that slide or swing.
fn drive<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Result<Option<Comparison>, Halt> {
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            slide(asking, site, (gate, leaf), operator).map(Some)
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            swing(asking, site, (gate, leaf), operator).map(Some)
        }
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => Ok(None),
    }
}

/// The wind on the boarded leaf, and how many times that on the bare one it is.
fn wind<'s>(asking: &mut Asking<'s>, site: &'s Site, leaf: &'s Leaf) -> Result<(Force, f64), Halt> {
    let bare = on_leaf(asking, site, leaf, Wind::Operating);
    let clad = on_clad_leaf(asking, site, leaf, Wind::Operating);
    let (bare, clad) = (bare?.force, clad?.force);
    if bare.base() <= 0.0 {
        return asking.refuse("without an operating wind there is nothing to compare");
    }
    Ok((clad, (clad.base() / bare.base()).max(1.0)))
}

fn slide<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Result<Comparison, Halt> {
    let level = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND);
    let wind = wind(asking, site, leaf);
    let slope = read!(asking, gate.slope);
    let speed = read!(asking, gate.motion?.cruise_speed);
    let (level, (_, times), slope, speed) = (level?, wind?, slope?, speed?);
    let clad = SlideGateForce {
        mass: level.mass * HEAVIER,
        guide_load: level.guide_load * times,
        ..level
    };
    let opening = asking.work(&SlideGateForce { slope, ..clad })?.total;
    let closing = asking
        .work(&SlideGateForce {
            slope: -slope,
            ..clad
        })?
        .total;
    let hardest = if opening > closing { opening } else { closing };
    let at_speed = force_at(asking, operator, speed)?;
    Ok(Comparison::at_most(
        Labeled::new(
            "pull on the boarded leaf with a quarter in hand",
            hardest * (1.0 + IN_HAND),
        ),
        Labeled::new("operator force at cruise speed", at_speed),
    ))
}

fn swing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Result<Comparison, Halt> {
    let shut = At {
        angle: Angle::from_base(0.0),
        wind: Some(Wind::Operating),
        direction: Direction::Opening,
        speeding_up: true,
        hindered: true,
    };
    let bare = torque_at(asking, site, gate, leaf, shut);
    let wind = wind(asking, site, leaf);
    let rated = read!(asking, operator.rated_torque);
    let travel = read!(asking, gate.travel_angle);
    let (bare, (wind_force, times), travel) = (bare?, wind?, travel?);
    let clad = SwingGateTorque {
        mass: bare.mass * HEAVIER,
        inertia: bare.inertia * HEAVIER,
        hinge_friction: bare.hinge_friction * times.max(HEAVIER),
        wind_force,
        ..bare
    };
    let mut hardest = Torque::from_base(0.0);
    for direction in [Direction::Opening, Direction::Closing] {
        for share in [0.0, 0.5, 1.0] {
            let there = SwingGateTorque {
                angle: travel * share,
                way: way(direction),
                ..clad
            };
            let torque = asking.work(&there)?.total;
            if torque > hardest {
                hardest = torque;
            }
        }
    }
    Ok(Comparison::at_most(
        Labeled::new("torque on the boarded leaf", hardest),
        Labeled::new("rated torque of the drive", rated?),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, windy_slide};

    const SITE: &str = windy_slide!(
        "0.01",
        "5 lbf",
        "30 %",
        "640 lb",
        r#"
        rated_mass = "1000 lb"
        curve = [{ speed = "0.5 ft/s", force = "250 lbf" }, { speed = "1.5 ft/s", force = "150 lbf" }]
    "#
    );

    #[test]
    fn holds_with_enough_in_hand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_owner_was_not_told() {
        let weak = SITE
            .replace("rated_mass = \"1000 lb\"", "rated_mass = \"700 lb\"")
            .replace(
                "mass = \"640 lb\"",
                "mass = \"640 lb\"\nowner_warned = false",
            );
        let finding = only(&CHECK, &weak);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        // A fifth more than 640 lb.
        assert!((finding.ratio.unwrap() - 768.0 / 700.0).abs() < 1e-6);
    }

    #[test]
    fn holds_where_the_owner_has_it_in_writing() {
        let told = SITE
            .replace("1000 lb", "700 lb")
            .replace("solidity", "owner_warned = true\nsolidity");
        let finding = only(&CHECK, &told);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_whether_the_owner_was_told_and_without_the_rating() {
        let untold = only(&CHECK, &SITE.replace("1000 lb", "700 lb"));
        assert_eq!(untold.verdict, Verdict::UnknownUntil);
        assert!(untold.missing[0].write.starts_with("owner_warned"));
        let unrated = only(&CHECK, &SITE.replace("rated_mass = \"1000 lb\"", ""));
        assert_eq!(unrated.verdict, Verdict::UnknownUntil);
        assert_eq!(unrated.missing.len(), 1, "{:?}", unrated.missing);
    }
}
