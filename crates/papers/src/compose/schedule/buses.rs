//! The reader buses, each in order along its line: what hangs where, with its address, resistors and times.

use super::cells::{length_column, length_number};
use crate::view::{Cell, Column, Table};
use design::bus::{ShownBus, ShownPlace, shown};
use quantity::units::electric_potential::millivolt;
use quantity::units::electrical_resistance::ohm;
use quantity::units::time::millisecond;
use quantity::{Length, Resistance, Time, UnitSystem, Voltage};
use site::Site;

/// One row for each place on each line.
pub(super) fn places(site: &Site) -> Table {
    let units = site.site.unit_system();
    let buses = shown(site);
    let rows = buses
        .iter()
        .flat_map(|bus| bus.places.iter().map(|place| row(bus, place, units)));
    Table {
        title: "Reader bus, along the line".to_owned(),
        note: "In order from the first end of the line, at the values as written. A resistor across the pair belongs at both ends and nowhere between, bias at one place. With the power off, a meter across the pair reads the two end resistors side by side.".to_owned(),
        columns: vec![
            Column::words("Bus", 24),
            Column::words("Device", 30),
            Column::words("What it is", 26),
            Column::numbers("Address", "", 14),
            Column::words("Encrypted by", 22),
            length_column("Along", units, 16),
            length_column("Stub", units, 14),
            length_column("Stub at most", units, 18),
            Column::numbers("Across the pair", "Ω", 18),
            Column::numbers("Bias, each", "Ω", 16),
        ],
        rows: rows.collect(),
    }
}

fn row(bus: &ShownBus, place: &ShownPlace, units: UnitSystem) -> Vec<Cell> {
    let length = |value: Option<Length>| {
        value.map_or_else(
            || Cell::unknown("measure"),
            |value| length_number(value, units),
        )
    };
    vec![
        Cell::text(bus.id.as_str()),
        Cell::text(place.device.as_str()),
        Cell::text(place.kind.as_str()),
        place.address.map_or_else(
            || Cell::text("asks"),
            |address| Cell::number(f64::from(address), 0),
        ),
        Cell::text(place.channel.clone().unwrap_or_default()),
        length(place.along),
        length(place.stub),
        length(bus.longest_stub),
        ohms(place.termination),
        ohms(place.bias),
    ]
}

/// A resistor, or a blank cell where there is none.
fn ohms(value: Option<Resistance>) -> Cell {
    value.map_or_else(
        || Cell::text(""),
        |value| Cell::number(value.get::<ohm>(), 0),
    )
}

/// One row for each line: what it may be and what stands on it.
pub(super) fn lines(site: &Site) -> Table {
    let units = site.site.unit_system();
    Table {
        title: "Reader bus, line and times".to_owned(),
        note: "Idle voltage while nobody speaks, where the bias sits and at the far end; below 200 mV receivers without a fail-safe read noise. Times with a card number of 64 bits and no message lost.".to_owned(),
        columns: vec![
            Column::words("Bus", 24),
            Column::words("Cables", 30),
            Column::numbers("Bits in a second", "", 20),
            length_column("Length", units, 16),
            length_column("Length at most", units, 18),
            Column::numbers("Idle at the bias", "mV", 20),
            Column::numbers("Idle at the end", "mV", 20),
            Column::numbers("One device asked", "ms", 20),
            Column::numbers("All asked", "ms", 18),
            Column::numbers("Card to click at most", "ms", 22),
        ],
        rows: shown(site).iter().map(|bus| line(bus, units)).collect(),
    }
}

fn line(bus: &ShownBus, units: UnitSystem) -> Vec<Cell> {
    let length = |value: Option<Length>| {
        value.map_or_else(
            || Cell::unknown("measure"),
            |value| length_number(value, units),
        )
    };
    let volts = |value: Option<Voltage>| {
        value.map_or_else(
            || Cell::unknown("measure"),
            |value| Cell::number(value.get::<millivolt>(), 0),
        )
    };
    let time = |value: Option<Time>| {
        value.map_or_else(
            || Cell::unknown("facts are missing"),
            |value| Cell::number(value.get::<millisecond>(), 1),
        )
    };
    vec![
        Cell::text(bus.id.as_str()),
        Cell::text(bus.cables.join(", ")),
        bus.bit_rate.map_or_else(
            || Cell::unknown("read off"),
            |rate| Cell::number(f64::from(rate), 0),
        ),
        length(bus.places.last().and_then(|place| place.along)),
        length(bus.longest),
        volts(bus.idle.map(|[near, _]| near)),
        volts(bus.idle.map(|[_, far]| far)),
        time(bus.asked_in),
        time(bus.round),
        time(bus.wait),
    ]
}
