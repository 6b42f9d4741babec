//! Whether cameras, controller and recorder agree on the time: day by day, after a power cut, over a change to summer time,
//! and after a long time without the internet.
//!
//! One device inside the fence gives the time to all others. Between two settings each clock drifts, one forward and another
//! back. The source itself drifts while nothing outside sets it: schedules and evidence have to stand that.

use crate::asking::{Asking, Wants, need, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::network::segment_of;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::ClockDrift;
use site::{Device, DeviceKind, Id, Remote, RemoteKind, Site, TimeKeeping};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-clock",
    codes: BOTH,
    leaves_open: "drift in greater cold or heat than that of the data sheet, and a cell that has grown old: read the time on each device at every visit",
    concerns: "each camera, access controller and recorder, and what moves a gate by a schedule",
    ask,
};

/// How it is written how a site keeps the time.
const KEEPING: &str = "[time_keeping]\nsource = \"router-office\"\nzone = \"America/New_York\"\nallowed = \"2 s\"\nallowed_alone = \"15 min\"\nlongest_alone = \"365 days\"\nlongest_cut = \"72 h\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site.device.iter().filter(|it| has_clock(site, it)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            agrees(asking, site, device)
        });
    }
}

/// The time of the device matters: for evidence, for who may enter when, or for a schedule.
fn has_clock(site: &Site, device: &Device) -> bool {
    let by_schedule = |remote: &Remote| {
        remote.by == RemoteKind::Schedule && remote.through.as_ref() == Some(&device.id)
    };
    matches!(
        device.kind,
        DeviceKind::Camera | DeviceKind::AccessController | DeviceKind::Recorder
    ) || device.clock.is_some()
        || site.remote.iter().any(by_schedule)
}

fn agrees<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let Some(keeping) = &site.time_keeping else {
        return asking.lack(&site.origin, "time_keeping", Wants::Table(KEEPING));
    };
    let source = need!(asking, keeping.source, "\"router-office\"");
    let zone = need!(asking, keeping.zone, "\"America/New_York\"");
    let changes = need!(asking, device.clock?.changes_itself, "true").copied();
    let (source, zone) = (source?, zone?);
    let is_source = device.id == *source;
    let own = if is_source {
        alone(asking, keeping, device)
    } else {
        set(asking, keeping, device)
    };
    let survives = survives(asking, keeping, device, is_source);
    if !is_source && let Err(why) = reaches(asking, site, device, source)? {
        asking.say(|_| why);
        return Ok(Outcome::Rule(false));
    }
    if !changes? {
        asking.say(|_| {
            format!(
                "{} does not change to summer time by itself: for half the year its times and schedules are an hour off from the others'. Let it run in {zone} with the change on.",
                device.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let (own, survives) = (own?, survives?);
    asking.say(|print| {
        let by = if is_source {
            "gives the time to all others".to_owned()
        } else {
            format!("is set by {source}")
        };
        format!(
            "{} {by} and runs in {zone}: it may be {} off, {} are allowed; it changes to summer time by itself.",
            device.id,
            print.value(&own.demand.value),
            print.value(&own.capacity.value)
        )
    });
    Outcome::worst([Some(own), survives].into_iter().flatten()).ok_or(Halt)
}

/// What two clocks may be apart from one setting to the next.
fn set<'s>(
    asking: &mut Asking<'s>,
    keeping: &'s TimeKeeping,
    device: &'s Device,
) -> Result<Comparison, Halt> {
    let drift = read!(asking, device.clock?.drift);
    let since = read!(asking, device.network?.time_every);
    let allowed = read!(asking, keeping.allowed);
    let (drift, since) = (drift?, since?);
    let error = asking.work(&ClockDrift { drift, since })?;
    Ok(Comparison::at_most(
        Labeled::new("two clocks apart before they are set again", error.apart),
        Labeled::new("what evidence and schedules stand", allowed?),
    ))
}

/// What the source may be off after the longest time without the time from outside.
fn alone<'s>(
    asking: &mut Asking<'s>,
    keeping: &'s TimeKeeping,
    device: &'s Device,
) -> Result<Comparison, Halt> {
    let drift = read!(asking, device.clock?.drift);
    let since = read!(asking, keeping.longest_alone);
    let allowed = read!(asking, keeping.allowed_alone);
    let (drift, since) = (drift?, since?);
    let error = asking.work(&ClockDrift { drift, since })?;
    Ok(Comparison::at_most(
        Labeled::new("source off from the true time after that", error.off),
        Labeled::new("what evidence and schedules stand then", allowed?),
    ))
}

/// How long the clock goes on without power: the source must; another one may be set again by the source.
fn survives<'s>(
    asking: &mut Asking<'s>,
    keeping: &'s TimeKeeping,
    device: &'s Device,
    is_source: bool,
) -> Result<Option<Comparison>, Halt> {
    if !is_source {
        return Ok(None);
    }
    let cut = read!(asking, keeping.longest_cut);
    let reserve = read!(asking, device.clock?.reserve);
    Ok(Some(Comparison::at_most(
        Labeled::new("longest power cut", cut?),
        Labeled::new("time that its clock goes on without power", reserve?),
    )))
}

