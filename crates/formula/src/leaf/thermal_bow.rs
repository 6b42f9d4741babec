//! How far a leaf bows when the sun heats one of its faces.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, TemperatureDifference, ThermalExpansion};

formula! {
    /// Bow of a leaf or an arm with one face warmer than the other, toward the warm side.
    ///
    /// The warm face grows, the other does not, and the leaf becomes part of a circle.
    pub struct ThermalBow = "thermal-bow" in Leaf {
        /// Length.
        length ("L"): Length,
        /// Distance between the warm face and the cool one.
        thickness ("d"): Length,
        /// Coefficient of expansion.
        expansion ("α"): ThermalExpansion,
        /// By how much the warm face is warmer.
        difference ("ΔT"): TemperatureDifference,
    }
    gives
    /// Bow of a leaf.
    pub struct Bow {
        /// Bow of its middle, with both ends held.
        middle ("b"): Length,
        /// Way of its free end, with one end held fast.
        end ("e"): Length,
    }
    formula "b = α · ΔT · L² / (8 · d)\ne = α · ΔT · L² / (2 · d)"
    valid "The temperature falls evenly from face to face, and nothing but the ends holds the leaf; a bow of less than a tenth of the length."
    source { work: "geometry of a circle; curvature α · ΔT / d", clause: "", evidence: Physics, seen: "the height of the arc of the exact circle" }
    by bow
}

fn bow(leaf: &ThermalBow) -> Result<Bow, OutOfReach> {
    positive("length", leaf.length, "20 ft")?;
    positive("thickness", leaf.thickness, "2 in")?;
    not_negative("expansion", leaf.expansion, "12 µm/(m·K)")?;
    not_negative("difference", leaf.difference, "20 Δ°F")?;
    let length = leaf.length.base();
    let curvature = leaf.expansion.base() * leaf.difference.base() / leaf.thickness.base();
    let end = curvature * length.powi(2) / 2.0;
    if end > length / 2.5 {
        return Err(OutOfReach::new(
            "difference",
            "the leaf would curl up; look for a thickness or a difference with a wrong unit",
        ));
    }
    Ok(Bow {
        middle: Length::from_base(end / 4.0),
        end: Length::from_base(end),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(length: f64, thickness: f64, difference: f64) -> ThermalBow {
        ThermalBow {
            length: Length::from_base(length),
            thickness: Length::from_base(thickness),
            expansion: ThermalExpansion::from_base(12e-6),
            difference: TemperatureDifference::from_base(difference),
        }
    }

    proptest! {
        #[test]
        fn thicker_leaves_bow_less(length in 1.0..8.0, thickness in 0.04..0.2, difference in 1.0..40.0) {
            let thin = leaf(length, thickness, difference).evaluate().unwrap();
            let thick = leaf(length, thickness * 1.5, difference).evaluate().unwrap();
            prop_assert!(thick.middle < thin.middle && thin.end > thin.middle);
        }
    }

    #[test]
    fn a_leaf_that_curls_up_is_refused() {
        assert_eq!(
            leaf(10.0, 0.0005, 60.0).evaluate().unwrap_err().input,
            "difference"
        );
    }
}
