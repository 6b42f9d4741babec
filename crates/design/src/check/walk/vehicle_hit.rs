//! Whether the gate can come upon a vehicle that stops anywhere: each gate, each vehicle that the site expects.
//!
//! Every stopping place is decided at once: where the leaf would come upon a part of the vehicle, less where a device that
//! holds the leaf sees it. Where nothing is left, the speed is looked for up to which no drive is touched at all, however it
//! stops, starts and backs while the leaf closes; it is held against the speed at which the vehicle passes.

use super::vehicle_words::{say_touched, say_watched};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::vehicle::{Passage, passage, sized, usual};
use formula::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _, Velocity};
use sim::vehicle::{Unwatched, World};
use site::{Gate, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "walk-vehicle-hit",
    codes: BOTH,
    leaves_open: "people, whom no detector of vehicles protects; vehicles that turn in the gate, a trailer that swings out, loads beside the outline, a driver who drives into a leaf that he sees, loops near reinforcing steel and drifting detectors: drive the longest trailer and the highest chassis over them",
    concerns: "each gate with each vehicle that is expected",
    ask,
};

static PROPERTY: Source = Source {
    work: "UL 325: what it covers is people; sensing of vehicles is a part of its own and counts toward none of its means",
    clause: "",
    evidence: Evidence::Seen,
    seen: "a trade report on the standard",
};

static PLACES: Source = Source {
    work: "unions of the intervals of places at which a box meets a leaf, and at which a field meets a box",
    clause: "",
    evidence: Evidence::Physics,
    seen: "checked against polygons of another library, place by place",
};

static NARROW: Source = Source {
    work: "instructions of several loop detectors: no side of a loop longer than 6 ft where it must see a motorcycle",
    clause: "",
    evidence: Evidence::Seen,
    seen: "copies of the instructions; addresses withheld, they carry company names",
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
    if sized.as_ref().is_ok_and(|sized| sized.outline.narrow) {
        asking.rest_on(&NARROW);
    }
    let speed = sized
        .as_ref()
        .map(|sized| sized.speed)
        .map_err(|halt| *halt);
    let passage = passage(asking, site, gate, sized);
    decided(asking, gate, &passage?, vehicle.what.as_str(), speed?)
}

/// Where the site names no vehicle, a car and a car with a trailer come all the same.
fn unstated<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let mut last = Err(Halt);
    for (what, sized) in usual(asking)? {
        let speed = sized.speed;
        let passage = passage(asking, site, gate, Ok(sized))?;
        let outcome = decided(asking, gate, &passage, what, speed)?;
        if outcome.strain() > 1.0 {
            return Ok(outcome);
        }
        last = Ok(outcome);
    }
    last
}

fn decided<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    passage: &Passage<'_>,
    what: &str,
    speed: Velocity,
) -> Answer {
    asking.rest_on(&PLACES);
    asking.rest_on(&PROPERTY);
    let hold = asking.read_if_there(&gate.origin, "hold_time", gate.hold_time.as_ref());
    let world = &passage.world;
    let watched = asking.simulate(|known| &known.watched, world, || watched(world));
    let fastest = match asking.in_reach(watched)? {
        Watched::Not(found) => {
            say_touched(asking, passage, what, hold, &found);
            return Ok(Outcome::at_most(
                Labeled::new("stopping places that nothing watches", found.length()),
                Labeled::new(
                    "stopping places that may go unwatched",
                    Length::from_base(0.0),
                ),
            ));
        }
        Watched::NotShown => {
            return asking.refuse(
                "along the middle and both edges of the lane every stopping place is watched, but it could not be shown between them; narrow the lane or give the beams straight across it",
            );
        }
        Watched::UpTo(fastest) => fastest,
    };
    say_watched(asking, passage, what, fastest, speed);
    Ok(Outcome::at_most(
        Labeled::new("speed at which it passes", speed),
        Labeled::new(
            "speed up to which no drive is touched",
            fastest.unwrap_or(Velocity::from_base(0.0)),
        ),
    ))
}

/// How the stopping places of a vehicle are watched.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Watched {
    /// The longest stretch that is not.
    Not(Unwatched),
    /// It could not be shown.
    NotShown,
    /// All of them, and up to that speed no drive is touched; none where even one that creeps may be.
    UpTo(Option<Velocity>),
}

