//! What keeps the wind from throwing a leaf when nothing drives it.
//!
//! A released leaf is held by its catch alone; the drive is not counted, even where it locks itself, because a hand
//! release lets go of exactly that. Closed, as it stands unwatched, the leaf is held against the wind in which the gate
//! must stand; open, against the wind up to which the gate is worked. What friction would hold is not counted.

use super::along::along;
use super::load::Wind;
use super::reaction::at_free_end;
use super::upright_arm::on_upright_arm;
use crate::asking::{Asking, Wants, read};
use crate::check::force::rising::{Rising, RisingAt, rising};
use crate::check::leaf::mass;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Acceleration, Force, Quantity as _, Velocity};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "wind-holds-when-off",
    codes: BOTH,
    leaves_open: "an open leaf or a raised arm in the storm itself, which must be shut and locked, or pinned, before it comes; a leaf let go halfway, which a person holds or ties; hinges out of plumb",
    concerns: "each leaf",
    ask,
};

/// How a catch is written.
const CATCH: &str = "[gate.catch]\nwhat = \"drop bolt closed, hold-back open\"\nclosed_force = \"600 lbf\"\nopen_force = \"100 lbf\"\nholds_when_released = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                held(asking, site, gate, leaf)
            });
        }
    }
}

/// Forces at the leaf's end, with the wind that makes them.
#[derive(Debug, Clone, Copy)]
struct Thrown {
    wind: Velocity,
    force: Force,
}

