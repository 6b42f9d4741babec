//! A lane of a site in the terms of `sim::queue`, every value at the bad end of its tolerance.

use super::defaults::{SET_OFF, TURN_BACK, gap, headway};
use super::leaf::{at_gate, opening_time, sees};
use crate::asking::{Asking, End, Wants, need};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Ratio, Time, Word as _};
use sim::queue::{Driver, Leaf, Turn, World};
use site::{Device, DeviceKind, Gate, Lane, LaneDriver, LaneTraffic, Site, Tailgating, Vehicle};

/// How a vehicle is written.
const VEHICLE: &str =
    "[[vehicle]]\nid = \"car\"\nwhat = \"car\"\nlength = \"16 ft\"\nspeed = \"5 mph\"";

/// A lane in the terms of the simulation.
#[derive(Debug, Clone)]
pub(super) struct Lowered<'s> {
    pub(super) world: World,
    /// The gate that the lane leads through.
    pub(super) gate: &'s Gate,
    /// Hour of the day in which the first hour begins.
    pub(super) first_hour: Option<u32>,
    /// Each kind of driver, in words.
    pub(super) drivers: Vec<String>,
    /// What was taken for granted, in whole sentences.
    pub(super) taken: Vec<String>,
}

pub(super) fn lower<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    lane: &'s Lane,
) -> Result<Lowered<'s>, Halt> {
    let traffic = lane.traffic.as_ref();
    let mut taken = Vec::new();
    let arrivals = arrivals(asking, lane);
    let drivers = drivers(asking, site, lane, &mut taken);
    let gate = gate(asking, site, lane)?;
    let one_each = traffic.and_then(|traffic| traffic.tailgating) == Some(Tailgating::OneEach);
    let leaf = leaf(asking, site, gate, one_each);
    let places = places(asking, site, gate, lane, &mut taken);
    let followers = share(asking, traffic, "followers", |traffic| {
        traffic.followers.as_ref()
    });
    let group = share(asking, traffic, "group", |traffic| traffic.group.as_ref());
    let (arrivals, (drivers, words), leaf, places) = (arrivals?, drivers?, leaf?, places?);
    let hours: u32 = arrivals.iter().copied().max().unwrap_or(0);
    if lane.arrivals_per_hour.is_some_and(|stated| stated > hours) {
        taken.push("The busiest of the hours that are listed has fewer vehicles than arrivals_per_hour: the list was taken.".to_owned());
    }
    Ok(Lowered {
        world: World {
            arrivals,
            group: group.unwrap_or(Ratio::from_base(1.0)),
            drivers,
            followers: followers.unwrap_or(Ratio::from_base(0.0)),
            lane: places,
            leaf,
        },
        gate,
        first_hour: traffic.and_then(|traffic| traffic.first_hour),
        drivers: words,
        taken,
    })
}

/// The gate that a lane leads through; the only one of the site where it names none.
fn gate<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Result<&'s Gate, Halt> {
    let gate = match (&lane.gate, site.gate.as_slice()) {
        (Some(name), gates) => gates.iter().find(|gate| gate.id == *name),
        (None, [only]) => Some(only),
        (None, _) => None,
    };
    asking.need(&lane.origin, "gate", gate, "\"main\"")
}

/// Vehicles in each busy hour; the busiest alone where no list is written.
fn arrivals<'s>(asking: &mut Asking<'s>, lane: &'s Lane) -> Result<Vec<u32>, Halt> {
    if let Some(traffic) = &lane.traffic
        && !traffic.hourly.is_empty()
    {
        return Ok(traffic.hourly.clone());
    }
    let busiest = asking.pick(&lane.origin, "arrivals_per_hour", lane.arrivals_per_hour)?;
    Ok(vec![busiest])
}

fn share<'s>(
    asking: &mut Asking<'s>,
    traffic: Option<&'s LaneTraffic>,
    key: &'static str,
    of: impl Fn(&'s LaneTraffic) -> Option<&'s quantity::Measured<Ratio>>,
) -> Option<Ratio> {
    let traffic = traffic?;
    let value = of(traffic)?;
    asking
        .read_at((&traffic.origin, key), Some(value), End::High)
        .ok()
}

/// Drivers with their words; all alike where no kinds are listed.
fn drivers<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    lane: &'s Lane,
    taken: &mut Vec<String>,
) -> Result<(Vec<Driver>, Vec<String>), Halt> {
    let kinds = lane
        .traffic
        .as_ref()
        .map_or(&[][..], |traffic| &traffic.driver);
    if kinds.is_empty() {
        taken.push("No kinds of drivers are listed: all take the time of the lane at the reader, most of them less, a few much longer.".to_owned());
        let service = asking.read_at(
            (&lane.origin, "service_time"),
            lane.service_time.as_ref(),
            End::High,
        );
        let vehicle = vehicle(asking, site, None);
        let service = service?;
        let driver = driven(asking, vehicle?, (Ratio::from_base(1.0), service, service))?;
        return Ok((vec![driver], vec!["every driver".to_owned()]));
    }
    let mut whole = Ok((Vec::new(), Vec::new()));
    for kind in kinds {
        let driver = driver(asking, site, kind);
        whole = whole.and_then(|(mut drivers, mut words): (Vec<Driver>, Vec<String>)| {
            drivers.push(driver?);
            words.push(kind.by.word().to_owned());
            Ok((drivers, words))
        });
    }
    whole
}

