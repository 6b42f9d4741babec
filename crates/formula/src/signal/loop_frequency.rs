//! Frequency at which a detector drives its loop.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Capacitance, Frequency, Inductance, Quantity as _, Ratio, Resistance};
use std::f64::consts::TAU;

formula! {
    /// Frequency of the circuit that a loop with its lead-in makes with the detector's capacitor, and its quality.
    ///
    /// The frequency selector of a detector switches capacitors: neighboring loops on detectors of their own are set apart by
    /// it. A quality below about five makes tuning doubtful: look for a damp splice, a thin wire, a long lead-in.
    pub struct LoopFrequency = "loop-frequency" in Signal {
        /// Inductance of the loop with its lead-in.
        inductance ("Lt"): Inductance,
        /// Capacitance in the detector.
        capacitance ("C"): Capacitance,
        /// Resistance of the loop with its lead-in.
        resistance ("R"): Resistance,
    }
    gives
    /// The tuned circuit.
    pub struct TunedLoop {
        /// Frequency.
        frequency ("f"): Frequency,
        /// Quality: reactance over resistance.
        quality ("Q"): Ratio,
    }
    formula "f = 1 / (2π · √(Lt · C))\nQ = 2π · f · Lt / R"
    valid "Little damping: a quality of three or more, so that the resistance does not shift the frequency."
    source { work: "frequency and quality of a tuned circuit", clause: "", evidence: Physics, seen: "worked again in another program, see the cases; loop electronics work at 10 to 200 kHz (FHWA Traffic Detector Handbook, 2006, chapter 2)" }
    by frequency
}

fn frequency(at: &LoopFrequency) -> Result<TunedLoop, OutOfReach> {
    positive("inductance", at.inductance, "120 µH")?;
    positive("capacitance", at.capacitance, "100 nF")?;
    positive("resistance", at.resistance, "1 Ω")?;
    let turning = 1.0 / (at.inductance.base() * at.capacitance.base()).sqrt();
    let quality = turning * at.inductance.base() / at.resistance.base();
    if quality < 3.0 {
        return Err(OutOfReach::new(
            "resistance",
            "this much resistance damps the circuit until it has no frequency of its own; mend the loop first",
        ));
    }
    Ok(TunedLoop {
        frequency: Frequency::from_base(turning / TAU),
        quality: Ratio::from_base(quality),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(inductance: f64, resistance: f64) -> LoopFrequency {
        LoopFrequency {
            inductance: Inductance::from_base(inductance),
            capacitance: Capacitance::from_base(100e-9),
            resistance: Resistance::from_base(resistance),
        }
    }

    proptest! {
        #[test]
        fn more_inductance_is_slower(inductance in 50e-6..1000e-6, factor in 1.01..4.0) {
            let (one, more) = (at(inductance, 1.0).evaluate().unwrap(), at(inductance * factor, 1.0).evaluate().unwrap());
            prop_assert!(more.frequency < one.frequency && more.quality > one.quality);
            prop_assert!((one.frequency.base() / more.frequency.base() - f64::sqrt(factor)).abs() < 1e-9);
        }
    }

    #[test]
    fn a_damped_loop_is_refused() {
        assert_eq!(at(100e-6, 50.0).evaluate().unwrap_err().input, "resistance");
        assert_eq!(at(0.0, 1.0).evaluate().unwrap_err().input, "inductance");
    }
}
