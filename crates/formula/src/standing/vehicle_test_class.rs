//! What a vehicle barrier rating was tested with.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Energy, Mass, Quantity as _, Velocity, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Rating of a vehicle barrier: test vehicle and nominal speed.
    pub enum BarrierRating {
        /// Low-speed test, 10 mph.
        S10 = "S10",
        /// Low-speed test, 20 mph.
        S20 = "S20",
        /// Low-speed test, 30 mph.
        S30 = "S30",
        /// Small car, 30 mph.
        Sc30 = "SC30",
        /// Small car, 40 mph.
        Sc40 = "SC40",
        /// Full-size sedan, 30 mph.
        Fs30 = "FS30",
        /// Full-size sedan, 40 mph.
        Fs40 = "FS40",
        /// Pickup, 30 mph.
        Pu30 = "PU30",
        /// Pickup, 40 mph.
        Pu40 = "PU40",
        /// Medium-duty truck, 30 mph.
        M30 = "M30",
        /// Medium-duty truck, 40 mph.
        M40 = "M40",
        /// Medium-duty truck, 50 mph.
        M50 = "M50",
        /// Heavy goods vehicle, 30 mph.
        H30 = "H30",
        /// Heavy goods vehicle, 40 mph.
        H40 = "H40",
        /// Heavy goods vehicle, 50 mph.
        H50 = "H50",
    }
}

formula! {
    /// Mass, speed and energy of the vehicle with which a barrier rating was tested.
    ///
    /// The rating says nothing of how far the vehicle came: see `penetration-rating`. A barrier has a rating only as
    /// tested, with its footing; a post of the same section in another footing has none.
    pub struct VehicleTestClass = "vehicle-test-class" in Standing {
        /// Rating of the barrier.
        rating ("–"): BarrierRating,
    }
    gives
    /// Test vehicle of a rating.
    pub struct TestVehicle {
        /// Mass of the test vehicle.
        mass ("m"): Mass,
        /// Nominal speed.
        speed ("v"): Velocity,
        /// Kinetic energy.
        energy ("E"): Energy,
    }
    formula "m and v from the table\nE = m · v² / 2"
    valid "Ratings of ASTM F2656 and F3016; each test has a band of speeds around the nominal one."
    source { work: "ASTM F2656 and ASTM F3016", clause: "test vehicles and condition designations", evidence: Seen, seen: "the introduction of F2656-07 and articles on both standards (names of makers withheld)" }
    by class
}

static CLASSES: Stored = LazyLock::new(|| Table::read(include_str!("vehicle_test_class.toml")));

/// Kilograms in a pound.
const POUND_MASS: f64 = 0.453_592_37;
/// Meters per second in a mile per hour.
const MILE_PER_HOUR: f64 = 1609.344 / 3600.0;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn class(asked: &VehicleTestClass) -> Result<TestVehicle, OutOfReach> {
    let table = Table::of(&CLASSES)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(asked.rating.word()));
    let number = |place: usize| row.and_then(|row| row.get(place)).and_then(Cell::number);
    let (Some(pounds), Some(miles)) = (number(1), number(2)) else {
        return Err(OutOfReach::new(
            "rating",
            "the table has no vehicle for this rating",
        ));
    };
    let (mass, speed) = (pounds * POUND_MASS, miles * MILE_PER_HOUR);
    Ok(TestVehicle {
        mass: Mass::from_base(mass),
        speed: Velocity::from_base(speed),
        energy: Energy::from_base(mass * speed * speed / 2.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn the_speed_is_the_number_of_the_rating() {
        for rating in BarrierRating::ALL {
            let found = VehicleTestClass { rating: *rating }.evaluate().unwrap();
            let number: String = rating.word().chars().filter(char::is_ascii_digit).collect();
            let miles: f64 = number.parse().unwrap();
            assert!((found.speed.base() / MILE_PER_HOUR - miles).abs() < 1e-9);
            assert!(found.energy.base() > 0.0);
        }
    }
}
