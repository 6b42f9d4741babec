//! Whether two vehicles that meet in the opening know who goes, and have where to wait.
//!
//! A lane as wide as the two widest vehicles and a margin on each side and between takes both. A narrower one needs a rule
//! that drivers are told, a view of each other or lamps, and a place on each side as long as the longest vehicle.

use crate::asking::{Asking, need, pick, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{Lane, Meeting, MeetingRule, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-meeting",
    codes: BOTH,
    leaves_open: "drivers who do not keep to the rule, and more than one vehicle that waits on a side, which the question of the queue asks",
    concerns: "each lane",
    ask,
};

static PRIORITY: Source = Source {
    work: "one-lane openings: priority by rule, sign or lamp, and a waiting place on each side",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "habit of road and yard design",
};

/// Room beside and between two vehicles that pass at a walk, in meters.
const BESIDE: f64 = 0.3;
/// How it is written.
const MEETING: &str = "{ rule = \"incoming first\", told_by = \"priority signs, both sides\", room_outside = \"60 ft\", room_inside = \"60 ft\", see_each_other = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        round.ask(About::new(&lane.origin, &lane.id), |asking| {
            meeting(asking, site, lane)
        });
    }
}

fn meeting<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    asking.rest_on(&PRIORITY);
    let width = read!(asking, lane.width);
    let sizes: Vec<_> = expected(site)
        .map(|vehicle| {
            let length = read!(asking, vehicle.length);
            let width = read!(asking, vehicle.width);
            Ok((length?, width?))
        })
        .collect();
    let sizes: Result<Vec<(Length, Length)>, Halt> = sizes.into_iter().collect();
    let (width, sizes) = (width?, sizes?);
    let widest = sizes
        .iter()
        .map(|(_, width)| width.base())
        .fold(0.0, f64::max);
    let longest = sizes
        .iter()
        .map(|(length, _)| length.base())
        .fold(0.0, f64::max);
    let both = Length::from_base(2.0 * widest + 3.0 * BESIDE);
    if widest <= 0.0 {
        return asking.refuse("no vehicle that may meet another is written down");
    }
    if width >= both {
        asking.say(|print| {
            format!(
                "The lane is {} wide, and two of the widest pass each other in {}.",
                print.q(width),
                print.q(both)
            )
        });
        return Ok(Outcome::Compared(Comparison::at_most(
            Labeled::new("width for two of the widest", both),
            Labeled::new("width of the lane", width),
        )));
    }
    let meeting = asking.need(&lane.origin, "meeting", lane.meeting.as_ref(), MEETING)?;
    one_at_a_time(asking, meeting, Length::from_base(longest))
}

/// The vehicles that come every day; fire engines are let pass.
fn expected(site: &Site) -> impl Iterator<Item = &Vehicle> {
    site.vehicle
        .iter()
        .filter(|vehicle| vehicle.fire_apparatus != Some(true))
}

fn one_at_a_time<'s>(asking: &mut Asking<'s>, meeting: &'s Meeting, longest: Length) -> Answer {
    let rule = pick!(asking, meeting.rule);
    let told_by = need!(asking, meeting.told_by, "\"priority signs, both sides\"");
    let outside = read!(asking, meeting.room_outside);
    let inside = read!(asking, meeting.room_inside);
    let view = match meeting.rule {
        Some(MeetingRule::Lamps) => Ok(true),
        _ => told(
            asking,
            &meeting.origin,
            "see_each_other",
            meeting.see_each_other,
        ),
    };
    let (rule, told_by, outside, inside, view) = (rule?, told_by?, outside?, inside?, view?);
    let wanted = Labeled::new("length of the longest vehicle", longest);
    asking.say(|print| {
        let blind = if view {
            ""
        } else {
            " The two do not see each other: lamps on both sides would mend it."
        };
        format!(
            "One at a time: {}, told by {told_by}. Outside {} are free to wait in, inside {}; the longest has {}.{blind}",
            rule.word(),
            print.q(outside),
            print.q(inside),
            print.q(longest)
        )
    });
    if !view {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst([
        Comparison::at_most(wanted, Labeled::new("room to wait outside", outside)),
        Comparison::at_most(wanted, Labeled::new("room to wait inside", inside)),
    ])
    .ok_or(Halt)
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
        [[lane]]
        id = "drive"
        width = "14 ft"
        meeting = { rule = "leaving first", told_by = "signs", room_outside = "60 ft", room_inside = "50 ft", see_each_other = true }
        [[vehicle]]
        id = "rig"
        what = "truck with trailer"
        length = "45 ft"
        width = "8 ft 6 in"
    "#;

    #[test]
    fn holds_by_rule_and_room_and_in_a_wide_lane() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let wide = SITE.replace("14 ft", "22 ft");
        assert_eq!(only(&CHECK, &wide).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_without_room_or_view() {
        let short = SITE.replace("room_inside = \"50 ft\"", "room_inside = \"40 ft\"");
        assert_eq!(only(&CHECK, &short).verdict, Verdict::Fails);
        let blind = SITE.replace("see_each_other = true", "see_each_other = false");
        assert_eq!(only(&CHECK, &blind).verdict, Verdict::Fails);
        let lamps = blind.replace("leaving first", "red and green lamps");
        assert_eq!(only(&CHECK, &lamps).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_rule_and_rooms() {
        let bare = SITE.replace("meeting = { rule = \"leaving first\", told_by = \"signs\", room_outside = \"60 ft\", room_inside = \"50 ft\", see_each_other = true }", "meeting = { told_by = \"signs\" }");
        assert_eq!(only(&CHECK, &bare).missing.len(), 4);
    }
}
