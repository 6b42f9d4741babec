//! Axles and turning circles of the vehicles that roads are designed for.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

/// A foot in meters.
const FOOT: f64 = 0.3048;

quantity::words! {
    /// Design vehicle, by its name in the table.
    pub enum AxledVehicle {
        /// Passenger car.
        Car = "P",
        /// Single-unit truck of two axles.
        Truck = "SU-30",
        /// Single-unit truck of three axles.
        LongTruck = "SU-40",
        /// Intercity bus.
        Bus = "BUS-40",
        /// City bus.
        CityBus = "CITY-BUS",
        /// Short tractor with semi-trailer.
        ShortSemi = "WB-40",
        /// Interstate tractor with semi-trailer.
        LongSemi = "WB-62",
        /// The same with a trailer of 53 ft, its axles far back.
        LongestSemi = "WB-67",
    }
}

formula! {
    /// Axles, overhangs and turning circle of a design vehicle.
    ///
    /// A semi-trailer hangs over the rear axle of its tractor, and its wheelbase counts from there. The site's own vehicles
    /// go before this: tape the axles of the longest one and chalk its circle on a yard.
    pub struct DesignVehicleAxles = "design-vehicle-axles" in Signal {
        /// Design vehicle.
        vehicle ("–"): AxledVehicle,
    }
    gives
    /// Axles of a design vehicle.
    pub struct VehicleAxles {
        /// Length over all.
        length ("l"): Length,
        /// Width without mirrors.
        width ("b"): Length,
        /// From the front axle to the foremost point.
        front_overhang ("A"): Length,
        /// From the front axle to the rear axle of the vehicle that steers.
        wheelbase ("L1"): Length,
        /// From there to the axles of the trailer; 0 without one.
        trailer ("L2"): Length,
        /// Behind the last axle.
        rear_overhang ("B"): Length,
        /// Radius of the circle of the middle of the front axle, at its least.
        center_radius ("R"): Length,
    }
    formula "l, b, A, L1, L2, B and R from the table"
    valid "Road vehicles of the United States, at walking pace."
    source { work: "AASHTO, A Policy on Geometric Design of Highways and Streets, 7th ed. 2018", clause: "design vehicle dimensions and minimum turning radii", evidence: Memory, seen: "lengths, widths and overhangs of four rows on a curriculum page that cites the table; wheelbases and radii from memory" }
    by axles
}

static VEHICLES: Stored = LazyLock::new(|| Table::read(include_str!("design_vehicle_axles.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn axles(wanted: &DesignVehicleAxles) -> Result<VehicleAxles, OutOfReach> {
    let table = Table::of(&VEHICLES)?;
    let of = |column: &str| {
        let mut rows = table.column("vehicle").zip(table.column(column));
        rows.find(|(vehicle, _)| vehicle.words() == Some(wanted.vehicle.word()))
            .and_then(|(_, number)| number.number())
            .map(|feet| Length::from_base(feet * FOOT))
            .ok_or_else(|| OutOfReach::new("vehicle", "the table has no row for this vehicle"))
    };
    Ok(VehicleAxles {
        length: of("length")?,
        width: of("width")?,
        front_overhang: of("front_overhang")?,
        wheelbase: of("wheelbase")?,
        trailer: of("trailer")?,
        rear_overhang: of("rear_overhang")?,
        center_radius: of("center_radius")?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn the_parts_of_every_vehicle_add_up_to_its_length() {
        for vehicle in AxledVehicle::ALL {
            let it = DesignVehicleAxles { vehicle: *vehicle }.evaluate().unwrap();
            let parts = it.front_overhang + it.wheelbase + it.trailer + it.rear_overhang;
            // Printed to a tenth of a foot each.
            assert!(
                (parts - it.length).base().abs() < 0.11 * FOOT,
                "{vehicle:?}"
            );
            assert!(it.center_radius > it.wheelbase);
        }
    }
}
