//! The fire engines that come, and what a wheel of theirs brings.

use crate::asking::{Asking, Wants, read};
use crate::check::Round;
use crate::outcome::{Answer, Halt};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _};
use site::{CodeBasis, Gate, Site, Vehicle};

static ROAD: Source = Source {
    work: "International Fire Code, appendix D",
    clause: "D102.1: fire apparatus of 75,000 lb",
    evidence: Evidence::Seen,
    seen: "https://up.codes/s/access-and-loading",
};

static AXLE: Source = Source {
    work: "23 U.S.C. 127(r), emergency vehicles",
    clause: "33,500 lb on a single drive axle; half of it on each side",
    evidence: Evidence::Seen,
    seen: "https://www.fhwa.dot.gov/Fastact/factsheets/trucksizeweightfs.cfm and a retelling of the axle loads: https://www.jjkeller.com/learn/news/032016/FHWA-responds-to-FAST",
};

/// Half of the heaviest axle that federal law lets an emergency vehicle have: 16,750 lbf in newtons.
const HEAVIEST: f64 = 16_750.0 * 4.448_221_615_260_5;

/// How a fire engine is written.
pub(crate) const ENGINE: &str = "[[vehicle]]\nid = \"engine\"\nwhat = \"fire engine\"\nfire_apparatus = true\nwheel_load = \"65 kN\"\nlength = \"32 ft\"\nwidth = \"8 ft 6 in\"\nheight = \"10 ft 6 in\"";

/// Fire engines come to the site: a lane says so, or a vehicle is one.
pub(crate) fn comes(site: &Site) -> bool {
    site.lane.iter().any(|lane| lane.fire_lane == Some(true)) || engines(site).next().is_some()
}

/// Fire engines come; where no lane says whether, each lane is asked.
pub(crate) fn comes_or_asked<'s>(site: &'s Site, round: &mut Round<'s, '_>) -> bool {
    if comes(site) {
        return true;
    }
    for lane in site.lane.iter().filter(|lane| lane.fire_lane.is_none()) {
        round.ask(About::new(&lane.origin, &lane.id), |asking| {
            asking.need(&lane.origin, "fire_lane", None::<&bool>, "true")?;
            Err(Halt)
        });
    }
    false
}

/// Asks of each gate that fire engines pass: every one whose lane is not said to be none of theirs.
pub(crate) fn each_gate<'s>(
    site: &'s Site,
    round: &mut Round<'s, '_>,
    answer: impl Fn(&mut Asking<'s>, &'s Gate) -> Answer,
) {
    if !comes_or_asked(site, round) {
        return;
    }
    for gate in &site.gate {
        let mut lanes = site.lane.iter();
        let no_way =
            lanes.any(|lane| lane.gate.as_ref() == Some(&gate.id) && lane.fire_lane == Some(false));
        if !no_way {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                answer(asking, gate)
            });
        }
    }
}

/// The fire engines among the vehicles that are expected.
pub(crate) fn engines(site: &Site) -> impl Iterator<Item = &Vehicle> {
    site.vehicle
        .iter()
        .filter(|vehicle| vehicle.fire_apparatus == Some(true))
}

/// Load of the heaviest wheel of a vehicle: its own, else half of its heaviest axle.
pub(crate) fn of_vehicle<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Force, Halt> {
    if vehicle.wheel_load.is_none() && vehicle.axle_load.is_some() {
        return read!(asking, vehicle.axle_load).map(|axle| axle / 2.0);
    }
    read!(asking, vehicle.wheel_load)
}

/// Load of the heaviest wheel of the fire engines that come: as stated, else the heaviest that the law allows.
pub(crate) fn wheel<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Force, Halt> {
    let us = site.site.code_basis == CodeBasis::Us;
    let stated = |vehicle: &&Vehicle| vehicle.wheel_load.is_some() || vehicle.axle_load.is_some();
    let mut heaviest: Option<Force> = None;
    let mut whole = Ok(());
    for vehicle in engines(site).filter(|vehicle| !us || stated(vehicle)) {
        match of_vehicle(asking, vehicle) {
            Ok(wheel) if heaviest.is_none_or(|most| wheel > most) => heaviest = Some(wheel),
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    match heaviest {
        Some(wheel) => Ok(wheel),
        None if us => {
            asking.rest_on(&ROAD);
            asking.rest_on(&AXLE);
            Ok(Force::from_base(HEAVIEST))
        }
        None => asking.lack(&site.origin, "vehicle", Wants::Table(ENGINE)),
    }
}
