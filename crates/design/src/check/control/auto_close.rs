//! What lets a gate close by itself: the time it waits, what holds it off, what warns, and what a dead device does to that.
//!
//! The wait is held against the slowest person on the way from 6 ft before the travel to beyond everything that is watched
//! and swept, and against every vehicle from where it was let in. Time is no protection: something that sees people has to
//! hold the closing off, and something that sees vehicles.

use super::envelope::envelopes;
use super::{behavior_of, devices_of};
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{VehicleClearanceTime, Walker, WalkingClearanceTime};
use formula::{Evidence, Source};
use quantity::{Acceleration, Length, Quantity as _, Time};
use site::{Device, DeviceKind, Gate, OnVehicle, PersonKind, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-auto-close",
    codes: BOTH,
    leaves_open: "people who stop, turn or fall on the way, traffic outside that holds a vehicle up, and national rules on lights and sounders",
    concerns: "each gate",
    ask,
};

static DRIVING: Source = Source {
    work: "a driver moves off after 2 s, and a laden truck gathers speed at 0.5 m/s²",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "round figures on the slow side",
};

static WATCHED: Source = Source {
    work: "closing by itself starts only with people and vehicles seen to be clear, and after a warning",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as gates with auto-close are commonly set up",
};

/// Way before the travel on which a person still believes to have time: 6 ft.
const BEFORE: f64 = 6.0 * 0.3048;
/// Time until a driver moves off, in seconds.
const MOVES_OFF: f64 = 2.0;
/// How fast a laden truck gathers speed, in m/s².
const GATHERS: f64 = 0.5;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            auto_close(asking, site, gate)
        });
    }
}

fn auto_close<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    if gate.hold_time.is_none() {
        asking.say(|_| "No hold time is written: it does not close by itself.".to_owned());
        return Ok(Outcome::Rule(true));
    }
    asking.rest_on(&WATCHED);
    let hold = read!(asking, gate.hold_time);
    let faults = faults(asking, site, gate);
    let depth = depth(asking, site, gate);
    let vehicles = vehicles(asking, site, gate, &hold, &depth);
    let (hold, faults, depth, vehicles) = (hold?, faults?, depth?, vehicles?);
    let on_foot = asking.work(&WalkingClearanceTime {
        walker: walker(site),
        way: Length::from_base(BEFORE + depth),
        hold_open: hold,
    })?;
    let waits = |label, time: Time| {
        Comparison::at_most(
            Labeled::new(label, time),
            Labeled::new("time that it stays open", hold),
        )
    };
    let mut all = vec![waits("time that the slowest person takes", on_foot.time)];
    let slowest = vehicles
        .iter()
        .max_by(|one, other| one.1.base().total_cmp(&other.1.base()));
    all.extend(slowest.map(|(_, time)| waits("time that the slowest vehicle takes", *time)));
    asking.say(|print| {
        let by_vehicle = slowest.map_or_else(String::new, |(vehicle, time)| {
            format!(", {} {}", vehicle.id, print.q(*time))
        });
        let wrong = std::iter::once("").chain(faults.iter().copied());
        let wrong = wrong.collect::<Vec<_>>().join(" ");
        format!(
            "It stays open for {}; the slowest person takes {} to be clear{by_vehicle}.{wrong}",
            print.q(hold),
            print.q(on_foot.time)
        )
    });
    if faults.is_empty() {
        Outcome::worst(all).ok_or(Halt)
    } else {
        Ok(Outcome::Rule(false))
    }
}

/// Who is slowest among those who come.
fn walker(site: &Site) -> Walker {
    let slow = |who: PersonKind| who == PersonKind::WheeledOrSlow;
    if site.people.iter().any(|people| slow(people.who)) {
        Walker::Slowest
    } else {
        Walker::MutcdSlow
    }
}

/// What is wrong with what holds the closing off and what warns of it.
fn faults<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<&'static str>, Halt> {
    let seen = people_seen(asking, site, gate);
    let held = vehicles_held(asking, site, gate);
    let behavior = behavior_of(asking, site, gate);
    let told = behavior.and_then(|behavior| {
        let closes = behavior.closes_on_fault.as_ref();
        let closes = asking.need(&behavior.origin, "closes_on_fault", closes, "false");
        let warns = read!(asking, behavior.warns_before);
        Ok((*closes?, warns?))
    });
    let (seen, held, (closes, warns)) = (seen?, held?, told?);
    let light = devices_of(site, gate).any(|device| device.kind == DeviceKind::WarningLight);
    let warned = warns.base() > 0.0 && light;
    Ok([
        (!seen).then_some("Nothing that is tested in every cycle sees people and holds it off."),
        (!held).then_some("Nothing that sees vehicles holds it off."),
        closes.then_some("It closes by itself though a device that holds it off is dead."),
        (!warned).then_some("Nothing warns before it moves."),
    ]
    .into_iter()
    .flatten()
    .collect())
}

/// A tested device that sees people without touch holds the closing off.
fn people_seen<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<bool, Halt> {
    let mut any = Ok(false);
    for device in devices_of(site, gate).filter(|device| super::automatic::watches(device)) {
        match device.monitored {
            Some(monitored) => any = any.map(|any| any | monitored),
            None => any = asking.lack(&device.origin, "monitored", Wants::Written("true")),
        }
    }
    any
}

