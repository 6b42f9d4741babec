//! How wide a lens looks.

use crate::OutOfReach;
use quantity::{Angle, Length, Quantity as _};

formula! {
    /// Angle that one side of a sensor takes in through a lens.
    ///
    /// The longer the lens, the narrower and the nearer the picture. Width and height of the sensor each have their own
    /// angle. A wide lens bends straight lines: the data sheet of one below 3 mm often states more than this.
    pub struct PictureAngle = "picture-angle" in Signal {
        /// Side of the sensor: its width for the angle across, its height for the angle up and down.
        side ("w"): Length,
        /// Focal length.
        focal_length ("f"): Length,
    }
    gives
    /// What the lens takes in.
    pub struct LensAngle {
        /// From one edge of the picture to the other.
        angle ("α"): Angle,
    }
    formula "α = 2 · arctan(w / (2 · f))"
    valid "A lens without distortion, set to far distances."
    source { work: "geometry of the pinhole camera (any optics handbook)", clause: "", evidence: Physics, seen: "cases worked independently" }
    by picture_angle
}

fn picture_angle(lens: &PictureAngle) -> Result<LensAngle, OutOfReach> {
    let half =
        above_zero("side", lens.side)? / above_zero("focal_length", lens.focal_length)? / 2.0;
    Ok(LensAngle {
        angle: Angle::from_base(2.0 * half.atan()),
    })
}

/// A size of lens, sensor or picture that is above zero.
pub(super) fn above_zero(input: &'static str, length: Length) -> Result<f64, OutOfReach> {
    let meters = length.base();
    if meters > 0.0 && meters.is_finite() {
        Ok(meters)
    } else {
        Err(OutOfReach::new(input, "this is above zero"))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn angle(side: f64, focal: f64) -> Result<f64, OutOfReach> {
        let lens = PictureAngle {
            side: Length::from_base(side),
            focal_length: Length::from_base(focal),
        };
        lens.evaluate().map(|found| found.angle.base())
    }

    proptest! {
        #[test]
        fn a_longer_lens_sees_less(side in 0.002..0.02, focal in 0.001..0.1) {
            prop_assert!(angle(side, focal * 1.1).unwrap() < angle(side, focal).unwrap());
            prop_assert!(angle(side, focal).unwrap() < std::f64::consts::PI);
        }
    }

    #[test]
    fn no_lens_is_refused() {
        assert_eq!(angle(0.005, 0.0).unwrap_err().input, "focal_length");
        assert_eq!(angle(-1.0, 0.004).unwrap_err().input, "side");
    }
}
