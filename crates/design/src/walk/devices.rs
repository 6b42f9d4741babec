//! The devices of a gate as the walk test takes them: what sees or feels a person, each with its slowest response.

use super::strip::{Ends, Places};
use crate::asking::{Asking, End, Wants};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Time};
use sim::walk::{Beam, ContactEdge, Direction, LeafEdge, Scanner, Spot};
use site::{Device, DeviceKind, Gate, Site};
use std::ops::Range;

/// One device that senses people, and where it stands in the world.
#[derive(Debug, Clone)]
pub(crate) struct Sensing {
    /// Its name on the site.
    pub(crate) id: String,
    /// A failure of it keeps the gate from moving: it is monitored, and the operator does so.
    pub(crate) monitored: Option<bool>,
    /// Where it stands in the world.
    pub(crate) slot: Slot,
}

/// Where a device stands in the world.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Slot {
    /// One of the beams.
    Beam(usize),
    /// One of the fields.
    Scanner(usize),
    /// Edges on the leaf: one for each direction in which it acts.
    Edges(Range<usize>),
    /// Not part of the walk: why.
    Left(&'static str),
}

/// Everything that senses.
#[derive(Debug, Default)]
pub(super) struct Devices {
    pub(super) beams: Vec<Beam>,
    pub(super) scanners: Vec<Scanner>,
    pub(super) edges: Vec<LeafEdge>,
    pub(super) sensing: Vec<Sensing>,
}

/// The devices of a gate; those that name none belong to the only gate of the site.
pub(crate) fn of_gate<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    let only = site.gate.len() == 1;
    site.device.iter().filter(move |device| match &device.gate {
        Some(name) => *name == gate.id,
        None => only,
    })
}

/// The device may sense a person: a beam, a field, an edge.
pub(crate) fn senses_people(device: &Device) -> bool {
    use DeviceKind::{AreaScanner, ContactEdge, Reflective, ThroughBeam};
    matches!(
        device.kind,
        ThroughBeam | Reflective | AreaScanner | ContactEdge
    )
}

/// Lowers every device of a gate that senses people. Loops see steel and are left out.
pub(super) fn devices<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    places: &Places<'_>,
) -> Result<Devices, Halt> {
    let mut all = Devices::default();
    let tests = site
        .operators_of(gate)
        .next()
        .and_then(|operator| operator.monitors_devices);
    let mut whole = Ok(());
    for device in of_gate(site, gate).filter(|device| senses_people(device)) {
        match slot(asking, device, places, &mut all) {
            Ok(slot) => all.sensing.push(Sensing {
                id: device.id.to_string(),
                monitored: device.monitored.map(|own| own && tests == Some(true)),
                slot,
            }),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| all)
}

fn slot<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    places: &Places<'_>,
    all: &mut Devices,
) -> Result<Slot, Halt> {
    if device.guards.is_empty() {
        if device.protection.is_none() {
            return Ok(Slot::Left("it does not stop the leaf"));
        }
        return asking.lack(&device.origin, "guards", Wants::Written("[\"closing\"]"));
    }
    if device.kind != DeviceKind::ContactEdge && device.keeps_from_starting == Some(false) {
        return asking.refuse(
            "a device lets the leaf start while it is blocked, so that whoever stands there is seen and struck all the same: set the controller so that a blocked device keeps the leaf from starting, and try it",
        );
    }
    match device.kind {
        DeviceKind::ContactEdge if device.carried_by.is_none() => Ok(Slot::Left(
            "a contact edge on a fixed face is felt only by who is already held against it",
        )),
        DeviceKind::ContactEdge => edge(asking, device, places, all),
        DeviceKind::AreaScanner => {
            all.scanners.push(scanner(asking, device)?);
            Ok(Slot::Scanner(all.scanners.len() - 1))
        }
        _ => {
            all.beams.push(beam(asking, device)?);
            Ok(Slot::Beam(all.beams.len() - 1))
        }
    }
}

/// The directions in which a device acts.
pub(super) fn guards(device: &Device) -> Vec<Direction> {
    device
        .guards
        .iter()
        .map(|direction| match direction {
            site::Direction::Opening => Direction::Opening,
            site::Direction::Closing => Direction::Closing,
        })
        .collect()
}

