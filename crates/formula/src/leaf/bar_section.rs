//! Area and stiffness of a flat bar or a board.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Length, Quantity as _, SecondMomentOfArea, Volume};

formula! {
    /// Area, second moments and section moduli of a solid rectangle: flat bar, plate on edge, board.
    pub struct BarSection = "bar-section" in Leaf {
        /// Side in the plane of bending that is called the first.
        depth ("h"): Length,
        /// Side across it.
        width ("b"): Length,
    }
    gives
    /// A solid rectangle as a section.
    pub struct BarShape {
        /// Area.
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
    formula "A = b · h\nI = b · h³ / 12, S = b · h² / 6\nIy = h · b³ / 12, Sy = h · b² / 6"
    valid "Solid rectangles."
    source { work: "geometry of plane areas", clause: "", evidence: Physics, seen: "the second moment of a rectangle in a published comparison of section programs" }
    by bar
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn bar(bar: &BarSection) -> Result<BarShape, OutOfReach> {
    positive("depth", bar.depth, "50 mm")?;
    positive("width", bar.width, "6 mm")?;
    let (h, b) = (bar.depth.base(), bar.width.base());
    Ok(BarShape {
        area: Area::from_base(b * h),
        inertia: SecondMomentOfArea::from_base(b * h.powi(3) / 12.0),
        modulus: Volume::from_base(b * h.powi(2) / 6.0),
        inertia_across: SecondMomentOfArea::from_base(h * b.powi(3) / 12.0),
        modulus_across: Volume::from_base(h * b.powi(2) / 6.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bar(depth: f64, width: f64) -> BarSection {
        BarSection {
            depth: Length::from_base(depth),
            width: Length::from_base(width),
        }
    }

    proptest! {
        /// Twice as deep is four times as strong and eight times as stiff.
        #[test]
        fn depth_counts_squared_and_cubed(depth in 0.005..0.3, width in 0.002..0.3) {
            let (one, two) = (bar(depth, width).evaluate().unwrap(), bar(2.0 * depth, width).evaluate().unwrap());
            prop_assert!((two.modulus.base() / one.modulus.base() - 4.0).abs() < 1e-9);
            prop_assert!((two.inertia.base() / one.inertia.base() - 8.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_thickness_is_refused() {
        assert_eq!(bar(0.05, 0.0).evaluate().unwrap_err().input, "width");
    }
}
