//! The device schedule, operators included.

use super::cells::{amperes, position, volts, watts, words};
use crate::view::{Cell, Column, Table};
use quantity::UnitSystem;
use site::{Device, Operator, Site};

/// Every operator and device.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let mut rows: Vec<Vec<Cell>> = site
        .operator
        .iter()
        .map(|operator| operator_row(operator, units))
        .collect();
    rows.extend(site.device.iter().map(|device| row(device, units)));
    Table {
        title: "Device schedule".to_owned(),
        note: "Positions are along the closed leaf from the latching side, into the property, and up from the finished surface.".to_owned(),
        columns: vec![
            Column::words("Name", 26),
            Column::words("What", 28),
            Column::words("Purpose", 40),
            Column::words("Along; into; up", 34),
            Column::words("Protects", 22),
            Column::words("Fed by", 20),
            Column::numbers("Voltage", "V", 14),
            Column::numbers("Current", "A", 14),
            Column::numbers("Power", "W", 13),
            Column::words("Part", 26),
        ],
        rows,
    }
}

fn operator_row(operator: &Operator, units: UnitSystem) -> Vec<Cell> {
    let what = operator.drive.map_or_else(
        || "operator".to_owned(),
        |drive| format!("operator, {drive}"),
    );
    vec![
        Cell::text(operator.id.to_string()),
        Cell::text(what),
        Cell::text(format!("moves gate {}", operator.gate)),
        position(operator.at.as_ref(), units),
        Cell::text(if operator.inherent_sensing == Some(true) {
            "A, both directions"
        } else {
            ""
        }),
        words(operator.supply.as_ref()),
        volts(operator.voltage.as_ref()),
        amperes(operator.running_current.as_ref()),
        Cell::text(""),
        words(operator.part.as_ref()),
    ]
}

fn row(device: &Device, units: UnitSystem) -> Vec<Cell> {
    vec![
        Cell::text(device.id.to_string()),
        Cell::text(device.kind.to_string()),
        words(device.purpose.as_ref()),
        match (&device.at, &device.enclosure) {
            (None, Some(enclosure)) => Cell::text(format!("in {enclosure}")),
            (at, _) => position(at.as_ref(), units),
        },
        Cell::text(protects(device)),
        words(device.supply.as_ref()),
        volts(device.voltage.as_ref()),
        amperes(device.current.as_ref()),
        watts(device.power.as_ref()),
        words(device.part.as_ref()),
    ]
}

/// `B1, closing`: kind of protection and the directions in which it acts.
fn protects(device: &Device) -> String {
    let Some(kind) = device.protection else {
        return String::new();
    };
    let directions: Vec<String> = device.guards.iter().map(ToString::to_string).collect();
    format!("{kind}, {}", directions.join(" and "))
}
