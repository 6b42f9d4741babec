//! Whether a vehicle is seen without a gap from the moment at which it comes near the leaf until it is clear: each gate, each
//! vehicle that the site expects.
//!
//! `walk-vehicle-hit` asks whether the leaf comes upon a vehicle that stops. This asks what sees it all the way: by which
//! detector, from where to where, how far two that follow each other overlap, and which never sees it. Inside the way of
//! the leaf no gap is allowed, since a vehicle may stop anywhere. While it only comes near, the output that stays on after
//! it has left the field before may bridge one.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::vehicle::{Passage, passage, sized, usual};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Velocity};
use sim::vehicle::{Facing, Gap, Handover, Passing};
use site::{Gate, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-held-open",
    codes: BOTH,
    leaves_open: "people, whom no detector of vehicles protects; vehicles that turn in the gate, trailers that swing out, loops over steel and detectors that drift: stop the longest drawbar at each foot across the line",
    concerns: "each gate with each vehicle that is expected",
    ask,
};

static PLACES: Source = Source {
    work: "unions of the intervals of places at which a box meets a leaf, and at which a field meets a box",
    clause: "",
    evidence: Evidence::Physics,
    seen: "checked against polygons of another library, place by place",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for vehicle in &site.vehicle {
            let about = About::passing(
                &vehicle.origin,
                &vehicle.id,
                (site.gate.len() > 1).then_some(&gate.id),
            );
            round.ask(about, |asking| stated(asking, site, gate, vehicle));
        }
        if site.vehicle.is_empty() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                unstated(asking, site, gate)
            });
        }
    }
}

fn stated<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    vehicle: &'s Vehicle,
) -> Answer {
    let sized = sized(asking, vehicle);
    let speed = sized
        .as_ref()
        .map(|sized| sized.speed)
        .map_err(|halt| *halt);
    let passage = passage(asking, site, gate, sized);
    decided(asking, &passage?, vehicle.what.as_str(), speed?)
}

/// Where the site names no vehicle, a car and a car with a trailer come all the same.
fn unstated<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let mut last = Err(Halt);
    for (what, sized) in usual(asking)? {
        let speed = sized.speed;
        let passage = passage(asking, site, gate, Ok(sized))?;
        let outcome = decided(asking, &passage, what, speed)?;
        if outcome.strain() > 1.0 {
            return Ok(outcome);
        }
        last = Ok(outcome);
    }
    last
}

fn decided(asking: &mut Asking<'_>, passage: &Passage<'_>, what: &str, speed: Velocity) -> Answer {
    asking.rest_on(&PLACES);
    let world = &passage.world;
    let all = asking.in_reach(world.passings(speed))?;
    let worst = all.iter().filter_map(|passing| {
        let gap = passing.gap?;
        let open = (gap.length() - gap.bridged).base();
        Some((passing, gap, open))
    });
    let worst = worst.max_by(|a, b| a.1.inside.cmp(&b.1.inside).then(a.2.total_cmp(&b.2)));
    if let Some((passing, gap, _)) = worst.filter(|(_, gap, open)| gap.inside || *open > 0.0) {
        say_gap(asking, passage, what, (passing, gap));
        return Ok(Outcome::Compared(compared(&gap)));
    }
    if !asking.in_reach(world.is_seen_through(speed))? {
        return asking.refuse(
            "along the middle and both edges of the lane it is seen all the way, but it could not be shown between them; narrow the lane or give the beams straight across it",
        );
    }
    let changes = all.iter().filter_map(|passing| passing.handover);
    let spare = |of: &Handover| (of.kept - of.asked).base();
    let tightest = changes.min_by(|a, b| spare(a).total_cmp(&spare(b)));
    say_seen(asking, passage, what, (&all, tightest));
    Ok(tightest.map_or(Outcome::Rule(true), |change| {
        Outcome::at_most(
            Labeled::new("way driven until the next detector answers", change.asked),
            Labeled::new(
                "overlap of the two, and the drop-out of the first",
                change.kept,
            ),
        )
    }))
}

fn compared(gap: &Gap) -> Comparison {
    Comparison::at_most(
        Labeled::new("way in which nothing sees it", gap.length()),
        Labeled::new("way that the drop-out of what saw it bridges", gap.bridged),
    )
}

fn name<'a>(passage: &Passage<'a>, at: usize) -> &'a str {
    passage
        .devices
        .get(at)
        .map_or("a detector", |device| device.id.as_str())
}

/// The devices that keep the leaf, and never see this vehicle.
fn blind<'a>(passage: &Passage<'a>, all: &[Passing]) -> Vec<&'a str> {
    let sees = |at: usize| {
        let mut seen = all.iter().flat_map(|passing| &passing.seen);
        seen.any(|seen| seen.detector == at)
    };
    let each = (0..passage.devices.len()).filter(|at| !sees(*at));
    each.map(|at| name(passage, at)).collect()
}

