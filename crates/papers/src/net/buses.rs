//! The reader buses of a site as lines of the diagram.

use super::along::{Along, Stop};
use super::symbols;
use super::view::Said;
use crate::power::words::long as in_words;
use design::bus::{ShownBus, ShownPlace, shown};
use quantity::units::electric_potential::millivolt;
use quantity::units::electrical_resistance::ohm;
use quantity::units::time::millisecond;
use quantity::{Length, Quantity as _, Resistance, Time, UnitSystem, print};
use site::{DeviceKind, Site};

/// Every bus on which something hangs.
pub(super) fn lines(site: &Site) -> Vec<Along> {
    let buses = shown(site);
    let with_places = buses.iter().filter(|bus| !bus.places.is_empty());
    with_places.map(|bus| line(site, bus)).collect()
}

fn line(site: &Site, bus: &ShownBus) -> Along {
    let units = site.site.unit_system();
    let mut before: Option<Length> = None;
    let stops = bus.places.iter().enumerate().map(|(at, place)| {
        let since = before.zip(place.along).map(|(from, to)| to - from);
        before = place.along;
        Stop {
            before: (at > 0).then(|| {
                Said::plain(since.map_or_else(|| "length ?".to_owned(), |it| in_words(it, units)))
            }),
            ..stop(site, bus, place)
        }
    });
    Along {
        stops: stops.collect(),
        name: bus.id.clone(),
        said: of_line(bus, units),
        continued: false,
        goes_on: false,
    }
}

fn stop(site: &Site, bus: &ShownBus, place: &ShownPlace) -> Stop {
    let units = site.site.unit_system();
    let same = |other: &&ShownPlace| other.address == place.address;
    let doubled = place.address.is_some() && bus.places.iter().filter(same).count() > 1;
    let address = match place.address {
        None => Said::plain("asks the others"),
        Some(address) if doubled => Said::fails(format!("× address {address} is taken twice")),
        Some(address) => Said::plain(format!("address {address}")),
    };
    let mut said = vec![Said::plain(place.kind.as_str()), address];
    let channel = place.channel.as_ref();
    said.extend(channel.map(|channel| Said::plain(format!("encryption: {channel}"))));
    let too_long = place.stub.zip(bus.longest_stub);
    let stub = match place.stub {
        None => Said::plain("stub ?"),
        Some(stub) if stub == Length::from_base(0.0) => Said::plain("no stub"),
        Some(stub) if too_long.is_some_and(|(stub, most)| stub > most) => {
            Said::fails(format!("× stub {}", print(stub, units)))
        }
        Some(stub) => Said::plain(format!("stub {}", print(stub, units))),
    };
    Stop {
        symbol: symbol(site, &place.device),
        name: place.device.clone(),
        said,
        before: None,
        stub,
        across: place.termination.map(ohms),
        bias: place.bias.map(ohms),
    }
}

fn symbol(site: &Site, device: &str) -> draw::Symbol {
    let device = site.device.iter().find(|own| own.id.as_str() == device);
    match device.map(|device| device.kind) {
        Some(DeviceKind::Keypad) => symbols::keypad(),
        Some(DeviceKind::Reader) => symbols::reader(),
        _ => symbols::other(),
    }
}

fn ohms(resistor: Resistance) -> String {
    format!("{:.0} Ω", resistor.get::<ohm>())
}

/// What holds for the whole line: its cables and rate, how long it may be, what stands on it, how fast it answers.
fn of_line(bus: &ShownBus, units: UnitSystem) -> Vec<Said> {
    let rate = bus
        .bit_rate
        .map_or_else(|| "rate ?".to_owned(), |rate| format!("{rate} bit/s"));
    let mut said = vec![Said::plain(format!("{} · {rate}", bus.cables.join(", ")))];
    let long = bus.places.last().and_then(|place| place.along);
    said.extend(long.zip(bus.longest).map(|(long, longest)| {
        let (long_words, longest_words) = (in_words(long, units), in_words(longest, units));
        if long > longest {
            Said::fails(format!(
                "× {long_words} long, at most {longest_words} at this rate"
            ))
        } else {
            Said::plain(format!("{long_words} long, {longest_words} would do"))
        }
    }));
    let stubs = bus.longest_stub;
    said.extend(stubs.map(|most| Said::plain(format!("stubs up to {}", print(most, units)))));
    said.extend(bus.idle.map(|[near, far]| {
        Said::plain(format!(
            "idle {:.0} mV at the bias, {:.0} mV at the far end",
            near.get::<millivolt>(),
            far.get::<millivolt>()
        ))
    }));
    let times = bus.round.zip(bus.wait);
    said.extend(times.map(|(round, wait)| {
        Said::plain(format!(
            "all asked in {}, card to click at most {}",
            milliseconds(round),
            milliseconds(wait)
        ))
    }));
    said
}

fn milliseconds(time: Time) -> String {
    format!("{:.0} ms", time.get::<millisecond>())
}
