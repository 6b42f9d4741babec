//! What a port has to give for all that is fed through it, loss in warm copper counted.

use crate::asking::{Asking, Wants, pick, read};
use crate::circuit::conductor::resistance;
use crate::network::cable_between;
use crate::outcome::Halt;
use formula::power::{ConductorResistance, Metal, Stranding};
use formula::signal::{PoePower, PoweredPairs};
use quantity::{Length, Power, Quantity as _, Ratio, ResistancePerLength};
use site::{Cable, Device, Site};

/// Devices fed one through the other that are followed: more are a circle.
const DEEPEST: usize = 8;

/// The switch, injector or extender that feeds a device over its data cable.
pub(crate) fn port_of<'s>(site: &'s Site, device: &Device) -> Option<&'s Device> {
    let name = device.supply.as_ref()?;
    site.device.iter().find(|other| other.id == *name)
}

/// Power that a device takes at its own end: its own, and what it passes on to those behind it.
pub(crate) fn drawn<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<Power, Halt> {
    behind(asking, site, device, DEEPEST)
}

fn behind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    deeper: usize,
) -> Result<Power, Halt> {
    let own = read!(asking, device.power);
    if deeper == 0 {
        return asking.refuse("these devices feed each other in a circle");
    }
    let mut sum = own;
    for fed in &site.device {
        let through = port_of(site, fed).is_some_and(|port| std::ptr::eq(port, device));
        if !through {
            continue;
        }
        let power = behind(asking, site, fed, deeper - 1);
        let run = run(asking, site, device, fed);
        let given = power.and_then(|power| {
            let arrival = asking.work(&PoePower { power, ..run? })?;
            Ok(arrival.source_power)
        });
        sum = sum.and_then(|sum| Ok(sum + given?));
    }
    sum
}

/// The run from a port to a device, without the device's power.
pub(crate) fn run<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    port: &'s Device,
    device: &'s Device,
) -> Result<PoePower, Halt> {
    let source = read!(asking, port.port_voltage);
    let Some(cable) = cable_between(site, port, device) else {
        const CABLE: &str = "[[cable]]\nid = \"w-01\"\ncarries = \"data\"\nfrom = \"net-switch\"\nto = \"…\"\nsize = \"23 AWG\"\nlength = \"120 ft\"";
        return asking.lack(&device.origin, "cable", Wants::Table(CABLE));
    };
    let length = read!(asking, cable.length);
    let resistance = resistance(asking, cable);
    let pairs = pick!(asking, cable.power_pairs);
    let pairs = match pairs? {
        2 => PoweredPairs::Two,
        4 => PoweredPairs::Four,
        _ => return asking.refuse("power over Ethernet flows over 2 pairs or over 4"),
    };
    let (source, length, resistance) = (source?, length?, resistance?);
    Ok(PoePower {
        source,
        resistance,
        length: length + cords(asking, cable, resistance)?,
        pairs,
        power: Power::from_base(0.0),
    })
}

/// Length of the cable itself that resists as much as its patch cords do, as hot as it; none where none are written.
fn cords<'s>(
    asking: &mut Asking<'s>,
    cable: &'s Cable,
    resistance: ResistancePerLength,
) -> Result<Length, Halt> {
    let Some(cords) = &cable.cords else {
        return Ok(Length::from_base(0.0));
    };
    let length = read!(asking, cords.length)?;
    if length.base() <= 0.0 {
        return Ok(length);
    }
    let size = pick!(asking, cords.size)?;
    let temperature = read!(asking, cable.hottest)?;
    let cord = asking
        .work(&ConductorResistance {
            size,
            metal: Metal::Copper,
            stranding: Stranding::Stranded,
            temperature,
        })?
        .resistance;
    let share: Ratio = cord / resistance;
    Ok(length * share)
}
