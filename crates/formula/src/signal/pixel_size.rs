//! How much of the scene one pixel shows.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Length, Quantity as _};

formula! {
    /// Width of what one pixel shows at a distance, and of the whole picture there.
    ///
    /// Pixels for each unit of length are one over it: 4 mm in a pixel are 250 pixels per meter, or 76 per foot. The
    /// distance counts along the axis of the lens; what is seen at a slant is foreshortened besides.
    pub struct PixelSize = "pixel-size" in Signal {
        /// Width of the sensor.
        sensor_width ("w"): Length,
        /// Pixels across the picture.
        pixels ("N"): u32,
        /// Focal length.
        focal_length ("f"): Length,
        /// Distance along the axis of the lens.
        distance ("d"): Length,
    }
    gives
    /// What the picture holds at that distance.
    pub struct PixelAtDistance {
        /// Width of what one pixel shows.
        pixel ("p"): Length,
        /// Width of what the whole picture shows.
        across ("b"): Length,
    }
    formula "b = w · d / f\np = b / N"
    valid "A sharp, undistorted picture at the resolution that is recorded; compression and motion take detail away."
    source { work: "geometry of the pinhole camera (any optics handbook)", clause: "", evidence: Physics, seen: "cases worked independently" }
    by pixel_size
}

fn pixel_size(view: &PixelSize) -> Result<PixelAtDistance, OutOfReach> {
    let width = above_zero("sensor_width", view.sensor_width)?;
    let focal = above_zero("focal_length", view.focal_length)?;
    let distance = above_zero("distance", view.distance)?;
    if view.pixels == 0 {
        return Err(OutOfReach::new("pixels", "a picture has pixels"));
    }
    let across = width * distance / focal;
    Ok(PixelAtDistance {
        pixel: Length::from_base(across / f64::from(view.pixels)),
        across: Length::from_base(across),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn view(distance: f64, pixels: u32) -> PixelSize {
        PixelSize {
            sensor_width: Length::from_base(0.0048),
            pixels,
            focal_length: Length::from_base(0.004),
            distance: Length::from_base(distance),
        }
    }

    proptest! {
        #[test]
        fn twice_as_far_shows_half_the_detail(distance in 0.1..500.0) {
            let near = view(distance, 1920).evaluate().unwrap();
            let far = view(2.0 * distance, 1920).evaluate().unwrap();
            prop_assert!((far.pixel.base() / near.pixel.base() - 2.0).abs() < 1e-12);
            prop_assert!((near.across.base() / near.pixel.base() - 1920.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_picture_is_refused() {
        assert_eq!(view(5.0, 0).evaluate().unwrap_err().input, "pixels");
        assert_eq!(view(0.0, 1920).evaluate().unwrap_err().input, "distance");
        assert_eq!(
            view(f64::INFINITY, 1920).evaluate().unwrap_err().input,
            "distance"
        );
    }
}
