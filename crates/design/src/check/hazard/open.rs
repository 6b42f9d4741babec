//! How the zones of one question stand: wide enough, watched by a device, or open.

use crate::asking::Asking;
use crate::check::Round;
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::zone::means::covering;
use crate::zone::{Zone, gap, leaf};
use quantity::{Quantity as _, Word as _};
use site::{Device, Direction, Gate, GateKind, Site};

/// A zone in one direction, with the devices that see or feel somebody there.
struct Watched<'z, 's> {
    zone: &'z Zone,
    direction: Direction,
    devices: Vec<&'s Device>,
}

/// Asks of each gate concerned how the zones of one kind stand; `nothing` is said where there are none.
pub(super) fn ask<'s>(
    site: &'s Site,
    round: &mut Round<'s, '_>,
    asked: impl Fn(&Gate) -> bool,
    zones: impl Fn(&mut Asking<'s>, &'s Site, &'s Gate) -> Result<Vec<Zone>, Halt>,
    nothing: &'static str,
) {
    for gate in site.gate.iter().filter(|gate| asked(gate)) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            let zones = zones(asking, site, gate)?;
            answer(asking, (site, gate), &zones, nothing)
        });
    }
}

/// The leaf keeps its angle: it slides or lifts.
pub(super) fn moves_straight(gate: &Gate) -> bool {
    leaf::slides(gate) || gate.kind == GateKind::VerticalLift
}

/// The answer for the zones of a gate: each that can catch somebody needs a device in every direction in which it is live.
pub(super) fn answer<'s>(
    asking: &mut Asking<'s>,
    (site, gate): (&'s Site, &'s Gate),
    zones: &[Zone],
    nothing: &'static str,
) -> Answer {
    let catching = zones.iter().filter(|zone| zone.catches);
    let pairs: Vec<(&Zone, Direction)> = catching
        .flat_map(|zone| zone.live.iter().map(move |direction| (zone, *direction)))
        .collect();
    let mut watched = Ok(Vec::new());
    for (zone, direction) in &pairs {
        let devices = covering(asking, site, gate, (zone, *direction));
        watched = watched.and_then(|mut all| {
            all.push(Watched {
                zone,
                direction: *direction,
                devices: devices?,
            });
            Ok(all)
        });
    }
    let watched: Vec<Watched<'_, '_>> = watched?;
    asking.say(|print| sentence(print, zones, &watched, nothing));
    for one in &watched {
        asking.note(|print| line(print, one));
    }
    let open = watched.iter().filter(|one| one.devices.is_empty());
    if let Some(worst) = Outcome::worst(open.map(|one| one.zone.compared())) {
        return Ok(worst);
    }
    if watched.is_empty() {
        let gaps = Outcome::worst(zones.iter().map(Zone::compared));
        return Ok(gaps.unwrap_or(Outcome::Rule(true)));
    }
    let count = u32::try_from(watched.len()).map_err(|_| Halt)?;
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new("places and directions that catch somebody", count),
        Labeled::new("of these with a device that sees or feels it there", count),
    )))
}

fn sentence(
    print: Print,
    zones: &[Zone],
    watched: &[Watched<'_, '_>],
    nothing: &'static str,
) -> String {
    let open: Vec<&Watched<'_, '_>> = watched
        .iter()
        .filter(|one| one.devices.is_empty())
        .collect();
    if let Some(first) = open.first() {
        let places: Vec<String> = open.iter().map(|one| open_words(print, one)).collect();
        return format!(
            "Nothing sees or feels somebody {}. What would answer it: {}.",
            places.join("; nor "),
            first.zone.kind.answers()
        );
    }
    if !watched.is_empty() {
        let places: Vec<String> = watched
            .iter()
            .map(|one| {
                format!(
                    "{} while {}: {}",
                    one.zone.words(),
                    one.direction.word(),
                    names(&one.devices)
                )
            })
            .collect();
        return format!(
            "Somebody can be caught, and is seen or felt, {}.",
            places.join("; ")
        );
    }
    let nearest = zones
        .iter()
        .min_by(|one, other| one.least_gap.base().total_cmp(&other.least_gap.base()));
    nearest.map_or_else(
        || nothing.to_owned(),
        |zone| {
            format!(
                "The least gap is {}, {}; nobody is caught there.",
                print.q(zone.least_gap),
                zone.words()
            )
        },
    )
}

fn open_words(print: Print, one: &Watched<'_, '_>) -> String {
    let crushed = gap::parts(one.zone.least_gap);
    let crushed = if crushed.is_empty() {
        String::new()
    } else {
        format!(", which crushes {crushed}")
    };
    format!(
        "{} while {} (gap {}{crushed})",
        one.zone.words(),
        one.direction.word(),
        print.q(one.zone.least_gap)
    )
}

fn line(print: Print, one: &Watched<'_, '_>) -> String {
    let seen = if one.devices.is_empty() {
        "no device".to_owned()
    } else {
        names(&one.devices)
    };
    format!(
        "{}, {}: gap {}, {seen}.",
        one.zone.words(),
        one.direction.word(),
        print.q(one.zone.least_gap)
    )
}

/// The names of devices, one after the other.
pub(crate) fn names(devices: &[&Device]) -> String {
    let names: Vec<&str> = devices.iter().map(|device| device.id.as_str()).collect();
    names.join(", ")
}
