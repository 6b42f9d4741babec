//! Single faults by the wiring, the feeding and the place of sensors, and which sensors each of them takes out.
//!
//! A fault that takes the operator's own supply away takes the motion with it and is none here.

use super::means::{is_sensor, sensors};
use quantity::Quantity as _;
use site::{Cable, Device, Gate, Id, LinkKind, Position, Site};

/// One fault and the sensors that are dead by it.
#[derive(Debug)]
pub(super) struct SingleFault<'s> {
    pub(super) what: String,
    pub(super) lost: Vec<&'s Device>,
}

/// Half the width of a car's bumper, in meters: what stands within it of one place is knocked at once.
const BUMPER: f64 = 0.9;

/// Every single fault that takes out at least one sensor of a gate and leaves it moving.
pub(super) fn single_faults<'s>(site: &'s Site, gate: &'s Gate) -> Vec<SingleFault<'s>> {
    let mine: Vec<&Device> = sensors(site, gate).collect();
    let mut faults = Vec::new();
    let mut add = |what: String, lost: Vec<&'s Device>| {
        if !lost.is_empty() {
            faults.push(SingleFault { what, lost });
        }
    };
    for cable in &site.cable {
        add(
            format!("cable {} cut", cable.id),
            by_cables(site, gate, &mine, &[cable]),
        );
    }
    for conduit in &site.conduit {
        let through: Vec<&Cable> = through(site, &conduit.id);
        add(
            format!("conduit {} dug through", conduit.id),
            by_cables(site, gate, &mine, &through),
        );
    }
    for supply in &site.supply {
        let dead = |name: &Id| is_fed_by(site, Some(name), &supply.id);
        add(
            format!("supply {} dead", supply.id),
            by_feeders(site, gate, &mine, dead),
        );
    }
    for enclosure in &site.enclosure {
        let inside = |name: &Id| stands_in(site, name, &enclosure.id);
        let mut lost = by_feeders(site, gate, &mine, inside);
        let mounted = mine
            .iter()
            .filter(|device| device.enclosure.as_ref() == Some(&enclosure.id));
        lost.extend(mounted.copied());
        add(format!("enclosure {} flooded", enclosure.id), lost);
    }
    for post in &gate.post {
        if let Some(at) = &post.at {
            add(format!("{} knocked", post.id), knocked(&mine, at));
        }
    }
    for device in &mine {
        for at in [device.at, device.to].iter().flatten() {
            let lost = knocked(&mine, at);
            add(format!("a bumper at {}", device.id), lost);
        }
    }
    for leaf in &gate.leaf {
        let carried = mine
            .iter()
            .filter(|device| device.carried_by.as_ref() == Some(&leaf.id));
        add(format!("{} knocked", leaf.id), carried.copied().collect());
    }
    for (what, key) in [("fuse", fuse as Mark), ("input", input as Mark)] {
        for device in &mine {
            let Some(mark) = key(device) else { continue };
            let shared = mine.iter().filter(|other| key(other) == Some(mark));
            let lost = shared.copied().collect();
            let state = if what == "fuse" { "blown" } else { "stuck" };
            add(format!("{what} {mark} {state}"), lost);
        }
    }
    let by_radio = mine.iter().filter(|device| is_by_radio(device));
    add("radio jammed".to_owned(), by_radio.copied().collect());
    faults
}

/// A mark of a device.
type Mark = fn(&Device) -> Option<&str>;

fn fuse(device: &Device) -> Option<&str> {
    device.fuse.as_ref().map(site::Id::as_str)
}

fn input(device: &Device) -> Option<&str> {
    device.input.as_ref().map(site::Text::as_str)
}

/// Faults that take out the same sensors, as one.
pub(super) fn merged(faults: Vec<SingleFault<'_>>) -> Vec<SingleFault<'_>> {
    let mut merged: Vec<SingleFault<'_>> = Vec::new();
    for fault in faults {
        let same = |known: &&mut SingleFault<'_>| {
            let known = &known.lost;
            known.len() == fault.lost.len()
                && known.iter().zip(&fault.lost).all(|(a, b)| a.id == b.id)
        };
        match merged.iter_mut().find(same) {
            Some(known) if known.what.contains(&fault.what) => {}
            Some(known) => known.what = format!("{}, {}", known.what, fault.what),
            None => merged.push(fault),
        }
    }
    merged
}

/// A sensor whose signal runs by cable, and none of the site's cables ends at it.
pub(super) fn lacks_its_cable(site: &Site, device: &Device) -> bool {
    let ends = |cable: &Cable| cable.from == device.id || cable.to == device.id;
    is_sensor(device) && !has_a_cell(device) && !site.cable.iter().any(ends)
}

