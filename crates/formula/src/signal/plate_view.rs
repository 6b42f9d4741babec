//! A plate as a camera sees it.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Angle, Length, Quantity as _, Ratio};
use std::f64::consts::FRAC_PI_2;

formula! {
    /// Pixels across a plate, and the angles at which it is seen.
    ///
    /// Software that reads plates wants pixels enough across the plate and a view that is not too slanted: many manuals
    /// stop at 30° to the side and 30° from above. The width shrinks with the angle to the side only.
    pub struct PlateView = "plate-view" in Signal {
        /// Width of the plate.
        plate_width ("b"): Length,
        /// Width of what one pixel shows at the plate.
        pixel ("p"): Length,
        /// Angle to the side between the way the plate faces and the camera.
        turned ("φ"): Angle,
        /// Height of the camera above the plate.
        above ("h"): Length,
        /// Distance from plate to camera, as seen from above.
        distance ("d"): Length,
    }
    gives
    /// The plate in the picture.
    pub struct PlateInPicture {
        /// Pixels across it.
        pixels ("n"): Ratio,
        /// How far from above it is seen.
        from_above ("ε"): Angle,
    }
    formula "n = b · cos φ / p\nε = arctan(h / d)"
    valid "An upright plate; a camera before it, not beside it."
    source { work: "trigonometry", clause: "", evidence: Physics, seen: "cases worked independently" }
    by plate_view
}

fn plate_view(view: &PlateView) -> Result<PlateInPicture, OutOfReach> {
    let width = above_zero("plate_width", view.plate_width)?;
    let pixel = above_zero("pixel", view.pixel)?;
    let distance = above_zero("distance", view.distance)?;
    let turned = view.turned.base().abs();
    if turned.is_nan() || turned >= FRAC_PI_2 {
        return Err(OutOfReach::new(
            "turned",
            "from the side or from behind no plate is seen",
        ));
    }
    if !view.above.base().is_finite() {
        return Err(OutOfReach::new("above", "give a height"));
    }
    Ok(PlateInPicture {
        pixels: Ratio::from_base(width * turned.cos() / pixel),
        from_above: Angle::from_base((view.above.base() / distance).atan()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn view(turned: f64) -> PlateView {
        PlateView {
            plate_width: Length::from_base(0.52),
            pixel: Length::from_base(0.004),
            turned: Angle::from_base(turned),
            above: Length::from_base(1.0),
            distance: Length::from_base(5.0),
        }
    }

    proptest! {
        #[test]
        fn a_slanted_plate_has_fewer_pixels(turned in 0.01..1.5) {
            let straight = view(0.0).evaluate().unwrap();
            let (left, right) = (view(turned).evaluate().unwrap(), view(-turned).evaluate().unwrap());
            prop_assert!(left.pixels < straight.pixels);
            prop_assert!((left.pixels.base() - right.pixels.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn a_plate_from_the_side_is_refused() {
        assert_eq!(view(1.6).evaluate().unwrap_err().input, "turned");
        assert_eq!(view(f64::NAN).evaluate().unwrap_err().input, "turned");
    }
}
