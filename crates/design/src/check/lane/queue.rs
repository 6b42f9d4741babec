//! How long the queue is on the busiest morning, and whether its tail stands in the road.
//!
//! Days are simulated with the whole gate: arrivals at random within each hour, the time at the reader of each kind of
//! driver, the leaf's travel, the passage, the hold. Every value is at the bad end of its tolerance. What is held against the
//! room up to the road is the upper end of the interval of the 95 % queue, so that a short run never flatters.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::Answer;
use crate::queue::LaneQueue;
use crate::subject::About;
use site::{Lane, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-queue",
    codes: BOTH,
    leaves_open: "vehicles that leave through the same opening, one who has no right and must turn, a reader that fails, days that are busier than the one counted, and a setback that the local authority asks for: vehicles are counted per 15 minutes in the first busy week",
    concerns: "each lane that leads to a gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        round.ask_in_full(About::new(&lane.origin, &lane.id), |asking| {
            queued(asking, site, lane)
        });
    }
}

fn queued<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    let queue = LaneQueue::read(asking, site, lane)?;
    let report = queue.glance();
    queue.judged(asking, &report)
}

#[cfg(test)]
pub(crate) mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    pub(crate) const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        cross_slope = "0.01"
        hold_time = "20 s"
        [gate.motion]
        cruise_speed = "1 ft/s ± 3 %"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "100 ms"
        [[device]]
        id = "reader"
        kind = "reader"
        gate = "main"
        at = ["-3 ft", "-30 ft", "42 in"]
        [[device]]
        id = "loop-in"
        kind = "loop"
        gate = "main"
        at = ["3 ft", "4 ft", "-2 in"]
        to = ["17 ft", "10 ft", "-2 in"]
        on_vehicle = ["holds open", "stops closing"]
        drop_out = "1 s"
        [[device]]
        id = "loop-exit"
        kind = "loop"
        gate = "main"
        at = ["3 ft", "26 ft", "-2 in"]
        to = ["17 ft", "32 ft", "-2 in"]
        on_vehicle = ["opens"]
        [[lane]]
        id = "in"
        gate = "main"
        queue_length = "130 ft"
        [lane.leaving]
        seen_from = "90 ft"
        [lane.traffic]
        hourly = [10, 40, 20]
        first_hour = 6
        headway = "1.5 s"
        tailgating = "may follow"
        [[lane.traffic.driver]]
        by = "tag"
        share = "80 %"
        service_time = "4 s"
        spread = "1 s"
        [[lane.traffic.driver]]
        by = "intercom"
        share = "20 %"
        service_time = "40 s"
        spread = "20 s"
        [[vehicle]]
        id = "car"
        what = "car"
        length = "18 ft"
        speed = "10 mph"
    "#;

    #[test]
    fn holds_with_room_for_those_who_come() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("7 to 8 h"),
            "{}",
            finding.sentence
        );
        assert!(finding.sentence.contains("100 ft"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_more_come_than_the_lane_holds() {
        let busy = SITE.replace("[10, 40, 20]", "[10, 110, 20]");
        let finding = only(&CHECK, &busy);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_one_vehicle_each_opening_is_too_slow() {
        let slow = SITE.replace("may follow", "one vehicle each opening");
        let finding = only(&CHECK, &slow.replace("[10, 40, 20]", "[10, 80, 20]"));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn a_lane_without_kinds_of_drivers_takes_its_own_time() {
        let traffic = SITE.find("[lane.traffic]").unwrap_or(0);
        let vehicle = SITE.find("[[vehicle]]").unwrap_or(0);
        let plain = format!("{}{}", &SITE[..traffic], &SITE[vehicle..]).replace(
            "queue_length",
            "arrivals_per_hour = 30\nservice_time = \"12 s\"\nqueue_length",
        );
        let finding = only(&CHECK, &plain);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_room_and_time_at_the_reader() {
        let bare = SITE
            .replace("queue_length = \"130 ft\"", "")
            .replace("service_time = \"4 s\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
