//! Area and stiffness of a square or rectangular tube.

use super::shape::{Shape, rounded};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Length, Quantity as _, SecondMomentOfArea, Volume};

formula! {
    /// Area, second moments and section moduli of a square or rectangular tube with rounded corners.
    ///
    /// A rounded rectangle less the rounded rectangle of its hollow, whose corner radius is smaller by the wall and not
    /// below zero. Tube that is bent cold has an outer corner radius of about twice its wall; extruded tube has sharp
    /// corners. Welded tube of the United States is rolled thin: its section counts with 0.93 of the nominal wall.
    pub struct TubeSection = "tube-section" in Leaf {
        /// Outer side in the plane of bending that is called the first.
        depth ("h"): Length,
        /// Outer side across it.
        width ("b"): Length,
        /// Wall.
        wall ("t"): Length,
        /// Outer radius of the corners; 0 where they are sharp.
        corner_radius ("R"): Length,
    }
    gives
    /// A tube as a section.
    pub struct TubeShape {
        /// Area of the metal.
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
    formula "A = a(h, b, R) − a(h − 2t, b − 2t, R − t)\nI = i(h, b, R) − i(h − 2t, b − 2t, R − t)\na(h, b, R) = b·h − (4 − π)·R²\ni(h, b, R) = b·h³/12 − 4·(R⁴/12 + R²·(h − R)²/4 − (π/16 − 4/(9π))·R⁴ − (π/4)·R²·(h/2 − R + 4R/(3π))²)\nS = 2·I/h"
    valid "Walls of one thickness that leave a hollow; outer corner radius up to half the smaller side."
    source { work: "geometry of plane areas", clause: "", evidence: Physics, seen: "held against the printed areas and second moments of the AISC shapes, see hss-section" }
    by tube
}

fn tube(tube: &TubeSection) -> Result<TubeShape, OutOfReach> {
    check(tube)?;
    let (h, b, t) = (tube.depth.base(), tube.width.base(), tube.wall.base());
    let radius = tube.corner_radius.base();
    let (hollow_h, hollow_b) = (2.0f64.mul_add(-t, h), 2.0f64.mul_add(-t, b));
    let hollow_radius = (radius - t).max(0.0);
    let outside = rounded(h, b, radius);
    let inside = rounded(hollow_h, hollow_b, hollow_radius);
    let shape = Shape {
        area: outside.area - inside.area,
        inertia: outside.inertia - inside.inertia,
        inertia_across: outside.inertia_across - inside.inertia_across,
    };
    Ok(TubeShape {
        area: Area::from_base(shape.area),
        inertia: SecondMomentOfArea::from_base(shape.inertia),
        modulus: Volume::from_base(2.0 * shape.inertia / h),
        inertia_across: SecondMomentOfArea::from_base(shape.inertia_across),
        modulus_across: Volume::from_base(2.0 * shape.inertia_across / b),
    })
}

fn check(tube: &TubeSection) -> Result<(), OutOfReach> {
    positive("depth", tube.depth, "4 in")?;
    positive("width", tube.width, "4 in")?;
    positive("wall", tube.wall, "0.233 in")?;
    not_negative("corner_radius", tube.corner_radius, "0.466 in")?;
    let smaller = tube.depth.base().min(tube.width.base());
    if tube.wall.base() * 2.0 >= smaller {
        return Err(OutOfReach::new(
            "wall",
            "the walls meet and leave no hollow; for a solid bar ask bar-section",
        ));
    }
    if tube.corner_radius.base() * 2.0 > smaller {
        return Err(OutOfReach::new(
            "corner_radius",
            "the corners are rounder than the smaller side allows; for a round tube ask round-section",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn tube(depth: f64, width: f64, wall: f64, radius: f64) -> TubeSection {
        TubeSection {
            depth: Length::from_base(depth),
            width: Length::from_base(width),
            wall: Length::from_base(wall),
            corner_radius: Length::from_base(radius),
        }
    }

    proptest! {
        #[test]
        fn a_tube_turned_on_its_side_changes_its_axes(depth in 0.03..0.3, width in 0.03..0.3, wall in 0.001..0.01) {
            let one = tube(depth, width, wall, 2.0 * wall).evaluate();
            let other = tube(width, depth, wall, 2.0 * wall).evaluate();
            if let (Ok(one), Ok(other)) = (one, other) {
                prop_assert!((one.inertia.base() / other.inertia_across.base() - 1.0).abs() < 1e-9);
                prop_assert!((one.area.base() / other.area.base() - 1.0).abs() < 1e-9);
            }
        }

        #[test]
        fn rounder_corners_leave_less(side in 0.03..0.3, wall in 0.001..0.01) {
            let sharp = tube(side, side, wall, 0.0).evaluate().unwrap();
            let round = tube(side, side, wall, 1.2 * wall).evaluate().unwrap();
            prop_assert!(round.area < sharp.area && round.inertia < sharp.inertia);
            prop_assert!(round.inertia.base() > 0.0);
        }
    }

    #[test]
    fn walls_that_meet_are_refused() {
        let full = tube(0.04, 0.04, 0.02, 0.0).evaluate().unwrap_err();
        assert_eq!(full.input, "wall");
        let round = tube(0.04, 0.04, 0.003, 0.03).evaluate().unwrap_err();
        assert_eq!(round.input, "corner_radius");
    }
}
