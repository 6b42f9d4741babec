//! The devices that protect people at a gate, and what is told of them in yes and no.

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use site::{Device, DeviceKind, Direction, Gate, Operator, Origin, ProtectionType, Site};

/// The devices of a gate; those that name none belong to the only gate of the site.
pub(crate) fn of_gate<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    let only = site.gate.len() == 1;
    site.device.iter().filter(move |device| match &device.gate {
        Some(name) => *name == gate.id,
        None => only,
    })
}

/// The beams, scanners and edges of a gate that protect people. Loops see steel and are none.
pub(super) fn sensors<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    of_gate(site, gate).filter(|device| is_sensor(device))
}

/// A beam, a scanner or an edge that protects people.
pub(crate) fn is_sensor(device: &Device) -> bool {
    let counts = matches!(
        device.protection,
        Some(ProtectionType::B1 | ProtectionType::B2)
    );
    counts && device.kind != DeviceKind::Loop
}

/// The device acts in a direction; one that names none acts in both.
pub(crate) fn acts(device: &Device, direction: Direction) -> bool {
    device.guards.is_empty() || device.guards.contains(&direction)
}

/// A yes or a no of a record.
pub(crate) fn told<'s>(
    asking: &mut Asking<'s>,
    origin: &'s Origin,
    key: &'static str,
    value: Option<bool>,
) -> Result<bool, Halt> {
    value.map_or_else(|| asking.lack(origin, key, Wants::Written("true")), Ok)
}

/// A yes or a no of a record below an operator: `[operator.behavior]`.
pub(super) fn behavior_told<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    (key, path): (&'static str, &'static str),
    value: Option<bool>,
) -> Result<bool, Halt> {
    match &operator.behavior {
        Some(behavior) => told(asking, &behavior.origin, key, value),
        None => told(asking, &operator.origin, path, None),
    }
}

/// Names as a list.
pub(super) fn names<'s>(devices: impl IntoIterator<Item = &'s Device>) -> String {
    let names: Vec<&str> = devices
        .into_iter()
        .map(|device| device.id.as_str())
        .collect();
    names.join(", ")
}

/// A sensor of this kind acts at the gate in a direction.
pub(super) fn acts_there(
    site: &Site,
    gate: &Gate,
    kinds: &[ProtectionType],
    direction: Direction,
) -> bool {
    let of_kind = |device: &Device| {
        device
            .protection
            .is_some_and(|protection| kinds.contains(&protection))
    };
    sensors(site, gate).any(|device| of_kind(device) && acts(device, direction))
}
