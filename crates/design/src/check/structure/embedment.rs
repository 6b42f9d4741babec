//! Whether a footing is deep and wide enough for the posts in it or on it, in its soil, below the frost, beside what is dug.
//!
//! The pole formula with the loads of daily use. Posts that stand at one place along the gate line hold the leaf by turns;
//! posts at different places push together. A round footing counts with its diameter, a square one with its diagonal,
//! a beam with the face that it shows to the soil. Its weight is not counted.

use super::at_foot::{AtFoot, Sideways, at_foot, hardest};
use super::bank::beside;
use super::concrete::order;
use super::faces::{Faces, faces};
use super::foot_turn::foundation_of;
use super::footing::pole_depth;
use super::loads::Level;
use super::soil::lateral;
use crate::asking::{Asking, Wants, read};
use crate::check::wind::guides::NEAR;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::standing::FootingBottom;
use formula::{Evidence, Source};
use quantity::{Force, Length, PressurePerDepth, Quantity as _, Torque};
use site::{CodeBasis, Foundation, Gate, Post, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-embedment",
    codes: BOTH,
    leaves_open: "ground that was filled or dug before, water in it, how hard the footing presses on it, frost that lifts its sides, the bars in the concrete, and a slab that is later taken away; level ground is taken where no bank is written down",
    concerns: "each footing with posts in it or on it",
    ask,
};

static EUROPE: Source = Source {
    work: "EN 1997-1, piles and footings under sideways loads",
    clause: "7.7",
    evidence: Evidence::Memory,
    seen: "not seen; the pole formula of the International Building Code stands in",
};

/// How a footing is written.
const FOOTING: &str = "\"footing-hinge\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for foundation in &site.foundation {
        let posts = posts_of(site, foundation);
        if !posts.is_empty() {
            round.ask(About::new(&foundation.origin, &foundation.id), |asking| {
                embedded(asking, site, foundation, &posts)
            });
        }
    }
    for (_, post) in all_posts(site) {
        let stands_free = post.pillar.is_none() && post.role != PostRole::Device;
        if stands_free && foundation_of(site, post).is_none() {
            round.ask(About::new(&post.origin, &post.id), |asking| {
                asking.lack(&post.origin, "foundation", Wants::Written(FOOTING))
            });
        }
    }
}

fn all_posts(site: &Site) -> impl Iterator<Item = (&Gate, &Post)> {
    let posts = |gate| -> Vec<(&Gate, &Post)> {
        let gate: &Gate = gate;
        gate.post.iter().map(|post| (gate, post)).collect()
    };
    site.gate.iter().flat_map(posts)
}

fn posts_of<'s>(site: &'s Site, foundation: &Foundation) -> Vec<(&'s Gate, &'s Post)> {
    let stands = |(_, post): &(&Gate, &Post)| {
        foundation_of(site, post).is_some_and(|found| found.id == foundation.id)
            && post.pillar.is_none()
    };
    all_posts(site).filter(stands).collect()
}

fn embedded<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    posts: &[(&'s Gate, &'s Post)],
) -> Answer {
    let load = load(asking, site, posts);
    let faces = faces(asking, foundation);
    let soil = lateral(asking, site);
    let bottom = bottom(asking, foundation);
    let frost = read!(asking, site.climate?.frost_depth);
    let (load, faces, soil, bottom, frost) = (load?, faces?, soil?, bottom?, frost?);
    beside(asking, foundation, faces.widest())?;
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&EUROPE);
    }
    let load_depth = depth(asking, foundation, (load, faces, soil))?;
    let asked = asking.work(&FootingBottom {
        load_depth,
        frost_depth: frost,
        bottom,
    })?;
    let order = order(asking, site, foundation)?;
    asking.say(|print| {
        format!(
            "{} needs {} of depth for {} at the ground and {} for frost; it goes down {}.{}",
            capitalized(foundation.id.as_str()),
            print.q(load_depth),
            print.q(load.moment()),
            print.q(frost),
            print.q(bottom),
            order.map_or_else(String::new, |order| order.words(print))
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("depth that load and frost ask for", asked.least),
        Labeled::new("depth of the footing's bottom", bottom),
    ))
}

