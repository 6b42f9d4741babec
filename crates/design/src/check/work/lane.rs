//! Whether people and vehicles get past the work, and what keeps them off it.
//!
//! For each guarded work place: the way past it is agreed and wide enough, or the lane is closed; something stands before it
//! at which a car stops whatever its driver does; the fire engine still gets through, or the fire service was told; and where
//! somebody works in the travel, the drive is switched off and locked.

use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, capitalized};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{CodeBasis, Lane, Site, Task, TaskKind, TaskRisk, WayThrough, WorkZone};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "work-live-lane",
    codes: BOTH,
    leaves_open: "the set-up on the day: its photograph shows that; drivers who move barriers; the crews of others",
    concerns: "each guarded work place, and each site with tasks that has none",
    ask,
};

static GUARDED: Source = Source {
    work: "a way past that is agreed, a guard at which a car stops, fire access kept or the fire service told, the drive locked off while somebody is in the travel",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as work beside lanes is set up",
};

static PUBLIC_WAY: Source = Source {
    work: "Manual on Uniform Traffic Control Devices",
    clause: "part 6: temporary traffic control on public ways",
    evidence: Evidence::Memory,
    seen: "not seen",
};

static LOCAL_ROADS: Source = Source {
    work: "local rules on work in and beside public roads",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen",
};

/// How a guarded work place is written.
const ZONE: &str = "[[work_zone]]\nid = \"zone-gate\"\nway = \"past it\"\nagreed_with = \"owner\"\nclear_width = \"10 ft\"\nguard = [\"parked vehicle\", \"cones\"]\nfire_access = true\nlocked_out = true\non_public_way = false";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.task.is_empty() {
        return;
    }
    if site.work_zone.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "work_zone", Wants::Table(ZONE))
        });
    }
    for (index, zone) in site.work_zone.iter().enumerate() {
        round.ask(About::new(&zone.origin, &zone.id), |asking| {
            // A task in the way of vehicles that names no place is asked for once, at the first.
            let named = if index == 0 {
                named(asking, site)
            } else {
                Ok(())
            };
            let found = guarded(asking, site, zone);
            named?;
            found
        });
    }
}

/// Each task that stands in the way names its guarded place.
fn named<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<(), Halt> {
    let mut found = Ok(());
    for task in site.task.iter().filter(|task| task.done.is_none()) {
        if stands_in_the_way(task) && task.zone.is_none() {
            found = asking.lack(&task.origin, "zone", Wants::Written("\"zone-gate\""));
        }
    }
    found
}

fn stands_in_the_way(task: &Task) -> bool {
    matches!(task.kind, Some(TaskKind::Hang | TaskKind::ForceTest)) || in_travel(task)
}

fn in_travel(task: &Task) -> bool {
    task.risk.contains(&TaskRisk::InTravel)
}

fn guarded<'s>(asking: &mut Asking<'s>, site: &'s Site, zone: &'s WorkZone) -> Answer {
    asking.rest_on(&GUARDED);
    let way = pick!(asking, zone.way);
    let agreed = need!(asking, zone.agreed_with, "\"owner\"");
    let guard = if zone.guard.is_empty() {
        asking.lack(
            &zone.origin,
            "guard",
            Wants::Written("[\"parked vehicle\", \"cones\"]"),
        )
    } else {
        Ok(())
    };
    let fire = fire(asking, zone);
    let locked = locked(asking, site, zone);
    let public = public(asking, site, zone);
    let widths = match zone.way {
        Some(WayThrough::PastIt) => past(asking, site, zone),
        _ => Ok(Vec::new()),
    };
    let (way, agreed, locked) = (way?, agreed?, locked?);
    guard?;
    fire?;
    public?;
    let widths = widths?;
    let stops = zone.guard.iter().any(|guard| guard.stops_a_car());
    let narrow = widths.iter().any(|width| !width.holds());
    let busiest = busiest(site, zone);
    asking.say(|_| {
        let guards: Vec<String> = zone.guard.iter().map(ToString::to_string).collect();
        let what = if !stops {
            format!("nothing there stops a car: {}", and(&guards))
        } else if !locked {
            "somebody works in the travel while the drive can start".to_owned()
        } else if narrow {
            "the way past it is narrower than what has to pass".to_owned()
        } else {
            let way = match way {
                WayThrough::PastIt => "people and vehicles get past it",
                WayThrough::OtherEntrance => "everybody takes the other entrance",
                WayThrough::Closed => "the lane is closed for the time",
            };
            format!(
                "{way}, agreed with {agreed}; between it and vehicles: {}{busiest}",
                and(&guards)
            )
        };
        format!("{}: {what}.", capitalized(zone.id.as_str()))
    });
    if !stops || !locked {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::worst(widths).unwrap_or(Outcome::Rule(true)))
}