fn say_seen(
    asking: &mut Asking<'_>,
    passage: &Passage<'_>,
    what: &str,
    (all, tightest): (&[Passing], Option<Handover>),
) {
    let blind = blind(passage, all);
    asking.say(|print| {
        let first = all.iter().find(|passing| passing.facing == Facing::In);
        let course: Vec<String> = first
            .into_iter()
            .flat_map(|passing| &passing.seen)
            .map(|seen| {
                format!(
                    "{} from {} to {}",
                    name(passage, seen.detector),
                    print.q(seen.from),
                    print.q(seen.to)
                )
            })
            .collect();
        let least = tightest.map_or_else(
            || "one of them sees it all along".to_owned(),
            |change| {
                format!(
                    "where one hands over to the next both see it over {}",
                    print.q(change.overlap)
                )
            },
        );
        let blind = if blind.is_empty() {
            String::new()
        } else {
            format!(" It is not seen there by {}.", blind.join(", "))
        };
        format!(
            "Driving in, the {what} is held by {}, told by its front from the gate line; {least}, and nothing is left open from coming near until it is clear, whichever way it looks.{blind}",
            course.join(", ")
        )
    });
}

fn say_gap(
    asking: &mut Asking<'_>,
    passage: &Passage<'_>,
    what: &str,
    (passing, gap): (&Passing, Gap),
) {
    let before = passing.seen.iter().filter(|seen| seen.from < gap.from);
    let before = before.max_by(|a, b| a.to.base().total_cmp(&b.to.base()));
    let after = passing.seen.iter().find(|seen| seen.from >= gap.from);
    asking.say(|print| {
        let facing = match passing.facing {
            Facing::In => "toward the property",
            Facing::Out => "toward the road",
        };
        let between = match (before, after) {
            (Some(before), Some(after)) => format!(
                "between {} and {} ",
                name(passage, before.detector),
                name(passage, after.detector)
            ),
            (Some(one), None) | (None, Some(one)) => {
                format!("beyond {} ", name(passage, one.detector))
            }
            (None, None) => String::new(),
        };
        let does = if gap.inside {
            "in the way of the leaf, where a drop-out bridges nothing once it stops".to_owned()
        } else {
            format!(
                "as it comes near, of which the drop-out of what saw it before bridges {}",
                print.q(gap.bridged)
            )
        };
        format!(
            "With its front {facing}, {} to {} from the gate line, the {what} is {between}seen by nothing that holds the leaf: {} of way {does}. Move or lengthen a loop, or add a beam there.",
            print.q(gap.from),
            print.q(gap.to),
            print.q(gap.length()),
        )
    });
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
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "20 ft"
        travel = "20 ft 6 in"
        hold_time = "30 s"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
        closed_end = "-3 in"
        [gate.motion]
        cruise_speed = "0.9 ft/s"
        acceleration = "0.8 ft/s²"
        stopping_deceleration = "6 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
        [[device]]
        id = "loop-out"
        kind = "loop"
        at = ["3 ft", "-10 ft", "-2 in"]
        to = ["17 ft", "-4 ft", "-2 in"]
        on_vehicle = ["holds open", "stops closing"]
        response_time = "100 ms"
        detection_capability = "4 ft"
        stays_on = true
        [[device]]
        id = "loop-in"
        kind = "loop"
        at = ["3 ft", "4 ft", "-2 in"]
        to = ["17 ft", "10 ft", "-2 in"]
        on_vehicle = ["holds open", "stops closing"]
        response_time = "100 ms"
        detection_capability = "4 ft"
        stays_on = true
        [[vehicle]]
        id = "rig"
        what = "pickup with boat trailer"
        kind = "vehicle with trailer"
        length = "46 ft"
        width = "8 ft 6 in"
        height = "12 ft"
        chassis_height = "20 in"
        drawbar_gap = "5 ft"
        towing_length = "19 ft"
        drawbar_height = "20 in"
        speed = "5 mph"
    "#;

    #[test]
    fn holds_between_two_loops_and_says_what_sees_it_where() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("loop-out from -6 ft"),
            "{}",
            finding.sentence
        );
        // By hand: the outer loop loses the pickup at 11 ft of its front, 4 ft of it short of its own 6 ft; the inner one
        // finds it at 8 ft.
        assert!(
            finding.sentence.contains("over 3 ft"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_a_gap_beside_the_leaf_whatever_the_drop_out() {
        let far = SITE
            .replace("\"-10 ft\", \"-2 in\"", "\"-22 ft\", \"-2 in\"")
            .replace("\"-4 ft\", \"-2 in\"", "\"-16 ft\", \"-2 in\"")
            .replace("stays_on = true", "stays_on = true\ndrop_out = \"5 s\"");
        let finding = only(&CHECK, &far);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("bridges nothing"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_it_comes_near_faster_than_a_report() {
        let fast = SITE.replace("5 mph", "45 mph");
        let finding = only(&CHECK, &fast);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("comes near"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_under_a_bed_too_high_for_the_loops() {
        let high = SITE.replace("chassis_height = \"20 in\"", "chassis_height = \"50 in\"");
        assert_eq!(only(&CHECK, &high).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_what_stays_on() {
        let bare = SITE.replacen("stays_on = true", "", 1);
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
