//! Impedance of the loop through which an earth fault drives its current, and that current.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Current, Length, Quantity as _, Ratio, Resistance, ResistancePerLength, Voltage};

formula! {
    /// Impedance of the earth-fault loop of a circuit, and the current that a dead fault at its end drives.
    ///
    /// From the source through the line conductor to the fault and back through the protective conductor. Take the
    /// resistances of warm conductors: cold ones let the loop look a fifth better than it is. Resistances are simply added,
    /// which errs on the safe side. The source may be a little below its nominal voltage.
    pub struct FaultLoop = "fault-loop" in Power {
        /// Voltage from line to earth.
        voltage ("U0"): Voltage,
        /// Lowest voltage of the source over the nominal one: 95 % in Europe.
        low ("cmin"): Ratio,
        /// Impedance of the loop up to the source of this circuit.
        upstream ("Ze"): Resistance,
        /// Resistance of the line conductor for each unit of length.
        line ("R′1"): ResistancePerLength,
        /// Resistance of the protective conductor for each unit of length.
        protective ("R′2"): ResistancePerLength,
        /// Length of the circuit, one way.
        length ("l"): Length,
    }
    gives
    /// Earth-fault loop of a circuit.
    pub struct FaultLoopImpedance {
        /// Resistance of line and protective conductor together.
        conductors ("R1 + R2"): Resistance,
        /// Impedance of the whole loop.
        impedance ("Zs"): Resistance,
        /// Current of a dead fault at the end of the circuit.
        fault_current ("If"): Current,
    }
    formula "R1 + R2 = l · (R′1 + R′2)\nZs = Ze + R1 + R2\nIf = cmin · U0 / Zs"
    valid "Copper up to 35 mm² or 1 AWG, whose reactance is small; at direct current or 50 Hz to 60 Hz; no steel conduit around single wires."
    source { work: "IEC 60364-4-41 and BS 7671", clause: "411.4.4 and 411.4.5", evidence: Seen, seen: "ecalpro.com/docs/earth-fault-loop-impedance-bs7671; the same loop for the United States: tools.gera.services/ground-fault-loop-impedance-calculator" }
    by fault_loop
}

fn fault_loop(circuit: &FaultLoop) -> Result<FaultLoopImpedance, OutOfReach> {
    positive("voltage", circuit.voltage, "230 V")?;
    if circuit.low.base() <= 0.0 || circuit.low.base() > 1.0 {
        return Err(OutOfReach::new(
            "low",
            "this is a share of the nominal voltage, such as 95 %",
        ));
    }
    not_negative("upstream", circuit.upstream, "0.35 Ω")?;
    not_negative("line", circuit.line, "7.41 Ω/km")?;
    not_negative("protective", circuit.protective, "7.41 Ω/km")?;
    not_negative("length", circuit.length, "40 m")?;
    let conductors: Resistance = circuit.length * (circuit.line + circuit.protective);
    let impedance = circuit.upstream + conductors;
    positive("upstream", impedance, "0.35 Ω")?;
    Ok(FaultLoopImpedance {
        conductors,
        impedance,
        fault_current: circuit.voltage * circuit.low / impedance,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn circuit(upstream: f64, meters: f64) -> FaultLoop {
        FaultLoop {
            voltage: Voltage::from_base(230.0),
            low: Ratio::from_base(0.95),
            upstream: Resistance::from_base(upstream),
            line: ResistancePerLength::from_base(0.00741),
            protective: ResistancePerLength::from_base(0.0121),
            length: Length::from_base(meters),
        }
    }

    proptest! {
        #[test]
        fn a_longer_run_drives_less(upstream in 0.01..20.0, meters in 0.0..500.0) {
            let near = circuit(upstream, meters).evaluate().unwrap();
            let far = circuit(upstream, meters + 1.0).evaluate().unwrap();
            prop_assert!(far.fault_current < near.fault_current);
            let volts = near.fault_current.base() * near.impedance.base();
            prop_assert!((volts - 218.5).abs() < 1e-9);
        }
    }

    #[test]
    fn a_loop_of_nothing_is_refused() {
        assert_eq!(circuit(0.0, 0.0).evaluate().unwrap_err().input, "upstream");
        assert_eq!(circuit(-1.0, 1.0).evaluate().unwrap_err().input, "upstream");
        let high = FaultLoop {
            low: Ratio::from_base(1.2),
            ..circuit(0.3, 10.0)
        };
        assert_eq!(high.evaluate().unwrap_err().input, "low");
    }
}
