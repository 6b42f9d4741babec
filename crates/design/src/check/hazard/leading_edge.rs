//! What the closing edge can squeeze a person against.
//!
//! Every post, bollard, wall and fence, the other leaf and, below a leaf that rises, the ground is looked at. In the United
//! States a gap below 16 in up to 6 ft above ground catches somebody; in Europe one below 500 mm up to 2.5 m. Each such
//! place needs a device that sees or feels somebody there while the gate closes.

use super::open;
use crate::check::{BOTH, Check, Round};
use crate::zone;
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-leading-edge",
    codes: BOTH,
    leaves_open: "things that the site file does not hold, vehicles that stand there, and how many means each place needs",
    concerns: "each gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    open::ask(
        site,
        round,
        |_| true,
        zone::leading,
        "Nothing stands where the closing edge could squeeze somebody.",
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SLIDE: &str = short_slide!(
        "-3 in",
        r#"
        [[gate.post]]
        id = "post-catch"
        role = "catch"
        at = ["-5 in", "0 in", "0 in"]
        height = "7 ft"
        width = "6 in"
        [[device]]
        id = "edge-leading"
        kind = "contact edge"
        protection = "B2"
        carried_by = "leaf"
        guards = ["closing"]
        at = ["-3 in", "0 in", "3 in"]
        to = ["-3 in", "0 in", "6 ft 1 in"]
    "#
    );

    #[test]
    fn holds_with_an_edge_along_the_whole_height() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("edge-leading"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_an_edge_that_acts_the_other_way_or_ends_too_low() {
        let other = only(&CHECK, &SLIDE.replace("[\"closing\"]", "[\"opening\"]"));
        assert_eq!(other.verdict, Verdict::Fails, "{}", other.sentence);
        assert!(
            other.sentence.contains("post-catch while closing"),
            "{}",
            other.sentence
        );
        let low = only(&CHECK, &SLIDE.replace("6 ft 1 in", "4 ft"));
        assert_eq!(low.verdict, Verdict::Fails, "{}", low.sentence);
    }

    #[test]
    fn a_beam_five_inches_beside_the_leaf_sees_it_and_a_loop_never_does() {
        let beam = SLIDE
            .replace("contact edge", "through-beam photo-eye")
            .replace("carried_by = \"leaf\"", "")
            .replace(
                "[\"-3 in\", \"0 in\", \"3 in\"]",
                "[\"-2 in\", \"5 in\", \"21 in\"]",
            )
            .replace(
                "[\"-3 in\", \"0 in\", \"6 ft 1 in\"]",
                "[\"20 ft\", \"5 in\", \"21 in\"]",
            );
        assert_eq!(only(&CHECK, &beam).verdict, Verdict::Holds);
        let far = beam.replace("\"5 in\"", "\"12 in\"");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Fails);
        let steel = beam.replace("through-beam photo-eye", "loop");
        assert_eq!(only(&CHECK, &steel).verdict, Verdict::Fails);
    }

    #[test]
    fn two_leaves_meet_and_each_edge_counts_for_its_own_leaf() {
        let swing = r#"
            [site]
            name = "Test court"
            code_basis = "eu"
            [[gate]]
            id = "court"
            kind = "double-swing"
            clear_opening = "4 m"
            travel_angle = "90°"
            swings = "into the property"
            [[gate.leaf]]
            id = "left"
            length = "1.99 m"
            height = "1.4 m"
            thickness = "40 mm"
            ground_clearance = "60 mm"
            [[gate.leaf]]
            id = "right"
            length = "1.99 m"
            height = "1.4 m"
            thickness = "40 mm"
            ground_clearance = "60 mm"
            [[device]]
            id = "edge-left"
            kind = "contact edge"
            protection = "B2"
            carried_by = "left"
            guards = ["closing"]
            at = ["1.99 m", "0 m", "0.08 m"]
            to = ["1.99 m", "0 m", "1.44 m"]
        "#;
        let one = only(&CHECK, swing);
        assert_eq!(one.verdict, Verdict::Fails, "{}", one.sentence);
        assert!(
            one.sentence.contains("closing edge of right and left"),
            "{}",
            one.sentence
        );
    }

    #[test]
    fn unknown_without_the_width_of_the_post() {
        let finding = only(&CHECK, &SLIDE.replace("width = \"6 in\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("width = "));
    }
}