fn has_a_cell(device: &Device) -> bool {
    let kind = device.link.as_ref().and_then(|link| link.kind);
    matches!(kind, Some(LinkKind::Radio | LinkKind::Optical))
}

fn is_by_radio(device: &Device) -> bool {
    let kind = device.link.as_ref().and_then(|link| link.kind);
    kind == Some(LinkKind::Radio)
}

/// The cables that run through a conduit.
fn through<'s>(site: &'s Site, conduit: &Id) -> Vec<&'s Cable> {
    site.cable
        .iter()
        .filter(|cable| cable.route.contains(conduit))
        .collect()
}

/// Sensors that are dead when these cables are cut; none when the operator is.
fn by_cables<'s>(
    site: &'s Site,
    gate: &'s Gate,
    mine: &[&'s Device],
    cut: &[&'s Cable],
) -> Vec<&'s Device> {
    let at = |name: &Id| {
        cut.iter()
            .any(|cable| cable.to == *name || cable.from == *name)
    };
    let fed = |name: &Id| {
        cut.iter()
            .any(|cable| cuts_feeding(site, cable) && is_fed_by(site, Some(name), &cable.to))
    };
    let own = |name: &Id| {
        let is_supply = site.supply.iter().any(|supply| supply.id == *name);
        !is_supply && at(name)
    };
    let stands = site
        .operators_of(gate)
        .any(|operator| own(&operator.id) || operator.supply.as_ref().is_some_and(fed));
    if stands {
        return Vec::new();
    }
    let dead = |device: &&&'s Device| at(&device.id) || device.supply.as_ref().is_some_and(fed);
    mine.iter().filter(dead).copied().collect()
}

/// The cable feeds a supply that has no battery of its own.
fn cuts_feeding(site: &Site, cable: &Cable) -> bool {
    let feeds = site.supply.iter().any(|supply| supply.id == cable.to);
    feeds && !has_battery(site, &cable.to)
}

fn has_battery(site: &Site, supply: &Id) -> bool {
    site.battery
        .iter()
        .any(|battery| battery.supply.as_ref() == Some(supply))
}

/// Sensors whose feeder is dead; none when the operator's is.
fn by_feeders<'s>(
    site: &'s Site,
    gate: &'s Gate,
    mine: &[&'s Device],
    dead: impl Fn(&Id) -> bool,
) -> Vec<&'s Device> {
    let is_dead = |feeder: &Option<Id>| feeder.as_ref().is_some_and(&dead);
    if site
        .operators_of(gate)
        .any(|operator| is_dead(&operator.supply))
    {
        return Vec::new();
    }
    mine.iter()
        .filter(|device| is_dead(&device.supply))
        .copied()
        .collect()
}

/// The feeder of that name hangs on a source: it is the source, or is fed by it without a battery between.
fn is_fed_by(site: &Site, feeder: Option<&Id>, source: &Id) -> bool {
    let mut here = feeder;
    let feeders = site.supply.len() + site.device.len() + site.operator.len();
    for _ in 0..=feeders {
        match here {
            Some(name) if name == source => return true,
            Some(name) if !has_battery(site, name) => here = fed_from(site, name),
            _ => return false,
        }
    }
    false
}

/// What feeds a feeder: a supply, a switch, or the terminals of an operator.
fn fed_from<'s>(site: &'s Site, name: &Id) -> Option<&'s Id> {
    let supply = site.supply.iter().find(|supply| supply.id == *name);
    let device = site.device.iter().find(|device| device.id == *name);
    let operator = site.operator.iter().find(|operator| operator.id == *name);
    supply
        .and_then(|supply| supply.fed_by.as_ref())
        .or_else(|| device.and_then(|device| device.supply.as_ref()))
        .or_else(|| operator.and_then(|operator| operator.supply.as_ref()))
}

/// The feeder, or one that it hangs on, is mounted in an enclosure.
fn stands_in(site: &Site, feeder: &Id, enclosure: &Id) -> bool {
    let inside = site
        .supply
        .iter()
        .filter(|supply| supply.enclosure.as_ref() == Some(enclosure));
    inside
        .into_iter()
        .any(|supply| is_fed_by(site, Some(feeder), &supply.id))
}

/// Fixed sensors with an end within half a bumper of a place.
fn knocked<'s>(mine: &[&'s Device], place: &Position) -> Vec<&'s Device> {
    let hit = |device: &&&'s Device| {
        let ends = [device.at, device.to];
        device.carried_by.is_none() && ends.iter().flatten().any(|end| away(end, place) <= BUMPER)
    };
    mine.iter().filter(hit).copied().collect()
}

/// Distance of two places over the ground, in meters.
fn away(a: &Position, b: &Position) -> f64 {
    let along = a.x.nominal().base() - b.x.nominal().base();
    let across = a.y.nominal().base() - b.y.nominal().base();
    along.hypot(across)
}
