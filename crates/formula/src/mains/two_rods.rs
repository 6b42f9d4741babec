//! Resistance of two equal rods at any spacing.

use super::rod_resistance::shape;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio, Resistance, Resistivity};
use std::f64::consts::PI;

formula! {
    /// Resistance of two equal rods that are tied together, farther apart than they are long.
    ///
    /// The last terms are the start of a series that is poor where the rods stand one length apart; closer than that it
    /// is refused, and the factor of `rods-in-parallel` counts.
    pub struct TwoRods = "two-rods" in Power {
        /// Resistivity of the soil, in the dry season.
        resistivity ("ρ"): Resistivity,
        /// Length of each rod in the soil.
        length ("L"): Length,
        /// Diameter of each rod.
        diameter ("2a"): Length,
        /// Distance between them.
        spacing ("s"): Length,
    }
    gives
    /// Resistance of two rods.
    pub struct TwoRodsOhms {
        /// Resistance of both together.
        resistance ("R"): Resistance,
        /// That over half of one.
        factor ("F"): Ratio,
    }
    formula "R = ρ / (4π · L) · (ln(4 · L / a) − 1) + ρ / (4π · s) · (1 − L² / (3 · s²) + 2 · L⁴ / (5 · s⁴))"
    valid "Two equal rods, spacing at least their length, in soil of one kind."
    source { work: "IEEE 142 (Dwight)", clause: "table 13, two ground rods, s > L", evidence: Seen, seen: "lists.contesting.com/_towertalk/2012-09/msg00031.html" }
    by two_rods
}

fn two_rods(rods: &TwoRods) -> Result<TwoRodsOhms, OutOfReach> {
    positive("resistivity", rods.resistivity, "100 Ω·m")?;
    let shape = shape(rods.length, rods.diameter)?;
    if rods.spacing.base() < rods.length.base() * (1.0 - 1e-9) {
        return Err(OutOfReach::new(
            "spacing",
            "the series is poor for rods closer than their length; drive them farther apart",
        ));
    }
    let alone = rods.resistivity.base() / (4.0 * PI * rods.length.base()) * shape;
    let near = (rods.length.base() / rods.spacing.base()).powi(2);
    let mutual = rods.resistivity.base() / (4.0 * PI * rods.spacing.base())
        * (1.0 - near / 3.0 + 0.4 * near * near);
    Ok(TwoRodsOhms {
        resistance: Resistance::from_base(alone + mutual),
        factor: Ratio::from_base((alone + mutual) / alone),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn rods(spacing: f64) -> Result<TwoRodsOhms, OutOfReach> {
        TwoRods {
            resistivity: Resistivity::from_base(100.0),
            length: Length::from_base(2.4),
            diameter: Length::from_base(0.016),
            spacing: Length::from_base(spacing),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn farther_apart_they_come_nearer_to_half(spacing in 2.4..100.0) {
            let (near, far) = (rods(spacing).unwrap(), rods(spacing * 1.1).unwrap());
            prop_assert!(far.resistance < near.resistance && far.factor.base() > 1.0);
        }
    }

    #[test]
    fn too_close_is_refused() {
        assert_eq!(rods(2.0).unwrap_err().input, "spacing");
        assert_eq!(rods(0.0).unwrap_err().input, "spacing");
    }
}
