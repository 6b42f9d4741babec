//! Area and stiffness of a round tube or a round bar.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Length, Quantity as _, SecondMomentOfArea, Volume};
use std::f64::consts::PI;

formula! {
    /// Area, second moment and section modulus of a round tube; of a round bar where the wall is half the diameter.
    pub struct RoundSection = "round-section" in Leaf {
        /// Outer diameter.
        diameter ("D"): Length,
        /// Wall; half the diameter for a solid bar.
        wall ("t"): Length,
    }
    gives
    /// A round tube as a section.
    pub struct RoundShape {
        /// Area of the metal.
        area ("A"): Area,
        /// Second moment, the same in every direction.
        inertia ("I"): SecondMomentOfArea,
        /// Section modulus.
        modulus ("S"): Volume,
    }
    formula "d = D − 2t\nA = π/4 · (D² − d²)\nI = π/64 · (D⁴ − d⁴)\nS = 2·I/D"
    valid "Walls up to half the diameter."
    source { work: "geometry of plane areas", clause: "", evidence: Physics, seen: "held against the printed areas and second moments of the AISC pipes, see pipe-section" }
    by round
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn round(tube: &RoundSection) -> Result<RoundShape, OutOfReach> {
    positive("diameter", tube.diameter, "3.5 in")?;
    positive("wall", tube.wall, "0.201 in")?;
    let outer = tube.diameter.base();
    let inner = 2.0f64.mul_add(-tube.wall.base(), outer);
    if inner < -1e-12 {
        return Err(OutOfReach::new(
            "wall",
            "the wall is more than half the diameter; a solid bar has a wall of half its diameter",
        ));
    }
    let inner = inner.max(0.0);
    let inertia = PI / 64.0 * (outer.powi(4) - inner.powi(4));
    Ok(RoundShape {
        area: Area::from_base(PI / 4.0 * (outer.powi(2) - inner.powi(2))),
        inertia: SecondMomentOfArea::from_base(inertia),
        modulus: Volume::from_base(2.0 * inertia / outer),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn round(diameter: f64, wall: f64) -> RoundSection {
        RoundSection {
            diameter: Length::from_base(diameter),
            wall: Length::from_base(wall),
        }
    }

    proptest! {
        #[test]
        fn a_tube_and_its_core_make_a_bar(diameter in 0.01..0.3, share in 0.01..0.49) {
            let tube = round(diameter, diameter * share).evaluate().unwrap();
            let inner = diameter * (1.0 - 2.0 * share);
            let core = round(inner, inner / 2.0).evaluate().unwrap();
            let bar = round(diameter, diameter / 2.0).evaluate().unwrap();
            prop_assert!(((tube.area + core.area).base() / bar.area.base() - 1.0).abs() < 1e-9);
            let inertia = tube.inertia.base() + core.inertia.base();
            prop_assert!((inertia / bar.inertia.base() - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_wall_beyond_the_middle_is_refused() {
        assert_eq!(round(0.05, 0.03).evaluate().unwrap_err().input, "wall");
    }
}
