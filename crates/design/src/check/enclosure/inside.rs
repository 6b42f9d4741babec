//! What is inside an enclosure: its heat, what gives up first in the heat, and what stops first in the cold.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use formula::power::{EnclosureHeatBalance, EnclosureSurface};
use quantity::{Area, Measured, Power, Quantity as _, Temperature};
use site::{DeviceKind, Enclosure, Id, Origin, Site};

/// A device or supply inside an enclosure.
pub(super) struct Part<'s> {
    origin: &'s Origin,
    id: &'s Id,
    heat: Option<&'s Measured<Power>>,
    hottest: Option<&'s Measured<Temperature>>,
    coldest: Option<&'s Measured<Temperature>>,
    /// It gives off heat worth counting; a surge protector does not.
    warms: bool,
}

/// The devices and supplies in an enclosure.
pub(super) fn parts<'s>(site: &'s Site, enclosure: &'s Enclosure) -> Vec<Part<'s>> {
    let here = move |name: &Option<Id>| name.as_ref() == Some(&enclosure.id);
    let devices = site
        .device
        .iter()
        .filter(move |device| here(&device.enclosure))
        .map(|device| Part {
            origin: &device.origin,
            id: &device.id,
            heat: device.heat.as_ref(),
            hottest: device.hottest.as_ref(),
            coldest: device.coldest.as_ref(),
            warms: device.kind != DeviceKind::SurgeProtector,
        });
    let supplies = site
        .supply
        .iter()
        .filter(move |supply| here(&supply.enclosure))
        .map(|supply| Part {
            origin: &supply.origin,
            id: &supply.id,
            heat: supply.heat.as_ref(),
            hottest: supply.hottest.as_ref(),
            coldest: supply.coldest.as_ref(),
            warms: true,
        });
    devices.chain(supplies).collect()
}

/// Heat that everything inside gives off, but for a heater.
pub(super) fn heat<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    parts: &[Part<'s>],
) -> Result<Power, Halt> {
    let mut sum = Power::from_base(0.0);
    let mut whole = Ok(());
    for part in parts.iter().filter(|part| part.warms) {
        match asking.read(part.origin, "heat", part.heat) {
            Ok(heat) => sum += heat,
            Err(halt) => whole = Err(halt),
        }
    }
    for mounted in &enclosure.mounted {
        match read!(asking, mounted.heat) {
            Ok(heat) => sum += heat * f64::from(mounted.count.unwrap_or(1)),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| sum)
}

/// The heat balance but for the heat from within.
pub(super) fn balance<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<EnclosureHeatBalance, Halt> {
    let outside = read!(asking, site.climate?.hottest);
    let sunshine = read!(asking, site.climate?.sunshine);
    let sunlit_area = read!(asking, enclosure.sunlit_area);
    let absorptance = read!(asking, enclosure.absorptance);
    let transfer = read!(asking, enclosure.heat_transfer);
    let area = area(asking, enclosure);
    Ok(EnclosureHeatBalance {
        heat: Power::from_base(0.0),
        sunshine: sunshine?,
        sunlit_area: sunlit_area?,
        absorptance: absorptance?,
        area: area?,
        transfer: transfer?,
        outside: outside?,
    })
}

/// The surface that gives off heat: as written, else all six faces.
pub(super) fn area<'s>(asking: &mut Asking<'s>, enclosure: &'s Enclosure) -> Result<Area, Halt> {
    let written = asking.read_if_there(
        &enclosure.origin,
        "cooling_area",
        enclosure.cooling_area.as_ref(),
    );
    if let Some(area) = written {
        return Ok(area);
    }
    let height = read!(asking, enclosure.height);
    let width = read!(asking, enclosure.width);
    let depth = read!(asking, enclosure.depth);
    Ok(asking
        .work(&EnclosureSurface {
            height: height?,
            width: width?,
            depth: depth?,
        })?
        .area)
}

/// What gives up first, and at which temperature.
#[derive(Clone, Copy)]
pub(super) struct Weakest<'s> {
    pub(super) name: &'s str,
    pub(super) rating: Temperature,
}

/// What gives up first as it gets hot.
pub(super) fn weakest<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    parts: &[Part<'s>],
) -> Result<Weakest<'s>, Halt> {
    let own = asking.read_if_there(
        &enclosure.origin,
        "hottest_inside",
        enclosure.hottest_inside.as_ref(),
    );
    let mut weakest = own.map(|rating| Weakest {
        name: "the enclosure as a whole",
        rating,
    });
    let mut whole = Ok(());
    for part in parts {
        match asking.read_if_there(part.origin, "hottest", part.hottest) {
            Some(rating) => {
                let lower = weakest.is_none_or(|known: Weakest<'_>| rating < known.rating);
                if lower {
                    weakest = Some(Weakest {
                        name: part.id.as_str(),
                        rating,
                    });
                }
            }
            None if own.is_none() => {
                whole = asking
                    .lack_of::<Temperature>(part.origin, "hottest")
                    .map(drop);
            }
            None => {}
        }
    }
    whole?;
    match weakest {
        Some(weakest) => Ok(weakest),
        None => asking.lack(
            &enclosure.origin,
            "hottest_inside",
            Wants::Written("\"131 °F\""),
        ),
    }
}

/// What stops first as it gets cold: the highest of the lowest temperatures on the data sheets.
pub(super) fn tenderest<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    parts: &[Part<'s>],
) -> Result<Weakest<'s>, Halt> {
    let control = enclosure.climate_control.as_ref();
    let own = control.and_then(|control| {
        let stated = control.coldest_inside.as_ref();
        asking.read_if_there(&control.origin, "coldest_inside", stated)
    });
    let mut tenderest = own.map(|rating| Weakest {
        name: "the enclosure as a whole",
        rating,
    });
    let mut whole = Ok(());
    for part in parts {
        match asking.read_if_there(part.origin, "coldest", part.coldest) {
            Some(rating) => {
                let higher = tenderest.is_none_or(|known: Weakest<'_>| rating > known.rating);
                if higher {
                    let name = part.id.as_str();
                    tenderest = Some(Weakest { name, rating });
                }
            }
            None if own.is_none() => {
                whole = asking
                    .lack_of::<Temperature>(part.origin, "coldest")
                    .map(drop);
            }
            None => {}
        }
    }
    whole?;
    match tenderest {
        Some(tenderest) => Ok(tenderest),
        None => read!(asking, enclosure.climate_control?.coldest_inside).map(|rating| Weakest {
            name: "the enclosure as a whole",
            rating,
        }),
    }
}

/// The temperature inside on the hottest still afternoon.
pub(crate) fn hottest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<Temperature, Halt> {
    let heat = heat(asking, enclosure, &parts(site, enclosure));
    let balance = balance(asking, site, enclosure);
    let (heat, balance) = (heat?, balance?);
    let warmth = asking.work(&EnclosureHeatBalance { heat, ..balance })?;
    Ok(warmth.inside)
}
