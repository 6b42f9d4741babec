//! Supplies, batteries and solar panels.

use super::cells::{amperes, volts, watts, words};
use crate::view::{Cell, Column, Table};
use quantity::units::electric_charge::ampere_hour;
use site::Site;

/// Every source of power.
pub(super) fn table(site: &Site) -> Table {
    let mut rows = Vec::new();
    for supply in &site.supply {
        rows.push(vec![
            Cell::text(supply.id.to_string()),
            Cell::text(supply.kind.to_string()),
            words(supply.enclosure.as_ref()),
            words(supply.fed_by.as_ref()),
            volts(supply.voltage.as_ref()),
            amperes(supply.rated_current.as_ref()),
            Cell::text(""),
            Cell::text(""),
            words(supply.part.as_ref()),
        ]);
    }
    for battery in &site.battery {
        rows.push(vec![
            Cell::text(battery.id.to_string()),
            Cell::text(battery.chemistry.map_or_else(
                || "battery".to_owned(),
                |chemistry| format!("battery, {chemistry}"),
            )),
            words(battery.enclosure.as_ref()),
            words(battery.supply.as_ref()),
            volts(battery.voltage.as_ref()),
            Cell::text(""),
            battery.capacity.as_ref().map_or_else(
                || Cell::unknown("data sheet"),
                |capacity| Cell::number(capacity.nominal().get::<ampere_hour>(), 1),
            ),
            Cell::text(""),
            words(battery.part.as_ref()),
        ]);
    }
    for panel in &site.solar_panel {
        rows.push(vec![
            Cell::text(panel.id.to_string()),
            Cell::text("solar panel"),
            Cell::text(""),
            Cell::text(
                panel
                    .supply
                    .as_ref()
                    .map(|supply| format!("feeds {supply}"))
                    .unwrap_or_default(),
            ),
            volts(panel.open_voltage.as_ref()),
            Cell::text(""),
            Cell::text(""),
            watts(panel.power.as_ref()),
            words(panel.part.as_ref()),
        ]);
    }
    Table {
        title: "Supplies, batteries, panels".to_owned(),
        note: String::new(),
        columns: vec![
            Column::words("Name", 26),
            Column::words("What", 32),
            Column::words("In", 26),
            Column::words("Fed by", 26),
            Column::numbers("Voltage", "V", 16),
            Column::numbers("Current", "A", 16),
            Column::numbers("Capacity", "Ah", 16),
            Column::numbers("Power", "W", 16),
            Column::words("Part", 40),
        ],
        rows,
    }
}
