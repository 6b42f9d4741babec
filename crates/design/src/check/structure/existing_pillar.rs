//! Whether an old pillar or wall carries a hinge, a catch or a drive at all.
//!
//! A core that nobody has seen counts as nothing, and so do loose fill and weak mortar: a steel post goes beside it. Solid
//! masonry stands by its weight alone, without pull in any joint at its foot. What pulls on its fixings must have been tried.

use super::at_foot::{AtFoot, at_foot, hardest};
use super::loads::Level;
use super::on_post::outer;
use super::post_cases::leaf_of;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::leaf::hinges::across_hinge;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _, Torque};
use site::{Gate, GateKind, MortarState, Pillar, PillarCore, Post, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-existing-pillar",
    codes: BOTH,
    leaves_open: "the crushing of brick and mortar, the pull of one fixing on its neighbors, the ground under the footing, cracks that work, earthquake, and a vehicle that hits it; masonry that is to carry a gate is for a licensed engineer where the law wants one",
    concerns: "each post that is an old pillar or a wall",
    ask,
};

static MIDDLE_THIRD: Source = Source {
    work: "statics of a block without pull at its foot: the weight acts within the middle third",
    clause: "",
    evidence: Evidence::Physics,
    seen: "moment about the middle of the foot at most weight times a sixth of the width",
};

static WORTHLESS: Source = Source {
    work: "a pillar whose core or mortar is not known to be sound carries nothing",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of hanging gates; a licensed engineer may find otherwise",
};

static PROOF: Source = Source {
    work: "a fixing in old masonry is tried at one and a half times what will pull on it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of fixing in old masonry; the authority may ask for more tries or a greater load",
};

/// What a fixing is tried at, over what will pull on it.
const TRIED: f64 = 1.5;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked =
        |gate: &&Gate| !matches!(gate.kind, GateKind::VerticalPivot | GateKind::VerticalLift);
    for gate in site.gate.iter().filter(asked) {
        for post in &gate.post {
            let Some(pillar) = &post.pillar else { continue };
            round.ask(About::new(&post.origin, &post.id), |asking| {
                carried(asking, site, gate, (post, pillar))
            });
        }
    }
}

fn carried<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (post, pillar): (&'s Post, &'s Pillar),
) -> Answer {
    let core = pick!(asking, pillar.core);
    let mortar = pick!(asking, pillar.mortar);
    if let Some(why) = worthless(core.as_ref().ok(), mortar.as_ref().ok()) {
        asking.rest_on(&WORTHLESS);
        asking.say(|_| {
            format!(
                "{} counts as nothing: {why}. Set a steel post beside it, on a footing of its own.",
                capitalized(post.id.as_str())
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let seen = footing(asking, pillar);
    let cases = at_foot(asking, site, gate, post, Level::Service);
    let outer = outer(asking, post);
    let mass = read!(asking, pillar.mass);
    let pull = pull(asking, site, gate, post, &cases);
    let proof = read!(asking, pillar.proof_pull);
    let (cases, outer, pull, proof) = (cases?, outer?, pull?, proof?);
    core.and(mortar)?;
    mass?;
    seen?;
    asking.rest_on(&MIDDLE_THIRD);
    asking.rest_on(&PROOF);
    let sixth = |case: &AtFoot| Stands {
        along: (
            case.along.moment,
            Torque::from_base(case.least_weight.base() * outer.along.base() / 6.0),
        ),
        across: (
            case.across.moment,
            Torque::from_base(case.least_weight.base() * outer.across.base() / 6.0),
        ),
    };
    let Some(case) = hardest(&cases, |case| sixth(case).used()) else {
        return asking.refuse("nothing pushes on this pillar");
    };
    let stands = sixth(case);
    let (demand, capacity) = stands.worse();
    let tried = pull * TRIED;
    asking.note(|print| {
        format!(
            "With {} its weight counts as {}, and holds {} along the gate line and {} across it without pull at its foot.",
            case.case,
            print.q(case.least_weight),
            print.q(stands.along.1),
            print.q(stands.across.1)
        )
    });
    asking.say(|print| {
        format!(
            "{} is tipped with {} by {}, and its weight holds {}; {} pulls on one fixing, which was tried at {} and has to be at {}.",
            capitalized(post.id.as_str()),
            print.q(demand),
            case.case,
            print.q(capacity),
            print.q(pull),
            print.q(proof),
            print.q(tried)
        )
    });
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("moment at the pillar's foot", demand),
            Labeled::new("moment that its weight holds", capacity),
        ),
        Comparison::at_most(
            Labeled::new("load at which a fixing is tried", tried),
            Labeled::new("load at which it was tried", proof),
        ),
    ])
    .ok_or(Halt)
}

/// Why a pillar counts as nothing.
fn worthless(core: Option<&PillarCore>, mortar: Option<&MortarState>) -> Option<&'static str> {
    match (core, mortar) {
        (Some(PillarCore::Unknown), _) => Some("nobody has seen its core"),
        (Some(PillarCore::Hollow), _) => Some("its core is hollow or loose"),
        (_, Some(MortarState::Weak)) => Some("its mortar is weak"),
        _ => None,
    }
}

