//! Lines on which readers speak, loops that are watched, and what lies behind a station.

pub(crate) mod address_and_time;
pub(crate) mod legacy_line;
pub(crate) mod line;
pub(crate) mod opening_wires;
pub(crate) mod place;
pub(crate) mod secure_channel;
pub(crate) mod supervised_loop;

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use site::{Bus, BusNode, Device, DeviceKind, Site};

/// How a place on a bus is written.
const NODE: &str = "[[bus.node]]\ndevice = \"reader-entry\"\nalong = \"120 ft\"\nstub = \"0 ft\"\ntermination = \"120 Ω\"";

/// The places of a bus with their devices, in order along the line; a line has two at least.
pub(crate) fn nodes<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bus: &'s Bus,
) -> Result<Vec<(&'s BusNode, &'s Device)>, Halt> {
    if bus.node.len() < 2 {
        return asking.lack(&bus.origin, "node", Wants::Table(NODE));
    }
    let device = |node: &BusNode| site.device.iter().find(|device| device.id == node.device);
    let found: Option<Vec<_>> = bus
        .node
        .iter()
        .map(|node| device(node).map(|device| (node, device)))
        .collect();
    match found {
        Some(found) => Ok(found),
        None => asking.lack(&bus.origin, "node", Wants::Table(NODE)),
    }
}

/// It asks the others: the controller at the line.
pub(crate) fn asks(device: &Device) -> bool {
    device.kind == DeviceKind::AccessController
}

/// A reader or a keypad.
pub(crate) fn is_reader(device: &Device) -> bool {
    matches!(device.kind, DeviceKind::Reader | DeviceKind::Keypad)
}
