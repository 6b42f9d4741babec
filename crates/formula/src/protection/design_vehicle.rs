//! Sizes of the vehicles that roads are designed for.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Design vehicle.
    pub enum DesignVehicleKind {
        /// Passenger car (P).
        PassengerCar = "passenger car P",
        /// Intercity bus (BUS-14).
        IntercityBus = "intercity bus BUS-14",
        /// School bus (S-BUS 11).
        SchoolBus = "school bus S-BUS 11",
        /// Semi-trailer (WB-12).
        ShortSemi = "semi-trailer WB-12",
        /// Semi-trailer (WB-20).
        LongSemi = "semi-trailer WB-20",
        /// Motor home (MH).
        MotorHome = "motor home MH",
        /// Car with camper trailer (P/T).
        CarWithTrailer = "car and camper trailer P/T",
    }
}

formula! {
    /// Height, width and length of a design vehicle, as roads in the United States are laid out for.
    ///
    /// Width without mirrors. The site's own vehicles go before this: measure the longest and the highest. The table
    /// does not tell the gap over a drawbar nor the height of a chassis.
    pub struct DesignVehicle = "design-vehicle" in Protection {
        /// Design vehicle.
        vehicle ("–"): DesignVehicleKind,
    }
    gives
    /// Size of a design vehicle.
    pub struct VehicleSize {
        /// Height.
        height ("h"): Length,
        /// Width.
        width ("b"): Length,
        /// Length.
        length ("l"): Length,
    }
    formula "h, b and l from the table"
    valid "Road vehicles of the United States."
    source { work: "AASHTO, geometric design of highways and streets, 2011 and 2018", clause: "design vehicle dimensions", evidence: Seen, seen: "a public copy of the metric table" }
    by size
}

static VEHICLES: Stored = LazyLock::new(|| Table::read(include_str!("design_vehicle.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn size(wanted: &DesignVehicle) -> Result<VehicleSize, OutOfReach> {
    let table = Table::of(&VEHICLES)?;
    let of = |column: &str| {
        let mut rows = table.column("vehicle").zip(table.column(column));
        rows.find(|(vehicle, _)| vehicle.words() == Some(wanted.vehicle.word()))
            .and_then(|(_, number)| number.number())
            .map(Length::from_base)
            .ok_or_else(|| OutOfReach::new("vehicle", "the table has no row for this vehicle"))
    };
    Ok(VehicleSize {
        height: of("height")?,
        width: of("width")?,
        length: of("length")?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_vehicle_is_longer_than_wide_and_fits_the_road() {
        for vehicle in DesignVehicleKind::ALL {
            let size = DesignVehicle { vehicle: *vehicle }.evaluate().unwrap();
            assert!(size.length > size.width && size.width.base() <= 2.6);
            assert!(size.height.base() <= 4.11, "no higher than 13 ft 6 in");
        }
    }
}
