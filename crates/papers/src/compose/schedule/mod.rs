//! The schedules: what is bought, mounted, pulled and wired, as tables.

mod cables;
mod cells;
mod conduits;
mod devices;
mod enclosures;
mod foundations;
mod fuses;
mod loads;
mod supplies;
mod zones;

use crate::view::Table;
use site::Site;

/// Every schedule that has a row.
pub(super) fn all(site: &Site) -> Vec<Table> {
    let power = design::power::shown(site);
    let tables = [
        zones::table(site),
        devices::table(site),
        cables::table(site),
        conduits::table(site),
        enclosures::table(site),
        supplies::table(site),
        loads::currents(&power),
        loads::voltages(&power),
        fuses::table(&power),
        fuses::unfused(&power, site.site.unit_system()),
        foundations::table(site),
    ];
    tables
        .into_iter()
        .filter(|table| !table.rows.is_empty())
        .collect()
}
