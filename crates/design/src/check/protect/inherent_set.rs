//! Whether the operator's own sensing is set low, was tried both ways, and whether the leaf's inertia hides the contact.
//!
//! The setting is held against the lowest one with which the leaf still ran, with a quarter in hand. What a leaf lays on a
//! chest by its inertia alone, before its drive can feel anything, comes from its energy and the stiffness of a chest;
//! where that is more than the setting, a beam or an edge has to carry the protection in each direction. No figure of
//! force for this sensing is readable in the American rules.

use super::means::acts_there;
use crate::asking::{Asking, Wants, read};
use crate::check::drive::leaf_of;
use crate::check::stop::impact::moving;
use crate::check::{Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use formula::protection::{BodyStiffness, EdgeImpactForce, StruckPart};
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _};
use site::{CodeBasis, Direction, Gate, Operator, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-inherent-set",
    codes: &[CodeBasis::Us],
    leaves_open: "whether the setting is the same both ways and stays when the controller learns its travel anew; a solid object and a force gauge in each direction show it",
    concerns: "each operator that senses obstructions itself",
    ask,
};

/// Share of the lowest setting that is kept in hand.
const IN_HAND: f64 = 0.25;

static SETTING: Source = Source {
    work: "sensing set to the lowest that still runs, a quarter in hand",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; manuals that reprint UL 325 ask for contact with a solid object in each direction",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let senses = |operator: &Operator| operator.inherent_sensing != Some(false);
    let asked = |gate: &Gate| site.operators_of(gate).all(senses);
    round.ask_operators(site, asked, |asking, gate, operator| {
        set(asking, site, gate, operator)
    });
}

fn set<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let setting = read!(asking, operator.obstruction_force);
    let lowest = read!(asking, operator.lowest_obstruction_force);
    let tried = tried(asking, operator);
    let blow = blow(asking, site, gate, operator);
    let (setting, lowest, blow) = (setting?, lowest?, blow?);
    tried?;
    asking.rest_on(&SETTING);
    let hidden = blow > setting;
    let open = unguarded(site, gate);
    asking.say(|print| {
        let inertia = match (hidden, open) {
            (false, _) => "which is less".to_owned(),
            (true, None) => "which the drive cannot feel in time: beams and edges carry the protection both ways".to_owned(),
            (true, Some(way)) => format!("which the drive cannot feel in time, and nothing else guards it while {way}"),
        };
        format!(
            "{} gives up at {}, tried on a solid object both ways; it still ran at {}. By its inertia alone the leaf lays {} on a chest, {inertia}.",
            operator.id,
            print.q(setting),
            print.q(lowest),
            print.q(blow)
        )
    });
    if hidden && open.is_some() {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::at_most(
        Labeled::new("force at which it gives up", setting),
        Labeled::new(
            "lowest setting that still ran, a quarter in hand",
            lowest * (1.0 + IN_HAND),
        ),
    ))
}

/// It was run against a solid object in both directions.
fn tried<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<(), Halt> {
    let ways = [Direction::Opening, Direction::Closing];
    if ways.iter().all(|way| operator.tried_on_solid.contains(way)) {
        return Ok(());
    }
    let write = Wants::Written("[\"opening\", \"closing\"]");
    asking.lack(&operator.origin, "tried_on_solid", write)
}

/// What the leaf lays on a chest by its inertia alone.
fn blow<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<Force, Halt> {
    let leaf = leaf_of(asking, gate, operator)?;
    let moving = moving(asking, site, gate, leaf)?;
    let stiffness = asking
        .work(&BodyStiffness {
            part: StruckPart::Chest,
        })?
        .stiffness;
    let impact = asking.work(&EdgeImpactForce {
        mass: moving.whole_mass(),
        speed: moving.speed(),
        push: Force::from_base(0.0),
        soft_stiffness: stiffness,
        soft_travel: Length::from_base(0.0),
        hard_stiffness: stiffness,
    })?;
    Ok(impact.force)
}

/// A direction in which neither beam nor edge acts.
fn unguarded(site: &Site, gate: &Gate) -> Option<Direction> {
    let sensors = [ProtectionType::B1, ProtectionType::B2];
    [Direction::Opening, Direction::Closing]
        .into_iter()
        .find(|way| !acts_there(site, gate, &sensors, *way))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        mass = "640 lb"
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [gate.motion]
        cruise_speed = "1 ft/s"
        [[operator]]
        id = "drive"
        gate = "main"
        inherent_sensing = true
        starting_force = "300 lbf"
        rotating_mass = "120 lb"
        obstruction_force = "80 lbf"
        lowest_obstruction_force = "70 lbf"
        tried_on_solid = ["opening", "closing"]
        curve = [{ speed = "0 ft/s", force = "300 lbf" }, { speed = "1.5 ft/s", force = "150 lbf" }]
        [[device]]
        id = "edges"
        kind = "contact edge"
        protection = "B2"
        guards = ["opening", "closing"]
    "#;

    #[test]
    fn holds_when_set_low_and_edges_carry_a_heavy_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 760 lb · 0.4536 kg at 0.3048 m/s on 25 N/mm: 0.3048 · √(344.7 · 25 000) = 895 N, or 201 lbf.
        assert!(finding.sentence.contains("201 lbf"), "{}", finding.sentence);
    }

    #[test]
    fn fails_when_set_high_and_when_inertia_hides_the_contact_on_a_bare_leaf() {
        let high = only(&CHECK, &SITE.replace("\"80 lbf\"", "\"95 lbf\""));
        assert_eq!(high.verdict, Verdict::Fails, "{}", high.sentence);
        let bare = SITE.replace(
            "guards = [\"opening\", \"closing\"]",
            "guards = [\"closing\"]",
        );
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("while opening"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_tried_both_ways_and_its_lowest_is_known() {
        let bare = SITE
            .replace(
                "tried_on_solid = [\"opening\", \"closing\"]",
                "tried_on_solid = [\"closing\"]",
            )
            .replace("lowest_obstruction_force = \"70 lbf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn an_operator_that_senses_nothing_is_not_asked() {
        let dull = SITE.replace("inherent_sensing = true", "inherent_sensing = false");
        assert!(all(&CHECK, &dull).is_empty());
    }
}
