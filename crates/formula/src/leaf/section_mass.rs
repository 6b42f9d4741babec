//! Mass of each unit of length of a section.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, MassDensity, MassPerLength};

formula! {
    /// Mass of each unit of length of a bar or tube, from its area and its density.
    pub struct SectionMass = "section-mass" in Leaf {
        /// Area of the section.
        area ("A"): Area,
        /// Density of the material.
        density ("ρ"): MassDensity,
    }
    gives
    /// Mass of each unit of length.
    pub struct SectionMasses {
        /// Mass of each unit of length.
        mass_per_length ("w"): MassPerLength,
    }
    formula "w = A · ρ"
    valid "Sections of one material."
    source { work: "definition of density", clause: "", evidence: Physics, seen: "held against printed weights of tubes" }
    by mass
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn mass(section: &SectionMass) -> Result<SectionMasses, OutOfReach> {
    positive("area", section.area, "0.9375 in²")?;
    positive("density", section.density, "490 lb/ft³")?;
    Ok(SectionMasses {
        mass_per_length: section.area * section.density,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn section(area: f64, density: f64) -> SectionMass {
        SectionMass {
            area: Area::from_base(area),
            density: MassDensity::from_base(density),
        }
    }

    proptest! {
        #[test]
        fn twice_the_area_weighs_twice(area in 1e-5..0.1, density in 300.0..9000.0) {
            let one = section(area, density).evaluate().unwrap().mass_per_length;
            let two = section(2.0 * area, density).evaluate().unwrap().mass_per_length;
            prop_assert!((two.base() / one.base() - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_area_is_refused() {
        assert_eq!(section(0.0, 7850.0).evaluate().unwrap_err().input, "area");
    }
}
