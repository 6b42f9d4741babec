//! Whether a folding arm reaches its leaf over the whole travel, keeps its leverage, and leaves room at the elbow.
//!
//! Stretched or folded into one line the arm leads the leaf no more: the way from the drive's axis to the bracket on the
//! leaf has to stay between the difference of its bars and their sum. The elbow is taken on the side away from the hinge
//! line, and needs the room that does not crush a body between itself and a wall.

use super::swing_drive::{Pins, bars, of_kind, pins};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{ArticulatedArmMounting, ElbowSide, arm_reach};
use formula::protection::{BodyPart, Iso13854Gap};
use quantity::{Angle, Length};
use site::{DriveKind, Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-articulated-geometry",
    codes: BOTH,
    leaves_open: "walls beside the travel that are not written down, an elbow that folds toward the hinge, and what the bracket on the leaf carries",
    concerns: "each drive with a folding arm on a swing gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for (gate, operator) in of_kind(site, DriveKind::Articulated) {
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            folding(asking, gate, operator)
        });
    }
}

fn folding<'s>(asking: &mut Asking<'s>, gate: &'s Gate, operator: &'s Operator) -> Answer {
    asking.pick(&operator.origin, "drive", operator.drive)?;
    leaf_of(asking, gate, operator)?;
    let pins = pins(asking, operator);
    let bars = bars(asking, operator);
    let travel = read!(asking, gate.travel_angle);
    let wanted = read!(asking, operator.mounting?.least_lever_arm);
    let wall = operator.mounting.as_ref().and_then(|mounting| {
        asking.read_if_there(
            &mounting.origin,
            "wall_across",
            mounting.wall_across.as_ref(),
        )
    });
    let (pins, bars, travel, wanted) = (pins?, bars?, travel?, wanted?);
    let reach = reach(asking, (pins, bars), travel);
    if let Some(failed) = reach.into_iter().find(|comparison| !comparison.holds()) {
        return Ok(Outcome::Compared(failed));
    }
    let gives = asking.work(&ArticulatedArmMounting {
        rear_behind: pins.rear_behind,
        rear_across: pins.rear_across,
        front_along: pins.front_along,
        front_across: pins.front_across,
        crank: bars.0,
        link: bars.1,
        elbow: ElbowSide::AwayFromHinge,
        travel_angle: travel,
    })?;
    let room = match wall {
        Some(wall) => {
            let part = BodyPart::Body;
            let gap = asking.work(&Iso13854Gap { part })?.gap;
            Some((gap, wall - gives.elbow_across))
        }
        None => None,
    };
    asking.say(|print| {
        let beside = room.map_or_else(
            || "no wall is written down".to_owned(),
            |(gap, left)| format!("{} are left to the wall and {} are wanted", print.q(left), print.q(gap)),
        );
        format!(
            "The bars stand at {} to {} to each other. The push passes the hinge line at {} or more, least at {}; {} is wanted. \
             The elbow comes {} across; {beside}.",
            print.q(gives.most_folded),
            print.q(gives.most_stretched),
            print.q(gives.least_lever_arm),
            print.q(gives.least_at),
            print.q(wanted),
            print.q(gives.elbow_across)
        )
    });
    let lever = compared(
        ("least lever arm wanted", wanted),
        ("least lever arm", gives.least_lever_arm),
    );
    let beside = room.map(|(gap, left)| {
        compared(
            ("gap that crushes nobody", gap),
            ("gap between elbow and wall", left),
        )
    });
    let all = reach.into_iter().chain([lever]).chain(beside);
    Outcome::worst(all).ok_or(Halt)
}

/// The way that the arm has to bridge, against its bars stretched and folded.
fn reach(
    asking: &mut Asking<'_>,
    (pins, bars): (Pins, (Length, Length)),
    travel: Angle,
) -> [Comparison; 2] {
    let rear = (pins.rear_behind, pins.rear_across);
    let front = (pins.front_along, pins.front_across);
    let (least, most) = arm_reach(rear, front, travel);
    let stretched = bars.0 + bars.1;
    let folded = if bars.0 > bars.1 {
        bars.0 - bars.1
    } else {
        bars.1 - bars.0
    };
    asking.say(|print| {
        format!(
            "From the drive's axis to the bracket on the leaf it is {} to {}; the bars reach {} stretched and {} folded.",
            print.q(least),
            print.q(most),
            print.q(stretched),
            print.q(folded)
        )
    });
    [
        Comparison::below(
            Labeled::new("farthest from drive to leaf bracket", most),
            Labeled::new("both bars stretched", stretched),
        ),
        Comparison::below(
            Labeled::new("both bars folded", folded),
            Labeled::new("nearest from drive to leaf bracket", least),
        ),
    ]
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
        length = "2.5 m"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "articulated"
        [operator.mounting]
        rear_behind = "150 mm"
        rear_across = "350 mm"
        front_along = "750 mm"
        front_across = "100 mm"
        crank = "450 mm"
        link = "600 mm"
        least_lever_arm = "300 mm"
        wall_across = "1400 mm"
    "#;

    #[test]
    fn holds_with_long_bars_and_room() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_short_bars_or_a_near_wall() {
        let short = only(
            &CHECK,
            &SITE.replace("link = \"600 mm\"", "link = \"480 mm\""),
        );
        assert_eq!(short.verdict, Verdict::Fails, "{}", short.sentence);
        assert!(short.sentence.contains("stretched"), "{}", short.sentence);
        let near = only(&CHECK, &SITE.replace("1400 mm", "1200 mm"));
        assert_eq!(near.verdict, Verdict::Fails, "{}", near.sentence);
    }

    #[test]
    fn unknown_without_the_bars() {
        let bare = SITE
            .replace("crank = \"450 mm\"", "")
            .replace("link = \"600 mm\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