/// The footing must have been seen.
fn footing<'s>(asking: &mut Asking<'s>, pillar: &'s Pillar) -> Result<(), Halt> {
    if pillar.footing_seen == Some(true) {
        return Ok(());
    }
    asking.lack(&pillar.origin, "footing_seen", Wants::Written("true"))
}

/// What pulls on one fixing: the worse hinge of a leaf that hangs here, else the whole push of the hardest case.
fn pull<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    post: &'s Post,
    cases: &Result<Vec<AtFoot>, Halt>,
) -> Result<Force, Halt> {
    let swings = matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing);
    if swings && post.role == PostRole::Hinge {
        let leaf = leaf_of(asking, gate, post)?;
        return Ok(across_hinge(asking, site, gate, leaf)?.side());
    }
    let cases = cases.as_ref().map_err(|halt| *halt)?;
    let hardest = hardest(cases, |case| case.together().force.base());
    Ok(hardest.map_or(Force::from_base(0.0), |case| case.together().force))
}

/// Moment and what holds it, both ways.
struct Stands {
    along: (Torque, Torque),
    across: (Torque, Torque),
}

impl Stands {
    fn used(&self) -> f64 {
        share(self.along).max(share(self.across))
    }

    fn worse(&self) -> (Torque, Torque) {
        if share(self.along) >= share(self.across) {
            self.along
        } else {
            self.across
        }
    }
}

fn share((demand, capacity): (Torque, Torque)) -> f64 {
    if capacity.base() > 0.0 {
        demand.base() / capacity.base()
    } else {
        f64::INFINITY
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [climate]
        basic_wind_speed = "20 m/s"
        terrain_category = "III"
        topographic_factor = "1"
        [[gate]]
        id = "court"
        kind = "single-swing"
        climbing_load = "0 N"
        [[gate.leaf]]
        id = "leaf"
        length = "1.5 m"
        height = "1.2 m"
        ground_clearance = "0.1 m"
        solidity = "90 %"
        mass = "40 kg"
        center_along = "0.75 m"
        [gate.leaf.hinges]
        spacing = "0.9 m"
        [[operator]]
        id = "drive"
        gate = "court"
        [operator.mounting]
        front_along = "0.6 m"
        [[gate.post]]
        id = "pillar-left"
        role = "hinge"
        height = "1.8 m"
        [gate.post.pillar]
        what = "granite blocks, solid"
        core = "solid masonry"
        mortar = "sound"
        footing_seen = true
        length = "0.9 m"
        width = "0.9 m"
        mass = "3800 kg"
        proof_pull = "5 kN"
    "#;

    #[test]
    fn holds_as_a_heavy_block_with_fixings_that_were_tried() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_when_light_or_hardly_tried() {
        let light = only(&CHECK, &SITE.replace("3800 kg", "500 kg"));
        assert_eq!(light.verdict, Verdict::Fails, "{}", light.sentence);
        // The weight and that of the leaf times a sixth of the width.
        let holds = 9.806_65 * (500.0 + 40.0) * 0.9 / 6.0;
        let capacity = light.capacity.unwrap().value.unwrap();
        assert!((capacity - holds).abs() < 60.0, "{capacity} {holds}");
        let weak = only(&CHECK, &SITE.replace("5 kN", "100 N"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
    }

    #[test]
    fn fails_where_the_core_or_the_mortar_counts_as_nothing() {
        for worthless in ["unknown", "hollow or loose fill"] {
            let hollow = only(&CHECK, &SITE.replace("solid masonry", worthless));
            assert_eq!(hollow.verdict, Verdict::Fails, "{}", hollow.sentence);
            assert!(
                hollow.sentence.contains("steel post"),
                "{}",
                hollow.sentence
            );
        }
        let weak = only(&CHECK, &SITE.replace("\"sound\"", "\"weak\""));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
    }

    #[test]
    fn unknown_until_its_footing_is_seen_and_its_fixing_tried() {
        let bare = SITE
            .replace("footing_seen = true", "footing_seen = false")
            .replace("proof_pull = \"5 kN\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn posts_of_steel_are_not_asked() {
        let (steel, _) = SITE.split_once("[gate.post.pillar]").unwrap();
        assert!(all(&CHECK, steel).is_empty());
    }
}
