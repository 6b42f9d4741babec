//! What each thing in an enclosure stands.

use quantity::{Measured, Temperature};
use site::{Enclosure, Id, Site};

/// The air that a thing stands, by its data sheet.
#[derive(Debug, Clone)]
pub struct Limit {
    /// Its name.
    pub name: String,
    /// Hottest air.
    pub hottest: Option<Temperature>,
    /// Coldest air.
    pub coldest: Option<Temperature>,
}

/// The limits of everything in it that has one, and of the enclosure as a whole.
pub(super) fn of(site: &Site, enclosure: &Enclosure) -> Vec<Limit> {
    let here = |id: Option<&Id>| id == Some(&enclosure.id);
    let control = enclosure.climate_control.as_ref();
    let whole = limit(
        "everything without a limit of its own",
        enclosure.hottest_inside.as_ref(),
        control.and_then(|control| control.coldest_inside.as_ref()),
    );
    let supplies = site.supply.iter().filter(|it| here(it.enclosure.as_ref()));
    let devices = site.device.iter().filter(|it| here(it.enclosure.as_ref()));
    let batteries = site.battery.iter().filter(|it| here(it.enclosure.as_ref()));
    let supplies =
        supplies.map(|it| limit(it.id.as_str(), it.hottest.as_ref(), it.coldest.as_ref()));
    let devices = devices.map(|it| limit(it.id.as_str(), it.hottest.as_ref(), it.coldest.as_ref()));
    let batteries = batteries.map(|it| {
        let charging = it.charging.as_ref();
        limit(
            &format!("{}, charging", it.id),
            charging.and_then(|charging| charging.hottest.as_ref()),
            charging.and_then(|charging| charging.coldest.as_ref()),
        )
    });
    supplies
        .chain(batteries)
        .chain(devices)
        .chain([whole])
        .filter(|limit| limit.hottest.is_some() || limit.coldest.is_some())
        .collect()
}

fn limit(
    name: &str,
    hottest: Option<&Measured<Temperature>>,
    coldest: Option<&Measured<Temperature>>,
) -> Limit {
    Limit {
        name: name.to_owned(),
        hottest: hottest.map(Measured::nominal),
        coldest: coldest.map(Measured::nominal),
    }
}

/// The lowest of the limits against heat.
pub(super) fn lowest_hot(limits: &[Limit]) -> Option<Temperature> {
    let all = limits.iter().filter_map(|limit| limit.hottest);
    all.reduce(|one, other| if other < one { other } else { one })
}

/// The highest of the limits against cold.
pub(super) fn highest_cold(limits: &[Limit]) -> Option<Temperature> {
    let all = limits.iter().filter_map(|limit| limit.coldest);
    all.reduce(|one, other| if other > one { other } else { one })
}
