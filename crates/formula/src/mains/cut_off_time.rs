//! Longest time until an earth fault must be cut off.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Quantity as _, Time, Voltage, Word as _};

quantity::words! {
    /// How a supply is connected to earth.
    pub enum EarthingSystem {
        /// The protective conductor comes from the source.
        Tn = "TN",
        /// The site has an electrode of its own, and the earth itself is the way back.
        Tt = "TT",
    }
}

formula! {
    /// Longest time until an earth fault in a final circuit of up to 32 A must be cut off.
    ///
    /// Distribution circuits may take 5 s (TN) or 1 s (TT). In a TT system the soil lets so little current through that
    /// only a residual-current device is fast enough.
    pub struct CutOffTime = "cut-off-time" in Power {
        /// How the supply is connected to earth.
        system ("–"): EarthingSystem,
        /// Voltage from line to earth.
        voltage ("U0"): Voltage,
    }
    gives
    /// Time allowed for cutting off.
    pub struct CutOff {
        /// Longest time.
        longest ("t"): Time,
    }
    formula "t: table 41.1"
    valid "Final circuits of up to 32 A, alternating current, above 50 V to earth."
    source { work: "IEC 60364-4-41", clause: "411.3.2.2 and table 41.1", evidence: Seen, seen: "a retelling of the table, named in its file" }
    by cut_off_time
}

static TIMES: Stored = Stored::new(|| Table::read(include_str!("cut_off_time.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn cut_off_time(supply: &CutOffTime) -> Result<CutOff, OutOfReach> {
    let volts = supply.voltage.base();
    if volts <= 50.0 {
        return Err(OutOfReach::new(
            "voltage",
            "up to 50 V to earth no time is asked for; give the voltage from line to earth, such as 230 V",
        ));
    }
    let table = Table::of(&TIMES)?;
    table
        .numbers("up_to")
        .into_iter()
        .zip(table.column(supply.system.word()).filter_map(Cell::number))
        .find(|(up_to, _)| volts <= up_to + 1e-6)
        .map(|(_, seconds)| CutOff {
            longest: Time::from_base(seconds),
        })
        .ok_or_else(|| OutOfReach::new("voltage", "the table ends at 1000 V"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn seconds(system: EarthingSystem, volts: f64) -> Result<f64, OutOfReach> {
        let voltage = Voltage::from_base(volts);
        CutOffTime { system, voltage }
            .evaluate()
            .map(|found| found.longest.base())
    }

    #[test]
    fn higher_voltage_is_never_allowed_longer_and_earth_electrodes_neither() {
        for volts in [60.0, 120.0, 121.0, 230.0, 277.0, 400.0, 690.0] {
            let tn = seconds(EarthingSystem::Tn, volts).unwrap();
            assert!(seconds(EarthingSystem::Tt, volts).unwrap() < tn);
            assert!(seconds(EarthingSystem::Tn, volts + 100.0).unwrap() <= tn);
        }
    }

    #[test]
    fn a_safe_voltage_and_a_high_one_are_refused() {
        for volts in [24.0, 1500.0] {
            assert_eq!(
                seconds(EarthingSystem::Tn, volts).unwrap_err().input,
                "voltage"
            );
        }
    }
}