fn response<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Time, Halt> {
    let key = (&device.origin, "response_time");
    asking.read_at(key, device.response_time.as_ref(), End::High)
}

fn capability<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Length, Halt> {
    let key = (&device.origin, "detection_capability");
    asking.read_at(key, device.detection_capability.as_ref(), End::High)
}

/// A beam that may stand anywhere between its lowest and its highest end.
fn beam<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Beam, Halt> {
    let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
    let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
    let response = response(asking, device);
    let capability = capability(asking, device);
    let ([x0, y0, _], [x1, y1, _]) = (at?, to?);
    let (low, high) = heights(device);
    Ok(Beam {
        guards: guards(device),
        from: Spot { x: x0, y: y0 },
        to: Spot { x: x1, y: y1 },
        height: Length::from_base(0.5 * (low + high)),
        diameter: Length::from_base(capability?.base() + high - low),
        response: response?,
    })
}

/// Lowest and highest place of a device's two ends, tolerances counted, in meters.
pub(crate) fn heights(device: &Device) -> (f64, f64) {
    let ends = [device.at.as_ref(), device.to.as_ref()];
    let of = |pick: fn(&quantity::Measured<Length>) -> Length| {
        ends.iter().flatten().map(move |end| pick(&end.z).base())
    };
    (
        of(quantity::Measured::low).fold(f64::INFINITY, f64::min),
        of(quantity::Measured::high).fold(f64::NEG_INFINITY, f64::max),
    )
}

fn scanner<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Scanner, Halt> {
    let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
    let response = response(asking, device);
    let smallest = capability(asking, device);
    let corners: Vec<Spot> = device
        .field
        .iter()
        .map(|corner| Spot {
            x: corner.x.nominal(),
            y: corner.y.nominal(),
        })
        .collect();
    if corners.is_empty() {
        let example = "[[\"0 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"6 ft\", \"1 ft\"]]";
        return asking.lack(&device.origin, "field", Wants::Written(example));
    }
    let [_, _, height] = at?;
    Ok(Scanner {
        guards: guards(device),
        corners,
        bottom: height,
        top: height,
        smallest_object: smallest?,
        response: response?,
    })
}

/// A contact edge on the leaf: it acts where it goes ahead in a direction that it guards.
fn edge<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    places: &Places<'_>,
    all: &mut Devices,
) -> Result<Slot, Halt> {
    let (made, ends) = strip_of(asking, device)?;
    let first = all.edges.len();
    match places(device, &ends) {
        Err(why) => return Ok(Slot::Left(why)),
        Ok(strips) => all.edges.extend(strips.into_iter().map(|strip| LeafEdge {
            leaf: strip.leaf,
            from: strip.from,
            to: strip.to,
            edge: ContactEdge {
                guards: strip.guards,
                bottom: strip.bottom,
                top: strip.top,
                ..made.clone()
            },
        })),
    }
    Ok(Slot::Edges(first..all.edges.len()))
}

/// A contact edge by itself, as if it acted while the leaf closes, and its ends.
pub(super) fn strip_of<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
) -> Result<(ContactEdge, Ends), Halt> {
    let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
    let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
    let response = response(asking, device);
    let of = |key| (&device.origin, key);
    let actuation = asking.read_at(
        of("actuation_travel"),
        device.actuation_travel.as_ref(),
        End::High,
    );
    let soft = asking.read_at(of("soft_travel"), device.soft_travel.as_ref(), End::Low);
    let stiffness = asking.read_at(of("stiffness"), device.stiffness.as_ref(), End::High);
    let hard = asking.read_at(
        of("hard_stiffness"),
        device.hard_stiffness.as_ref(),
        End::High,
    );
    let ends = Ends { at: at?, to: to? };
    let made = ContactEdge {
        guards: Direction::Closing,
        bottom: ends.at[2],
        top: ends.to[2],
        actuation_travel: actuation?,
        response: response?,
        stiffness: stiffness?,
        soft_travel: soft?,
        hard_stiffness: hard?,
    };
    Ok((made, ends))
}
