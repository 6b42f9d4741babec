//! Whether there is room between the force that a gate honestly needs on a cold windy day and the force at which it gives up.
//!
//! The force taken for an obstacle is measured on a calm day, and comes on top of what leaf and drive ask then, speeding up
//! among it. So what other days add counts: wind on the guides, seals, debris, half of the rolling once more for stiff
//! grease, and a quarter of it all in hand.
//! For a leaf that turns the whole torque in the wind with a quarter in hand is taken. The threshold itself stays below
//! what may be laid on a person between leaf and post, unless contact edges carry the protection both ways. No force is
//! readable in the American rules; the European one serves as the yardstick.

use super::means::acts_there;
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::wind::still_moves::hardest_slide;
use crate::check::wind::still_turns::{rise_torque, swing_torque};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::protection::{En12453PeakForce, GateKind as KindOfGate};
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _, Word as _};
use site::{Direction, Gate, GateKind, Leaf, Operator, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-sense-window",
    codes: BOTH,
    leaves_open: "gusts above the stated wind, ice, worn rollers, and a threshold that the controller learns anew by itself; pull and threshold are measured on the same day, and again on a cold one",
    concerns: "each gate with its operator",
    ask,
};

/// Share of the honest force that is kept in hand.
const IN_HAND: f64 = 0.25;
/// Rolling resistance in the cold, beyond that of the calm day, as a share of it.
const COLD: f64 = 0.5;

static ALLOWANCE: Source = Source {
    work: "a quarter of the honest force in hand; half more of the rolling in the cold",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing; a scale on a cold, windy day replaces it",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(
        site,
        |_| true,
        |asking, gate, operator| window(asking, site, gate, operator),
    );
}

fn window<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let leaf = leaf_of(asking, gate, operator)?;
    let threshold = read!(asking, operator.obstruction_force);
    let honest = honest(asking, site, gate, leaf);
    let (threshold, honest) = (threshold?, honest?);
    asking.rest_on(&ALLOWANCE);
    let Some(kind) = KindOfGate::from_word(gate.kind.word()) else {
        return asking.refuse("this kind of gate has no limit of force");
    };
    let permitted = asking
        .work(&En12453PeakForce {
            gate: kind,
            gap: Length::from_base(0.0),
        })?
        .peak;
    let by_edges = edges_both_ways(site, gate);
    let above = threshold > permitted;
    asking.say(|print| {
        let beyond = match (above, by_edges) {
            (false, _) => "below what may be laid on a person there".to_owned(),
            (true, true) => format!(
                "more than the {} that Europe lets a person bear, so the contact edges carry the protection",
                print.q(permitted)
            ),
            (true, false) => format!(
                "more than the {} that Europe lets a person bear, and no contact edges carry the protection both ways",
                print.q(permitted)
            ),
        };
        format!(
            "On a cold windy day {} asks for {} beyond its calm pull, a quarter in hand; {} gives up at {}, {beyond}.",
            leaf.id,
            print.q(honest),
            operator.id,
            print.q(threshold)
        )
    });
    let gives_up = "force at which it gives up";
    let needs = Comparison::below(
        Labeled::new("honest force with a quarter in hand", honest),
        Labeled::new(gives_up, threshold),
    );
    let bears = Comparison::at_most(
        Labeled::new(gives_up, threshold),
        Labeled::new("force that may be laid on a person", permitted),
    );
    let bears = (!by_edges).then_some(bears);
    Outcome::worst([Some(needs), bears].into_iter().flatten()).ok_or(Halt)
}

/// Contact edges act in both directions.
fn edges_both_ways(site: &Site, gate: &Gate) -> bool {
    [Direction::Opening, Direction::Closing]
        .into_iter()
        .all(|way| acts_there(site, gate, &[ProtectionType::B2], way))
}

/// The force at the edge that the gate may need without an obstacle, in hand included.
fn honest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    let torque = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            let pull = hardest_slide(asking, site, (gate, leaf))?;
            let more = pull.guides + pull.seals + pull.debris + pull.rolling * COLD;
            return Ok(more * (1.0 + IN_HAND));
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => swing_torque(asking, site, (gate, leaf)),
        GateKind::VerticalPivot | GateKind::BarrierArm => rise_torque(asking, site, (gate, leaf)),
        GateKind::VerticalLift => asking.refuse(
            "wind presses a lifted leaf against its rails, whose friction a site file cannot say yet: raise it in a fresh wind and read the motor's current",
        ),
    };
    let length = read!(asking, leaf.length);
    let (torque, length) = (torque?, length?);
    if length.base() <= 0.0 {
        return asking.refuse("a leaf without length has no free end");
    }
    Ok(Force::from_base(
        torque.base() / length.base() * (1.0 + IN_HAND),
    ))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, windy_slide};

    const SLIDE: &str = windy_slide!(
        "0.01",
        "5 lbf",
        "80 %",
        "640 lb",
        r#"
        obstruction_force = "120 lbf"
        [[device]]
        id = "edges"
        kind = "contact edge"
        protection = "B2"
        guards = ["opening", "closing"]
    "#
    );

    #[test]
    fn holds_with_a_window_below_the_threshold() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("edges carry"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn holds_for_a_light_swing_leaf_below_400_newtons_without_edges() {
        let swing = r#"
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
        obstruction_force = "300 N"
    "#;
        let finding = only(&CHECK, swing);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let hard = only(&CHECK, &swing.replace("300 N", "450 N"));
        assert_eq!(hard.verdict, Verdict::Fails, "{}", hard.sentence);
    }

    #[test]
    fn fails_where_wind_reads_as_an_obstacle_and_where_nothing_else_protects() {
        let low = only(&CHECK, &SLIDE.replace("120 lbf", "40 lbf"));
        assert_eq!(low.verdict, Verdict::Fails, "{}", low.sentence);
        let one_way = SLIDE.replace(
            "guards = [\"opening\", \"closing\"]",
            "guards = [\"closing\"]",
        );
        let finding = only(&CHECK, &one_way);
        // 120 lbf are 534 N, more than 400 N.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_threshold_and_wind() {
        let bare = SLIDE
            .replace("obstruction_force = \"120 lbf\"", "")
            .replace("operating_wind_speed = \"30 mph\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
