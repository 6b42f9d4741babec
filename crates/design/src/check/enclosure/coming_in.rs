//! Which cables come into an enclosure from outside.

use site::{Cable, Enclosure, Id, Site};

/// The cables with one end in the enclosure and the other outside.
pub(super) fn cables<'s>(
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> impl Iterator<Item = &'s Cable> {
    site.cable.iter().filter(move |cable| {
        inside(site, enclosure, &cable.from) != inside(site, enclosure, &cable.to)
    })
}

/// The thing of this name is the enclosure, or is mounted in it.
fn inside(site: &Site, enclosure: &Enclosure, name: &Id) -> bool {
    if *name == enclosure.id {
        return true;
    }
    let device = site.device.iter().find(|device| device.id == *name);
    let supply = site.supply.iter().find(|supply| supply.id == *name);
    let battery = site.battery.iter().find(|battery| battery.id == *name);
    let home = device
        .and_then(|device| device.enclosure.as_ref())
        .or_else(|| supply.and_then(|supply| supply.enclosure.as_ref()))
        .or_else(|| battery.and_then(|battery| battery.enclosure.as_ref()));
    home == Some(&enclosure.id)
}
