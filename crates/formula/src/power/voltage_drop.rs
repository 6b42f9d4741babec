//! Voltage lost along a two-wire circuit.

use crate::OutOfReach;
use quantity::{Current, Length, Quantity as _, Ratio, Resistance, ResistancePerLength, Voltage};

formula! {
    /// Voltage lost there and back along a two-wire circuit that carries a steady current.
    ///
    /// The conductor's resistance is taken at the temperature it really has; see `conductor-resistance`.
    /// Reactance is left out: at direct current there is none, and at 60 Hz it is small below 1/0 AWG.
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
    let loop_resistance: Resistance = 2.0 * run.length * run.resistance;
    let drop: Voltage = run.current * loop_resistance;
    Ok(VoltageLost {
        loop_resistance,
        drop,
        far_end: run.source - drop,
        share: drop / run.source,
    })
}
