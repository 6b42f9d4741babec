//! What is mounted in which enclosure, and the heat it gives off.

use super::cells::{count, watts};
use crate::view::{Cell, Column, Table};
use quantity::{Measured, Power};
use site::{Enclosure, Id, Site};

/// One row for each thing in each enclosure.
pub(super) fn table(site: &Site) -> Table {
    Table {
        title: "Enclosure contents".to_owned(),
        note: String::new(),
        columns: vec![
            Column::words("Enclosure", 26),
            Column::words("Name", 30),
            Column::words("What", 60),
            Column::numbers("How many", "", 16),
            Column::numbers("Heat of one", "W", 18),
        ],
        rows: site
            .enclosure
            .iter()
            .flat_map(|enclosure| contents(site, enclosure))
            .collect(),
    }
}

fn contents(site: &Site, enclosure: &Enclosure) -> Vec<Vec<Cell>> {
    let inside = |id: Option<&Id>| id == Some(&enclosure.id);
    let row = |name: &str, what: String, how_many: u32, heat: Option<&Measured<Power>>| {
        vec![
            Cell::text(enclosure.id.to_string()),
            Cell::text(name),
            Cell::text(what),
            count(Some(how_many)),
            watts(heat),
        ]
    };
    let mut rows = Vec::new();
    for supply in site
        .supply
        .iter()
        .filter(|supply| inside(supply.enclosure.as_ref()))
    {
        rows.push(row(
            supply.id.as_str(),
            supply.kind.to_string(),
            1,
            supply.heat.as_ref(),
        ));
    }
    for battery in site
        .battery
        .iter()
        .filter(|battery| inside(battery.enclosure.as_ref()))
    {
        let what = battery.chemistry.map_or_else(
            || "battery".to_owned(),
            |chemistry| format!("battery, {chemistry}"),
        );
        rows.push(row(battery.id.as_str(), what, 1, None));
    }
    for device in site
        .device
        .iter()
        .filter(|device| inside(device.enclosure.as_ref()))
    {
        rows.push(row(
            device.id.as_str(),
            device.kind.to_string(),
            1,
            device.heat.as_ref(),
        ));
    }
    for mounted in &enclosure.mounted {
        rows.push(row(
            "",
            mounted.what.to_string(),
            mounted.count.unwrap_or(1),
            mounted.heat.as_ref(),
        ));
    }
    rows
}
