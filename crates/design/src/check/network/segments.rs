//! Whether nobody at the gate reaches the house or office network through it: part of the question of addresses.
//!
//! The gate has a segment of its own, kept apart from the owner's; what guards the crossing lets through what is named and
//! nothing else; a stranger who unplugs a camera outdoors finds a port that does not speak with him.

use super::addresses::PLAN;
use crate::asking::{Asking, need, pick};
use crate::check::Round;
use crate::network::{is_data, members};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use site::{Crossing, CrossingReach, Device, KeptApart, NetworkSegment, PortGuard, Site};

/// Asks it of each segment that is not the owner's own.
pub(super) fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let segments = site.network_segment.iter();
    for segment in segments.filter(|segment| segment.of_owner != Some(true)) {
        round.ask(About::new(&segment.origin, &segment.id), |asking| {
            apart(asking, site, segment)
        });
    }
}

fn apart<'s>(asking: &mut Asking<'s>, site: &'s Site, segment: &'s NetworkSegment) -> Answer {
    asking.rest_on(&PLAN);
    let kept = pick!(asking, segment.kept_apart);
    let blocked = need!(asking, segment.all_else_blocked, "true").copied();
    let mut leaks = Vec::new();
    let crossings = crossings(asking, site, segment, &mut leaks);
    let ports = outdoor_ports(asking, site, segment, &mut leaks);
    if kept.as_ref().is_ok_and(|kept| *kept == KeptApart::Not) {
        leaks.push(format!("{} is kept apart from nothing", segment.id));
    }
    if blocked.as_ref().is_ok_and(|blocked| !blocked) {
        leaks.push("what guards the crossing lets more through than what is written".to_owned());
    }
    leaks.extend(overlaps(site, segment));
    if !leaks.is_empty() {
        asking.say(|_| {
            format!(
                "Whoever unplugs a camera gets farther than the gate: {}. Keep the gate on switches of its own behind a guard that lets the named crossings through and nothing else.",
                leaks.join("; ")
            )
        });
        return Ok(Outcome::Rule(false));
    }
    kept?;
    blocked?;
    ports?;
    let crossings = crossings?;
    asking.say(|_| {
        let crossings = if crossings.is_empty() {
            "nothing crosses to another segment".to_owned()
        } else {
            format!("only this crosses: {}", and(&crossings))
        };
        format!(
            "{} is kept apart, and {crossings}. Ports outdoors speak with their own devices only or are out of reach.",
            segment.id
        )
    });
    Ok(Outcome::Rule(true))
}

/// What crosses from the segment, each in words; what lets everything through is a leak.
fn crossings<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    segment: &'s NetworkSegment,
    leaks: &mut Vec<String>,
) -> Result<Vec<String>, Halt> {
    let mut said = Vec::new();
    let mut whole = Ok(());
    let touches = |it: &&Crossing| {
        it.from.as_ref() == Some(&segment.id) || it.to.as_ref() == Some(&segment.id)
    };
    for crossing in site.crossing.iter().filter(touches) {
        let from = need!(asking, crossing.from, "\"gate-net\"").cloned();
        let to = need!(asking, crossing.to, "\"office-net\"").cloned();
        let what = need!(asking, crossing.what, "\"pictures to the recorder\"").cloned();
        match pick!(asking, crossing.reach) {
            Ok(CrossingReach::Everything) if crossing.from.as_ref() == Some(&segment.id) => {
                leaks.push(format!("{} lets everything through", crossing.id));
            }
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
        match (from, to, what) {
            (Ok(from), Ok(to), Ok(what)) => said.push(format!("{what} ({from} to {to})")),
            _ => whole = Err(Halt),
        }
    }
    whole.map(|()| said)
}

/// Devices of the segment that stand outdoors: the port of each has a guard.
fn outdoor_ports<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    segment: &'s NetworkSegment,
    leaks: &mut Vec<String>,
) -> Result<(), Halt> {
    let mut whole = Ok(());
    for device in members(site).filter(|it| is_outdoors(site, it, segment)) {
        match pick!(asking, device.network?.guard) {
            Ok(PortGuard::Open) => {
                leaks.push(format!("the port of {} lets anything in", device.id));
            }
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole
}

/// A device of the segment outside of every enclosure.
fn is_outdoors(site: &Site, device: &Device, segment: &NetworkSegment) -> bool {
    let of_it = device
        .network
        .as_ref()
        .is_some_and(|network| network.segment.as_ref() == Some(&segment.id));
    let wired = device
        .network
        .as_ref()
        .is_some_and(|network| network.radio_rate.is_none())
        || site
            .cable
            .iter()
            .any(|it| is_data(it) && (it.to == device.id || it.from == device.id));
    of_it && wired && device.enclosure.is_none()
}

/// Segments with addresses of this one.
fn overlaps(site: &Site, segment: &NetworkSegment) -> Vec<String> {
    let Some(own) = segment.addresses else {
        return Vec::new();
    };
    let others = site.network_segment.iter();
    others
        .filter(|other| other.id != segment.id)
        .filter(|other| other.addresses.is_some_and(|theirs| theirs.overlaps(own)))
        .map(|other| format!("{} and {} share addresses", segment.id, other.id))
        .collect()
}
