//! The port and address plan: every port of every switch with what is plugged into it, and the segments with what crosses.

use crate::view::{Cell, Column, Table};
use design::data_network::{LineMedium, NetworkShown, ShownLine, ShownMember};
use quantity::units::power::watt;
use quantity::{Quantity as _, UnitSystem, print};
use site::{Crossing, Id, NetworkSegment, Site};

/// Each switch port by port, free ones among them; then what is plugged into nothing.
pub(super) fn ports(network: &NetworkShown, units: UnitSystem) -> Table {
    let mut rows = Vec::new();
    for member in &network.members {
        if member.ports.is_some() || !member.next.is_empty() {
            rows.extend(of_switch(network, member, units));
        }
    }
    let alone = network
        .roots
        .iter()
        .filter_map(|at| network.members.get(*at));
    rows.extend(alone.map(|member| row("", "", member, units)));
    let plugged = network.members.iter().any(|member| member.up.is_some());
    Table {
        title: "Port and address plan".to_owned(),
        note: "Power is what the port has to give in the worst hour, loss in the warm cable counted. Label each port and each plug with the name in the third column; keep passwords elsewhere.".to_owned(),
        columns: vec![
            Column::words("Switch", 26),
            Column::words("Port", 12),
            Column::words("Device", 28),
            Column::words("What it is", 24),
            Column::words("Segment", 22),
            Column::words("Address", 26),
            Column::words("Line", 34),
            Column::numbers("Rate", "Mbit/s", 16),
            Column::words("Class", 12),
            Column::numbers("Power", "W", 14),
        ],
        rows: if plugged { rows } else { Vec::new() },
    }
}

fn of_switch(network: &NetworkShown, switch: &ShownMember, units: UnitSystem) -> Vec<Vec<Cell>> {
    let mut plugged: Vec<&ShownMember> = switch
        .next
        .iter()
        .filter_map(|next| network.members.get(*next))
        .collect();
    plugged.sort_by_key(|member| member.port.unwrap_or(u32::MAX));
    let mut rows: Vec<Vec<Cell>> = plugged
        .iter()
        .map(|member| {
            let port = member
                .port
                .map_or_else(String::new, |port| port.to_string());
            row(&switch.id, &port, member, units)
        })
        .collect();
    let ports = switch.ports.filter(|_| !switch.of_owner);
    let ports = ports.and_then(|ports| usize::try_from(ports).ok());
    let free = ports.and_then(|ports| ports.checked_sub(network.copper_ports(switch)));
    if let Some(free) = free.filter(|free| *free > 0) {
        let mut cells = vec![
            Cell::text(switch.id.as_str()),
            Cell::text(""),
            Cell::text(format!("{free} free, copper")),
        ];
        cells.resize_with(10, || Cell::text(""));
        rows.push(cells);
    }
    rows
}

fn row(switch: &str, port: &str, member: &ShownMember, units: UnitSystem) -> Vec<Cell> {
    let line = member.line.as_ref();
    let known = |text: &Option<String>| {
        text.as_ref()
            .map_or_else(|| Cell::text(""), |text| Cell::text(text.as_str()))
    };
    let address = match &member.address {
        Some(address) if member.doubled => Cell::text(format!("{address}, taken twice")),
        Some(address) => Cell::text(address.as_str()),
        None => Cell::text(""),
    };
    let rate = match line.map(|line| line.rate) {
        Some(Some(rate)) => Cell::number(rate.base() / 1e6, 0),
        Some(None) => Cell::unknown("ports"),
        None => Cell::text(""),
    };
    let power = match line.filter(|line| line.powered) {
        Some(line) => line.power.map_or_else(
            || Cell::unknown("power"),
            |power| Cell::number(power.get::<watt>(), 1),
        ),
        None => Cell::text(""),
    };
    let class = member
        .class
        .clone()
        .filter(|_| line.is_some_and(|line| line.powered));
    vec![
        Cell::text(switch),
        Cell::text(port),
        Cell::text(member.id.as_str()),
        Cell::text(quantity::Word::word(member.kind)),
        known(&member.segment),
        address,
        line.map_or_else(|| Cell::text(""), |line| Cell::text(way(line, units))),
        rate,
        known(&class),
        power,
    ]
}

/// A line in words: `w-10, copper, 124 ft`.
fn way(line: &ShownLine, units: UnitSystem) -> String {
    let medium = match line.medium {
        LineMedium::Copper => "copper",
        LineMedium::Fiber => "fiber",
        LineMedium::Radio => "radio",
        LineMedium::Cord => "patch cord",
    };
    let length = line.length.map(|length| print(length, units));
    let parts = [line.cable.clone(), Some(medium.to_owned()), length];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    parts.join(", ")
}

/// The segments and what crosses between them.
pub(super) fn segments(site: &Site) -> Table {
    let segments = site.network_segment.iter().map(segment_row);
    let crossings = site.crossing.iter().map(crossing_row);
    Table {
        title: "Network segments and crossings".to_owned(),
        note: "Nothing crosses but what is written here, begun on the first side. Scan from an outdoor port on the day of handing over.".to_owned(),
        columns: vec![
            Column::words("Name", 26),
            Column::words("What", 70),
            Column::words("Addresses", 34),
            Column::words("Handed out automatically", 46),
            Column::words("Kept apart by", 34),
        ],
        rows: segments.chain(crossings).collect(),
    }
}

fn told<T: ToString>(value: Option<&T>) -> Cell {
    value.map_or_else(
        || Cell::unknown("write it"),
        |value| Cell::text(value.to_string()),
    )
}

fn segment_row(segment: &NetworkSegment) -> Vec<Cell> {
    let apart = match (segment.of_owner, segment.kept_apart) {
        (Some(true), None) => Cell::text("the owner's own"),
        (_, Some(apart)) => Cell::text(quantity::Word::word(apart)),
        (_, None) => Cell::unknown("find out"),
    };
    vec![
        Cell::text(segment.id.to_string()),
        told(segment.what.as_ref()),
        told(segment.addresses.as_ref()),
        told(segment.automatic.as_ref()),
        apart,
    ]
}

fn crossing_row(crossing: &Crossing) -> Vec<Cell> {
    let name = |id: Option<&Id>| id.map_or_else(|| "?".to_owned(), ToString::to_string);
    let reach = crossing.reach;
    vec![
        Cell::text(crossing.id.to_string()),
        told(crossing.what.as_ref()),
        Cell::text(format!(
            "{} to {}",
            name(crossing.from.as_ref()),
            name(crossing.to.as_ref())
        )),
        Cell::text(""),
        reach.map_or_else(
            || Cell::unknown("find out"),
            |reach| Cell::text(quantity::Word::word(reach)),
        ),
    ]
}
