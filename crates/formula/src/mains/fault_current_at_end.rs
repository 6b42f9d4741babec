//! What is left of a short-circuit current at the end of a run.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Current, Length, Quantity as _, Ratio, ResistancePerLength, Voltage};

formula! {
    /// Short-circuit current at the end of a run from that at its beginning, point to point.
    ///
    /// Impedances are added as if they were all alike, so that the figure is low rather than high when they are not: good
    /// for asking whether a breaker still trips, and a little too kind when asking what it must interrupt.
    pub struct FaultCurrentAtEnd = "fault-current-at-end" in Power {
        /// Short-circuit current where the run begins.
        at_start ("I"): Current,
        /// Voltage between the two conductors.
        voltage ("E"): Voltage,
        /// One-way length of the run.
        length ("L"): Length,
        /// Impedance of one conductor for each unit of length.
        impedance ("1/C"): ResistancePerLength,
    }
    gives
    /// Short at the end of a run.
    pub struct FaultAtEnd {
        /// Impedance of the run over that before it.
        factor ("f"): Ratio,
        /// Short-circuit current at the end.
        at_end ("Iend"): Current,
    }
    formula "f = 2 · L · I / (C · E)\nIend = I / (1 + f)"
    valid "Single-phase circuits of two equal conductors."
    source { work: "point-to-point method of available fault current", clause: "", evidence: Seen, seen: "worksheet example: www.scribd.com/document/230809087/" }
    by fault_current_at_end
}

fn fault_current_at_end(run: &FaultCurrentAtEnd) -> Result<FaultAtEnd, OutOfReach> {
    positive("at_start", run.at_start, "4000 A")?;
    positive("voltage", run.voltage, "240 V")?;
    not_negative("length", run.length, "150 ft")?;
    not_negative("impedance", run.impedance, "1.24 Ω/kft")?;
    let factor: Ratio = 2.0 * run.length * run.impedance * run.at_start / run.voltage;
    Ok(FaultAtEnd {
        factor,
        at_end: run.at_start / (1.0 + factor.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(at_start: f64, meters: f64) -> FaultCurrentAtEnd {
        FaultCurrentAtEnd {
            at_start: Current::from_base(at_start),
            voltage: Voltage::from_base(240.0),
            length: Length::from_base(meters),
            impedance: ResistancePerLength::from_base(0.005),
        }
    }

    proptest! {
        /// Two runs after each other are one run of their lengths together.
        #[test]
        fn runs_follow_each_other(at_start in 100.0..50_000.0, near in 0.0..200.0, far in 0.0..200.0) {
            let joint = run(at_start, near).evaluate().unwrap().at_end;
            let end = run(joint.base(), far).evaluate().unwrap().at_end.base();
            let whole = run(at_start, near + far).evaluate().unwrap().at_end.base();
            prop_assert!((end - whole).abs() < 1e-6 * whole);
        }
    }

    #[test]
    fn nothing_to_begin_with_is_refused() {
        assert_eq!(run(0.0, 1.0).evaluate().unwrap_err().input, "at_start");
        assert_eq!(run(100.0, -1.0).evaluate().unwrap_err().input, "length");
    }
}
