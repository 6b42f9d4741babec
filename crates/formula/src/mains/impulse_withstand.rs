//! Impulse voltage that equipment stands, by its overvoltage category.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Cell, Stored, Table};
use quantity::{Quantity as _, Voltage, Word as _};

quantity::words! {
    /// Where in an installation equipment may stand.
    pub enum OvervoltageCategory {
        /// Electronics behind a protector of their own.
        I = "I",
        /// Appliances and what plugs in.
        II = "II",
        /// Fixed equipment and panels.
        III = "III",
        /// At the service entrance.
        IV = "IV",
    }
}

formula! {
    /// Impulse voltage that equipment on the mains stands, by its overvoltage category.
    ///
    /// A power supply for a rail in a panel is mostly of category II or III; its data sheet says which. What a protector
    /// with its leads lets through must stay below.
    pub struct ImpulseWithstand = "impulse-withstand" in Power {
        /// Overvoltage category on the data sheet.
        category ("–"): OvervoltageCategory,
        /// Voltage from line to earth.
        voltage ("U0"): Voltage,
    }
    gives
    /// What equipment stands.
    pub struct ImpulseStrength {
        /// Rated impulse voltage.
        withstand ("Uw"): Voltage,
    }
    formula "Uw: table F.1"
    valid "Equipment on the mains up to 300 V from line to earth."
    source { work: "IEC 60664-1", clause: "table F.1", evidence: Seen, seen: "a power-converter maker's note, named in the table's file" }
    by impulse_withstand
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("impulse_withstand.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn impulse_withstand(equipment: &ImpulseWithstand) -> Result<ImpulseStrength, OutOfReach> {
    positive("voltage", equipment.voltage, "230 V")?;
    let column = match equipment.voltage.base() {
        volts if volts <= 150.0 => "150",
        volts if volts <= 300.0 => "300",
        _ => {
            return Err(OutOfReach::new(
                "voltage",
                "the table is known here up to 300 V from line to earth",
            ));
        }
    };
    let table = Table::of(&TABLE)?;
    table
        .column("category")
        .zip(table.column(column).filter_map(Cell::number))
        .find(|(category, _)| category.words() == Some(equipment.category.word()))
        .map(|(_, volts)| ImpulseStrength {
            withstand: Voltage::from_base(volts),
        })
        .ok_or_else(|| OutOfReach::new("category", "the table has categories I to IV"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn stands(category: OvervoltageCategory, volts: f64) -> Result<f64, OutOfReach> {
        let voltage = Voltage::from_base(volts);
        ImpulseWithstand { category, voltage }
            .evaluate()
            .map(|found| found.withstand.base())
    }

    #[test]
    fn each_category_stands_more_than_the_one_before_and_more_at_more_volts() {
        for two in OvervoltageCategory::ALL.windows(2) {
            for volts in [120.0, 230.0] {
                assert!(stands(two[0], volts).unwrap() < stands(two[1], volts).unwrap());
            }
            assert!(stands(two[0], 120.0).unwrap() < stands(two[0], 230.0).unwrap());
        }
    }

    #[test]
    fn more_than_the_table_is_refused() {
        for volts in [0.0, 400.0] {
            assert_eq!(
                stands(OvervoltageCategory::II, volts).unwrap_err().input,
                "voltage"
            );
        }
    }
}
