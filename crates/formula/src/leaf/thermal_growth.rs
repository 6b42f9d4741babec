//! How much longer or shorter a part becomes as its temperature changes.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Temperature, TemperatureDifference, ThermalExpansion};

formula! {
    /// Growth of a part from one temperature of its metal to another; below zero where it shrinks.
    ///
    /// Dark metal in the sun is far warmer than the air: take the metal's temperature.
    pub struct ThermalGrowth = "thermal-growth" in Leaf {
        /// Length.
        length ("L"): Length,
        /// Coefficient of expansion.
        expansion ("α"): ThermalExpansion,
        /// Temperature at which it had that length.
        from ("T1"): Temperature,
        /// Temperature asked about.
        to ("T2"): Temperature,
    }
    gives
    /// Growth of a part.
    pub struct Growth {
        /// Change of temperature.
        warming ("ΔT"): TemperatureDifference,
        /// Growth, below zero where it shrinks.
        growth ("ΔL"): Length,
    }
    formula "ΔT = T2 − T1\nΔL = α · L · ΔT"
    valid "Free to move, one temperature through its whole body, between −60 °C and 150 °C."
    source { work: "definition of the coefficient of expansion", clause: "", evidence: Physics, seen: "growth of tracks worked by hand" }
    by growth
}

fn growth(part: &ThermalGrowth) -> Result<Growth, OutOfReach> {
    positive("length", part.length, "20 ft")?;
    not_negative("expansion", part.expansion, "12 µm/(m·K)")?;
    within("from", part.from)?;
    within("to", part.to)?;
    let warming = part.to.base() - part.from.base();
    Ok(Growth {
        warming: TemperatureDifference::from_base(warming),
        growth: part.length * (part.expansion.base() * warming),
    })
}

/// Coldest and hottest metal in kelvin.
const RANGE: std::ops::RangeInclusive<f64> = 213.15..=423.15;

pub(super) fn within(input: &'static str, temperature: Temperature) -> Result<(), OutOfReach> {
    if RANGE.contains(&temperature.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "metal outdoors is between −60 °C and 150 °C",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn part(length: f64, from: f64, to: f64) -> ThermalGrowth {
        ThermalGrowth {
            length: Length::from_base(length),
            expansion: ThermalExpansion::from_base(12e-6),
            from: Temperature::from_base(from),
            to: Temperature::from_base(to),
        }
    }

    proptest! {
        #[test]
        fn there_and_back_changes_nothing(length in 0.1..30.0, from in 230.0..350.0, to in 230.0..350.0) {
            let there = part(length, from, to).evaluate().unwrap().growth;
            let back = part(length, to, from).evaluate().unwrap().growth;
            prop_assert!((there + back).base().abs() < 1e-12);
        }
    }

    #[test]
    fn a_furnace_is_refused() {
        assert_eq!(part(6.0, 290.0, 900.0).evaluate().unwrap_err().input, "to");
    }
}
