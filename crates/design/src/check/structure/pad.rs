//! Whether the pad under an operator, a pedestal or a box tips, slides or sinks, and whether frost lifts it.
//!
//! Each load by itself, to every side that it may act, against the weight of the pad alone with a factor of 1.5. What
//! stands on the pad is not counted, nor the ground beside it: it may be dug away. A pad that a slab holds at the ground
//! does not slide. A foundation that carries a gate post, or nothing but a mast, is asked about its depth in
//! the ground instead, one that carries a bollard about its bollard.

use super::frost::bottom;
use super::pad_loads::{carries, masts, operators};
use super::pad_square::smallest;
use super::pad_stability::{STABLE, decisive, facts, resisted};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use site::{Anchor, Foundation, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-pad",
    codes: BOTH,
    leaves_open: "wind on the housing of an operator, whose size the site does not hold; two loads at once; soft ground below, a bank or a trench beside it, and ground water that lifts it",
    concerns: "each foundation that carries an operator, a device or a box and no gate post",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for pad in site.foundation.iter().filter(|one| is_pad(site, one)) {
        round.ask(About::new(&pad.origin, &pad.id), |asking| {
            stands(asking, site, pad)
        });
    }
}

/// It carries an operator, or anchors of something, and neither a post nor a bollard; round ones are asked for their depth.
pub(crate) fn is_pad(site: &Site, one: &Foundation) -> bool {
    let mut posts = site.gate.iter().flat_map(|gate| &gate.post);
    let post = posts.any(|post| {
        let stands = post.foundation.as_ref() == Some(&one.id) || carries(one, &post.id);
        stands && post.role != PostRole::Device
    });
    let bollard = site
        .bollard
        .iter()
        .any(|bollard| bollard.foundation.as_ref() == Some(&one.id) || carries(one, &bollard.id));
    let mast = |anchor: &Anchor| {
        let name = anchor.carries.as_ref();
        name.is_some_and(|name| masts(site, one).any(|(_, mast)| mast.id == *name))
    };
    let other = one.anchor.iter().any(|anchor| !mast(anchor));
    let carries_something = operators(site, one).next().is_some() || other;
    carries_something && !post && !bollard && one.diameter.is_none()
}

