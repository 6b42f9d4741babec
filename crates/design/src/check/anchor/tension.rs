//! Whether an anchor pulls out, snaps or tears a cone out of the concrete.
//!
//! Every way to fail in tension: the steel, the cone of the anchors that are pulled together, the head, hook or wedge, the
//! side of the concrete, the bond, and the bond under a pull that lasts. A pull that somebody worked out counts for every
//! anchor of the set; otherwise the loads on the plate are shared out.

use super::described::described;
use super::hardest::{compared, greatest_share, hardest, worst};
use super::plate_forces::loaded_set;
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::capitalized;
use formula::standing::anchor_group::{
    AnchorSet, Mode, PlateLoads, Pulls, Quietly, pulls, tension as in_tension,
};
use quantity::Force;
use site::{Anchor, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-tension",
    codes: BOTH,
    leaves_open: "shear together with the pull, which the forces under the plate answer, and stretching steel as earthquake rules ask for it",
    concerns: "each set of anchors",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_anchors(site, |asking, foundation, anchor| {
        tension(asking, site, foundation, anchor)
    });
}

fn tension<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Answer {
    let (set, with) = pulled_set(asking, site, foundation, anchor)?;
    let pulls = pulls(&set, asking)?;
    let modes = in_tension(&set, &pulls, asking)?;
    asking.say(|print| sentence(print, (foundation, anchor), with, &pulls, &modes));
    let comparisons = modes.iter().map(compared);
    Ok(Outcome::worst(comparisons).unwrap_or(Outcome::Rule(true)))
}

/// The set under the pull that somebody worked out, or under the case that pulls hardest.
fn pulled_set<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<(AnchorSet, &'static str), Halt> {
    let loads = super::on_plate::has_loads(foundation, anchor);
    if anchor.pull.is_some() || !loads {
        let pull = read!(asking, anchor.pull);
        let set = described(asking, site, foundation, anchor)?;
        let loads = PlateLoads {
            stated_pull: Some(pull?),
            ..set.loads
        };
        return Ok((AnchorSet { loads, ..set }, "the pull as stated"));
    }
    let (set, cases) = loaded_set(asking, site, foundation, anchor)?;
    let share = |set: &AnchorSet| {
        let pulls = pulls(set, &mut Quietly)?;
        in_tension(set, &pulls, &mut Quietly).map(|modes| greatest_share(&modes))
    };
    match hardest(&set, &cases, share) {
        Some(found) => Ok(found),
        None => asking.refuse("nothing is known to move this plate"),
    }
}

fn sentence(
    print: Print,
    (foundation, anchor): (&Foundation, &Anchor),
    with: &str,
    pulls: &Pulls,
    modes: &[Mode],
) -> String {
    let name = capitalized(foundation.id.as_str());
    let Some(worst) = worst(modes) else {
        return format!(
            "{name} ({}): no anchor is pulled with {with}.",
            anchor.holds
        );
    };
    let lasting = if pulls.greatest > Force::default() {
        String::new()
    } else {
        " under what hangs on it all the time".to_owned()
    };
    format!(
        "{name} ({}): with {with} the worst anchor is pulled with {}{lasting}; first to give is the {}: it holds {}, and {} is asked of it.",
        anchor.holds,
        print.q(pulls.greatest),
        worst.way.words(),
        print.q(worst.strength),
        print.q(worst.demand)
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::anchor::testing::PLATE;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[foundation]]
        id = "pad"
        depth = "24 in"
        strength = "4000 psi"
        concrete = "cracked"
        [[foundation.anchor]]
        holds = "post"
        count = 2
        kind = "expansion anchor"
        diameter = "3/4 in"
        embedment = "6 in ± 1/8 in"
        edge_distance = "10 in"
        spacing = "14 in"
        pull_out = "18000 lbf"
        pull = "3600 lbf"
    "#;

    #[test]
    fn holds_with_room_around_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 17 · √4000 · 6^1.5 · (9 + 14 + 9) · 18 / (9 · 36) · 0.45, in pounds.
        let pounds = 17.0 * 4000.0_f64.sqrt() * 6.0_f64.powf(1.5) * (32.0 * 18.0 / 324.0) * 0.45;
        assert!((finding.capacity.unwrap().value.unwrap() / 4.448_221_6 - pounds).abs() < 0.5);
    }

    #[test]
    fn fails_short_and_near_an_edge() {
        let short = SITE.replace("6 in ±", "3 in ±").replace("10 in", "3 in");
        assert_eq!(only(&CHECK, &short).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_concrete_and_pull() {
        let bare = SITE
            .replace("strength = \"4000 psi\"", "")
            .replace("pull = \"3600 lbf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_stated_category_and_its_report_give_more() {
        let first = SITE.replace("pull =", "category = 1\npull =");
        let stated = only(&CHECK, SITE).capacity.unwrap().value.unwrap();
        let better = only(&CHECK, &first).capacity.unwrap().value.unwrap();
        assert!((better / stated - 0.65 / 0.45).abs() < 1e-6);
    }

    #[test]
    fn a_glued_rod_without_a_report_has_the_least_bond() {
        let glued = SITE
            .replace("expansion anchor", "adhesive anchor")
            .replace("pull_out = \"18000 lbf\"", "");
        let finding = only(&CHECK, &glued);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("bond"), "{}", finding.sentence);
    }

    #[test]
    fn a_lasting_pull_asks_the_bond_for_more() {
        let hung = SITE
            .replace("expansion anchor", "adhesive anchor")
            .replace("pull_out = \"18000 lbf\"", "bond_cracked = \"1000 psi\"\nbond_uncracked = \"2000 psi\"\nlasting_pull = \"3500 lbf\"");
        let finding = only(&CHECK, &hung);
        // 0.55 · 1000 psi · π · 3/4 in · 6 in · 0.45.
        let pounds = 0.55 * 1000.0 * std::f64::consts::PI * 0.75 * 6.0 * 0.45;
        assert!((finding.capacity.unwrap().value.unwrap() / 4.448_221_6 - pounds).abs() < 0.5);
    }

    #[test]
    fn the_loads_on_a_plate_are_shared_out() {
        let finding = only(&CHECK, PLATE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("the loads as stated"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn in_europe_it_warns_and_does_not_pass() {
        assert_eq!(
            only(&CHECK, &SITE.replace("\"us\"", "\"eu\"")).verdict,
            Verdict::UnknownUntil
        );
    }
}
