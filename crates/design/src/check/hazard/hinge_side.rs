//! Which gaps close on the hinge side of a swing leaf, and what could be in them.
//!
//! In the United States the center line of the pivot is at most 4 in from the end of what carries the leaf. In Europe the
//! gap taped at several angles must not close on the largest part of the body that gets into it at its widest. A cover over
//! the whole gap answers both, and so does a contact edge there.

use super::open;
use crate::check::{BOTH, Check, Round};
use crate::zone::{heel, leaf};
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-hinge-side",
    codes: BOTH,
    leaves_open: "stepped brickwork and heights at which nobody taped the gap, and fingers in the hinges themselves",
    concerns: "each gate whose leaf swings",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    open::ask(
        site,
        round,
        leaf::swings,
        heel::hinge_side,
        "There is no hinge side.",
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_swing};

    const SWING: &str = short_swing!(
        r#"
        [gate.leaf.hinge_side]
        gap = [{ angle = "0°", gap = "30 mm" }, { angle = "45°", gap = "30 mm" }, { angle = "90°", gap = "31 mm" }]
    "#
    );

    #[test]
    fn holds_with_a_gap_that_stays_as_it_is() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_head_of_a_child_gets_in_and_the_gap_closes() {
        // The case of 2010: a gap that lets a head in and shrinks as the leaf opens.
        let closing = SWING.replace(
            "angle = \"0°\", gap = \"30 mm\"",
            "angle = \"0°\", gap = \"140 mm\"",
        );
        let finding = only(&CHECK, &closing);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.demand.unwrap().value.unwrap() - 0.3).abs() < 1e-9);
        let covered = closing.replace(
            "[gate.leaf.hinge_side]",
            "[gate.leaf.hinge_side]\ncovered = true",
        );
        assert_eq!(only(&CHECK, &covered).verdict, Verdict::Holds);
    }

    #[test]
    fn four_inches_from_pivot_to_end_in_the_united_states() {
        let us = SWING
            .replace("\"eu\"", "\"us\"")
            .replace("gap = [{", "pivot_to_end = \"4 in\"\ngap = [{");
        assert_eq!(only(&CHECK, &us).verdict, Verdict::Holds);
        let far = only(&CHECK, &us.replace("\"4 in\"", "\"5 in\""));
        assert_eq!(far.verdict, Verdict::Fails, "{}", far.sentence);
    }

    #[test]
    fn unknown_with_a_gap_at_one_angle_only() {
        let one = SWING.replace(
            ", { angle = \"45°\", gap = \"30 mm\" }, { angle = \"90°\", gap = \"31 mm\" }",
            "",
        );
        let finding = only(&CHECK, &one);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert!(finding.missing[0].write.starts_with("gap = [{ angle"));
    }
}
