//! How thick a plate is that does not bend under its anchors.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Thickness of a base plate that stays straight between what stands on it and a pulled anchor.
    ///
    /// The plate is a short arm, held at the face of the post and bent by the pull of the anchor, and may bend until its
    /// steel begins to yield. As much of the plate bends with an anchor as lies within 45° of it, no more than its own
    /// part of the plate. A thinner plate pries: its edge presses on the concrete, and the anchors pull more than a
    /// calculation with a stiff plate says.
    pub struct AnchorPlateThickness = "anchor-plate-thickness" in Standing {
        /// Pull on the anchor.
        pull ("T"): Force,
        /// Distance from the face of the post to the anchor.
        overhang ("a"): Length,
        /// Part of the plate's width that belongs to the anchor.
        width ("b"): Length,
        /// Yield strength of the plate.
        yield_strength ("Fy"): Pressure,
        /// Strength reduction factor: 0.9 with factored loads by US codes, 1 by EN 1993.
        reduction ("φ"): Ratio,
    }
    gives
    /// Thickness of a plate.
    pub struct PlateThickness {
        /// Width that bends with the anchor.
        bent_width ("be"): Length,
        /// Least thickness.
        thickness ("t"): Length,
    }
    formula "be = min(b, 2 · a)\nt = √(6 · T · a / (be · φ · Fy))"
    valid "Flat steel plates without stiffeners."
    source { work: "bending of a plate as a short arm, elastic", clause: "", evidence: Physics, seen: "statics; the spread at 45° as is usual for base plates" }
    by thickness
}

fn thickness(plate: &AnchorPlateThickness) -> Result<PlateThickness, OutOfReach> {
    not_negative("pull", plate.pull, "2,000 lbf")?;
    not_negative("overhang", plate.overhang, "2 in")?;
    positive("width", plate.width, "4 in")?;
    positive("yield_strength", plate.yield_strength, "36 ksi")?;
    within(
        "reduction",
        plate.reduction,
        0.3,
        1.0,
        "give the strength reduction factor, such as 0.9, from 0.3 to 1",
    )?;
    let bent_width = plate.width.base().min(2.0 * plate.overhang.base());
    let stress = plate.reduction.base() * plate.yield_strength.base();
    let thickness = if bent_width > 0.0 {
        (6.0 * plate.pull.base() * plate.overhang.base() / (bent_width * stress)).sqrt()
    } else {
        0.0
    };
    Ok(PlateThickness {
        bent_width: Length::from_base(bent_width),
        thickness: Length::from_base(thickness),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn plate(pull: f64, overhang: f64, width: f64) -> f64 {
        let plate = AnchorPlateThickness {
            pull: Force::from_base(pull),
            overhang: Length::from_base(overhang),
            width: Length::from_base(width),
            yield_strength: Pressure::from_base(250e6),
            reduction: Ratio::from_base(0.9),
        };
        plate.evaluate().unwrap().thickness.base()
    }

    proptest! {
        #[test]
        fn more_pull_or_a_narrower_plate_asks_for_more(
            pull in 0.0..1e5, overhang in 0.0..0.3, width in 0.02..0.3
        ) {
            let base = plate(pull, overhang, width);
            prop_assert!(base.is_finite());
            prop_assert!(plate(pull * 1.1, overhang, width) >= base);
            prop_assert!(plate(pull, overhang, width * 0.9) >= base);
            prop_assert!(plate(pull, overhang * 1.1, width) >= base * (1.0 - 1e-12));
        }
    }

    #[test]
    fn an_anchor_under_the_post_bends_nothing() {
        assert!(plate(1e4, 0.0, 0.1).abs() < 1e-12);
    }
}
