//! The devices of a gate that see vehicles, and what each does about them.

use super::lane::Ground;
use super::outline::Sized;
use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use formula::protection::LoopDetectionHeight;
use quantity::{Length, Quantity as _, Time};
use sim::vehicle::{Act, Detector, Field};
use sim::walk::Spot;
use site::{Device, DeviceKind, Direction, Gate, OnVehicle, Position, Site};

/// A detector, and the device that it is.
pub(super) struct Seeing<'s> {
    pub(super) detector: Detector,
    pub(super) device: &'s Device,
}

/// Every device of the gate that stands still, sees vehicles and acts on the leaf.
pub(super) fn seeing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    ground: &Ground,
    sized: Option<&Sized>,
) -> Result<Vec<Seeing<'s>>, Halt> {
    let only = site.gate.len() == 1;
    let mut whole = Ok(Vec::new());
    for device in &site.device {
        let here = device.gate.as_ref().map_or(only, |name| *name == gate.id);
        if !here || device.carried_by.is_some() || !sees_vehicles(device) {
            continue;
        }
        let detector = detector(asking, device, ground, sized);
        whole = whole.and_then(|mut whole| {
            if let Some(detector) = detector? {
                whole.push(Seeing { detector, device });
            }
            Ok(whole)
        });
    }
    whole
}

fn sees_vehicles(device: &Device) -> bool {
    use DeviceKind::{AreaScanner, Loop, Reflective, ThroughBeam};
    matches!(device.kind, AreaScanner | Loop | Reflective | ThroughBeam)
}

fn detector<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    ground: &Ground,
    sized: Option<&Sized>,
) -> Result<Option<Detector>, Halt> {
    let acts = acts(asking, device)?;
    if acts.is_empty() {
        return Ok(None);
    }
    let response = read!(asking, device.response_time);
    let drop_out = asking.read_if_there(&device.origin, "drop_out", device.drop_out.as_ref());
    let stays_on = stays_on(asking, device);
    let field = match device.kind {
        DeviceKind::Loop => ring(asking, device, ground, sized).map(Some),
        DeviceKind::AreaScanner => area(asking, device, ground).map(Some),
        _ => beam(asking, device, ground),
    };
    let (response, stays_on) = (response?, stays_on?);
    Ok(field?.map(|field| Detector {
        field,
        acts,
        response,
        drop_out: drop_out.unwrap_or(Time::from_base(0.0)),
        stays_on,
    }))
}

/// What it does to the leaf: as written, or for what protects people the directions that it guards.
fn acts<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Vec<Act>, Halt> {
    if device.on_vehicle.is_empty() {
        if device.kind == DeviceKind::Loop {
            return asking.lack(
                &device.origin,
                "on_vehicle",
                Wants::Written("[\"holds open\", \"stops closing\"]"),
            );
        }
        let guards = |direction| device.guards.is_empty() || device.guards.contains(&direction);
        let closing = guards(Direction::Closing).then_some(Act::StopsClosing);
        let opening = guards(Direction::Opening).then_some(Act::StopsOpening);
        return Ok(closing.into_iter().chain(opening).collect());
    }
    let act = |does: &OnVehicle| match does {
        OnVehicle::Reports | OnVehicle::Opens => None,
        OnVehicle::HoldsOpen => Some(Act::HoldsOpen),
        OnVehicle::StopsClosing => Some(Act::StopsClosing),
        OnVehicle::StopsOpening => Some(Act::StopsOpening),
    };
    Ok(device.on_vehicle.iter().filter_map(act).collect())
}

/// A loop's detector may tune a standing vehicle out; light does not.
fn stays_on<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<bool, Halt> {
    match device.stays_on {
        None if device.kind == DeviceKind::Loop => {
            asking.lack(&device.origin, "stays_on", Wants::Written("true"))
        }
        stays => Ok(stays.unwrap_or(true)),
    }
}

fn beam<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    ground: &Ground,
) -> Result<Option<Field>, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let width = read!(asking, device.detection_capability);
    let ([x, y, z], [to_x, to_y, to_z]) = (at?, to?);
    let width = width?;
    // Along the lane it is not a beam for vehicles.
    if (to_x - x).base().abs() < (to_y - y).base().abs() {
        return Ok(None);
    }
    let level = (z + to_z).base() / 2.0 - ground.at((y + to_y).base() / 2.0);
    Ok(Some(Field::Beam {
        from: Spot { x, y },
        to: Spot { x: to_x, y: to_y },
        height: Length::from_base(level.max(0.0)),
        width,
    }))
}

fn area<'s>(asking: &mut Asking<'s>, device: &'s Device, ground: &Ground) -> Result<Field, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let smallest = read!(asking, device.detection_capability);
    if device.field.len() < 3 {
        return asking.lack(&device.origin, "field", Wants::Written(FIELD));
    }
    let [_, _, z] = at?;
    let corner = |at: &Position| Spot {
        x: at.x.nominal(),
        y: at.y.nominal(),
    };
    let corners: Vec<Spot> = device.field.iter().map(corner).collect();
    let highest = corners
        .iter()
        .map(|corner| ground.at(corner.y.base()))
        .fold(f64::NEG_INFINITY, f64::max);
    Ok(Field::Area {
        corners,
        height: Length::from_base((z.base() - highest).max(0.0)),
        smallest: smallest?,
    })
}

/// How the field of a scanner is written.
const FIELD: &str = "[[\"0 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"10 ft\", \"1 ft\"], [\"0 ft\", \"10 ft\", \"1 ft\"]]";

fn ring<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    ground: &Ground,
    sized: Option<&Sized>,
) -> Result<Field, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let least = read!(asking, device.detection_capability);
    let ([x, y, z], [to_x, to_y, _]) = (at?, to?);
    let (near, far) = (
        Spot {
            x: low(x, to_x),
            y: low(y, to_y),
        },
        Spot {
            x: high(x, to_x),
            y: high(y, to_y),
        },
    );
    let short_side = low(far.x - near.x, far.y - near.y);
    // The wire lies below the surface at the gate line or below that above it, whichever is deeper.
    let above = ground.at((near.y + far.y).base() / 2.0);
    let depth = Length::from_base((above - z.base()).max(-z.base()).max(0.0));
    let metal = sized
        .into_iter()
        .flat_map(|sized| &sized.outline.parts)
        .filter(|part| part.metal);
    let clearance = metal.map(|part| part.bottom.base()).fold(0.0, f64::max);
    let sees = asking.work(&LoopDetectionHeight {
        short_side,
        clearance: depth + Length::from_base(clearance),
    })?;
    Ok(Field::Loop {
        near,
        far,
        height: Length::from_base((sees.height - depth).base().max(0.0)),
        least: least?,
    })
}

fn low(one: Length, other: Length) -> Length {
    if one < other { one } else { other }
}

fn high(one: Length, other: Length) -> Length {
    if one < other { other } else { one }
}
