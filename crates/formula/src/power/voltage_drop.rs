//! Voltage lost along a two-wire circuit.

use crate::OutOfReach;
use quantity::{Current, Length, Quantity as _, Ratio, Resistance, ResistancePerLength, Voltage};

formula! {
    /// Voltage lost there and back along a two-wire circuit that carries a steady current.
    ///
    /// The conductor's resistance is taken at the temperature it really has; see `conductor-resistance`.
    /// A drop larger than the source means that the run cannot carry the current at all. Reactance is left out: at direct current there is none, and at 60 Hz it is small below 1/0 AWG.
    pub struct VoltageDrop = "voltage-drop" in Power {
        /// Voltage at the source.
        source ("U"): Voltage,
        /// Current in the circuit.
        current ("I"): Current,
        /// One-way length of the run.
        length ("l"): Length,
        /// Resistance of one conductor for each unit of length.
        resistance ("R′"): ResistancePerLength,
    }
    gives
    /// What a two-wire run loses.
    pub struct VoltageLost {
        /// Resistance of the loop, both conductors.
        loop_resistance ("R"): Resistance,
        /// Voltage lost in both conductors.
        drop ("ΔU"): Voltage,
        /// Voltage left at the far end.
        far_end ("U₂"): Voltage,
        /// Share of the source voltage that is lost.
        share ("ΔU/U"): Ratio,
    }
    formula "R = 2 · l · R′\nΔU = I · R\nU₂ = U − ΔU"
    valid "Steady current in a two-wire circuit, direct or single-phase at unity power factor; the source voltage is above zero."
    source { work: "Ohm's law", clause: "", evidence: Physics, seen: "definition of resistance, SI brochure" }
    by voltage_drop
}

fn voltage_drop(run: &VoltageDrop) -> Result<VoltageLost, OutOfReach> {
    if run.source.base() <= 0.0 {
        return Err(OutOfReach::new(
            "source",
            "the source has no voltage; give the supply's, such as 24 V",
        ));
    }
    let negative = [
        ("current", run.current.base()),
        ("length", run.length.base()),
        ("resistance", run.resistance.base()),
    ];
    if let Some((input, _)) = negative.iter().find(|(_, value)| *value < 0.0) {
        return Err(OutOfReach::new(input, "this cannot be below zero"));
    }
    let loop_resistance: Resistance = 2.0 * run.length * run.resistance;
    let drop: Voltage = run.current * loop_resistance;
    Ok(VoltageLost {
        loop_resistance,
        drop,
        far_end: run.source - drop,
        share: drop / run.source,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(source: f64, current: f64, length: f64, resistance: f64) -> VoltageDrop {
        VoltageDrop {
            source: Voltage::from_base(source),
            current: Current::from_base(current),
            length: Length::from_base(length),
            resistance: ResistancePerLength::from_base(resistance),
        }
    }

    proptest! {
        #[test]
        fn what_is_lost_and_what_arrives_is_the_source(
            source in 1.0..500.0, current in 0.0..50.0, length in 0.0..500.0, resistance in 0.0001..0.1
        ) {
            let lost = run(source, current, length, resistance).evaluate().unwrap();
            prop_assert!((lost.drop.base() + lost.far_end.base() - source).abs() < 1e-9 * (source + lost.drop.base()));
            prop_assert!((lost.share.base() * source - lost.drop.base()).abs() < 1e-9 * (1.0 + lost.drop.base()));
            let longer = run(source, current, length + 1.0, resistance).evaluate().unwrap();
            prop_assert!(longer.drop >= lost.drop);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        for (bad, input) in [
            (run(0.0, 1.0, 1.0, 0.01), "source"),
            (run(24.0, -1.0, 1.0, 0.01), "current"),
            (run(24.0, 1.0, -1.0, 0.01), "length"),
            (run(24.0, 1.0, 1.0, -0.01), "resistance"),
        ] {
            assert_eq!(bad.evaluate().unwrap_err().input, input);
        }
    }
}