/// The device is set by the source, or by what the source sets; why not, where it is not.
fn reaches<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    source: &'s Id,
) -> Result<Result<(), String>, Halt> {
    let from = need!(asking, device.network?.time_from, "\"router-office\"")?;
    let setter = site.device.iter().find(|other| other.id == *from);
    let passed_on = setter.is_some_and(|setter| {
        let theirs = setter.network.as_ref().and_then(|it| it.time_from.as_ref());
        theirs == Some(source)
    });
    if from != source && !passed_on {
        return Ok(Err(format!(
            "{} is set by {from}, the others by {source}: after a day without the internet they disagree. Write time_from = \"{source}\" and set it so.",
            device.id
        )));
    }
    let (own, theirs) = (
        segment_of(site, device),
        setter.and_then(|it| segment_of(site, it)),
    );
    let (Some(own), Some(theirs)) = (own, theirs) else {
        return Ok(Ok(()));
    };
    let crosses = site.crossing.iter().any(|crossing| {
        crossing.from.as_ref() == Some(&own.id) && crossing.to.as_ref() == Some(&theirs.id)
    });
    if own.id != theirs.id && !crosses {
        return Ok(Err(format!(
            "{} on {} asks {from} on {} for the time, and nothing may cross there: write the crossing, or a source on its own segment.",
            device.id, own.id, theirs.id
        )));
    }
    Ok(Ok(()))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::all;
    use crate::{Finding, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [time_keeping]
        source = "keeper"
        zone = "America/New_York"
        allowed = "2 s"
        allowed_alone = "15 min"
        longest_alone = "365 days"
        longest_cut = "72 h"
        [[device]]
        id = "keeper"
        kind = "recorder"
        clock = { drift = "0.002 %", reserve = "1 year", changes_itself = true }
        [[device]]
        id = "camera"
        kind = "camera"
        network = { time_from = "keeper", time_every = "1 h" }
        clock = { drift = "0.01 %", changes_itself = true }
    "#;

    fn about(text: &str, subject: &str) -> Finding {
        let mut findings = all(&CHECK, text);
        findings.retain(|finding| finding.subject.name == subject);
        findings.remove(0)
    }

    #[test]
    fn holds_with_one_source_inside() {
        for subject in ["keeper", "camera"] {
            let finding = about(SITE, subject);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_where_clocks_part_or_the_source_forgets() {
        for (subject, old, new) in [
            ("camera", "\"1 h\"", "\"7 days\""),
            (
                "camera",
                "0.01 %\", changes_itself = true",
                "0.01 %\", changes_itself = false",
            ),
            ("camera", "time_from = \"keeper\"", "time_from = \"camera\""),
            ("keeper", "\"1 year\"", "\"1 day\""),
            ("keeper", "\"15 min\"", "\"5 min\""),
        ] {
            let finding = about(&SITE.replace(old, new), subject);
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{new}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_a_source_or_a_drift() {
        let finding = about(&SITE.replace("source = \"keeper\"", ""), "camera");
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let finding = about(&SITE.replace("drift = \"0.01 %\", ", ""), "camera");
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