fn held<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let thrown = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => slid(asking, site, gate, leaf),
        GateKind::SingleSwing | GateKind::DoubleSwing => swung(asking, site, leaf),
        GateKind::VerticalPivot | GateKind::BarrierArm => return up(asking, site, gate, leaf),
        GateKind::VerticalLift => {
            return asking.refuse(
                "wind does not move a leaf that lifts; what keeps it from coming down is a question of its own",
            );
        }
    };
    let Some(catch) = &gate.catch else {
        return asking.lack(&gate.origin, "catch", Wants::Table(CATCH));
    };
    let released = asking
        .need(
            &catch.origin,
            "holds_when_released",
            catch.holds_when_released.as_ref(),
            "true",
        )
        .copied();
    if released.is_ok_and(|holds| !holds) {
        asking.say(|_| {
            format!(
                "Nothing holds {} once the drive is released: the release sheet must say to hold or tie the leaf first.",
                leaf.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let closed_force = read!(asking, catch.closed_force);
    let open_force = read!(asking, catch.open_force);
    let ([closed, open], closed_force, open_force) = (thrown?, closed_force?, open_force?);
    released?;
    asking.say(|print| {
        format!(
            "Released and closed, {} pulls {} at its end in {} and the catch holds {}; open, {} in {} and the catch holds {}.",
            leaf.id,
            print.q(closed.force),
            print.q(closed.wind),
            print.q(closed_force),
            print.q(open.force),
            print.q(open.wind),
            print.q(open_force)
        )
    });
    let compared = |demand, force, capacity, holds| {
        Comparison::at_most(Labeled::new(demand, force), Labeled::new(capacity, holds))
    };
    let comparisons = [
        compared(
            "pull at the closed leaf's end",
            closed.force,
            "what the closed catch holds",
            closed_force,
        ),
        compared(
            "pull at the open leaf's end",
            open.force,
            "what the open catch holds",
            open_force,
        ),
    ];
    Outcome::worst(comparisons).ok_or(Halt)
}

/// An arm or a leaf that stands up: the wind along the gate line must not throw it down.
/// A spring or weight that keeps it up counts; a catch counts only if it holds when released.
fn up<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let wind = read!(asking, site.climate?.operating_wind_speed);
    let open = rising(asking, site, gate, leaf, RisingAt::free(1.0));
    let pressed = on_upright_arm(asking, site, leaf, Wind::Operating);
    let length = read!(asking, leaf.length);
    let catch = gate.catch.as_ref();
    let holds = catch.is_some_and(|catch| catch.holds_when_released == Some(true));
    let caught = match catch {
        Some(catch) if holds => read!(asking, catch.open_force),
        _ => Ok(Force::from_base(0.0)),
    };
    let Rising::Turning(_, torques) = open? else {
        return asking.refuse("only an arm or a leaf about a level pivot is thrown down by wind");
    };
    let (wind, pressed, length, caught) = (wind?, pressed?, length?, caught?);
    // The wind acts in the middle of the arm: at its end half of it would hold.
    let pull = torques.unbalanced.base() / length.base() + pressed.base() / 2.0;
    let pull = Force::from_base(pull.max(0.0));
    asking.say(|print| {
        format!(
            "Released and up, {} is thrown down with {} at its end in {}; its catch holds {}.",
            leaf.id,
            print.q(pull),
            print.q(wind),
            print.q(caught)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("pull down at the end of the open leaf", pull),
        Labeled::new("what the open catch holds when released", caught),
    ))
}

/// A swing leaf, closed and open.
fn swung<'s>(asking: &mut Asking<'s>, site: &'s Site, leaf: &'s Leaf) -> Result<[Thrown; 2], Halt> {
    let mut at = |wind| {
        at_free_end(asking, site, leaf, wind).map(|(wind, force)| Thrown {
            wind: wind.speed,
            force,
        })
    };
    let (closed, open) = (at(Wind::Design), at(Wind::Operating));
    Ok([closed?, open?])
}

/// A sliding leaf, closed and open, its weight added where it runs downhill out of the position.
fn slid<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<[Thrown; 2], Halt> {
    let closed = along(asking, site, leaf, Wind::Design);
    let open = along(asking, site, leaf, Wind::Operating);
    let mass = mass(asking, leaf);
    let slope = read!(asking, gate.slope);
    let (closed, open) = (closed?, open?);
    let weight: Force = mass? * Acceleration::from_base(9.80665);
    // The slope is above zero where the leaf climbs as it opens; the weight along a slope is at most weight times slope.
    let uphill = weight * slope?;
    let none = Force::from_base(0.0);
    let (out_of_closed, out_of_open) = if uphill > none {
        (none, uphill)
    } else {
        (-uphill, none)
    };
    let thrown = |(wind, force): (Velocity, Force), more: Force| Thrown {
        wind,
        force: force + more,
    };
    Ok([thrown(closed, out_of_closed), thrown(open, out_of_open)])
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SWING: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        operating_wind_speed = "25 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "single-swing"
        slope = "0.01"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
        solidity = "100 %"
        mass = "300 lb"
        [gate.catch]
        closed_force = "2000 lbf"
        open_force = "150 lbf"
        holds_when_released = true
    "#;

    #[test]
    fn holds_in_a_strong_catch() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_in_a_weak_catch_and_where_nothing_holds() {
        let weak = only(&CHECK, &SWING.replace("2000 lbf", "600 lbf"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
        let hold_back = only(&CHECK, &SWING.replace("150 lbf", "20 lbf"));
        assert_eq!(hold_back.verdict, Verdict::Fails, "{}", hold_back.sentence);
        let loose = only(
            &CHECK,
            &SWING.replace("released = true", "released = false"),
        );
        assert_eq!(loose.verdict, Verdict::Fails, "{}", loose.sentence);
        assert!(
            loose.sentence.contains("release sheet"),
            "{}",
            loose.sentence
        );
    }

    #[test]
    fn a_slide_is_pushed_along_and_rolls_down_its_slope() {
        let slide = SWING.replace("single-swing", "track-slide");
        let level = only(&CHECK, &slide.replace("0.01", "0"));
        let strong = only(&CHECK, &slide.replace("2000 lbf", "20000 lbf"));
        let steep = only(
            &CHECK,
            &slide
                .replace("2000 lbf", "20000 lbf")
                .replace("0.01", "0.1"),
        );
        assert_eq!(level.verdict, Verdict::Holds, "{}", level.sentence);
        let pull = |finding: &crate::Finding| finding.demand.as_ref().unwrap().value.unwrap();
        // The open leaf rolls closed: a tenth of 300 lb is 30 lbf, a hundredth 3 lbf, less what the slope's cosine takes.
        let rolled = (pull(&steep) - pull(&strong)) / 4.448_221_6;
        assert!((rolled - 27.0).abs() < 0.01, "{rolled}");
    }

    #[test]
    fn an_arm_that_stands_up_is_kept_up_by_its_catch_or_its_weight() {
        let arm = SWING
            .replace("single-swing", "barrier-arm")
            .replace("slope = \"0.01\"", "travel_angle = \"90°\"\n[gate.balance]\nkind = \"counterweight\"\nmass = \"600 lb\"\nradius = \"3 ft\"")
            .replace("height = \"6 ft\"", "height = \"4 in\"\ncenter_along = \"5 ft\"");
        let held = only(&CHECK, &arm);
        assert_eq!(held.verdict, Verdict::Holds, "{}", held.sentence);
        let loose = only(&CHECK, &arm.replace("released = true", "released = false"));
        assert_eq!(loose.verdict, Verdict::Fails, "{}", loose.sentence);
    }

    #[test]
    fn unknown_without_a_word_on_the_catch() {
        let bare = SWING.replace("closed_force = \"2000 lbf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let (before, _) = SWING.split_once("[gate.catch]").unwrap();
        let none = only(&CHECK, before);
        assert_eq!(none.verdict, Verdict::UnknownUntil);
        assert!(none.missing[0].write.contains("[gate.catch]"));
    }
}
