//! What stands on a bus while nobody speaks.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Quantity as _, Ratio, Resistance, Voltage};

/// Resistance of one unit load, in ohms.
const UNIT_LOAD: f64 = 12_000.0;

formula! {
    /// Voltage across a two-wire bus while no sender drives it, from its bias resistors, its terminators and its pair.
    ///
    /// Pull-up and pull-down divide the supply with what lies between the wires. Where the bias sits, one terminator lies
    /// at hand and the other behind the pair. The receivers are counted where the line ends farthest from the bias.
    /// Receivers without a fail-safe of their own take less than 200 mV for either state.
    pub struct BusIdle = "bus-idle" in Signal {
        /// Voltage across both bias resistors and what lies between them.
        supply ("U"): Voltage,
        /// Bias resistor to the positive side.
        pull_up ("Ru"): Resistance,
        /// Bias resistor to the negative side.
        pull_down ("Rd"): Resistance,
        /// Terminator where the bias sits.
        near ("R1"): Resistance,
        /// Terminator at the far end of the line.
        far ("R2"): Resistance,
        /// Resistance of the pair between the two, out and back.
        line ("Rl"): Resistance,
        /// Sum of the receivers' unit loads, 12 kΩ each.
        unit_loads ("n"): Ratio,
    }
    gives
    /// What stands on the bus.
    pub struct BusIdles {
        /// What the two wires show the bias resistors.
        load ("R"): Resistance,
        /// Voltage between the wires where the bias sits.
        near_voltage ("U1"): Voltage,
        /// Voltage between the wires at the far end.
        far_voltage ("U2"): Voltage,
    }
    formula "1 / Rf = 1 / R2 + n / 12 kΩ\n1 / R = 1 / R1 + 1 / (Rl + Rf)\nU1 = U · R / (Ru + R + Rd)\nU2 = U1 · Rf / (Rl + Rf)"
    valid "No sender drives the pair, one place with bias, direct current; leakage of protectors is another matter."
    source { work: "Ohm's law; unit load and 200 mV threshold of TIA-485", clause: "", evidence: Seen, seen: "application notes of makers of interfaces, with worked examples (addresses withheld: makers' names are in them)" }
    by bus_idle
}

fn bus_idle(bus: &BusIdle) -> Result<BusIdles, OutOfReach> {
    check(bus)?;
    let conductance = 1.0 / bus.far.base() + bus.unit_loads.base() / UNIT_LOAD;
    let far = 1.0 / conductance;
    let behind = bus.line.base() + far;
    let load = 1.0 / (1.0 / bus.near.base() + 1.0 / behind);
    let near_voltage = bus.supply * (load / (bus.pull_up.base() + load + bus.pull_down.base()));
    Ok(BusIdles {
        load: Resistance::from_base(load),
        near_voltage,
        far_voltage: near_voltage * (far / behind),
    })
}

fn check(bus: &BusIdle) -> Result<(), OutOfReach> {
    positive("supply", bus.supply, "5 V")?;
    positive("near", bus.near, "120 Ω")?;
    positive("far", bus.far, "120 Ω")?;
    not_negative("pull_up", bus.pull_up, "470 Ω")?;
    not_negative("pull_down", bus.pull_down, "470 Ω")?;
    not_negative("line", bus.line, "10 Ω")?;
    not_negative("unit_loads", bus.unit_loads, "4")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bus(bias: f64, line: f64, loads: f64) -> BusIdle {
        BusIdle {
            supply: Voltage::from_base(5.0),
            pull_up: Resistance::from_base(bias),
            pull_down: Resistance::from_base(bias),
            near: Resistance::from_base(120.0),
            far: Resistance::from_base(120.0),
            line: Resistance::from_base(line),
            unit_loads: Ratio::from_base(loads),
        }
    }

    proptest! {
        #[test]
        fn more_bias_more_voltage_more_load_less(bias in 100.0..5000.0, line in 0.0..200.0, loads in 0.0..32.0) {
            let at = |bus: BusIdle| bus.evaluate().unwrap();
            let known = at(bus(bias, line, loads));
            prop_assert!(at(bus(bias * 0.9, line, loads)).far_voltage > known.far_voltage);
            prop_assert!(at(bus(bias, line, loads + 1.0)).far_voltage < known.far_voltage);
            prop_assert!(known.far_voltage <= known.near_voltage);
            let through = (5.0 - known.near_voltage.base()) / (2.0 * bias);
            prop_assert!((through * known.load.base() - known.near_voltage.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn refusals_name_the_input() {
        let bad = BusIdle {
            far: Resistance::from_base(0.0),
            ..bus(470.0, 0.0, 1.0)
        };
        assert_eq!(bad.evaluate().unwrap_err().input, "far");
        assert_eq!(bus(-1.0, 0.0, 1.0).evaluate().unwrap_err().input, "pull_up");
    }
}
