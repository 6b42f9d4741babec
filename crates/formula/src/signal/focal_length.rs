//! The lens that shows a wanted detail, and the one that still takes a wanted width in.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Length, Quantity as _};

formula! {
    /// Shortest lens that shows a detail at a distance, and longest that still takes a width in there.
    ///
    /// Where the first is longer than the second, no lens does both: more pixels, a nearer place, or a second camera.
    pub struct FocalLength = "focal-length" in Signal {
        /// Width of the sensor.
        sensor_width ("w"): Length,
        /// Pixels across the picture.
        pixels ("N"): u32,
        /// Distance along the axis of the lens.
        distance ("d"): Length,
        /// Width that one pixel may show at most there.
        pixel ("p"): Length,
        /// Width that the picture has to take in there.
        across ("b"): Length,
    }
    gives
    /// The lenses that serve.
    pub struct LensesThatServe {
        /// Shortest that shows the detail.
        shortest ("f₁"): Length,
        /// Longest that takes the width in.
        longest ("f₂"): Length,
    }
    formula "f₁ = w · d / (N · p)\nf₂ = w · d / b"
    valid "As for the size of a pixel."
    source { work: "geometry of the pinhole camera (any optics handbook)", clause: "", evidence: Physics, seen: "cases worked independently" }
    by focal_length
}

fn focal_length(wanted: &FocalLength) -> Result<LensesThatServe, OutOfReach> {
    let width = above_zero("sensor_width", wanted.sensor_width)?;
    let distance = above_zero("distance", wanted.distance)?;
    let pixel = above_zero("pixel", wanted.pixel)?;
    let across = above_zero("across", wanted.across)?;
    if wanted.pixels == 0 {
        return Err(OutOfReach::new("pixels", "a picture has pixels"));
    }
    let shortest = width * distance / (f64::from(wanted.pixels) * pixel);
    Ok(LensesThatServe {
        shortest: Length::from_base(shortest),
        longest: Length::from_base(width * distance / across),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::PixelSize;
    use proptest::prelude::*;

    fn wanted(distance: f64, pixel: f64, across: f64) -> FocalLength {
        FocalLength {
            sensor_width: Length::from_base(0.0056),
            pixels: 2560,
            distance: Length::from_base(distance),
            pixel: Length::from_base(pixel),
            across: Length::from_base(across),
        }
    }

    proptest! {
        #[test]
        fn the_lens_found_shows_just_that(distance in 1.0..100.0, pixel in 0.001..0.05) {
            let lens = wanted(distance, pixel, 1.0).evaluate().unwrap();
            let shown = PixelSize {
                sensor_width: Length::from_base(0.0056),
                pixels: 2560,
                focal_length: lens.shortest,
                distance: Length::from_base(distance),
            };
            let shown = shown.evaluate().unwrap();
            prop_assert!((shown.pixel.base() / pixel - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn nothing_wanted_is_refused() {
        assert_eq!(wanted(5.0, 0.0, 1.0).evaluate().unwrap_err().input, "pixel");
        assert_eq!(
            wanted(5.0, 0.004, 0.0).evaluate().unwrap_err().input,
            "across"
        );
    }
}
