//! Whether a mast, a pole or a pedestal stands the storm, and keeps its camera, radio or panel steady on a windy day.
//!
//! Asked of posts for devices with something on top. Whether its footing holds it is asked of the footing.

use super::at_foot::at_foot;
use super::foot_turn::{foot_turn, foundation_of};
use super::loads::Steel;
use super::on_post::{PostWind, post_wind, section};
use super::stress::hardest_stress;
use crate::asking::{Asking, Wants, read};
use crate::check::wind::load::Wind;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::leaf::{Metal, MetalProperties};
use formula::standing::{MastSway, Sway};
use quantity::{Quantity as _, SecondMomentOfArea, Torque};
use site::{Gate, Post, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-mast",
    codes: BOTH,
    leaves_open: "swinging in time with gusts, cables that pull, ice, the bracket between mast and device, the weld at its foot and holes cut in it; its footing and its anchors are asked on their own",
    concerns: "each post for devices with something on top",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let is_mast = |post: &&Post| {
        post.role == PostRole::Device && (post.top_area.is_some() || post.top_mass.is_some())
    };
    for gate in &site.gate {
        for post in gate.post.iter().filter(is_mast) {
            round.ask(About::new(&post.origin, &post.id), |asking| {
                stands(asking, site, gate, post)
            });
        }
    }
}

fn stands<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, post: &'s Post) -> Answer {
    let steel = Steel::of(asking, site.site.code_basis);
    let area = read!(asking, post.top_area);
    let cases = at_foot(asking, site, gate, post, steel.level);
    let stressed = hardest_stress(asking, site, post, cases, steel);
    let sway = sway(asking, site, post);
    let everyday = read!(asking, site.climate?.everyday_wind_speed);
    let allowed = read!(asking, post.allowed_sway);
    if foundation_of(site, post).is_none() {
        return asking.lack(
            &post.origin,
            "foundation",
            Wants::Written("\"footing-mast\""),
        );
    }
    area?;
    let (stressed, sway, everyday, allowed) = (stressed?, sway?, everyday?, allowed?);
    asking.say(|print| {
        format!(
            "{} takes {} at its foot with {}, which stresses it to {} of {} allowed; in {} its top turns by {}, and {} is allowed.",
            capitalized(post.id.as_str()),
            print.q(stressed.moment),
            stressed.case,
            print.q(stressed.stresses.equivalent),
            print.q(stressed.stresses.allowed),
            print.q(everyday),
            print.q(sway.turn),
            print.q(allowed)
        )
    });
    Outcome::worst([
        stressed.compared(),
        Comparison::at_most(
            Labeled::new("turn of the mast's top on a windy day", sway.turn),
            Labeled::new("turn that the device takes", allowed),
        ),
    ])
    .ok_or(Halt)
}

/// The turn of the top in everyday wind, the worse way.
fn sway<'s>(asking: &mut Asking<'s>, site: &'s Site, post: &'s Post) -> Result<Sway, Halt> {
    let wind = post_wind(asking, site, post, Wind::Everyday);
    let section = section(asking, post);
    let height = read!(asking, post.height);
    let base_turn = foot_turn(asking, site, post);
    let (wind, section, height, base_turn) = (wind?, section?, height?, base_turn?);
    let modulus = asking
        .work(&MetalProperties {
            metal: Metal::Steel,
        })?
        .elasticity;
    let above = (wind.top_height - height).base();
    let blown = |(way, second_moment): (fn(&PostWind) -> f64, SecondMomentOfArea)| MastSway {
        top_force: wind.top,
        spread_force: quantity::Force::from_base(way(&wind) - wind.top.base()),
        moment: Torque::from_base(wind.top.base() * above),
        height,
        modulus,
        second_moment,
        base_turn,
    };
    let along = asking.work(&blown((|wind| wind.along.force.base(), section.inertia)))?;
    let across = asking.work(&blown((
        |wind| wind.across.force.base(),
        section.inertia_across(),
    )))?;
    Ok(if along.turn > across.turn {
        along
    } else {
        across
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test park"
        code_basis = "eu"
        [climate]
        basic_wind_speed = "25 m/s"
        everyday_wind_speed = "8 m/s"
        terrain_category = "III"
        topographic_factor = "1"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        [[gate.post]]
        id = "mast-camera"
        role = "device"
        height = "4 m"
        section = "tube 90x90x4 mm"
        yield_strength = "235 MPa"
        top_area = "0.06 m²"
        top_mass = "4 kg"
        allowed_sway = "0.5°"
        foot_turn = "0.05°"
        foundation = "plinth"
        [[foundation]]
        id = "plinth"
        length = "0.6 m"
        width = "0.6 m"
        depth = "0.9 m"
    "#;

    #[test]
    fn holds_as_a_stout_mast() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("8 m/s"), "{}", finding.sentence);
    }

    #[test]
    fn fails_as_a_whip_and_when_it_bends_in_the_storm() {
        let whip = only(&CHECK, &SITE.replace("\"0.5°\"", "\"0.06°\""));
        assert_eq!(whip.verdict, Verdict::Fails, "{}", whip.sentence);
        let thin = SITE
            .replace("tube 90x90x4 mm", "tube 40x40x3 mm")
            .replace("25 m/s", "32 m/s")
            .replace("\"0.5°\"", "\"9°\"");
        let thin = only(&CHECK, &thin);
        assert_eq!(thin.verdict, Verdict::Fails, "{}", thin.sentence);
        assert_eq!(thin.demand.unwrap().label, "stress at the foot of the post");
    }

    #[test]
    fn unknown_without_area_and_everyday_wind() {
        let bare = SITE
            .replace("top_area = \"0.06 m²\"", "")
            .replace("everyday_wind_speed = \"8 m/s\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_post_with_nothing_on_top_is_no_mast() {
        let bare = SITE
            .replace("top_area = \"0.06 m²\"", "")
            .replace("top_mass = \"4 kg\"", "");
        assert!(all(&CHECK, &bare).is_empty());
    }
}
