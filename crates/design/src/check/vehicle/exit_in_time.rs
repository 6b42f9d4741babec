//! Whether the gate opens before a car that leaves is there, or the driver sees it shut and stops short of it.
//!
//! The car keeps its speed from the moment the detector sees its front. Where the leaf is not open by then, the driver has
//! to see it from farther than it takes to stop.

use crate::asking::{Asking, End, Wants, read};
use crate::check::drive::operator_of;
use crate::check::motion::{radius, turns};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::queue::{at_gate, opening_time};
use crate::subject::About;
use formula::signal::SightToStop;
use formula::{Evidence, Source};
use quantity::{Acceleration, Length, Quantity as _, Ratio, Time, Velocity};
use site::{Device, Gate, Lane, OnVehicle, Site, SwingSide};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-exit-in-time",
    codes: BOTH,
    leaves_open: "ice, loose gravel and leaves, fog, a driver who looks elsewhere, a vehicle that stands on the way; a stopwatch against a driven car shows it",
    concerns: "each gate that opens for a vehicle that leaves",
    ask,
};

/// Until the brake takes hold, in seconds.
const REACTION: f64 = 2.5;
/// Deceleration on a wet road, in m/s²: 11.2 ft/s².
const BRAKING: f64 = 11.2 * 0.3048;

static ROAD: Source = Source {
    work: "stopping sight distance of road design: 2.5 s until the brake takes hold, 11.2 ft/s² on a wet road",
    clause: "",
    evidence: Evidence::Seen,
    seen: "roadway design manual of a state, 4.11.1: www.txdot.gov/manuals/des/rdw/chapter-4--basic-design-criteria/4-11-sight-distance/4-11-1-stopping-sight-distance.html",
};

/// How a detector for those who leave is written.
const DETECTOR: &str = "[[device]]\nid = \"loop-exit\"\nkind = \"loop\"\nat = [\"3 ft\", \"26 ft\", \"-2 in\"]\nto = [\"17 ft\", \"32 ft\", \"-2 in\"]\non_vehicle = [\"opens\"]";

/// How vehicles are written.
const VEHICLE: &str =
    "[[vehicle]]\nid = \"car\"\nwhat = \"car\"\nlength = \"16 ft\"\nspeed = \"10 mph\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask_in_full(About::new(&gate.origin, &gate.id), |asking| {
            in_time(asking, site, gate)
        });
    }
}

fn in_time<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let seen = seen_at(asking, site, gate);
    let opens = opens_after(asking, site, gate);
    let speed = fastest(asking, site);
    let arc = arc(asking, gate);
    let sight = sight(asking, site, gate);
    let ((device, edge), opens, speed, arc, sight) = (seen?, opens?, speed?, arc?, sight?);
    let way = Length::from_base((edge - arc).base().max(0.0));
    let arrives = Time::from_base(way.base() / speed.base());
    let stop = asking.work(&SightToStop {
        speed,
        ..sight.to_stop
    })?;
    let left = Length::from_base((sight.seen_from - arc).base().max(0.0));
    let in_time = opens <= arrives;
    asking.say(|print| {
        let meets = format!(
            "A vehicle that leaves at {} is at the leaf {} after {} has seen it; the gate is open after {}",
            print.q(speed),
            print.q(arrives),
            device.id,
            print.q(opens)
        );
        if in_time {
            format!("{meets}: nobody need stop.")
        } else {
            format!(
                "{meets}: the driver stops for it. From where the leaf is seen there are {} to it, and a stop takes {} on a wet road.",
                print.q(left),
                print.q(stop.distance)
            )
        }
    });
    Ok(if in_time {
        Outcome::at_most(
            Labeled::new("until the gate is open", opens),
            Labeled::new("until the vehicle is there", arrives),
        )
    } else {
        Outcome::at_most(
            Labeled::new("way to a stop", stop.distance),
            Labeled::new("way from where the leaf is seen", left),
        )
    })
}

/// The detector that opens farthest inside, and the place at which it sees the front of a vehicle that leaves.
fn seen_at<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<(&'s Device, Length), Halt> {
    let opens = |device: &&Device| {
        device.on_vehicle.contains(&OnVehicle::Opens) && at_gate(site, device, gate)
    };
    let mut found: Option<(&Device, Length)> = None;
    for device in site.device.iter().filter(opens) {
        let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
        let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
        let ([_, near, _], [_, far, _]) = (at?, to?);
        let edge = if near < far { far } else { near };
        if found.is_none_or(|(_, known)| edge > known) {
            found = Some((device, edge));
        }
    }
    match found {
        Some(found) => Ok(found),
        None => asking.lack(&site.origin, "device", Wants::Table(DETECTOR)),
    }
}

