//! The power classes of IEEE 802.3.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Power, Quantity as _, Resistance, Voltage};

/// What one class of powered Ethernet promises.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PoeClass {
    /// Power that the injector must be able to give.
    pub injector_power: Power,
    /// Least voltage at the injector.
    pub least_injector_voltage: Voltage,
    /// Largest loop resistance that the class was made for.
    pub loop_resistance: Resistance,
    /// Most power that the device may draw.
    pub device_power: Power,
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("poe_class.toml")));

/// The promise of a class, 1 to 8 (IEEE 802.3, clauses 33 and 145; how it was seen stands in `poe_class.toml`).
pub fn poe_class(class: u32) -> Result<PoeClass, OutOfReach> {
    let table = Table::of(&TABLE)?;
    let classes = table.numbers("class");
    let row = classes
        .iter()
        .position(|row| row.to_bits() == f64::from(class).to_bits());
    let cell = |column: &str| row.and_then(|row| table.numbers(column).get(row).copied());
    let found = || {
        Some(PoeClass {
            injector_power: Power::from_base(cell("injector_power")?),
            least_injector_voltage: Voltage::from_base(cell("least_injector_voltage")?),
            loop_resistance: Resistance::from_base(cell("loop_resistance")?),
            device_power: Power::from_base(cell("device_power")?),
        })
    };
    found().ok_or_else(|| OutOfReach::new("class", "the table has the classes 1 to 8"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn classes_rise_and_keep_their_own_arithmetic() {
        let classes: Vec<PoeClass> = (1..=8).map(|class| poe_class(class).unwrap()).collect();
        for pair in classes.windows(2) {
            assert!(pair[0].device_power < pair[1].device_power);
            assert!(pair[0].injector_power < pair[1].injector_power);
        }
        for class in classes {
            let current = class.injector_power / class.least_injector_voltage;
            let arriving = class.injector_power - current * current * class.loop_resistance;
            assert!(
                (arriving / class.device_power).base() - 1.0 < 0.002,
                "{class:?}"
            );
            assert!(
                (arriving / class.device_power).base() - 1.0 > -0.002,
                "{class:?}"
            );
        }
        assert_eq!(poe_class(9).unwrap_err().input, "class");
    }
}
