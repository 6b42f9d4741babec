//! Surface of a box.

use crate::OutOfReach;
use quantity::{Area, Length, Quantity as _};

formula! {
    /// Surface of a rectangular enclosure, all six faces.
    ///
    /// A face against a wall or on the ground gives off little heat: take it off the result before the heat balance.
    pub struct EnclosureSurface = "enclosure-surface" in Power {
        /// Height of the enclosure.
        height ("H"): Length,
        /// Width of the enclosure.
        width ("W"): Length,
        /// Depth of the enclosure.
        depth ("D"): Length,
    }
    gives
    /// Surface of an enclosure.
    pub struct EnclosureFaces {
        /// All six faces together.
        area ("A"): Area,
        /// The back alone, which a wall covers.
        back ("A₁"): Area,
    }
    formula "A = 2 · (H · W + H · D + W · D)\nA₁ = H · W"
    valid "A rectangular box."
    source { work: "geometry", clause: "", evidence: Physics, seen: "sum of six rectangles" }
    by enclosure_surface
}

fn enclosure_surface(enclosure: &EnclosureSurface) -> Result<EnclosureFaces, OutOfReach> {
    let (height, width, depth) = (enclosure.height, enclosure.width, enclosure.depth);
    let sides = [("height", height), ("width", width), ("depth", depth)];
    match sides.iter().find(|(_, side)| side.base() <= 0.0) {
        Some((input, _)) => Err(OutOfReach::new(
            input,
            "give a length above zero, such as 16 in",
        )),
        None => Ok(EnclosureFaces {
            area: 2.0 * (height * width + height * depth + width * depth),
            back: height * width,
        }),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn area(sides: [f64; 3]) -> f64 {
        let [height, width, depth] = sides.map(Length::from_base);
        let enclosure = EnclosureSurface {
            height,
            width,
            depth,
        };
        enclosure.evaluate().unwrap().area.base()
    }

    proptest! {
        #[test]
        fn the_surface_does_not_depend_on_how_the_box_lies(a in 0.01..3.0, b in 0.01..3.0, c in 0.01..3.0) {
            prop_assert!((area([a, b, c]) - area([c, a, b])).abs() < 1e-12);
            prop_assert!((area([a, b, c]) - area([b, a, c])).abs() < 1e-12);
            prop_assert!(area([a + 0.1, b, c]) > area([a, b, c]));
        }
    }
}