/// A loop, a beam or a scanner keeps the leaf from a vehicle.
fn vehicles_held<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<bool, Halt> {
    let mut any = Ok(site.vehicle.is_empty());
    for device in devices_of(site, gate).filter(|device| device.kind == DeviceKind::Loop) {
        if device.on_vehicle.is_empty() {
            any = asking.lack(
                &device.origin,
                "on_vehicle",
                Wants::Written("[\"holds open\"]"),
            );
            continue;
        }
        let holds = device
            .on_vehicle
            .iter()
            .any(|what| matches!(what, OnVehicle::HoldsOpen | OnVehicle::StopsClosing));
        any = any.map(|any| any | holds);
    }
    let beams = devices_of(site, gate).any(super::automatic::watches);
    any.map(|any| any | beams)
}

/// Across the gate line: what is swept and what is watched.
fn depth<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<f64, Halt> {
    let leaves = envelopes(asking, gate);
    let watching: Vec<_> = devices_of(site, gate)
        .filter(|device| super::automatic::watches(device))
        .map(|device| asking.position(&device.origin, "at", device.at.as_ref()))
        .collect();
    let mut across: Vec<f64> = Vec::new();
    for at in watching {
        across.push(at?[1].base());
    }
    for leaf in leaves? {
        across.extend(leaf.rim().iter().map(|point| point.1));
    }
    let low = across.iter().copied().fold(f64::INFINITY, f64::min);
    let high = across.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    Ok((high - low).max(0.0))
}

/// The time that each vehicle takes from where it is let in until it is clear.
fn vehicles<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    hold: &Result<Time, Halt>,
    depth: &Result<f64, Halt>,
) -> Result<Vec<(&'s Vehicle, Time)>, Halt> {
    let approach = approach(asking, site, gate);
    let driven: Vec<_> = site
        .vehicle
        .iter()
        .map(|vehicle| {
            let length = read!(asking, vehicle.length);
            let speed = read!(asking, vehicle.speed);
            Ok((vehicle, length?, speed?))
        })
        .collect();
    let driven = driven.into_iter().collect::<Result<Vec<_>, Halt>>();
    let (approach, driven, hold, depth) = (approach?, driven?, (*hold)?, (*depth)?);
    if !driven.is_empty() {
        asking.rest_on(&DRIVING);
    }
    let mut times = Vec::new();
    for (vehicle, length, speed) in driven {
        let time = asking.work(&VehicleClearanceTime {
            length,
            zone: Length::from_base(depth),
            approach: Length::from_base(approach),
            reaction: Time::from_base(MOVES_OFF),
            acceleration: Acceleration::from_base(GATHERS),
            speed,
            hold_open: hold,
        })?;
        times.push((vehicle, time.time));
    }
    Ok(times)
}

/// The farthest place from the gate line at which a vehicle is let in.
fn approach<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<f64, Halt> {
    use DeviceKind::{Intercom, Keypad, Reader};
    let lets_in = |device: &&Device| {
        matches!(device.kind, Reader | Keypad | Intercom)
            || device.on_vehicle.contains(&OnVehicle::Opens)
    };
    let places: Vec<_> = devices_of(site, gate)
        .filter(lets_in)
        .map(|device| asking.position(&device.origin, "at", device.at.as_ref()))
        .collect();
    let mut farthest = 0.0_f64;
    for at in places {
        farthest = farthest.max(at?[1].base().abs());
    }
    Ok(farthest)
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "5 m"
        hold_time = "30 s"
        [[gate.leaf]]
        id = "leaf"
        length = "5 m"
        closed_end = "0 m"
        thickness = "50 mm"
        height = "1.8 m"
        ground_clearance = "50 mm"
        [[operator]]
        id = "drive"
        gate = "main"
        [operator.behavior]
        closes_on_fault = false
        warns_before = "3 s"
        [[device]]
        id = "beam-out"
        kind = "through-beam photo-eye"
        at = ["0 m", "-2 m", "0.5 m"]
        protection = "B1"
        guards = ["closing"]
        monitored = true
        [[device]]
        id = "beam-in"
        kind = "through-beam photo-eye"
        at = ["0 m", "2 m", "0.5 m"]
        protection = "B1"
        guards = ["closing"]
        monitored = true
        [[device]]
        id = "light"
        kind = "warning light"
        [[vehicle]]
        id = "truck"
        what = "truck"
        length = "10 m"
        speed = "2 m/s"
    "#;

    #[test]
    fn holds_with_time_in_hand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 2 s to move off, 2 m/s after 2 m/s over 2 · 0.5 m/s² which costs 2 s, and 14 m at 2 m/s.
        assert!((finding.demand.unwrap().value.unwrap() - 11.0).abs() < 1e-9);
    }

    #[test]
    fn fails_too_soon_for_a_truck_and_for_slow_people() {
        assert_eq!(
            only(&CHECK, &SITE.replace("30 s", "10 s")).verdict,
            Verdict::Fails
        );
        let slow = SITE
            .replace("30 s", "6 s")
            .split("[[vehicle]]")
            .next()
            .unwrap()
            .to_owned();
        // 1.8288 m and 4 m at 3 ft/s take 6.37 s.
        let finding = only(&CHECK, &slow);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.demand.unwrap().value.unwrap() - 5.8288 / 0.9144).abs() < 1e-9);
    }

    #[test]
    fn fails_unwatched_unwarned_or_with_a_dead_device() {
        for (one, other) in [
            ("monitored = true", "monitored = false"),
            ("warns_before = \"3 s\"", "warns_before = \"0 s\""),
            ("closes_on_fault = false", "closes_on_fault = true"),
        ] {
            let finding = only(&CHECK, &SITE.replace(one, other));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{other}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_the_facts_and_nothing_to_ask_without_a_hold_time() {
        let bare = SITE
            .replace("warns_before = \"3 s\"", "")
            .replace("speed = \"2 m/s\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        assert_eq!(
            only(&CHECK, &SITE.replace("hold_time = \"30 s\"", "")).verdict,
            Verdict::Holds
        );
    }
}
