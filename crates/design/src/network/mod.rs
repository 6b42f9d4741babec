//! The data network of a site: who is plugged into what, over which cable.

mod draw;
mod rate;
pub mod shown;

pub(crate) use draw::{drawn, port_of, run};
pub(crate) use rate::{Edge, port_rate, way};

use site::{Cable, Carries, Device, DeviceKind, Medium, NetworkSegment, Site};

/// What a device has to be for a data cable to be plugged into it on the way to others.
pub(crate) fn is_gear(device: &Device) -> bool {
    matches!(
        device.kind,
        DeviceKind::NetworkSwitch
            | DeviceKind::Injector
            | DeviceKind::Extender
            | DeviceKind::Router
    )
}

/// The devices of the data network, in the order of the site.
pub(crate) fn members(site: &Site) -> impl Iterator<Item = &Device> {
    site.device.iter().filter(|device| {
        is_gear(device)
            || matches!(device.kind, DeviceKind::Camera | DeviceKind::Recorder)
            || device.network.is_some()
            || port_of(site, device).is_some()
    })
}

/// The device that another one is plugged into: as written, or at the other end of its data cable.
pub(crate) fn upward<'s>(site: &'s Site, device: &Device) -> Option<&'s Device> {
    let written = device
        .network
        .as_ref()
        .and_then(|network| network.plugged_into.as_ref());
    let named = |name: &site::Id| site.device.iter().find(|other| other.id == *name);
    if let Some(name) = written {
        return named(name);
    }
    let gear = |name: &site::Id| named(name).filter(|other| is_gear(other));
    let mut cables = site.cable.iter().filter(|cable| is_data(cable));
    let from = cables
        .clone()
        .find_map(|cable| (cable.to == device.id).then(|| gear(&cable.from)).flatten());
    from.or_else(|| {
        if is_gear(device) {
            return None;
        }
        cables.find_map(|cable| (cable.from == device.id).then(|| gear(&cable.to)).flatten())
    })
    .or_else(|| port_of(site, device))
}

/// The devices that are plugged into another one, in the order of the site.
pub(crate) fn plugged<'s>(
    site: &'s Site,
    into: &'s Device,
) -> impl Iterator<Item = &'s Device> + use<'s> {
    members(site)
        .filter(|device| upward(site, device).is_some_and(|other| std::ptr::eq(other, into)))
}

/// The data cable between two devices; none for a patch cord inside an enclosure, and for a radio link.
pub(crate) fn cable_between<'s>(site: &'s Site, one: &Device, other: &Device) -> Option<&'s Cable> {
    let joins = |cable: &&Cable| {
        (cable.from == one.id && cable.to == other.id)
            || (cable.from == other.id && cable.to == one.id)
    };
    site.cable.iter().filter(|cable| is_data(cable)).find(joins)
}

/// A cable carries data.
pub(crate) fn is_data(cable: &Cable) -> bool {
    cable.carries == Some(Carries::Data)
}

/// A cable carries its signals on fiber.
pub(crate) fn is_fiber(cable: &Cable) -> bool {
    let channel = cable.channel.as_ref();
    channel.and_then(|channel| channel.medium) == Some(Medium::Fiber)
}

/// The segment that a device belongs to, where both are written.
pub(crate) fn segment_of<'s>(site: &'s Site, device: &Device) -> Option<&'s NetworkSegment> {
    let name = device.network.as_ref()?.segment.as_ref()?;
    let is = |segment: &&NetworkSegment| segment.id == *name;
    site.network_segment.iter().find(is)
}

/// A device belongs to the owner's own network.
pub(crate) fn is_of_owner(site: &Site, device: &Device) -> bool {
    segment_of(site, device).is_some_and(|segment| segment.of_owner == Some(true))
}

/// A device as a sentence names it: `camera-yard`.
pub(crate) fn names<'d>(devices: impl IntoIterator<Item = &'d Device>) -> String {
    let names: Vec<String> = devices
        .into_iter()
        .map(|device| device.id.to_string())
        .collect();
    crate::plain::and(&names)
}