/// The fire engine gets through, or the fire service was told.
fn fire<'s>(asking: &mut Asking<'s>, zone: &'s WorkZone) -> Result<(), Halt> {
    if *need!(asking, zone.fire_access, "true")? {
        return Ok(());
    }
    need!(
        asking,
        zone.fire_told,
        "\"fire marshal, by phone on the morning\""
    )
    .map(|_| ())
}

/// Where somebody works in the travel, the drive is locked off.
fn locked<'s>(asking: &mut Asking<'s>, site: &'s Site, zone: &'s WorkZone) -> Result<bool, Halt> {
    let mut here = site
        .task
        .iter()
        .filter(|task| task.zone.as_ref() == Some(&zone.id));
    if here.any(in_travel) {
        need!(asking, zone.locked_out, "true").copied()
    } else {
        Ok(true)
    }
}

/// On a public way somebody must have permitted the set-up.
fn public<'s>(asking: &mut Asking<'s>, site: &'s Site, zone: &'s WorkZone) -> Result<(), Halt> {
    if !*need!(asking, zone.on_public_way, "false")? {
        return Ok(());
    }
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &PUBLIC_WAY,
        CodeBasis::Eu => &LOCAL_ROADS,
    });
    need!(asking, zone.permit, "\"county roads, 2026-04-28\"").map(|_| ())
}

/// The way past against the widest vehicle and against what the fire service asks.
fn past<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    zone: &'s WorkZone,
) -> Result<Vec<Comparison>, Halt> {
    let clear = read!(asking, zone.clear_width);
    let foot = if site.people.is_empty() && site.foot_route.is_empty() {
        Ok(())
    } else {
        need!(asking, zone.foot_way, "\"along the fence, on boards\"").map(|_| ())
    };
    let widths: Vec<Result<_, Halt>> = site
        .vehicle
        .iter()
        .filter(|vehicle| vehicle.fire_apparatus != Some(true))
        .map(|vehicle| read!(asking, vehicle.width))
        .collect();
    let engine = match (&site.fire, zone.fire_access) {
        (Some(fire), Some(true)) => {
            asking.read_if_there(&fire.origin, "clear_width", fire.clear_width.as_ref())
        }
        _ => None,
    };
    let clear = clear?;
    foot?;
    let mut compared = Vec::new();
    for width in widths {
        compared.push(Comparison::at_most(
            Labeled::new("width of what has to pass", width?),
            Labeled::new("width that stays clear", clear),
        ));
    }
    compared.extend(engine.map(|asked| {
        Comparison::at_most(
            Labeled::new("width that the fire service asks", asked),
            Labeled::new("width that stays clear", clear),
        )
    }));
    Ok(compared)
}

/// Vehicles of the busiest hour of its lane, in words.
fn busiest(site: &Site, zone: &WorkZone) -> String {
    let of_zone = |lane: &&Lane| zone.lane.as_ref().is_none_or(|id| lane.id == *id);
    let traffic = site
        .lane
        .iter()
        .filter(of_zone)
        .find_map(|lane| lane.traffic.as_ref());
    let counted = traffic.and_then(|traffic| {
        let most = traffic.hourly.iter().max()?;
        let at = traffic.hourly.iter().position(|count| count == most)?;
        Some((most, traffic.first_hour? + u32::try_from(at).ok()?))
    });
    counted.map_or_else(String::new, |(most, hour)| {
        format!("; most come from {hour} h on, {most} in the hour")
    })
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::work::example::SITE;

    #[test]
    fn holds_behind_something_that_stops_a_car() {
        let finding = only(&CHECK, SITE);
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "{} {:?}",
            finding.sentence,
            finding.missing
        );
        assert!(finding.sentence.contains("owner"), "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_cones_in_a_live_travel_or_a_narrow_way() {
        let cones = SITE.replace("[\"parked vehicle\", \"cones\"]", "[\"cones\", \"signs\"]");
        let finding = only(&CHECK, &cones);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let live = SITE.replace("locked_out = true", "locked_out = false");
        assert_eq!(only(&CHECK, &live).verdict, Verdict::Fails);
        let narrow = SITE.replace("clear_width = \"10 ft\"", "clear_width = \"7 ft\"");
        let finding = only(&CHECK, &narrow);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.demand.is_some());
    }

    #[test]
    fn unknown_on_a_public_way_and_without_agreement() {
        let public = SITE.replace(
            "on_public_way = false",
            "on_public_way = true\npermit = \"county roads, 2026-04-28\"",
        );
        assert_eq!(only(&CHECK, &public).verdict, Verdict::UnknownUntil);
        let bare = SITE
            .replace("agreed_with = \"owner\"\nagreed = 2026-04-30", "")
            .replace("fire_access = true", "fire_access = false");
        let finding = only(&CHECK, &bare);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let none = SITE.replace("zone = \"zone-gate\"", "");
        assert_eq!(only(&CHECK, &none).verdict, Verdict::UnknownUntil);
    }
}
