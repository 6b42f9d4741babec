//! The power that an antenna radiates, from the field strength at a distance.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{FieldStrength, Length, Power, PowerLevel, Quantity as _};

formula! {
    /// The power that an antenna which sends evenly would need for a field strength at a distance.
    ///
    /// Rules of the United States give small transmitters a field strength at 3 m; link budgets count with a power.
    pub struct EirpOfFieldStrength = "eirp-of-field-strength" in Signal {
        /// Field strength at the distance.
        field ("E"): FieldStrength,
        /// Distance from the antenna.
        distance ("d"): Length,
    }
    gives
    /// What is radiated.
    pub struct Radiated {
        /// Radiated power over an antenna that sends evenly.
        power ("P"): Power,
        /// The same as a level.
        level ("p"): PowerLevel,
    }
    formula "P = (E · d)² / 30 Ω\np = 10 · log₁₀(P / 1 mW)"
    valid "Free space, farther than a wavelength from the antenna."
    source { work: "E · d = √(30 Ω · P)", clause: "", evidence: Physics, seen: "an application note of a radio-module publisher (withheld) with a table of powers and field strengths" }
    by eirp_of_field_strength
}

fn eirp_of_field_strength(field: &EirpOfFieldStrength) -> Result<Radiated, OutOfReach> {
    positive("field", field.field, "11 mV/m")?;
    positive("distance", field.distance, "3 m")?;
    let watts = (field.field.base() * field.distance.base()).powi(2) / 30.0;
    let level = 10.0 * (watts / 1e-3).log10();
    if !level.is_finite() {
        return Err(OutOfReach::new(
            "field",
            "no antenna makes such a field; give one such as 11 mV/m",
        ));
    }
    Ok(Radiated {
        power: Power::from_base(watts),
        level: PowerLevel::from_base(level),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn radiated(field: f64, distance: f64) -> Result<Radiated, OutOfReach> {
        let field = EirpOfFieldStrength {
            field: FieldStrength::from_base(field),
            distance: Length::from_base(distance),
        };
        field.evaluate()
    }

    proptest! {
        #[test]
        fn half_the_field_at_twice_the_distance_is_the_same_power(field in 1e-5..10.0, d in 1.0..100.0) {
            let (here, there) = (radiated(field, d).unwrap(), radiated(field / 2.0, 2.0 * d).unwrap());
            prop_assert!((here.level.base() - there.level.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn no_field_is_refused() {
        assert_eq!(radiated(0.0, 3.0).unwrap_err().input, "field");
    }
}
