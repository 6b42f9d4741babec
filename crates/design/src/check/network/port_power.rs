//! Whether both ends of a powered data cable speak the same kind of power: part of the question of budgets.

use super::budget::fed;
use crate::asking::{Asking, pick};
use crate::outcome::Halt;
use site::{Device, PortPower, Site};

/// How a port gives power or a device takes it: as written, or by its class.
pub(super) fn takes(device: &Device) -> Option<PortPower> {
    let written = device.ethernet.as_ref();
    let written = written.and_then(|ethernet| ethernet.port_power);
    written.or(device.poe_class.map(|_| PortPower::Asked))
}

/// The devices that get another kind of power than they expect, with the kind that they get.
pub(super) fn of_another_kind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
) -> Result<Vec<(&'s Device, &'static str)>, Halt> {
    let gives = kind(asking, gear);
    let mut strangers = Vec::new();
    let mut whole = Ok(());
    for device in fed(site, gear) {
        let takes = kind(asking, device);
        match (&gives, takes) {
            (Ok(gives), Ok(takes)) if *gives != takes => {
                strangers.push((device, quantity::Word::word(*gives)));
            }
            (_, Err(halt)) => whole = Err(halt),
            _ => {}
        }
    }
    gives?;
    if strangers.is_empty() {
        whole?;
    }
    Ok(strangers)
}

fn kind<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<PortPower, Halt> {
    match takes(device) {
        Some(kind) => Ok(kind),
        None => pick!(asking, device.ethernet?.port_power),
    }
}
