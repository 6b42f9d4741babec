//! Which devices see or feel somebody in a zone, by where they are.
//!
//! A contact edge that a leaf carries covers the part of the leaf that it lies on, one on a post what is right beside it;
//! a photo-eye covers what is within five inches of its line, an area scanner what is in its field or as near beside it. Loops see steel and
//! never count.

use crate::asking::Asking;
use crate::check::plane::{self, Piece, Point, between};
use crate::outcome::Halt;
use crate::zone::field::sees;
use crate::zone::{Zone, ZoneKind};
use formula::{Evidence, Source};
use site::{Device, DeviceKind, Direction, Gate, ProtectionType, Site};

/// A contact edge feels somebody whom the leaf presses within this distance of it.
const BESIDE_EDGE: f64 = 0.15;
/// Ends of an edge may stop this much short of the zone's: less than toes need.
const SHORT: f64 = 0.05;
/// Part of a long lower edge that a contact edge may leave open: less than a body needs.
const OPEN_LENGTH: f64 = 0.5;
/// A photo-eye sees whoever is within this distance of its line: 5 in.
pub(crate) const BESIDE_BEAM: f64 = 5.0 * 0.0254;

static FIELDS: Source = Source {
    work: "how far beside its line or strip a device still sees or feels a person",
    clause: "5 in beside a photo-eye, 6 in beside a contact edge, 2 in beyond its ends",
    evidence: Evidence::CommonPractice,
    seen: "photo-eyes are commonly set within 5 in of the leaf; a person is wider than that",
};

/// A device's strip, line or place: two ends, with their heights.
type Ends = [[f64; 3]; 2];

/// The sensors that protect people at a gate and act in a direction; a device that names no gate belongs to the only one.
pub(crate) fn sensors<'s>(
    site: &'s Site,
    gate: &'s Gate,
    direction: Direction,
) -> impl Iterator<Item = &'s Device> {
    let only = site.gate.len() == 1;
    site.device.iter().filter(move |device| {
        let mine = device.gate.as_ref().map_or(only, |name| *name == gate.id);
        mine && device.protection.is_some()
            && device.kind != DeviceKind::Loop
            && device.guards.contains(&direction)
    })
}

/// The sensors that see or feel somebody in a zone while the leaf moves in a direction.
pub(crate) fn covering<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (zone, direction): (&Zone, Direction),
) -> Result<Vec<&'s Device>, Halt> {
    let mut found = Ok(Vec::new());
    for device in sensors(site, gate, direction) {
        let covers = covers(asking, device, zone);
        found = found.and_then(|mut found| {
            if covers? {
                found.push(device);
            }
            Ok(found)
        });
    }
    if zone.catches {
        asking.rest_on(&FIELDS);
    }
    found
}

fn covers<'s>(asking: &mut Asking<'s>, device: &'s Device, zone: &Zone) -> Result<bool, Halt> {
    match device.kind {
        DeviceKind::ContactEdge => {
            let ends = ends(asking, device)?;
            Ok(match &device.carried_by {
                Some(leaf) => leaf.as_str() == zone.leaf && feels_on_leaf(&ends, zone),
                None => feels_beside(&ends, zone),
            })
        }
        DeviceKind::ThroughBeam | DeviceKind::Reflective => {
            let ends = ends(asking, device)?;
            Ok(device.carried_by.is_none() && is_beside_beam(&ends, zone))
        }
        DeviceKind::AreaScanner => sees(asking, device, &zone.extent),
        _ => Ok(false),
    }
}

/// The two ends of a strip or a beam.
pub(crate) fn ends<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Ends, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let flat = |ends: [quantity::Length; 3]| ends.map(quantity::Quantity::base);
    Ok([flat(at?), flat(to?)])
}

fn seen_from_above(ends: &Ends) -> Piece {
    ends.map(|end| (end[0], end[1]))
}

/// An edge on the leaf lies on the part that comes to somebody, over the zone's height, or along its whole lower edge.
fn feels_on_leaf(ends: &Ends, zone: &Zone) -> bool {
    let Some(part) = zone.on_leaf else {
        return false;
    };
    let strip = seen_from_above(ends);
    if between(&strip, &part) > BESIDE_EDGE {
        return false;
    }
    let length = length(&part);
    if length <= OPEN_LENGTH {
        return is_over_height(ends, zone);
    }
    let lower = ends[0][2].max(ends[1][2]);
    let near = zone.kind == ZoneKind::UnderArm || lower <= zone.extent.high[2] + BESIDE_EDGE;
    let on_part = strip.map(|end| plane::nearest(end, &part));
    near && self::length(&on_part) >= length - OPEN_LENGTH
}

/// An edge on a post or a wall lies beside the place where the gap is least.
fn feels_beside(ends: &Ends, zone: &Zone) -> bool {
    let strip = seen_from_above(ends);
    let place = [zone.least_at; 2];
    between(&strip, &place) <= BESIDE_EDGE && is_over_height(ends, zone)
}

fn is_over_height(ends: &Ends, zone: &Zone) -> bool {
    let (low, high) = (ends[0][2].min(ends[1][2]), ends[0][2].max(ends[1][2]));
    low <= zone.extent.low[2] + SHORT && high >= zone.extent.high[2] - SHORT
}

/// The middle of the zone lies beside the beam, and the beam is not above it.
fn is_beside_beam(ends: &Ends, zone: &Zone) -> bool {
    let beam = seen_from_above(ends);
    let middle = zone.extent.middle();
    let width = |axis: usize| zone.extent.high[axis] - zone.extent.low[axis];
    let half = width(0).min(width(1)) / 2.0;
    let low = ends[0][2].min(ends[1][2]);
    low <= zone.extent.high[2] && plane::from(middle, &beam) <= BESIDE_BEAM + half
}

fn length(piece: &Piece) -> f64 {
    let [one, other]: [Point; 2] = *piece;
    (one.0 - other.0).hypot(one.1 - other.1)
}

/// The letters of the means that cover a zone, each once; the drive's own sensing is type A and feels what the leaf meets.
pub(crate) fn letters(zone: &Zone, devices: &[&Device], own_sensing: bool) -> Vec<ProtectionType> {
    let mut letters: Vec<_> = devices
        .iter()
        .filter_map(|device| device.protection)
        .collect();
    if own_sensing && zone.kind.is_felt_by_the_drive() {
        letters.push(ProtectionType::A);
    }
    letters.sort_unstable();
    letters.dedup();
    letters
}
