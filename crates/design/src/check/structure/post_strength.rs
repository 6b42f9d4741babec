//! Whether a post holds its leaf, the wind and the jolt at its stop.
//!
//! Each place of the leaf, each event and the post's own wind are looked at one by one; the hardest is shown. A guide post
//! is taken to hold its guide alone, though two may share it. Where the site names no grade of steel, the weakest in common
//! use is taken.

use super::at_foot::at_foot;
use super::loads::Steel;
use super::stress::hardest_stress;
use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use site::{Gate, GateKind, Post, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-post-strength",
    codes: BOTH,
    leaves_open: "the weld at its foot and at its hinges, holes cut for cables, rust at the ground, earthquake, and a vehicle that hits it; what holds its plate is asked of its anchors, what holds its footing of the soil",
    concerns: "each hanging, catch and guide post of steel",
    ask,
};

/// How a post is written.
const POST: &str = "[[gate.post]]\nid = \"post-hinge\"\nrole = \"hinge\"\nat = [\"-6 in\", \"0 ft\", \"0 ft\"]\nheight = \"7 ft\"\nsection = \"HSS 6x6x1/4\"\nyield_strength = \"46 ksi\"\nfoundation = \"footing-hinge\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        let holds = |post: &&Post| post.role != PostRole::Device;
        // The pedestal of an arm is its drive.
        if gate.kind != GateKind::BarrierArm && !gate.post.iter().any(|post| holds(&post)) {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(&gate.origin, "post", Wants::Table(POST))
            });
        }
        let of_steel = |post: &&Post| holds(post) && post.pillar.is_none();
        for post in gate.post.iter().filter(of_steel) {
            round.ask(About::new(&post.origin, &post.id), |asking| {
                strength(asking, site, gate, post)
            });
        }
    }
}

fn strength<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, post: &'s Post) -> Answer {
    let steel = Steel::of(asking, site.site.code_basis);
    let cases = at_foot(asking, site, gate, post, steel.level);
    let stressed = hardest_stress(asking, site, post, cases, steel)?;
    asking.say(|print| {
        let section = post.section.as_ref().map_or("", site::Section::as_str);
        format!(
            "{} ({section}) is hardest bent with {}: {} at its foot stresses it to {}, and {} is allowed.",
            capitalized(post.id.as_str()),
            stressed.case,
            print.q(stressed.moment),
            print.q(stressed.stresses.equivalent),
            print.q(stressed.stresses.allowed)
        )
    });
    Ok(Outcome::Compared(stressed.compared()))
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
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "5 ft"
        ground_clearance = "4 in"
        solidity = "80 %"
        mass = "300 lb"
        center_along = "5 ft"
        [[gate.post]]
        id = "post"
        role = "hinge"
        height = "6 ft"
        section = "HSS 6x6x1/4"
        yield_strength = "46 ksi"
    "#;

    #[test]
    fn holds_as_a_stout_post() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 46 ksi over 1.67, as AISC 360 has it.
        let allowed = finding.capacity.unwrap().value.unwrap() / 6.894_757e6;
        assert!((allowed - 46.0 / 1.67).abs() < 1e-4, "{allowed}");
    }

    #[test]
    fn fails_as_a_thin_one() {
        let thin = only(&CHECK, &SITE.replace("HSS 6x6x1/4", "HSS 3x3x1/8"));
        assert_eq!(thin.verdict, Verdict::Fails, "{}", thin.sentence);
        assert!(thin.sentence.contains("open"), "{}", thin.sentence);
    }

    #[test]
    fn unknown_without_section_and_wind() {
        let bare = SITE
            .replace("section = \"HSS 6x6x1/4\"", "width = \"6 in\"")
            .replace("basic_wind_speed = \"115 mph\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_while_no_post_is_written_down() {
        let (none, _) = SITE.split_once("[[gate.post]]").unwrap();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn a_grade_that_nobody_names_is_the_weakest_and_shown() {
        let unnamed = only(&CHECK, &SITE.replace("yield_strength = \"46 ksi\"", ""));
        let allowed = unnamed.capacity.unwrap().value.unwrap() / 6.894_757e6;
        assert!((allowed - 36.0 / 1.67).abs() < 1e-4, "{allowed}");
        let said = unnamed
            .sources
            .iter()
            .any(|source| source.work.contains("weakest"));
        assert!(said, "{:?}", unnamed.sources);
        let tube = SITE
            .replace("yield_strength = \"46 ksi\"", "")
            .replace("HSS 6x6x1/4", "tube 6x6x1/4");
        assert_eq!(only(&CHECK, &tube).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn walls_like_paper_are_outside() {
        let paper = only(&CHECK, &SITE.replace("HSS 6x6x1/4", "tube 6x6x1/16"));
        assert_eq!(
            paper.verdict,
            Verdict::OutsideThisTool,
            "{}",
            paper.sentence
        );
    }

    #[test]
    fn in_europe_it_is_held_against_the_yield_strength_itself() {
        let court = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("wind_code = \"ASCE 7-16\"", "")
            .replace("exposure = \"C\"", "terrain_category = \"II\"")
            .replace("115 mph", "24 m/s")
            .replace("HSS 6x6x1/4", "tube 140x140x6 mm")
            .replace("46 ksi", "235 MPa");
        let finding = only(&CHECK, &court);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let allowed = finding.capacity.unwrap().value.unwrap();
        assert!((allowed - 235e6).abs() < 1.0, "{allowed}");
    }

    #[test]
    fn posts_of_devices_and_pillars_are_asked_elsewhere() {
        let others = SITE.replace("role = \"hinge\"", "role = \"device\"")
            + "[[gate.post]]\nid = \"old\"\nrole = \"catch\"\n[gate.post.pillar]\nwhat = \"brick\"\n";
        assert!(all(&CHECK, &others).is_empty());
    }
}
