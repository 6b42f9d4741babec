//! What is behind the back end of a leaf as it opens, or above one that rises.
//!
//! The way that the leaf runs on from its limit to its positive stop is counted. A gap of 16 in in the United States, of
//! 500 mm in Europe, catches nobody; a narrower one needs a device that acts while the gate opens.

use super::open;
use crate::check::{BOTH, Check, Round};
use crate::zone;
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-trailing-edge",
    codes: BOTH,
    leaves_open: "what the site file does not hold, such as a parked car or a pile of snow, and what is above a leaf that turns up",
    concerns: "each gate whose leaf slides or lifts",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    open::ask(
        site,
        round,
        open::moves_straight,
        zone::trailing,
        "Nothing stands near the end of the open leaf.",
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
        [gate.motion]
        stop_gap = "1 in"
        [[gate.nearby]]
        id = "wall"
        what = "wall at the end"
        from = ["43 ft", "-2 ft", "0 in"]
        to = ["43 ft", "2 ft", "0 in"]
        height = "5 ft"
    "#
    );

    #[test]
    fn holds_with_room_behind_the_tail() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 43 ft − 41 ft − 1 in of overtravel.
        let gap = finding.capacity.unwrap().value.unwrap();
        assert!((gap - 23.0 * 0.0254).abs() < 1e-9, "{gap}");
    }

    #[test]
    fn fails_where_overtravel_eats_the_room() {
        let near = SLIDE.replace("43 ft", "42 ft 4 in");
        assert_eq!(only(&CHECK, &near).verdict, Verdict::Fails);
        let without = near.replace("stop_gap = \"1 in\"", "stop_gap = \"0 in\"");
        assert_eq!(only(&CHECK, &without).verdict, Verdict::Holds);
    }

    #[test]
    fn a_lintel_over_a_leaf_that_lifts() {
        let lift = r#"
            [site]
            name = "Test yard"
            code_basis = "eu"
            [[gate]]
            id = "main"
            kind = "vertical-lift"
            travel = "3 m"
            overhead_room = "5.6 m"
            [[gate.leaf]]
            id = "leaf"
            length = "4 m"
            height = "2 m"
            thickness = "50 mm"
            ground_clearance = "20 mm"
        "#;
        assert_eq!(only(&CHECK, lift).verdict, Verdict::Holds);
        let low = lift.replace("5.6 m", "5.2 m");
        assert_eq!(only(&CHECK, &low).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_travel() {
        let finding = only(&CHECK, &SLIDE.replace("travel = \"20 ft\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
