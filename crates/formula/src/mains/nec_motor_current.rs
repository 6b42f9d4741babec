//! Full-load current of a single-phase motor by the National Electrical Code.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Current, Quantity as _, Voltage, Word as _};

quantity::words! {
    /// Power of a motor on its plate.
    pub enum MotorSize {
        /// 1/6 hp.
        Sixth = "1/6 hp",
        /// 1/4 hp.
        Quarter = "1/4 hp",
        /// 1/3 hp.
        Third = "1/3 hp",
        /// 1/2 hp.
        Half = "1/2 hp",
        /// 3/4 hp.
        ThreeQuarters = "3/4 hp",
        /// 1 hp.
        One = "1 hp",
        /// 1-1/2 hp.
        OneAndHalf = "1-1/2 hp",
        /// 2 hp.
        Two = "2 hp",
        /// 3 hp.
        Three = "3 hp",
        /// 5 hp.
        Five = "5 hp",
    }
}

formula! {
    /// Full-load current of a single-phase motor by table, from which conductor and breaker are sized.
    ///
    /// The table counts for conductors and breakers, the nameplate for the overload protection. A gate operator that
    /// gives amperes on its plate and no horsepower goes by its plate.
    pub struct NecMotorCurrent = "nec-motor-current" in Power {
        /// Power of the motor on its plate, one of the printed sizes.
        power ("P"): MotorSize,
        /// Voltage that it is rated for.
        voltage ("U"): Voltage,
    }
    gives
    /// Current of a motor.
    pub struct MotorCurrent {
        /// Full-load current by table.
        full_load ("FLC"): Current,
    }
    formula "FLC: table 430.248"
    valid "Single-phase motors of 1/6, 1/4, 1/3, 1/2, 3/4, 1, 1-1/2, 2, 3 and 5 hp at usual speed; 110 V to 120 V, 200 V, 208 V and 220 V to 240 V."
    source { work: "NFPA 70 (NEC)", clause: "table 430.248", evidence: Seen, seen: "two copies of the table, named in its file" }
    by nec_motor_current
}

static CURRENTS: Stored = Stored::new(|| Table::read(include_str!("nec_430_248.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_motor_current(motor: &NecMotorCurrent) -> Result<MotorCurrent, OutOfReach> {
    let column = match motor.voltage.base() {
        volts if (110.0..=120.0).contains(&volts) => "115",
        volts if (199.0..=201.0).contains(&volts) => "200",
        volts if (207.0..=209.0).contains(&volts) => "208",
        volts if (220.0..=240.0).contains(&volts) => "230",
        _ => {
            return Err(OutOfReach::new(
                "voltage",
                "the table has 115 V, 200 V, 208 V and 230 V; take the nameplate's current",
            ));
        }
    };
    let table = Table::of(&CURRENTS)?;
    table
        .column("hp")
        .zip(table.column(column).filter_map(Cell::number))
        .find(|(printed, _)| printed.words() == Some(motor.power.word()))
        .map(|(_, amperes)| MotorCurrent {
            full_load: Current::from_base(amperes),
        })
        .ok_or_else(|| OutOfReach::new("power", "the table lacks this motor"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn current(power: MotorSize, volts: f64) -> Result<f64, OutOfReach> {
        let voltage = Voltage::from_base(volts);
        NecMotorCurrent { power, voltage }
            .evaluate()
            .map(|found| found.full_load.base())
    }

    #[test]
    fn more_power_draws_more_and_more_voltage_less() {
        for two in MotorSize::ALL.windows(2) {
            assert!(current(two[0], 115.0).unwrap() < current(two[1], 115.0).unwrap());
        }
        for size in MotorSize::ALL {
            let volts = [115.0, 200.0, 208.0, 230.0].map(|volts| current(*size, volts).unwrap());
            assert!(volts.is_sorted_by(|one, next| one > next), "{volts:?}");
        }
    }

    #[test]
    fn what_the_table_lacks_is_refused() {
        assert_eq!(current(MotorSize::One, 400.0).unwrap_err().input, "voltage");
    }
}