fn stands<'s>(asking: &mut Asking<'s>, site: &'s Site, foundation: &'s Foundation) -> Answer {
    let facts = facts(asking, site, foundation);
    let bottom = bottom(asking, site, foundation);
    let ((pad, loads), bottom) = (facts?, bottom?);
    asking.rest_on(&STABLE);
    let (hardest, strongest) = decisive(&pad, &loads);
    let (Some(hardest), Some(strongest)) = (hardest, strongest) else {
        asking.say(|_| "Nothing pushes on it from the side.".to_owned());
        return Ok(Outcome::Compared(bottom));
    };
    let (mut all, used) = resisted(asking, &pad, (&hardest, strongest))?;
    all.push(bottom);
    let fails = all.iter().any(|one| !one.holds());
    let smallest = if fails {
        smallest(asking, &pad, (&hardest, strongest))
    } else {
        None
    };
    asking.say(|print| {
        let smallest = smallest.map_or_else(String::new, |side| {
            format!(
                " As thick as it is, a square pad of {} holds.",
                print.q(side)
            )
        });
        format!(
            "{} weighs {}; {} tips it most, with {} about its edge, and it resists {}.{smallest}",
            capitalized(foundation.id.as_str()),
            print.q(used.0),
            hardest.load.what,
            print.q(used.1),
            print.q(used.2)
        )
    });
    Outcome::worst(all).ok_or(Halt)
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
        soil_class = "sand"
        frost_depth = "30 in"
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "rack"
        at = ["22 ft", "14 in", "18 in"]
        foundation = "pad"
        starting_force = "300 lbf ± 5 %"
        [[foundation]]
        id = "pad"
        at = ["22 ft", "14 in", "2 in"]
        length = "36 in"
        width = "30 in"
        depth = "36 in"
    "#;

    #[test]
    fn holds_under_the_pull_of_its_drive() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 3 · 2.5 · 3 ft³ of 150 lb/ft³ weigh 3375 lb, and 3375 · 1.5 ft is 5062 lbf·ft.
        assert!(
            finding.sentence.contains("3375 lbf"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_when_it_is_small_and_names_the_smallest() {
        let small = SITE
            .replace("length = \"36 in\"", "length = \"18 in\"")
            .replace("width = \"30 in\"", "width = \"18 in\"");
        let finding = only(&CHECK, &small);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("a square pad of"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_above_frost_unless_it_drains() {
        let cold = SITE.replace("frost_depth = \"30 in\"", "frost_depth = \"60 in\"");
        let finding = only(&CHECK, &cold);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let drained = cold + "drained = true\n";
        assert_eq!(only(&CHECK, &drained).verdict, Verdict::Holds);
    }

    #[test]
    fn a_bump_and_the_wind_on_a_box_count() {
        let pedestal = SITE.split("[[operator]]").next().unwrap().to_owned()
            + r#"
            [[device]]
            id = "reader"
            kind = "reader"
            [[enclosure]]
            id = "box"
            at = ["0 ft", "0 ft", "4 ft"]
            width = "30 in"
            height = "48 in"
            depth = "12 in"
            [[foundation]]
            id = "plinth"
            at = ["0 ft", "0 ft", "0 ft"]
            length = "36 in"
            width = "36 in"
            depth = "30 in"
            push = [{ what = "car backs into it", force = "250 lbf", height = "24 in" }]
            [[foundation.anchor]]
            carries = "reader"
            holds = "pedestal"
            [[foundation.anchor]]
            carries = "box"
            holds = "box"
        "#;
        let finding = only(&CHECK, &pedestal);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let hard = only(&CHECK, &pedestal.replace("250 lbf", "1500 lbf"));
        assert_eq!(hard.verdict, Verdict::Fails, "{}", hard.sentence);
        let unbumped = pedestal.replace(
            "push = [{ what = \"car backs into it\", force = \"250 lbf\", height = \"24 in\" }]",
            "",
        );
        assert_eq!(only(&CHECK, &unbumped).missing.len(), 1);
    }

    #[test]
    fn unknown_without_soil_frost_and_depth_and_in_poor_soil() {
        let bare = SITE
            .replace("soil_class = \"sand\"", "")
            .replace("frost_depth = \"30 in\"", "")
            .replace("depth = \"36 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
        let poor = SITE.replace("\"sand\"", "\"fill, peat or unknown\"");
        assert_eq!(only(&CHECK, &poor).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn a_mast_beside_the_operator_counts() {
        let mast = |height: &str| {
            let post = format!(
                "[[gate.post]]\nid = \"mast\"\nrole = \"device\"\nfoundation = \"pad\"\nheight = \"{height}\"\nsection = \"HSS 4x4x1/4\"\ntop_area = \"1 ft²\"\ntop_mass = \"10 lb\"\n[[operator]]"
            );
            only(&CHECK, &SITE.replace("[[operator]]", &post))
        };
        let low = mast("6 ft");
        assert_eq!(low.verdict, Verdict::Holds, "{}", low.sentence);
        let high = mast("20 ft");
        assert_eq!(high.verdict, Verdict::Fails, "{}", high.sentence);
        assert!(high.sentence.contains("mast"), "{}", high.sentence);
    }

    #[test]
    fn the_footing_of_a_post_is_asked_elsewhere() {
        let post = SITE.replace(
            "[[operator]]",
            "[[gate.post]]\nid = \"post\"\nrole = \"hinge\"\nfoundation = \"pad\"\n[[operator]]",
        );
        assert!(all(&CHECK, &post).is_empty());
    }
}
