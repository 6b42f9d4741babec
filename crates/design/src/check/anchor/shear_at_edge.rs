//! Whether a shove splits the edge or a corner off the pad, shears the anchors or pries the concrete out behind them.
//!
//! The row nearest to an edge takes the whole shove, as in holes with play, toward each edge and along it. The steel
//! shares it alike, which asks for washers that fill oversize holes.

use super::hardest::{compared, greatest_share, hardest, worst};
use super::plate_forces::loaded_set;
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Outcome};
use crate::plain::capitalized;
use formula::standing::anchor_group::{AnchorSet, Mode, Pulls, Quietly, pulls, shear};
use site::{Anchor, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-shear-at-edge",
    codes: BOTH,
    leaves_open: "pull together with the shove, which the forces under the plate answer",
    concerns: "each set of anchors",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_anchors(site, |asking, foundation, anchor| {
        at_edge(asking, site, foundation, anchor)
    });
}

fn at_edge<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Answer {
    let (set, cases) = loaded_set(asking, site, foundation, anchor)?;
    let share = |set: &AnchorSet| {
        let pulls = pulls(set, &mut Quietly)?;
        shear(set, &pulls, &mut Quietly).map(|modes| greatest_share(&modes))
    };
    let Some((set, with)) = hardest(&set, &cases, share) else {
        return asking.refuse("nothing is known to move this plate");
    };
    let pulls = pulls(&set, asking)?;
    let modes = shear(&set, &pulls, asking)?;
    asking.say(|print| sentence(print, (foundation, anchor), with, &pulls, &modes));
    let comparisons = modes.iter().map(compared);
    Ok(Outcome::worst(comparisons).unwrap_or(Outcome::Rule(true)))
}

fn sentence(
    print: Print,
    (foundation, anchor): (&Foundation, &Anchor),
    with: &str,
    pulls: &Pulls,
    modes: &[Mode],
) -> String {
    let name = capitalized(foundation.id.as_str());
    match worst(modes) {
        None => format!(
            "{name} ({}): nothing shoves the plate with {with}.",
            anchor.holds
        ),
        Some(worst) => format!(
            "{name} ({}): with {with} the plate is shoved with {}; first to give is the {}: it holds {}, and {} is asked of it. Washers fill the holes, so that all anchors share.",
            anchor.holds,
            print.q(pulls.shove),
            worst.way.words(),
            print.q(worst.strength),
            print.q(worst.demand)
        ),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::anchor::testing::PLATE;
    use crate::check::testing::only;

    #[test]
    fn holds_in_the_middle_of_a_pad() {
        let finding = only(&CHECK, PLATE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The edge 14 in off, where the row of two takes all: 9 · √4000 · 14^1.5 for one, 36 in by 21 in of 882 in² break
        // out, 0.9 for the corners, 0.7.
        let one = 9.0 * 4000.0_f64.sqrt() * 14.0_f64.powf(1.5);
        let pounds = one * (36.0 * 21.0 / 882.0) * 0.9 * 0.7;
        assert!((finding.capacity.unwrap().value.unwrap() / 4.448_221_6 - pounds).abs() < 0.5);
    }

    #[test]
    fn fails_near_an_edge_with_a_hard_shove() {
        let near = PLATE
            .replace("shear_along = \"500 lbf\"", "shear_along = \"6000 lbf\"")
            .replace("length = \"36 in\"\n", "length = \"13 in\"\n");
        let finding = only(&CHECK, &near);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("edge"), "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_shove_and_depth() {
        let bare = PLATE
            .replace("depth = \"36 in\"", "")
            .replace("shear_along = \"500 lbf\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_shove_along_a_near_edge_is_tried_too() {
        let beside = PLATE
            .replace("width = \"36 in\"", "width = \"12 in\"")
            .replace("length = \"36 in\"", "length = \"80 in\"")
            .replace("shear_along = \"500 lbf\"", "shear_along = \"4000 lbf\"");
        let finding = only(&CHECK, &beside);
        assert!(
            finding.sentence.contains("shoved along"),
            "{}",
            finding.sentence
        );
    }
}