/// What all posts push at once, along and across and together.
#[derive(Debug, Clone, Copy)]
struct Load {
    along: Sideways,
    across: Sideways,
    together: Sideways,
}

impl Load {
    fn moment(&self) -> Torque {
        self.together.moment
    }
}

/// The hardest post of each place, all places together.
fn load<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    posts: &[(&'s Gate, &'s Post)],
) -> Result<Load, Halt> {
    let mut places: Vec<(Option<Length>, AtFoot)> = Vec::new();
    let mut whole = Ok(());
    for (gate, post) in posts {
        let cases = at_foot(asking, site, gate, post, Level::Service);
        let at = post.at.as_ref().map(|at| at.x.nominal());
        match cases.map(|cases| hardest(&cases, moment).copied()) {
            Ok(Some(case)) => add(&mut places, at, case),
            Ok(None) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let sum = |of: fn(&AtFoot) -> Sideways| {
        places
            .iter()
            .fold(Sideways::none(), |sum, (_, case)| sum + of(case))
    };
    if let Some((_, case)) = places
        .iter()
        .max_by(|one, other| moment(&one.1).total_cmp(&moment(&other.1)))
    {
        asking.note(|print| {
            format!(
                "Hardest with {}: {} at the foot of one post.",
                case.case,
                print.q(case.together().moment)
            )
        });
    }
    Ok(Load {
        along: sum(|case| case.along),
        across: sum(|case| case.across),
        together: sum(AtFoot::together),
    })
}

fn moment(case: &AtFoot) -> f64 {
    case.together().moment.base()
}

/// Posts at one place hold by turns: the harder one counts.
fn add(places: &mut Vec<(Option<Length>, AtFoot)>, at: Option<Length>, case: AtFoot) {
    let same = |other: &Option<Length>| match (at, *other) {
        (Some(one), Some(other)) => (one - other).base().abs() <= NEAR,
        _ => false,
    };
    match places.iter_mut().find(|(other, _)| same(other)) {
        Some((_, there)) if moment(there) < moment(&case) => *there = case,
        Some(_) => {}
        None => places.push((at, case)),
    }
}

/// Depth of the bottom below the ground: the top may stand above it.
fn bottom<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<Length, Halt> {
    let depth = read!(asking, foundation.depth);
    let top = match &foundation.at {
        Some(at) => {
            let [_, _, up] = asking.position(&foundation.origin, "at", Some(at))?;
            up
        }
        None => Length::from_base(0.0),
    };
    let bottom = depth? - top;
    if bottom.base() <= 0.0 {
        return asking.refuse("the bottom of this footing does not reach below the ground");
    }
    Ok(bottom)
}

/// Depth for the load, the greater of both ways.
fn depth<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    (load, faces, lateral): (Load, Faces, PressurePerDepth),
) -> Result<Length, Halt> {
    let ways = match faces {
        Faces::Round(width) => vec![(load.together, width)],
        Faces::Box { along, across } => vec![(load.along, along), (load.across, across)],
    };
    let mut deepest = Length::from_base(0.0);
    for (side, width) in ways {
        let Some((force, height)) = lever(side) else {
            continue;
        };
        let depth = pole_depth(asking, foundation, (force, height), (width, lateral))?;
        if depth > deepest {
            deepest = depth;
        }
    }
    Ok(deepest)
}

/// Height from which a force counts as one that only turns: a leaf that hangs with no wind on it.
const HIGHEST: f64 = 50.0;

/// Force and height that give the moment; nothing where nothing pushes. A moment without a force becomes a small force far up.
fn lever(side: Sideways) -> Option<(Force, Length)> {
    let (force, moment) = (side.force.base(), side.moment.base());
    if moment <= 0.0 {
        return None;
    }
    let force = force.max(moment / HIGHEST);
    Some((Force::from_base(force), Length::from_base(moment / force)))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        frost_depth = "32 in"
        soil_class = "sand"
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "5 ft"
        ground_clearance = "4 in"
        solidity = "30 %"
        mass = "300 lb"
        center_along = "5 ft"
        [[gate.post]]
        id = "post"
        role = "hinge"
        height = "6 ft"
        section = "HSS 6x6x1/4"
        foundation = "footing"
        [[foundation]]
        id = "footing"
        diameter = "24 in"
        depth = "7 ft"
    "#;

    #[test]
    fn holds_deep_and_wide() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("bags"), "{}", finding.sentence);
    }

    #[test]
    fn fails_too_shallow_for_load_or_frost() {
        let shallow = only(&CHECK, &SITE.replace("7 ft", "3 ft"));
        assert_eq!(shallow.verdict, Verdict::Fails, "{}", shallow.sentence);
        let cold = only(&CHECK, &SITE.replace("32 in", "90 in"));
        assert_eq!(cold.verdict, Verdict::Fails, "{}", cold.sentence);
        // Frost is asked for to the inch.
        assert!((cold.demand.unwrap().value.unwrap() / 0.0254 - 90.0).abs() < 1e-6);
    }

    #[test]
    fn unknown_without_soil_frost_and_depth() {
        let bare = SITE
            .replace("soil_class = \"sand\"", "")
            .replace("frost_depth = \"32 in\"", "")
            .replace("depth = \"7 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
        let loose = SITE.replace("foundation = \"footing\"", "");
        assert_eq!(only(&CHECK, &loose).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn fill_waits_for_a_report_and_a_near_bank_is_outside() {
        let fill = SITE.replace("\"sand\"", "\"fill, peat or unknown\"");
        assert_eq!(only(&CHECK, &fill).verdict, Verdict::UnknownUntil);
        let bank = SITE.replace(
            "depth = \"7 ft\"",
            "depth = \"7 ft\"\nbank_distance = \"5 ft\"\nbank_height = \"2 ft\"",
        );
        assert_eq!(only(&CHECK, &bank).verdict, Verdict::OutsideThisTool);
        let far = bank.replace("5 ft\"\nbank_height", "20 ft\"\nbank_height");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Holds);
    }

    #[test]
    fn a_slab_a_tested_soil_and_leave_to_move_need_less_depth() {
        let depth = |text: &str| only(&CHECK, text).demand.unwrap().value.unwrap();
        let plain = depth(SITE);
        let with = |line: &str| SITE.replace("diameter", &format!("{line}\ndiameter"));
        assert!(depth(&with("held_at_grade = true")) < plain);
        assert!(depth(&with("may_move = true")) < plain);
        let tested = SITE.replace("soil_class = \"sand\"", "soil_lateral = \"400 psf/ft\"");
        assert!(depth(&tested) < plain);
    }

    #[test]
    fn a_square_one_counts_with_its_diagonal() {
        let square = SITE.replace(
            "diameter = \"24 in\"",
            "length = \"24 in\"\nwidth = \"24 in\"",
        );
        let depth = |text: &str| only(&CHECK, text).demand.unwrap().value.unwrap();
        assert!(depth(&square) < depth(SITE));
    }

    #[test]
    fn in_europe_it_warns_and_does_not_pass() {
        let court = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("wind_code = \"ASCE 7-16\"", "")
            .replace("exposure = \"C\"", "terrain_category = \"II\"")
            .replace("115 mph", "20 m/s")
            .replace("7 ft", "10 ft");
        let finding = only(&CHECK, &court);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn a_post_on_a_plate_is_found_by_its_anchors() {
        let plate = SITE.replace("foundation = \"footing\"", "")
            + "[[foundation.anchor]]\nholds = \"post\"\ncarries = \"post\"\n";
        let findings = all(&CHECK, &plate);
        assert_eq!(findings.len(), 1);
        assert_eq!(
            findings[0].verdict,
            Verdict::Holds,
            "{}",
            findings[0].sentence
        );
    }
}
