//! Whether a linear drive reaches the full angle between its pins, with stroke in hand at both ends and leverage enough.
//!
//! Between its ends the leverage of a drive rises and falls once, so the ends decide. A drive that comes into one line
//! with the hinge line on the way fails whatever its stroke.

use super::swing_drive::{of_kind, pins};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{LinearActuatorMounting, dead_point};
use quantity::Length;
use site::{DriveKind, Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-linear-geometry",
    codes: BOTH,
    leaves_open: "whether the drive clears the post, what its brackets and the leaf carry at the pins, and the speed of the tip, which is a question of its own",
    concerns: "each linear drive of a swing gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for (gate, operator) in of_kind(site, DriveKind::Linear) {
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            reach(asking, gate, operator)
        });
    }
}

fn reach<'s>(asking: &mut Asking<'s>, gate: &'s Gate, operator: &'s Operator) -> Answer {
    asking.pick(&operator.origin, "drive", operator.drive)?;
    let pins = pins(asking, operator);
    let travel = read!(asking, gate.travel_angle);
    let width = leaf_of(asking, gate, operator).and_then(|leaf| read!(asking, leaf.length));
    let shortest = read!(asking, operator.mounting?.shortest);
    let longest = read!(asking, operator.mounting?.longest);
    let spare = read!(asking, operator.mounting?.spare_stroke);
    let wanted = read!(asking, operator.mounting?.least_lever_arm);
    let (pins, travel, width) = (pins?, travel?, width?);
    let (shortest, longest, spare, wanted) = (shortest?, longest?, spare?, wanted?);
    let dead = dead_point(
        pins.rear_behind,
        pins.rear_across,
        pins.front_along,
        pins.front_across,
    );
    let before = Comparison::below(
        Labeled::new("opening angle", travel),
        Labeled::new("angle at which the drive pushes through the hinge", dead),
    );
    if !before.holds() {
        asking.say(|print| {
            format!(
                "At {} the pins stand in one line with the hinge line and the drive turns nothing; the leaf opens to {}.",
                print.q(dead),
                print.q(travel)
            )
        });
        return Ok(Outcome::Compared(before));
    }
    let gives = asking.work(&LinearActuatorMounting {
        rear_behind: pins.rear_behind,
        rear_across: pins.rear_across,
        front_along: pins.front_along,
        front_across: pins.front_across,
        travel_angle: travel,
        width,
        shortest,
        longest,
        spare_stroke: spare,
    })?;
    asking.say(|print| {
        format!(
            "Between its pins the drive measures {} closed and {} open; it goes from {} to {}, with {} to be kept in hand at each \
             end. Its line passes the hinge line at {} or more, least at {}; {} is wanted.",
            print.q(gives.closed_length),
            print.q(gives.open_length),
            print.q(shortest),
            print.q(longest),
            print.q(spare),
            print.q(gives.least_lever_arm),
            print.q(gives.least_at),
            print.q(wanted)
        )
    });
    let comparisons = [
        before,
        compared(
            (
                "length drawn in, with the stroke kept in hand",
                shortest + spare,
            ),
            (
                "shorter length between the pins",
                gives.left_drawn_in + shortest + spare,
            ),
        ),
        compared(
            (
                "longer length between the pins",
                longest - spare - gives.left_run_out,
            ),
            (
                "length run out, less the stroke kept in hand",
                longest - spare,
            ),
        ),
        compared(
            ("least lever arm wanted", wanted),
            ("least lever arm", gives.least_lever_arm),
        ),
    ];
    Outcome::worst(comparisons).ok_or(Halt)
}

fn compared(demand: (&'static str, Length), capacity: (&'static str, Length)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "single-swing"
        travel_angle = "90° ± 1°"
        [[gate.leaf]]
        id = "leaf"
        length = "2.135 m"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "linear"
        [operator.mounting]
        rear_behind = "180 mm"
        rear_across = "190 mm"
        front_along = "950 mm"
        front_across = "60 mm"
        shortest = "740 mm"
        longest = "1160 mm"
        spare_stroke = "10 mm"
        least_lever_arm = "120 mm"
    "#;

    #[test]
    fn holds_between_these_pins() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_short_stroke_and_past_the_dead_point() {
        let short = SITE.replace("1160 mm", "1100 mm");
        assert_eq!(only(&CHECK, &short).verdict, Verdict::Fails);
        let dead = SITE
            .replace("rear_across = \"190 mm\"", "rear_across = \"-120 mm\"")
            .replace("front_across = \"60 mm\"", "front_across = \"-50 mm\"");
        let finding = only(&CHECK, &dead);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("one line"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_the_stroke() {
        let bare = SITE
            .replace("longest = \"1160 mm\"", "")
            .replace("travel_angle", "#");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
