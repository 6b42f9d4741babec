//! Mass of the sheets and meshes of a leaf.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Mass, MassPerArea, Quantity as _, Ratio};

formula! {
    /// Mass of several equal sheets, panels or meshes.
    pub struct SheetMass = "sheet-mass" in Leaf {
        /// Mass of each unit of area.
        mass_per_area ("σ"): MassPerArea,
        /// One side.
        length ("l"): Length,
        /// The other side.
        width ("b"): Length,
        /// How many.
        count ("n"): u32,
    }
    gives
    /// Mass of sheets.
    pub struct SheetMasses {
        /// Mass of all.
        mass ("m"): Mass,
    }
    formula "m = n · σ · l · b"
    valid "Sheets of one thickness; zinc and paint are not in it."
    source { work: "definition of mass per area", clause: "", evidence: Physics, seen: "sheets worked by hand" }
    by mass
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn mass(sheet: &SheetMass) -> Result<SheetMasses, OutOfReach> {
    positive("mass_per_area", sheet.mass_per_area, "1.1 lb/ft²")?;
    positive("length", sheet.length, "20 ft")?;
    positive("width", sheet.width, "5 ft")?;
    positive("count", Ratio::from_base(f64::from(sheet.count)), "1")?;
    let each: Mass = sheet.mass_per_area * (sheet.length * sheet.width);
    Ok(SheetMasses {
        mass: each * f64::from(sheet.count),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sheet(length: f64, width: f64) -> SheetMass {
        SheetMass {
            mass_per_area: MassPerArea::from_base(7.85),
            length: Length::from_base(length),
            width: Length::from_base(width),
            count: 1,
        }
    }

    proptest! {
        #[test]
        fn turning_a_sheet_changes_nothing(length in 0.1..10.0, width in 0.1..3.0) {
            let one = sheet(length, width).evaluate().unwrap().mass;
            let other = sheet(width, length).evaluate().unwrap().mass;
            prop_assert!((one - other).base().abs() < 1e-9);
        }
    }

    #[test]
    fn a_sheet_without_width_is_refused() {
        assert_eq!(sheet(2.0, 0.0).evaluate().unwrap_err().input, "width");
    }
}
