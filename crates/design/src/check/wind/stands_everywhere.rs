//! Whether the leaf stands in the storm closed, open, and stopped in between with its free end held by nothing.
//!
//! Guides and hinges are held against the design wind at each place, the catch at the closed leaf's end, and the drive where
//! nothing but it holds the leaf. Posts are asked on their own.

use super::along::{CLOSED, along};
use super::drive_holds::{at_free_end as drive_at_free_end, standing};
use super::guides::{Place, slide_wind};
use super::load::{Wind, on_leaf};
use super::reaction::at_free_end;
use super::upright_arm::on_upright_arm;
use crate::asking::{Asking, Wants, read};
use crate::check::leaf::hinges::across_hinge;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use quantity::{Force, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "wind-stands-everywhere",
    codes: BOTH,
    leaves_open: "how a catch holds sideways, what a wind pushes a see-through leaf along its travel, brackets and pins of the drive, and a leaf left open by hand: shut and lock it before a storm",
    concerns: "each leaf",
    ask,
};

/// How a catch is written.
const CATCH: &str = "[gate.catch]\nwhat = \"drop bolt\"\nclosed_force = \"600 lbf\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                stands(asking, site, gate, leaf)
            });
        }
    }
}

/// A part that holds the leaf at a place, with what it is asked and what it takes.
#[derive(Debug, Clone, Copy)]
struct Held {
    place: Place,
    by: &'static str,
    force: Force,
    takes: Force,
}

impl Held {
    fn compared(&self) -> Comparison {
        Comparison::at_most(
            Labeled::new(self.by, self.force),
            Labeled::new("what that part takes", self.takes),
        )
    }
}

fn stands<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let parts = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => slides(asking, site, gate, leaf),
        GateKind::SingleSwing | GateKind::DoubleSwing => swings(asking, site, gate, leaf),
        GateKind::BarrierArm | GateKind::VerticalPivot => turns_up(asking, site, gate, leaf),
        GateKind::VerticalLift => {
            return asking.refuse(
                "a leaf that lifts stands in its rails; the maker of its gear or a licensed engineer says what they hold",
            );
        }
    }?;
    asking.rest_on(&DATA_SHEET);
    // Of like ones the first.
    let worst = parts.iter().rev().max_by(|one, other| {
        one.compared()
            .strain()
            .total_cmp(&other.compared().strain())
    });
    let Some(worst) = worst.copied() else {
        return Err(Halt);
    };
    asking.say(|print| {
        format!(
            "In the storm {} is hardest to hold {}: {} is {}, and the part takes {}.",
            capitalized(leaf.id.as_str()),
            worst.place.words(),
            worst.by,
            print.q(worst.force),
            print.q(worst.takes)
        )
    });
    Outcome::worst(parts.iter().map(Held::compared)).ok_or(Halt)
}

fn slides<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Vec<Held>, Halt> {
    let wind = slide_wind(asking, site, gate, leaf);
    let rated = read!(asking, gate.guide?.rated_load);
    let solidity = read!(asking, leaf.solidity);
    let pushed = match &solidity {
        Ok(solidity) if solidity.base() >= CLOSED => {
            let pushed = along(asking, site, leaf, Wind::Design);
            let holds = standing(asking, site, gate, leaf);
            pushed.and_then(|(_, force)| Ok(Some((force, holds?))))
        }
        _ => Ok(None),
    };
    let (wind, rated, pushed) = (wind?, rated?, pushed?);
    solidity?;
    let mut parts = Vec::new();
    for held in &wind.places {
        let shares = held.by.iter().filter(|by| !by.is_catch);
        let most = shares.map(|by| by.share).fold(0.0, f64::max);
        let held_at_all = !held.by.is_empty();
        parts.push(Held {
            place: held.place,
            by: "force on one guide",
            // With no guide beside it the whole wind is on nothing at all.
            force: wind.at_guide(if held_at_all { most } else { 1.0 }),
            takes: if held_at_all {
                rated
            } else {
                Force::from_base(0.0)
            },
        });
    }
    parts.extend(pushed.map(|(force, takes)| Held {
        place: Place::Halfway,
        by: "push of the wind along the travel, held by the drive",
        force,
        takes,
    }));
    Ok(parts)
}

fn swings<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Vec<Held>, Halt> {
    let hinges = across_hinge(asking, site, gate, leaf);
    let rated = read!(asking, leaf.hinges?.rated_side_load);
    let end = at_free_end(asking, site, leaf, Wind::Design);
    let drive = drive_at_free_end(asking, site, gate, leaf);
    let catch = match &gate.catch {
        Some(catch) => read!(asking, catch.closed_force),
        None => asking.lack(&gate.origin, "catch", Wants::Table(CATCH)),
    };
    let open = gate.catch.as_ref().and_then(|catch| {
        asking.read_if_there(&catch.origin, "open_force", catch.open_force.as_ref())
    });
    let (hinges, rated, (_, end)) = (hinges?, rated?, end?);
    let (drive, catch) = (drive?, catch?);
    let part = |place, by, force, takes| Held {
        place,
        by,
        force,
        takes,
    };
    let hinge = "force across one hinge";
    let opened = open.filter(|open| *open > drive).unwrap_or(drive);
    Ok(vec![
        part(Place::Closed, hinge, hinges.latched.side, rated),
        part(Place::Halfway, hinge, hinges.loose(), rated),
        part(Place::Closed, "pull on the catch", end, catch),
        part(
            Place::Halfway,
            "pull at the leaf's end, held by the drive",
            end,
            drive,
        ),
        part(
            Place::Open,
            "pull at the leaf's end, held by drive or hold-back",
            end,
            opened,
        ),
    ])
}

