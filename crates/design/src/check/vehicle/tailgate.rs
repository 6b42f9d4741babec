//! Whether a second car can slip in behind the first, and whether the gate could close sooner without touching the first.
//!
//! The site says whether a second vehicle may follow. Where it may not, the leaf must be shut behind the last axle before a
//! close follower is there. Sooner than the detectors let it go it never closes: no time that protects is cut.

use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::queue::{HEADWAY, LaneQueue, headway, sees};
use crate::subject::About;
use quantity::Quantity as _;
use site::{Lane, Site, Tailgating};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-tailgate",
    codes: BOTH,
    leaves_open: "people on foot who walk in behind a vehicle, a follower who blocks a beam on purpose, and what somebody who watches would do; two cars driven with the gap, ten tries, show it",
    concerns: "each lane that leads to a gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        round.ask_in_full(About::new(&lane.origin, &lane.id), |asking| {
            followed(asking, site, lane)
        });
    }
}

fn followed<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    let wanted = wanted(asking, lane);
    let queue = LaneQueue::read(asking, site, lane);
    let (wanted, queue) = (wanted?, queue?);
    let Some(line) = queue.timeline() else {
        return asking.refuse("the time line of a vehicle could not be worked");
    };
    asking.rest_on(&HEADWAY);
    let close = headway(asking, lane.traffic.as_ref());
    let holders = sees(asking, site, queue.gate());
    let stands = line.closes - line.tail_over;
    let shut = line.shut - line.tail_over;
    let sooner = line.closes - line.reported;
    for step in queue.line() {
        asking.note(|_| format!("{:.1} s: {}.", step.seconds, step.what));
    }
    asking.say(|print| {
        let names: Vec<&str> = holders.devices.iter().map(|device| device.id.as_str()).collect();
        let held = if names.is_empty() {
            "no detector holds it for a vehicle".to_owned()
        } else {
            let hold = if names.len() == 1 { "holds" } else { "hold" };
            format!("{} {hold} it until the tail is clear", names.join(" and "))
        };
        let may = match wanted {
            Tailgating::MayFollow => "A second vehicle may follow",
            Tailgating::OneEach => "One vehicle each opening is wanted",
        };
        format!(
            "{may}. Behind the last axle gate {} stands open for {} and is shut after {}; a close follower is there after {}. \
             {held}: it could begin to close {} sooner, and no sooner than that.",
            queue.gate().id,
            print.q(stands),
            print.q(shut),
            print.q(close),
            print.q(sooner)
        )
    });
    if wanted == Tailgating::MayFollow {
        return Ok(Outcome::Figure(Labeled::new(
            "time that it stands open behind the last axle",
            stands,
        )));
    }
    if holders.devices.is_empty() && sooner.base() <= 0.0 {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::at_most(
        Labeled::new("from the last axle to shut", shut),
        Labeled::new("time behind which a close follower comes", close),
    ))
}

/// Whether a second vehicle may follow.
fn wanted<'s>(asking: &mut Asking<'s>, lane: &'s Lane) -> Result<Tailgating, Halt> {
    match &lane.traffic {
        Some(traffic) => asking.pick(&traffic.origin, "tailgating", traffic.tailgating),
        None => asking.lack(
            &lane.origin,
            "traffic",
            Wants::Table("[lane.traffic]\ntailgating = \"may follow\""),
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::lane::queue::tests::SITE;
    use crate::check::testing::only;

    #[test]
    fn a_figure_where_a_second_may_follow() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::FigureOnly, "{}", finding.sentence);
        // By hand: 10 ft at 10 mph to leave the loop, 1 s until it says so, 20 s of hold.
        let seconds = 10.0 / 14.666_667 + 1.0 + 20.0;
        let found = finding
            .demand
            .and_then(|demand| demand.value)
            .unwrap_or(0.0);
        assert!((found - seconds).abs() < 0.01, "{found} {seconds}");
    }

    #[test]
    fn fails_where_one_each_is_wanted_and_the_leaf_is_slow() {
        let finding = only(
            &CHECK,
            &SITE.replace("may follow", "one vehicle each opening"),
        );
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn holds_with_a_quick_leaf_and_a_counted_gap() {
        let quick = SITE
            .replace("may follow", "one vehicle each opening")
            .replace("hold_time = \"20 s\"", "hold_time = \"0 s\"")
            .replace("1 ft/s ± 3 %", "12 ft/s")
            .replace("acceleration = \"1 ft/s²\"", "acceleration = \"20 ft/s²\"")
            .replace("deceleration = \"1 ft/s²\"", "deceleration = \"20 ft/s²\"")
            .replace("headway = \"1.5 s\"", "headway = \"5 s\"");
        let finding = only(&CHECK, &quick);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_what_is_wanted() {
        let bare = SITE.replace("tailgating = \"may follow\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
