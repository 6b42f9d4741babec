//! The schedules: what is bought, mounted, pulled and wired, as tables.

mod cables;
mod cells;
mod conduits;
mod devices;
mod enclosures;
mod foundations;
mod supplies;
mod zones;

use crate::view::Table;
use site::Site;

/// Every schedule that has a row.
pub(super) fn all(site: &Site) -> Vec<Table> {
    let tables = [
        zones::table(site),
        devices::table(site),
        cables::table(site),
        conduits::table(site),
        enclosures::table(site),
        supplies::table(site),
        foundations::table(site),
    ];
    tables
        .into_iter()
        .filter(|table| !table.rows.is_empty())
        .collect()
}
