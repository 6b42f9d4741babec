//! What one wheel, one guide or one hinge carries when it does the work of the others too.
//!
//! On a track no two wheels bear alike: the wheels at one end of the leaf are taken to leave all of that end's share to one
//! of them, with a person on the tip where the site names the weight. The guides hold the design wind about the track, the
//! hardest-pressed of them at the worst place of the travel. On a swing leaf one hinge carries the whole weight, with a
//! person on the free end, and the worse hinge the couple together with the design wind, latched or held by the drive.

use super::hinges;
use super::wheels;
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-wheels-and-hinges",
    codes: BOTH,
    leaves_open: "the life of bearings and pins, the welds and screws of hinges and guides, shocks, and a wheel that runs on the edge of its tread",
    concerns: "each leaf on wheels or hinges",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site.gate.iter().filter(|gate| is_carried(gate.kind)) {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                carriers(asking, site, gate, leaf)
            });
        }
    }
}

/// Cantilever leaves have a question of their own, and a barrier arm hangs on its drive.
fn is_carried(kind: GateKind) -> bool {
    !matches!(kind, GateKind::CantileverSlide | GateKind::BarrierArm)
}

fn carriers<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let comparisons = match gate.kind {
        GateKind::TrackSlide => {
            let wheel = wheels::hardest(asking, gate, leaf);
            let guide = wheels::hardest_guide(asking, site, gate, leaf);
            [wheel?, guide?]
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => hinges::hardest(asking, site, gate, leaf)?,
        _ => {
            return asking.refuse(
                "a leaf that rises hangs on ropes, springs or a shaft; a licensed engineer or the maker of its gear says what they carry",
            );
        }
    };
    asking.say(|print| {
        let parts = comparisons.map(|one| {
            format!(
                "{} is {} of {}",
                one.demand.label,
                print.value(&one.demand.value),
                print.value(&one.capacity.value)
            )
        });
        format!("The {}.", parts.join("; the "))
    });
    Outcome::worst(comparisons).ok_or(Halt)
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
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft 6 in"
        climbing_load = "200 lbf"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "30 %"
        closed_end = "-6 in"
        mass = "640 lb"
        center_along = "10 ft 6 in"
        [gate.wheels]
        count = 2
        diameter = "6 in"
        rolling = "steel on steel"
        tread_width = "1/2 in"
        spacing = "18 ft"
        rated_load = "1000 lbf"
        [gate.guide]
        at = ["0 ft", "20 ft 6 in", "40 ft"]
        height = "6 ft"
        rated_load = "4000 lbf"
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "single-swing"
        climbing_load = "200 lbf"
        [[gate.leaf]]
        id = "leaf"
        length = "12 ft"
        height = "5 ft"
        ground_clearance = "3 in"
        solidity = "40 %"
        mass = "300 lb"
        center_along = "6 ft"
        [gate.leaf.hinges]
        spacing = "4 ft"
        rated_load = "900 lbf"
        rated_side_load = "8000 lbf"
        [[operator]]
        id = "drive"
        gate = "main"
        [operator.mounting]
        front_along = "3 ft"
    "#;

    /// By hand: 320 lbf at each end, and a climber 1 1/2 ft beyond the wheels adds 200 · 19.5 / 18.
    #[test]
    fn holds_on_stout_wheels() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let pounds = 320.0 + 200.0 * 19.5 / 18.0;
        assert!(
            finding.sentence.contains(&format!("{pounds:.0} lbf")),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn holds_on_stout_hinges() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("500 lbf"), "{}", finding.sentence);
    }

    #[test]
    fn fails_on_a_weak_wheel_and_on_a_weak_hinge() {
        let wheel = only(&CHECK, &SLIDE.replace("1000 lbf", "500 lbf"));
        assert_eq!(wheel.verdict, Verdict::Fails, "{}", wheel.sentence);
        let hinge = only(&CHECK, &SWING.replace("900 lbf", "450 lbf"));
        assert_eq!(hinge.verdict, Verdict::Fails, "{}", hinge.sentence);
        // Couple alone: (300 · 6 + 200 · 12) / 4 = 1050 lbf.
        let side = only(&CHECK, &SWING.replace("8000 lbf", "1000 lbf"));
        assert_eq!(side.verdict, Verdict::Fails, "{}", side.sentence);
    }

    #[test]
    fn fails_on_a_weak_guide() {
        let guide = only(&CHECK, &SLIDE.replace("4000 lbf", "50 lbf"));
        assert_eq!(guide.verdict, Verdict::Fails, "{}", guide.sentence);
    }

    #[test]
    fn unknown_names_all_that_is_missing() {
        let bare = SWING
            .replace("climbing_load = \"200 lbf\"", "")
            .replace("spacing = \"4 ft\"", "")
            .replace("rated_side_load = \"8000 lbf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn a_leaf_that_rises_is_outside() {
        let lift = SLIDE.replace("track-slide", "vertical-lift");
        assert_eq!(only(&CHECK, &lift).verdict, Verdict::OutsideThisTool);
    }
}