fn driver<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &'s LaneDriver,
) -> Result<Driver, Halt> {
    let of = |key| (&kind.origin, key);
    let share = asking.read_at(of("share"), kind.share.as_ref(), End::Nominal);
    let service = asking.read_at(of("service_time"), kind.service_time.as_ref(), End::High);
    let spread = kind
        .spread
        .as_ref()
        .map(|spread| asking.read_at(of("spread"), Some(spread), End::High));
    let vehicle = vehicle(asking, site, Some(kind));
    let service = service?;
    let spread = spread.transpose()?.unwrap_or(service);
    driven(asking, vehicle?, (share?, service, spread))
}

/// The vehicle of a kind of drivers: as named, else the longest that is no fire engine.
fn vehicle<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: Option<&LaneDriver>,
) -> Result<&'s Vehicle, Halt> {
    let named = kind.and_then(|kind| kind.vehicle.as_ref());
    let length = |vehicle: &&Vehicle| vehicle.length.map_or(0.0, |length| length.nominal().base());
    let usual = site
        .vehicle
        .iter()
        .filter(|vehicle| vehicle.fire_apparatus != Some(true));
    let found = match named {
        Some(name) => site.vehicle.iter().find(|vehicle| vehicle.id == *name),
        None => usual.max_by(|a, b| length(a).total_cmp(&length(b))),
    };
    match found {
        Some(vehicle) => Ok(vehicle),
        None => asking.lack(&site.origin, "vehicle", Wants::Table(VEHICLE)),
    }
}

fn driven<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
    (share, service, spread): (Ratio, Time, Time),
) -> Result<Driver, Halt> {
    let of = |key| (&vehicle.origin, key);
    let length = asking.read_at(of("length"), vehicle.length.as_ref(), End::High);
    let speed = asking.read_at(of("speed"), vehicle.speed.as_ref(), End::Low);
    Ok(Driver {
        share,
        service,
        spread,
        length: length?,
        speed: speed?,
    })
}

/// How the leaf moves and waits.
fn leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    one_each: bool,
) -> Result<Leaf, Halt> {
    let opening = opening_time(asking, site, gate);
    let hold = match (&gate.hold_time, one_each) {
        (None, true) => Ok(Time::from_base(0.0)),
        (hold, _) => asking.read_at((&gate.origin, "hold_time"), hold.as_ref(), End::High),
    };
    let reversal = gate.motion.as_ref().and_then(|motion| {
        let delay = motion.reversal_delay.as_ref()?;
        asking
            .read_at((&motion.origin, "reversal_delay"), Some(delay), End::High)
            .ok()
    });
    let drop_out = sees(asking, site, gate).drop_out;
    let opening = opening?;
    Ok(Leaf {
        opening,
        closing: opening,
        reversal: reversal.unwrap_or(Time::from_base(TURN_BACK)),
        drop_out,
        hold: hold?,
        turn: if one_each {
            Turn::OneEach
        } else {
            Turn::StaysOpen
        },
    })
}

/// Where reader, road and detectors are.
fn places<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    lane: &'s Lane,
    taken: &mut Vec<String>,
) -> Result<sim::queue::Lane, Halt> {
    let traffic = lane.traffic.as_ref();
    let room = asking.read_at(
        (&lane.origin, "queue_length"),
        lane.queue_length.as_ref(),
        End::Low,
    );
    let reader = reader(asking, site, gate, taken);
    let sees = sees(asking, site, gate);
    let (room, reader) = (room?, reader?);
    Ok(sim::queue::Lane {
        reader,
        stacking: room - reader,
        gap: gap(asking, traffic),
        set_off: Time::from_base(SET_OFF),
        headway: headway(asking, traffic),
        seen_before: sees.before,
        clear_after: sees.after,
    })
}

/// From the outermost reader, keypad or intercom to the gate line.
fn reader<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    taken: &mut Vec<String>,
) -> Result<Length, Halt> {
    let lets_in = |device: &&Device| {
        use DeviceKind::{Intercom, Keypad, Reader};
        matches!(device.kind, Intercom | Keypad | Reader) && at_gate(site, device, gate)
    };
    let mut outermost = Length::from_base(0.0);
    let mut any = false;
    for device in site.device.iter().filter(lets_in) {
        need!(asking, device.at, "[\"-3 ft\", \"-20 ft\", \"42 in\"]")?;
        let [_, y, _] = asking.position_as_written((&device.origin, "at"), device.at.as_ref())?;
        if -y > outermost {
            outermost = -y;
            any = true;
        }
    }
    if !any {
        taken.push(
            "No reader, keypad or intercom stands outside the gate: drivers wait at the gate line."
                .to_owned(),
        );
    }
    Ok(outermost)
}

impl Lowered<'_> {
    /// Mean and spread of the time from one driver's stop at the reader to the next one's, with nothing in the way.
    pub(super) fn reader_cycle(&self) -> (f64, f64) {
        let lane = &self.world.lane;
        let (mut mean, mut square) = (0.0, 0.0);
        for driver in &self.world.drivers {
            let share = driver.share.base();
            let onward =
                lane.set_off.base() + (driver.length + lane.gap).base() / driver.speed.base();
            let cycle = driver.service.base() + onward;
            mean += share * cycle;
            square += share * (cycle * cycle + driver.spread.base().powi(2));
        }
        (mean, (square - mean * mean).max(0.0).sqrt())
    }
}
