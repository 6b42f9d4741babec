//! Lines out of doors: where they end, whether they are metal, and which protectors name them.

use site::{Cable, Carries, Device, DeviceKind, Id, Site, Supply};

/// It is glass: a data cable to which neither conductor size nor metal is given.
pub(super) fn is_glass(cable: &Cable) -> bool {
    cable.carries == Some(Carries::Data)
        && cable.size.is_none()
        && cable.metal.is_none()
        && cable.stranding.is_none()
}

/// The enclosure in which a thing is, or that it is itself.
pub(super) fn enclosure_of<'s>(site: &'s Site, id: &'s Id) -> Option<&'s Id> {
    let device = site.device.iter().find(|device| device.id == *id);
    let supply = site.supply.iter().find(|supply| supply.id == *id);
    let battery = site.battery.iter().find(|battery| battery.id == *id);
    let itself = site.enclosure.iter().find(|enclosure| enclosure.id == *id);
    device
        .and_then(|device| device.enclosure.as_ref())
        .or_else(|| supply.and_then(|supply| supply.enclosure.as_ref()))
        .or_else(|| battery.and_then(|battery| battery.enclosure.as_ref()))
        .or_else(|| itself.map(|enclosure| &enclosure.id))
}

/// The protectors that name a cable.
pub(super) fn protectors<'s>(
    site: &'s Site,
    cable: &'s Cable,
) -> impl Iterator<Item = &'s Device> + use<'s> {
    site.device.iter().filter(|device| {
        device.kind == DeviceKind::SurgeProtector
            && device
                .surge
                .as_ref()
                .is_some_and(|surge| surge.cables.contains(&cable.id))
    })
}

/// The supply of that name.
pub(super) fn supply<'s>(site: &'s Site, id: &Id) -> Option<&'s Supply> {
    site.supply.iter().find(|supply| supply.id == *id)
}

/// Where the power of a thing comes from in the end; nothing for what takes none.
pub(super) fn root<'s>(site: &'s Site, id: &'s Id) -> Option<&'s Id> {
    let mut here = id;
    for _ in 0..16 {
        let device = site.device.iter().find(|device| device.id == *here);
        let operator = site.operator.iter().find(|operator| operator.id == *here);
        let found = supply(site, here);
        let next = match (device, operator, found) {
            (Some(device), _, _) => device.supply.as_ref()?,
            (_, Some(operator), _) => operator.supply.as_ref()?,
            (_, _, Some(supply)) => match &supply.fed_by {
                Some(feeder) => feeder,
                None => return Some(here),
            },
            _ => return None,
        };
        here = next;
    }
    None
}
