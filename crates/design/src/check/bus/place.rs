//! The places of a bus with their figures, and what stands on its pair while nobody speaks.

use super::nodes;
use crate::asking::{Asking, Wants, read};
use crate::circuit::conductor::resistance;
use crate::outcome::Halt;
use formula::signal::{BusIdle, BusIdles};
use quantity::{Length, Quantity as _, Ratio, Resistance, ResistancePerLength, Time, Voltage};
use site::{Bus, BusNode, DataPort, Device, Site};

/// A place on the line with its figures.
pub(crate) struct Place<'s> {
    pub(crate) node: &'s BusNode,
    pub(crate) along: Length,
    pub(crate) stub: Length,
    pub(crate) unit_load: Ratio,
    pub(crate) rise_time: Time,
    pub(crate) fail_safe: bool,
    pub(crate) termination: Option<Resistance>,
    pub(crate) bias: Option<Resistance>,
}

/// The places of a bus, in order along the line.
pub(crate) fn places<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bus: &'s Bus,
) -> Result<Vec<Place<'s>>, Halt> {
    let places: Vec<_> = nodes(asking, site, bus)?
        .into_iter()
        .map(|(node, device)| place(asking, node, device))
        .collect();
    places.into_iter().collect()
}

/// The places that carry bias resistors.
pub(crate) fn biased(places: &[Place<'_>]) -> Vec<usize> {
    (0..places.len())
        .filter(|at| places[*at].bias.is_some())
        .collect()
}

/// Sum of the unit loads on the line.
pub(crate) fn loads(places: &[Place<'_>]) -> Ratio {
    Ratio::from_base(places.iter().map(|place| place.unit_load.base()).sum())
}

/// Shortest rise time of a sender on the line.
pub(crate) fn rise_time(places: &[Place<'_>]) -> Time {
    let times = places.iter().map(|place| place.rise_time.base());
    Time::from_base(times.fold(f64::INFINITY, f64::min))
}

/// What stands on the pair while nobody speaks, biased at one place; nothing where an end has no terminator.
pub(crate) fn idle(
    asking: &mut Asking<'_>,
    places: &[Place<'_>],
    at: usize,
    (supply, pair): (Voltage, ResistancePerLength),
) -> Result<Option<BusIdles>, Halt> {
    let (Some(first), Some(last), Some(here)) = (places.first(), places.last(), places.get(at))
    else {
        return Ok(None);
    };
    let (Some(bias), Some(start), Some(end)) = (here.bias, first.termination, last.termination)
    else {
        return Ok(None);
    };
    let to_end = last.along - here.along;
    let to_start = here.along - first.along;
    let ((far, near), way) = if to_end >= to_start {
        ((end, start), to_end)
    } else {
        ((start, end), to_start)
    };
    let idles = asking.work(&BusIdle {
        supply,
        pull_up: bias,
        pull_down: bias,
        near,
        far,
        line: 2.0 * pair * way.abs(),
        unit_loads: loads(places),
    })?;
    Ok(Some(idles))
}

/// How a data port is written.
const PORT: &str =
    "data_port = { unit_load = \"0.125\", rise_time = \"100 ns\", fail_safe = true }";

fn place<'s>(
    asking: &mut Asking<'s>,
    node: &'s BusNode,
    device: &'s Device,
) -> Result<Place<'s>, Halt> {
    let along = read!(asking, node.along);
    let stub = read!(asking, node.stub);
    let termination = asking.read_if_there(&node.origin, "termination", node.termination.as_ref());
    let bias = asking.read_if_there(&node.origin, "bias", node.bias.as_ref());
    let port = match &device.data_port {
        Some(port) => port_of(asking, port),
        None => asking.lack(&device.origin, "data_port", Wants::Table(PORT)),
    };
    let ((unit_load, rise_time, fail_safe), along, stub) = (port?, along?, stub?);
    Ok(Place {
        node,
        along,
        stub,
        unit_load,
        rise_time,
        fail_safe,
        termination,
        bias,
    })
}

fn port_of<'s>(asking: &mut Asking<'s>, port: &'s DataPort) -> Result<(Ratio, Time, bool), Halt> {
    let unit_load = read!(asking, port.unit_load);
    let rise_time = read!(asking, port.rise_time);
    Ok((unit_load?, rise_time?, port.fail_safe.unwrap_or(false)))
}

/// Resistance of one wire of the pair for each unit of length, of the thinnest cable on the way.
pub(crate) fn pair<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bus: &'s Bus,
) -> Result<ResistancePerLength, Halt> {
    let cables = site
        .cable
        .iter()
        .filter(|cable| bus.cable.contains(&cable.id));
    let each: Vec<_> = cables.map(|cable| resistance(asking, cable)).collect();
    let mut greatest = None;
    for one in each {
        let one = one?;
        if greatest.is_none_or(|known| one > known) {
            greatest = Some(one);
        }
    }
    greatest.map_or_else(
        || asking.lack(&bus.origin, "cable", Wants::Written("[\"w-08\"]")),
        Ok,
    )
}
