//! The torque of a swing leaf at every angle, both ways, against what its drive brings to the hinge line there.
//!
//! The leaf may be stopped and started anywhere, so it is asked to speed up at every angle, against its hinges, its
//! seals and the operating wind, with a quarter in hand as common practice has it. A linear drive brings the push of its
//! ram at the ram's speed there, times the distance of its line from the hinge line; a folding arm its shaft's torque
//! times the ratio of its bars; an underground drive its shaft's torque. The angle with the least in hand is named. Where
//! the data sheet says what the drive may give without end, the steady torque is held against that as well.

use super::swing_drive::{Hold, hold, swings};
use super::turning::{At, torque_at, way};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::wind::load::Wind;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::SwingGateTorque;
use formula::{Evidence, Formula as _, Source};
use quantity::{Angle, AngularVelocity, Quantity as _, Torque};
use site::{Direction, Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-swing-torque",
    codes: BOTH,
    leaves_open: "hinges out of line or rusted, ice on the leaf, a slope that the leaf's edge touches, and the cold",
    concerns: "each swing gate with its operators",
    ask,
};

/// Share of the torque that is kept in hand.
const IN_HAND: f64 = 0.25;
/// Parts into which the travel is cut.
const STEPS: u32 = 36;

static MARGIN: Source = Source {
    work: "a quarter of the torque kept in hand",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(site, swings, |asking, gate, operator| {
        torque(asking, site, gate, operator)
    });
}

/// The place with the least in hand.
#[derive(Clone, Copy)]
struct Hardest {
    leaf: SwingGateTorque,
    asked: Torque,
    given: Torque,
}

fn torque<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let leaf = leaf_of(asking, gate, operator)?;
    let at = At {
        angle: Angle::from_base(0.0),
        wind: Some(Wind::Operating),
        direction: Direction::Opening,
        speeding_up: true,
        hindered: true,
    };
    let closed = torque_at(asking, site, gate, leaf, at);
    let speed = read!(asking, gate.motion?.cruise_turning_speed);
    let width = read!(asking, leaf.length);
    let hold = width.and_then(|width| hold(asking, operator, width));
    let (closed, hold, speed) = (closed?, hold?, speed?);
    let hardest = hardest(asking, (&closed, &hold), operator, speed)?;
    let torques = asking.work(&hardest.leaf)?;
    hold.show(asking, (hardest.leaf.angle, hardest.asked))?;
    asking.rest_on(&MARGIN);
    let direction = hardest.leaf.way;
    let (angle, asked, given) = (hardest.leaf.angle, hardest.asked, hardest.given);
    asking.say(|print| {
        format!(
            "The drive has least in hand at {} while {}: the leaf asks {} steady, {} speeding up, {} with a quarter in hand \
             (common practice); the drive brings {} to the hinge line there.",
            print.q(angle),
            quantity::Word::word(direction),
            print.q(torques.steady),
            print.q(torques.total),
            print.q(asked),
            print.q(given)
        )
    });
    let at_cruise = compared(
        ("torque with a quarter in hand", asked),
        ("torque of the drive at the hinge line", given),
    );
    let lasting = hold.lasting_torque(asking, operator, angle)?;
    let for_ever = lasting.map(|lasting| {
        compared(
            ("steady torque", torques.steady),
            ("torque given without end", lasting),
        )
    });
    Outcome::worst([Some(at_cruise), for_ever].into_iter().flatten()).ok_or(Halt)
}

/// The angle and the way of turning with the least in hand. A leaf that runs away has to be held by the drive.
fn hardest<'s>(
    asking: &mut Asking<'s>,
    (leaf, hold): (&SwingGateTorque, &Hold),
    operator: &'s Operator,
    speed: AngularVelocity,
) -> Result<Hardest, Halt> {
    let mut worst: Option<(f64, Hardest)> = None;
    for step in 0..=STEPS {
        let angle = leaf.travel_angle * (f64::from(step) / f64::from(STEPS));
        let given = hold.torque(asking, operator, (angle, speed))?;
        for direction in [Direction::Opening, Direction::Closing] {
            let way = way(direction);
            let here = SwingGateTorque {
                angle,
                way,
                ..*leaf
            };
            let torques = match here.evaluate() {
                Ok(torques) => torques,
                Err(_) => asking.work(&here)?,
            };
            let pushed = torques.total * (1.0 + IN_HAND);
            let held = -torques.steady;
            let asked = if pushed > held { pushed } else { held };
            let strain = asked.base() / given.base().max(f64::MIN_POSITIVE);
            if worst.is_none_or(|(before, _)| strain > before) {
                let place = Hardest {
                    leaf: here,
                    asked,
                    given,
                };
                worst = Some((strain, place));
            }
        }
    }
    worst.map(|(_, place)| place).ok_or(Halt)
}

fn compared(demand: (&'static str, Torque), capacity: (&'static str, Torque)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
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
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        operating_wind_speed = "20 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "single-swing"
        travel_angle = "90°"
        seal_force = "0 lbf"
        [[gate.leaf]]
        id = "leaf"
        length = "8 ft"
        height = "5 ft"
        ground_clearance = "3 in"
        solidity = "80 %"
        mass = "250 lb ± 5 %"
        center_along = "4 ft"
        [gate.leaf.hinges]
        spacing = "4 ft"
        pin_diameter = "3/4 in"
        friction = "0.2"
        lean_along = "0 ± 0.005"
        lean_across = "0 ± 0.005"
        [gate.motion]
        cruise_turning_speed = "5 deg/s"
        acceleration = "0.5 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "linear"
        curve = [{ speed = "0 in/s", force = "900 lbf" }, { speed = "1 in/s", force = "700 lbf" }]
        rated_force = "700 lbf"
        [operator.mounting]
        rear_behind = "7 in"
        rear_across = "7 1/2 in"
        front_along = "37 in"
        front_across = "2 in"
    "#;

    #[test]
    fn holds_with_a_strong_drive() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The line of these pins passes nearest to the hinge line with the leaf closed.
        assert!(finding.sentence.contains("at 0°"), "{}", finding.sentence);
    }

    #[test]
    fn fails_when_the_post_leans() {
        let leaning = SITE
            .replace("lean_across = \"0 ± 0.005\"", "lean_across = \"-0.09\"")
            .replace("900 lbf", "500 lbf")
            .replace("700 lbf", "300 lbf");
        let finding = only(&CHECK, &leaning);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn a_shaft_on_the_hinge_line_gives_its_own_torque() {
        let buried = SITE.replace("\"linear\"", "\"underground\"").replace(
            "rated_force = \"700 lbf\"",
            "torque_curve = [{ turning_speed = \"0 deg/s\", torque = \"400 lbf·ft\" }, { turning_speed = \"10 deg/s\", torque = \"200 lbf·ft\" }]",
        );
        let capacity = only(&CHECK, &buried).capacity.unwrap().value.unwrap();
        assert!((capacity / 1.355_818 - 300.0).abs() < 0.01, "{capacity}");
    }

    #[test]
    fn unknown_without_hinges_and_pins() {
        let bare = SITE
            .replace("front_along = \"37 in\"", "")
            .replace("spacing = \"4 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
