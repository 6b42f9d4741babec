//! The buses of a site as they are shown: what hangs where along each line, and what stands on it.

use crate::asking::Asking;
use crate::check::bus::address_and_time::{all_asked, turns};
use crate::check::bus::place::{Place, biased, idle, pair, places, rise_time};
use formula::Formula as _;
use formula::signal::{BusReach, BusStub};
use quantity::{Length, Resistance, Time, Voltage};
use site::{Bus, Device, Site};

/// One bus in order along its line. What is not known is missing; the findings say what to measure.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownBus {
    /// Its name.
    pub id: String,
    /// Its cables, in order.
    pub cables: Vec<String>,
    /// Bits in a second.
    pub bit_rate: Option<u32>,
    /// Longest line at that rate.
    pub longest: Option<Length>,
    /// Longest stub that the fastest sender allows.
    pub longest_stub: Option<Length>,
    /// Idle voltage where the bias sits, and at the far end.
    pub idle: Option<[Voltage; 2]>,
    /// One device asked, with nothing to tell.
    pub asked_in: Option<Time>,
    /// All devices asked, with nothing to tell.
    pub round: Option<Time>,
    /// From card to click at the worst.
    pub wait: Option<Time>,
    /// What hangs on it.
    pub places: Vec<ShownPlace>,
}

/// A place on a bus.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownPlace {
    /// The device there.
    pub device: String,
    /// What it is, in a word.
    pub kind: String,
    /// Its address; none where it asks the others.
    pub address: Option<u32>,
    /// How it is encrypted, in words.
    pub channel: Option<String>,
    /// Length of the line from its first end.
    pub along: Option<Length>,
    /// Length of its stub.
    pub stub: Option<Length>,
    /// Resistor across the pair there.
    pub termination: Option<Resistance>,
    /// Each of the bias resistors there.
    pub bias: Option<Resistance>,
}

/// Every bus of a site.
pub fn shown(site: &Site) -> Vec<ShownBus> {
    site.bus.iter().map(|bus| one(site, bus)).collect()
}

fn one(site: &Site, bus: &Bus) -> ShownBus {
    let mut asking = Asking::new(site.site.unit_system());
    let known = places(&mut asking, site, bus).unwrap_or_default();
    let velocity = bus.velocity.map(|velocity| velocity.nominal());
    let stub = velocity.filter(|_| !known.is_empty()).and_then(|velocity| {
        let rise_time = rise_time(&known);
        BusStub {
            rise_time,
            velocity,
        }
        .evaluate()
        .ok()
    });
    let reach = bus
        .bit_rate
        .and_then(|bit_rate| BusReach { bit_rate }.evaluate().ok());
    let turns = bus.bit_rate.and_then(|rate| {
        let all = all_asked(&mut asking, site, bus).ok()?;
        turns(&mut asking, bus, &all, rate).ok()
    });
    let decision = bus.decision_time.map(|time| time.nominal());
    ShownBus {
        id: bus.id.to_string(),
        cables: bus.cable.iter().map(ToString::to_string).collect(),
        bit_rate: bus.bit_rate,
        longest: reach.map(|reach| reach.longest),
        longest_stub: stub.map(|stub| stub.longest),
        idle: idles(&mut asking, site, bus, &known),
        asked_in: turns.as_ref().map(|turns| turns.quiet),
        round: turns.as_ref().map(|turns| turns.quiet_round),
        wait: turns
            .zip(decision)
            .map(|(turns, decision)| turns.longest + decision),
        places: bus.node.iter().map(|node| place(site, node)).collect(),
    }
}

fn idles<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bus: &'s Bus,
    known: &[Place<'s>],
) -> Option<[Voltage; 2]> {
    let supply = bus.bias_voltage.as_ref()?.nominal();
    let pair = pair(asking, site, bus).ok()?;
    let [at] = biased(known)[..] else { return None };
    let idles = idle(asking, known, at, (supply, pair)).ok()??;
    Some([idles.near_voltage, idles.far_voltage])
}

fn place(site: &Site, node: &site::BusNode) -> ShownPlace {
    use quantity::Word as _;
    let device = site.device.iter().find(|device| device.id == node.device);
    let line = device.and_then(|device| device.data_line.as_ref());
    let channel = line.and_then(|line| line.secure_channel);
    ShownPlace {
        device: node.device.to_string(),
        kind: device.map_or_else(String::new, |device: &Device| device.kind.word().to_owned()),
        address: line.and_then(|line| line.address),
        channel: channel.map(|channel| channel.word().to_owned()),
        along: node.along.map(|along| along.nominal()),
        stub: node.stub.map(|stub| stub.nominal()),
        termination: node.termination.map(|resistor| resistor.nominal()),
        bias: node.bias.map(|resistor| resistor.nominal()),
    }
}
