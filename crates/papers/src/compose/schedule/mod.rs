//! The schedules: what is bought, mounted, pulled and wired, as tables.

mod buses;
mod cables;
mod cells;
mod conduits;
mod devices;
mod enclosures;
mod foundations;
mod fuses;
mod layouts;
mod loads;
mod loops;
mod materials;
mod network;
pub(crate) mod signs;
mod supplies;
mod warmth;
pub(crate) mod wiring;
mod zones;

use crate::view::Table;
use site::Site;

/// Every schedule that has a row.
pub(super) fn all(site: &Site) -> Vec<Table> {
    let power = design::power::shown(site);
    let warm = design::heat::warmth(site);
    let units = site.site.unit_system();
    let network = design::data_network::shown(site);
    let tables = [
        zones::table(site),
        devices::table(site),
        loops::table(site),
        cables::table(site, &power),
        buses::places(site),
        buses::lines(site),
        conduits::table(site),
        enclosures::table(site),
        layouts::table(site),
        layouts::holes(site),
        warmth::cases(&warm, units),
        warmth::limits(&warm, units),
        warmth::year(&warm, units),
        supplies::table(site),
        loads::currents(&power),
        loads::voltages(&power),
        loads::losses(&design::power::order_of_loss(site, &power)),
        fuses::table(&power),
        fuses::unfused(&power, units),
        network::ports(&network, units),
        network::segments(site),
        foundations::table(site),
    ];
    tables
        .into_iter()
        .filter(|table| !table.rows.is_empty())
        .collect()
}

/// The bill of quantities, where the site names a price book.
pub(super) fn bill(site: &Site) -> Vec<Table> {
    let bill = materials::table(site);
    if bill.rows.is_empty() {
        Vec::new()
    } else {
        vec![bill]
    }
}
