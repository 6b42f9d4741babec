//! Resistance of one driven rod to earth.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Resistance, Resistivity};

formula! {
    /// Resistance to earth of one rod driven straight down to its full length.
    ///
    /// The radius counts, not the diameter: a formula with the diameter in its place gives a tenth too little. Soil that
    /// dries out or freezes has several times its resistivity; take that of the dry season, measured where the rod stands.
    pub struct RodResistance = "rod-resistance" in Power {
        /// Resistivity of the soil, in the dry season.
        resistivity ("ρ"): Resistivity,
        /// Length of the rod in the soil.
        length ("L"): Length,
        /// Diameter of the rod.
        diameter ("2a"): Length,
    }
    gives
    /// Resistance of a rod.
    pub struct RodOhms {
        /// Resistance to remote earth.
        resistance ("R"): Resistance,
    }
    formula "R = ρ / (2π · L) · (ln(4 · L / a) − 1)"
    valid "One thin rod, at least ten times as long as it is thick, in soil of one kind; rock, a sunk water table or dry sand on top make it another."
    source { work: "IEEE 142 (Dwight)", clause: "table 13, one ground rod", evidence: Seen, seen: "MIL-HDBK-419A volume 2, 1.2.2.2: navalfacilities.tpub.com/hdbk419a_vol2/hdbk419a_vol20027.htm; lists.contesting.com/_towertalk/2012-09/msg00031.html" }
    by rod_resistance
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn rod_resistance(rod: &RodResistance) -> Result<RodOhms, OutOfReach> {
    positive("resistivity", rod.resistivity, "100 Ω·m")?;
    let shape = shape(rod.length, rod.diameter)?;
    let ohms = rod.resistivity.base() / (std::f64::consts::TAU * rod.length.base()) * shape;
    Ok(RodOhms {
        resistance: Resistance::from_base(ohms),
    })
}

/// ln(4 · L / a) − 1 of a rod.
pub(super) fn shape(length: Length, diameter: Length) -> Result<f64, OutOfReach> {
    positive("length", length, "8 ft")?;
    positive("diameter", diameter, "5/8 in")?;
    let radius = diameter.base() / 2.0;
    if length.base() < 3.0 * diameter.base() {
        return Err(OutOfReach::new(
            "diameter",
            "a rod is far longer than it is thick, such as 5/8 in by 8 ft",
        ));
    }
    Ok((4.0 * length.base() / radius).ln() - 1.0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn rod(resistivity: f64, length: f64, diameter: f64) -> Result<f64, OutOfReach> {
        RodResistance {
            resistivity: Resistivity::from_base(resistivity),
            length: Length::from_base(length),
            diameter: Length::from_base(diameter),
        }
        .evaluate()
        .map(|found| found.resistance.base())
    }

    proptest! {
        #[test]
        fn longer_and_thicker_is_better_and_length_is_worth_more(
            resistivity in 5.0..5000.0, length in 1.0..6.0, diameter in 0.01..0.03
        ) {
            let ohms = rod(resistivity, length, diameter).unwrap();
            let longer = rod(resistivity, length * 1.5, diameter).unwrap();
            let thicker = rod(resistivity, length, diameter * 1.5).unwrap();
            prop_assert!(longer < thicker && thicker < ohms);
            prop_assert!((rod(2.0 * resistivity, length, diameter).unwrap() / ohms - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn what_is_no_rod_is_refused() {
        assert_eq!(rod(0.0, 2.4, 0.016).unwrap_err().input, "resistivity");
        assert_eq!(rod(100.0, 0.0, 0.016).unwrap_err().input, "length");
        assert_eq!(rod(100.0, 1.0, 0.5).unwrap_err().input, "diameter");
    }
}
