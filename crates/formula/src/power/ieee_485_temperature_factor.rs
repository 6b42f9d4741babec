//! How much larger a lead-acid battery must be in the cold.

use crate::OutOfReach;
use crate::table::{Stored, Table, interpolated};
use quantity::{Quantity as _, Ratio, Temperature};

formula! {
    /// Factor by which a lead-acid battery is enlarged for the temperature of its electrolyte.
    ///
    /// A cold battery holds its charge back: at freezing it takes nearly half again the size. The electrolyte
    /// follows the average of a day or two, not the coldest hour. Between the rows of the table the factor is
    /// interpolated, as the standard allows. Warmth earns a factor below 1 and costs life; many designers stop at 1.
    pub struct Ieee485TemperatureFactor = "ieee-485-temperature-factor" in Power {
        /// Temperature of the electrolyte.
        temperature ("T"): Temperature,
    }
    gives
    /// Factor for the cold.
    pub struct BatteryTemperatureFactor {
        /// Factor on the capacity; 1 at 77 °F (25 °C).
        factor ("kT"): Ratio,
    }
    formula "kT: table 1, interpolated"
    valid "Vented and valve-regulated lead-acid cells, 25 °F to 120 °F (−4 °C to 49 °C); below that ask the battery's maker."
    source { work: "IEEE 485", clause: "table 1", evidence: Memory, seen: "four of its rows in a public retelling, named in its file; the other rows from memory" }
    by ieee_485_temperature_factor
}

static TABLE: Stored =
    Stored::new(|| Table::read(include_str!("ieee_485_temperature_factor.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn ieee_485_temperature_factor(
    battery: &Ieee485TemperatureFactor,
) -> Result<BatteryTemperatureFactor, OutOfReach> {
    let fahrenheit = battery.temperature.base() * 1.8 - 459.67;
    let table = Table::of(&TABLE)?;
    let rows = table
        .numbers("temperature")
        .into_iter()
        .zip(table.numbers("factor"));
    // A temperature at the end of the table may be read a rounding error beyond it.
    if !(25.0 - 1e-6..=120.0 + 1e-6).contains(&fahrenheit) {
        return Err(OutOfReach::new(
            "temperature",
            "the table runs from 25 °F to 120 °F (−4 °C to 49 °C); below it take the battery's data sheet",
        ));
    }
    Ok(BatteryTemperatureFactor {
        factor: Ratio::from_base(interpolated(fahrenheit, rows)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn factor(fahrenheit: f64) -> Result<f64, OutOfReach> {
        let temperature = Temperature::from_base((fahrenheit + 459.67) / 1.8);
        let battery = Ieee485TemperatureFactor { temperature };
        battery.evaluate().map(|found| found.factor.base())
    }

    #[test]
    fn the_rows_fall() {
        let table = Table::of(&TABLE).unwrap();
        assert!(
            table
                .numbers("temperature")
                .is_sorted_by(|one, next| one < next)
        );
        assert!(table.numbers("factor").is_sorted_by(|one, next| one > next));
        assert!(factor(25.0).is_ok() && factor(120.0).is_ok());
        assert_eq!(factor(-10.0).unwrap_err().input, "temperature");
    }

    proptest! {
        #[test]
        fn colder_is_never_smaller(cold in 25.0..119.0, warmer in 0.0..1.0) {
            prop_assert!(factor(cold).unwrap() >= factor(cold + warmer).unwrap());
        }
    }
}