fn watched(world: &World) -> Result<Watched, OutOfReach> {
    if let Some(found) = world.unwatched()? {
        return Ok(Watched::Not(found));
    }
    if !world.is_watched()? {
        return Ok(Watched::NotShown);
    }
    world.fastest().map(Watched::UpTo)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

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
        cruise_speed = "0.9 ft/s ± 5 %"
        acceleration = "0.8 ft/s²"
        stopping_deceleration = "6 ft/s² ± 10 %"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms ± 10 ms"
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
        length = "46 ft ± 6 in"
        width = "8 ft 6 in"
        height = "12 ft"
        chassis_height = "20 in"
        drawbar_gap = "5 ft"
        towing_length = "19 ft"
        drawbar_height = "20 in"
        tail_overhang = "3 ft"
        tail_height = "40 in"
        speed = "5 mph"
    "#;

    #[test]
    fn holds_between_two_loops() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert_eq!(finding.subject.name, "rig");
        // By hand: the outer loop sees the rig with its front from 6 ft out on, 4 ft over the loop; its stern, 3 ft behind
        // the frame, is clear of the gate line while the inner loop still has 3 ft of way before it loses the frame.
        assert!(
            finding.sentence.contains("loop-out, loop-in"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_the_gap_with_loops_too_far_apart_and_names_it() {
        let far = SITE
            .replace("\"-10 ft\", \"-2 in\"", "\"-19 ft\", \"-2 in\"")
            .replace("\"-4 ft\", \"-2 in\"", "\"-13 ft\", \"-2 in\"")
            .replace("\"4 ft\", \"-2 in\"", "\"13 ft\", \"-2 in\"")
            .replace("\"10 ft\", \"-2 in\"", "\"19 ft\", \"-2 in\"");
        let finding = only(&CHECK, &far);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("30 s"), "{}", finding.sentence);
        assert!(finding.sentence.contains("never count for people"));
    }

    #[test]
    fn fails_where_a_detector_tunes_a_standing_vehicle_out() {
        let tuned = SITE.replace("stays_on = true", "stays_on = false");
        assert_eq!(only(&CHECK, &tuned).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_loops_only_hold_an_open_leaf() {
        let held = SITE.replace("[\"holds open\", \"stops closing\"]", "[\"holds open\"]");
        let finding = only(&CHECK, &held);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("closing goes on"));
    }

    #[test]
    fn fails_for_a_motorcycle_over_wide_loops() {
        let narrow = SITE
            .replace("\"vehicle with trailer\"", "\"motorcycle\"")
            .replace("drawbar_gap = \"5 ft\"", "")
            .replace("46 ft ± 6 in", "7 ft 3 in")
            .replace("tail_overhang = \"3 ft\"", "");
        let finding = only(&CHECK, &narrow);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_under_a_high_chassis_over_a_narrow_loop() {
        let high = SITE.replace("chassis_height = \"20 in\"", "chassis_height = \"50 in\"");
        let finding = only(&CHECK, &high);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_what_the_loop_does_and_how_high_the_frame_is() {
        let bare = SITE
            .replacen("on_vehicle = [\"holds open\", \"stops closing\"]", "", 1)
            .replace("chassis_height = \"20 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:#?}", finding.missing);
    }

    #[test]
    fn unknown_where_no_vehicle_is_stated_and_remembered_sizes_pass() {
        let unstated = SITE.split("[[vehicle]]").next().unwrap();
        let finding = only(&CHECK, unstated);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let blind = unstated.replace("stays_on = true", "stays_on = false");
        assert_eq!(only(&CHECK, &blind).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_in_the_arc_of_a_swing_leaf_and_under_an_arm() {
        let gate = |kind: &str| {
            SITE.replace(
                "track-slide\"",
                &format!("{kind}\"\ntravel_angle = \"90°\"\nswings = \"into the property\""),
            )
            .replace(
                "cruise_speed = \"0.9 ft/s ± 5 %\"",
                "cruise_turning_speed = \"5 deg/s\"",
            )
            .replace("length = \"21 ft\"", "length = \"20 ft\"")
        };
        let swing = only(&CHECK, &gate("single-swing"));
        assert_eq!(swing.verdict, Verdict::Fails, "{}", swing.sentence);
        let slow = gate("barrier-arm").replace("5 mph", "1 mph");
        let arm = only(&CHECK, &slow);
        assert_eq!(arm.verdict, Verdict::Holds, "{}", arm.sentence);
        assert_eq!(all(&CHECK, &gate("vertical-pivot")).len(), 1);
    }
}
