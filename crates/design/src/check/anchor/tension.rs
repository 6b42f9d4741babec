//! Whether an anchor snaps or tears a cone out of the concrete.
//!
//! The anchors of a row share the pull evenly. Every edge is taken to be as near as the nearest one. The strength
//! reduction is that of cast-in anchors without extra reinforcement, or of the lowest category of post-installed ones: the
//! safe side, and a product's approval gives more. Steel is taken as the weakest in common use, with a
//! thread that is coarse for its size. For a European site the figures of ACI 318 stand in for EN 1992-4, and nothing passes on them.

use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::standing::{
    AnchorGroupBreakoutTension, AnchorKind, AnchorSteelTension, Cracking, breakout_coefficient,
    cracking_factor,
};
use formula::{Evidence, Source};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio, Word as _};
use site::{Anchor, CodeBasis, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-tension",
    codes: BOTH,
    leaves_open: "pull-out, side-face blow-out, bond of adhesive anchors, shear together with the pull, sustained load and earthquake",
    concerns: "each set of anchors",
    ask,
};

static EUROPE: Source = Source {
    work: "EN 1992-4",
    clause: "7.2.1",
    evidence: Evidence::Memory,
    seen: "not seen; the figures of ACI 318-19 stand in",
};

static REDUCTION: Source = Source {
    work: "ACI 318-19",
    clause: "table 17.5.3(b), no supplementary reinforcement",
    evidence: Evidence::Seen,
    seen: "a design guide of 2022 to ACI 318-19 that reprints the table (address withheld: a product's name is in it)",
};

static STEEL: Source = Source {
    work: "ASTM F1554 grade 36: 58 ksi tensile, 36 ksi yield, the weakest anchor steel in common use; pitch at most a fifth of the diameter",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for want of a grade on the site; any named grade is stronger",
};

/// Strength reduction of concrete breakout: cast-in without extra reinforcement.
const CAST_IN: f64 = 0.70;
/// The same for post-installed anchors of the lowest category.
const POST_INSTALLED: f64 = 0.45;
/// Strength reduction of ductile steel.
const DUCTILE: f64 = 0.75;
/// Tensile and yield strength of the weakest common anchor steel, 58 ksi and 36 ksi, in pascals.
const WEAKEST: (f64, f64) = (399.896e6, 248.211e6);
/// Largest pitch of a coarse thread over its diameter, from 1/4 in up.
const COARSEST: f64 = 0.2;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for foundation in &site.foundation {
        for (index, anchor) in foundation.anchor.iter().enumerate() {
            let about = About::one_of(&anchor.origin, &foundation.id, index);
            round.ask(about, |asking| tension(asking, site, foundation, anchor));
        }
    }
}

fn tension<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Answer {
    let pull = read!(asking, anchor.pull);
    let count = pick!(asking, anchor.count);
    let breakout = breakout(asking, foundation, anchor);
    let diameter = read!(asking, anchor.diameter);
    let (pull, count, breakout, diameter) = (pull?, count?, breakout?, diameter?);
    asking.rest_on(&REDUCTION);
    let group = asking.work(&breakout)?.design;
    let concrete = group / f64::from(count);
    let steel = steel(asking, diameter)?;
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&EUROPE);
    }
    asking.say(|print| {
        format!(
            "{} ({}): {} pulled with {}; the concrete holds {}, the steel, taken as the weakest in common use, {}.",
            capitalized(foundation.id.as_str()),
            anchor.holds,
            each(count),
            print.q(pull),
            print.q(concrete),
            print.q(steel)
        )
    });
    let compared = |label, strength: Force| {
        Comparison::at_most(
            Labeled::new("factored pull on one anchor", pull),
            Labeled::new(label, strength),
        )
    };
    Outcome::worst([
        compared("concrete breakout, shared evenly", concrete),
        compared("steel of one anchor", steel),
    ])
    .ok_or(Halt)
}

fn each(count: u32) -> String {
    if count == 1 {
        "the only anchor is".to_owned()
    } else {
        format!("each of {count} anchors is")
    }
}

/// The row of anchors, every edge as near as the nearest.
fn breakout<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<AnchorGroupBreakoutTension, Halt> {
    let kind = pick!(asking, anchor.kind);
    let embedment = read!(asking, anchor.embedment);
    let edge = read!(asking, anchor.edge_distance);
    let strength = read!(asking, foundation.strength);
    let concrete = pick!(asking, foundation.concrete);
    let count = pick!(asking, anchor.count);
    let spacing = match count {
        Ok(1) => Ok(Length::from_base(0.0)),
        _ => read!(asking, anchor.spacing),
    };
    let kind = if kind?.is_cast_in() {
        AnchorKind::CastIn
    } else {
        AnchorKind::PostInstalled
    };
    let Some(cracking) = Cracking::from_word(concrete?.word()) else {
        return asking.refuse("no figures are printed for this state of concrete");
    };
    if kind == AnchorKind::PostInstalled && cracking == Cracking::Uncracked {
        return asking.refuse("a post-installed anchor in uncracked concrete may split it, and how near an edge that happens is in its approval only; outdoors, take the concrete as cracked");
    }
    let (embedment, edge, spacing) = (embedment?, edge?, spacing?);
    let apart = Length::from_base(spacing.base().min(3.0 * embedment.base()));
    let none = Length::from_base(0.0);
    Ok(AnchorGroupBreakoutTension {
        anchor: kind,
        embedment,
        concrete_strength: strength?,
        coefficient: breakout_coefficient(kind),
        cracking_factor: cracking_factor(kind, cracking),
        lightweight_factor: Ratio::from_base(1.0),
        count_across: count?,
        spacing_across: apart,
        count_along: 1,
        spacing_along: none,
        edge_left: edge,
        edge_right: edge,
        edge_front: edge,
        edge_back: edge,
        eccentricity_across: none,
        eccentricity_along: none,
        critical_edge: none,
        reduction: Ratio::from_base(match kind {
            AnchorKind::CastIn => CAST_IN,
            AnchorKind::PostInstalled => POST_INSTALLED,
        }),
    })
}

fn steel(asking: &mut Asking<'_>, diameter: Length) -> Result<Force, Halt> {
    asking.rest_on(&STEEL);
    let gives = asking.work(&AnchorSteelTension {
        diameter,
        pitch: diameter * COARSEST,
        tensile_strength: Pressure::from_base(WEAKEST.0),
        yield_strength: Pressure::from_base(WEAKEST.1),
        reduction: Ratio::from_base(DUCTILE),
    })?;
    Ok(gives.design)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[foundation]]
        id = "pad"
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
        pull = "3600 lbf"
    "#;

    #[test]
    fn holds_with_room_around_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 17 · √4000 · 6^1.5 · (9 + 14 + 9) · 18 / (9 · 36) · 0.45 / 2, in pounds.
        let pounds =
            17.0 * 4000.0_f64.sqrt() * 6.0_f64.powf(1.5) * (32.0 * 18.0 / 324.0) * 0.45 / 2.0;
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
    fn uncracked_concrete_around_a_drilled_anchor_is_outside() {
        assert_eq!(
            only(&CHECK, &SITE.replace("\"cracked\"", "\"uncracked\"")).verdict,
            Verdict::OutsideThisTool
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
