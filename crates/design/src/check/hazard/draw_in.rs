//! Where a leaf slides past a post or a fence, and somebody could be drawn in.
//!
//! In the United States a gap of at most 2-1/4 in along the whole pass draws nobody in, and one of 16 in or more squeezes
//! nobody who got in. In Europe the narrow gap that is safe for fingers is known from memory only. A post that stands behind
//! a fence is out of reach. A contact edge on the post covers the place where the leaf runs in behind it.

use super::open;
use crate::check::{BOTH, Check, Round};
use crate::zone;
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-draw-in",
    codes: BOTH,
    leaves_open: "ribs, bars and openings of the leaf that carry a limb along, which have questions of their own, and rollers inside the guides",
    concerns: "each gate whose leaf slides or lifts",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    open::ask(
        site,
        round,
        open::moves_straight,
        zone::draw_in,
        "The leaf passes nothing within a yard of its faces.",
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SLIDE: &str = short_slide!(
        "0 in",
        r#"
        [[gate.post]]
        id = "post-guide"
        role = "guide"
        at = ["20 ft 6 in", "6 in", "0 in"]
        height = "7 ft"
        width = "6 in"
    "#
    );

    #[test]
    fn holds_with_two_inches_to_the_post() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_three_inches_unless_an_edge_is_on_the_post() {
        let wide = SLIDE.replace("\"6 in\", \"0 in\"]", "\"7 in\", \"0 in\"]");
        let finding = only(&CHECK, &wide);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("while opening"),
            "{}",
            finding.sentence
        );
        let edge = format!(
            "{wide}\n[[device]]\nid = \"edge\"\nkind = \"contact edge\"\nprotection = \"B2\"\nguards = [\"opening\"]\nat = [\"20 ft 3 in\", \"5 in\", \"3 in\"]\nto = [\"20 ft 3 in\", \"5 in\", \"6 ft\"]\n"
        );
        assert_eq!(only(&CHECK, &edge).verdict, Verdict::Holds);
    }

    #[test]
    fn a_post_behind_a_fence_is_out_of_reach() {
        let wide = SLIDE.replace("\"6 in\", \"0 in\"]", "\"7 in\", \"0 in\"]");
        let fence = format!(
            "{wide}\n[[gate.nearby]]\nid = \"fence\"\nwhat = \"mesh\"\nfrom = [\"20 ft\", \"5 in\", \"0 in\"]\nto = [\"42 ft\", \"5 in\", \"0 in\"]\nheight = \"7 ft\"\ngap = \"2 in\"\n"
        );
        let finding = only(&CHECK, &fence);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn what_holds_by_the_recalled_finger_gap_is_unknown() {
        let eu = SLIDE
            .replace("\"us\"", "\"eu\"")
            .replace("\"6 in\", \"0 in\"]", "\"4.2 in\", \"0 in\"]");
        let finding = only(&CHECK, &eu);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_the_place_of_the_post() {
        let finding = only(
            &CHECK,
            &SLIDE.replace("at = [\"20 ft 6 in\", \"6 in\", \"0 in\"]", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("at = ["));
    }
}
