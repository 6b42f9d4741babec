//! Who can be squeezed between the open swing leaf and what stands behind it.
//!
//! The sweep is a sector of a circle, so the least distance to each wall, post and bollard is found in closed form, with
//! the overtravel to the stop. A gap that somebody taped comes before the computed one.

use super::open;
use crate::check::{BOTH, Check, Round};
use crate::zone::{leaf, swing};
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-behind-open-swing",
    codes: BOTH,
    leaves_open: "parked vehicles and whatever else the site file does not hold",
    concerns: "each gate whose leaf swings",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    open::ask(
        site,
        round,
        leaf::swings,
        swing::behind,
        "Nothing stands near behind the open leaf.",
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_swing};

    // The hinge line is at x = 3 m; the leaf opens into the property and then lies along y.
    const SWING: &str = short_swing!(
        r#"
        [[gate.nearby]]
        id = "wall"
        what = "garden wall"
        from = ["3.6 m", "0.5 m", "0 m"]
        to = ["3.6 m", "5 m", "0 m"]
        height = "1.1 m"
    "#
    );

    #[test]
    fn holds_with_room_for_a_body() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 600 mm less half of the leaf.
        assert!((finding.capacity.unwrap().value.unwrap() - 0.58).abs() < 1e-9);
    }

    #[test]
    fn fails_by_the_wall_and_by_overtravel() {
        let near = only(&CHECK, &SWING.replace("3.6 m", "3.4 m"));
        assert_eq!(near.verdict, Verdict::Fails, "{}", near.sentence);
        assert!(
            near.sentence
                .contains("between the open leaf and wall while opening"),
            "{}",
            near.sentence
        );
        // 50 mm of overtravel at the tip are 50 mm · 3 m / 3 m less behind the tip: 530 mm.
        let over = SWING.replace("3.6 m", "3.53 m").replace(
            "[[gate.leaf]]",
            "[gate.motion]\nstop_gap = \"50 mm\"\n[[gate.leaf]]",
        );
        assert_eq!(only(&CHECK, &over).verdict, Verdict::Fails);
        assert_eq!(
            only(&CHECK, &over.replace("50 mm", "1 mm")).verdict,
            Verdict::Holds
        );
    }

    #[test]
    fn a_scanner_whose_field_holds_the_whole_space_sees_it() {
        let near = SWING.replace("3.6 m", "3.4 m");
        let scanner = format!(
            "{near}\n[[device]]\nid = \"scanner\"\nkind = \"area scanner\"\nprotection = \"B1\"\nguards = [\"opening\"]\nat = [\"3.2 m\", \"5 m\", \"0.3 m\"]\nfield = [[\"2.9 m\", \"0 m\", \"0.3 m\"], [\"3.5 m\", \"0 m\", \"0.3 m\"], [\"3.5 m\", \"5 m\", \"0.3 m\"], [\"2.9 m\", \"5 m\", \"0.3 m\"]]\n"
        );
        let finding = only(&CHECK, &scanner);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_the_side_to_which_it_swings() {
        let finding = only(&CHECK, &SWING.replace("swings = \"into the property\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