/// From the sight of the vehicle to the open leaf.
fn opens_after<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Time, Halt> {
    let opening = opening_time(asking, site, gate);
    let operator = operator_of(asking, site, gate)?;
    let key = (&operator.origin, "reaction_time");
    let reaction = asking.read_at(key, operator.reaction_time.as_ref(), End::High);
    Ok(opening? + reaction?)
}

/// The fastest of the vehicles that are expected.
fn fastest<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Velocity, Halt> {
    let mut fastest: Result<Velocity, Halt> = Ok(Velocity::from_base(0.0));
    for vehicle in &site.vehicle {
        let key = (&vehicle.origin, "speed");
        let speed = asking.read_at(key, vehicle.speed.as_ref(), End::High);
        fastest = fastest
            .and_then(|fastest| speed.map(|speed| if speed > fastest { speed } else { fastest }));
    }
    if site.vehicle.is_empty() {
        return asking.lack(&site.origin, "vehicle", Wants::Table(VEHICLE));
    }
    fastest
}

/// How far inside the leaf comes where it swings into the property.
fn arc<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    if turns(gate) && gate.swings == Some(SwingSide::IntoProperty) {
        radius(asking, gate)
    } else {
        Ok(Length::from_base(0.0))
    }
}

/// From where the leaf is seen, and what a stop takes but for the speed.
struct Sight {
    seen_from: Length,
    to_stop: SightToStop,
}

fn sight<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Sight, Halt> {
    let only = site.gate.len() == 1;
    let leads = |lane: &&Lane| lane.gate.as_ref().map_or(only, |name| *name == gate.id);
    let lane = site.lane.iter().find(leads);
    // Uphill into the property is downhill for those who leave.
    let slope = read!(asking, gate.cross_slope);
    let lane = asking.need(
        &site.origin,
        "lane",
        lane,
        "[{ id = \"in\", leaving = { seen_from = \"60 ft\" } }]",
    )?;
    let Some(leaving) = &lane.leaving else {
        return asking
            .lack_of::<Length>(&lane.origin, "leaving.seen_from")
            .and(Err(Halt));
    };
    let of = |key| (&leaving.origin, key);
    let seen_from = asking.read_at(of("seen_from"), leaving.seen_from.as_ref(), End::Low);
    let braking = leaving.braking.as_ref();
    let braking = braking.map(|braking| asking.read_at(of("braking"), Some(braking), End::Low));
    let braking = braking
        .transpose()?
        .unwrap_or(Acceleration::from_base(BRAKING));
    asking.rest_on(&ROAD);
    Ok(Sight {
        seen_from: seen_from?,
        to_stop: SightToStop {
            speed: Velocity::from_base(0.0),
            reaction: Time::from_base(REACTION),
            deceleration: braking,
            grade: Ratio::from_base(-slope?.base()),
        },
    })
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::lane::queue::tests::SITE;
    use crate::check::testing::only;

    #[test]
    fn holds_where_the_driver_sees_it_and_stops() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand, in feet: 14.667 ft/s · 2.5 s, and 14.667² / (2 · (11.2 − 32.174 · 0.01)).
        let feet: f64 = 14.666_667 * 2.5 + 14.666_667_f64.powi(2) / (2.0 * (11.2 - 0.321_74));
        let found = finding
            .demand
            .and_then(|demand| demand.value)
            .unwrap_or(0.0);
        assert!((found / 0.3048 - feet).abs() < 0.001, "{found} {feet}");
    }

    #[test]
    fn holds_where_it_opens_first() {
        let early = SITE
            .replace("\"26 ft\", \"-2 in\"", "\"460 ft\", \"-2 in\"")
            .replace("\"32 ft\", \"-2 in\"", "\"466 ft\", \"-2 in\"");
        let finding = only(&CHECK, &early);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("nobody need stop"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_behind_a_bend() {
        let finding = only(
            &CHECK,
            &SITE.replace("seen_from = \"90 ft\"", "seen_from = \"40 ft\""),
        );
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_sight_and_speed() {
        let bare = SITE
            .replace("seen_from = \"90 ft\"", "")
            .replace("speed = \"10 mph\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