/// An arm or a leaf that turns up: on its pivot closed, and kept up by its drive against the wind along the gate line.
fn turns_up<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Vec<Held>, Halt> {
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let narrow = on_upright_arm(asking, site, leaf, Wind::Design);
    let drive = standing(asking, site, gate, leaf);
    let rated = read!(asking, leaf.hinges?.rated_side_load);
    let (wind, narrow, drive, rated) = (wind?, narrow?, drive?, rated?);
    let part = |place, by, force, takes| Held {
        place,
        by,
        force,
        takes,
    };
    let pivot = "force across the pivot";
    // The wind acts in the middle of the arm: at its end half of it would hold. Halfway up it has seven tenths of its
    // height to the wind.
    let kept = narrow / 2.0;
    Ok(vec![
        part(Place::Closed, pivot, wind.force, rated),
        part(Place::Open, pivot, wind.force, rated),
        part(
            Place::Halfway,
            "pull at the arm's end, held by the drive",
            kept * HALFWAY_UP,
            drive,
        ),
        part(
            Place::Open,
            "pull at the arm's end, held by the drive",
            kept,
            drive,
        ),
    ])
}

/// Share of its length that an arm halfway up shows to a wind along the gate line, squared.
const HALFWAY_UP: f64 = 0.5;

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
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = "0 ft"
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
        solidity = "80 %"
        [gate.guide]
        height = "6 ft"
        at = ["0 ft", "19 ft", "40 ft"]
        rated_load = "8000 lbf"
        [[operator]]
        id = "drive"
        gate = "main"
        holding_force = "900 lbf"
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [climate]
        basic_wind_speed = "24 m/s"
        terrain_category = "II"
        topographic_factor = "1"
        [[gate]]
        id = "court"
        kind = "single-swing"
        climbing_load = "0 N"
        [[gate.leaf]]
        id = "leaf"
        length = "3 m"
        height = "1.4 m"
        ground_clearance = "0.1 m"
        solidity = "90 %"
        mass = "120 kg"
        center_along = "1.5 m"
        [gate.leaf.hinges]
        spacing = "1.1 m"
        rated_side_load = "8 kN"
        [gate.catch]
        closed_force = "9 kN"
        [[operator]]
        id = "drive"
        gate = "court"
        drive = "underground"
        holding_force = "5 kN"
        [operator.mounting]
        front_along = "1 m"
    "#;

    const ARM: &str = r#"
        [site]
        name = "Test park"
        code_basis = "eu"
        [climate]
        basic_wind_speed = "25 m/s"
        terrain_category = "III"
        topographic_factor = "1"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        [[gate.leaf]]
        id = "boom"
        length = "3.8 m"
        height = "100 mm"
        thickness = "45 mm"
        ground_clearance = "0.85 m"
        solidity = "1"
        [gate.leaf.hinges]
        rated_side_load = "3 kN"
        [[operator]]
        id = "drive"
        gate = "arm"
        holding_force = "200 N"
    "#;

    #[test]
    fn holds_with_guides_hinges_and_drives_that_are_strong() {
        for text in [SLIDE, SWING, ARM] {
            let finding = only(&CHECK, text);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_and_says_where_the_leaf_stood() {
        let guide = only(&CHECK, &SLIDE.replace("\"19 ft\"", "\"18 ft\", \"20 ft\""));
        assert_eq!(guide.verdict, Verdict::Fails, "{}", guide.sentence);
        assert!(guide.sentence.contains("just off"), "{}", guide.sentence);
        let slipping = only(&CHECK, &SWING.replace("5 kN", "300 N"));
        assert_eq!(slipping.verdict, Verdict::Fails, "{}", slipping.sentence);
        assert!(
            slipping.sentence.contains("halfway"),
            "{}",
            slipping.sentence
        );
        let latch = only(&CHECK, &SWING.replace("9 kN", "300 N"));
        assert!(latch.sentence.contains("closed"), "{}", latch.sentence);
        let thrown = only(&CHECK, &ARM.replace("200 N", "20 N"));
        assert_eq!(thrown.verdict, Verdict::Fails, "{}", thrown.sentence);
    }

    #[test]
    fn fails_where_no_guide_stands_beside_the_open_leaf() {
        let bare = SLIDE.replace("\"19 ft\", \"40 ft\"", "\"19 ft\"");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("open"), "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_what_the_drive_holds_and_where_the_guides_stand() {
        let slide = SLIDE
            .replace("holding_force = \"900 lbf\"", "")
            .replace("at = [\"0 ft\", \"19 ft\", \"40 ft\"]", "");
        let swing = SWING
            .replace("holding_force = \"5 kN\"", "")
            .replace("closed_force = \"9 kN\"", "");
        for text in [slide, swing] {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::UnknownUntil);
            assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        }
    }

    #[test]
    fn a_leaf_that_lifts_is_outside() {
        let lift = ARM.replace("barrier-arm", "vertical-lift");
        assert_eq!(only(&CHECK, &lift).verdict, Verdict::OutsideThisTool);
    }
}
