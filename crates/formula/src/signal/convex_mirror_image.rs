//! How large a person looks in a convex mirror.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _, Ratio};

formula! {
    /// How large something looks in a convex mirror to somebody at a distance from it.
    ///
    /// A convex mirror shows much and shows it small: the image stands less than half a radius behind the glass. A mirror
    /// of larger radius shows less of the road and shows it larger.
    pub struct ConvexMirrorImage = "convex-mirror-image" in Signal {
        /// Radius to which the mirror is curved.
        radius ("R"): Length,
        /// Distance of what is looked at from the mirror.
        object_distance ("d"): Length,
        /// Height of what is looked at.
        object_height ("h"): Length,
        /// Distance of the eye from the mirror.
        eye_distance ("e"): Length,
    }
    gives
    /// The image.
    pub struct MirrorImage {
        /// Image over object.
        magnification ("m"): Ratio,
        /// Distance of the image behind the mirror.
        image_distance ("b"): Length,
        /// Height of the image.
        image_height ("h′"): Length,
        /// Angle under which the image is seen.
        apparent ("φ"): Angle,
    }
    formula "b = d · R / (2 · d + R)\nm = b / d = R / (2 · d + R)\nh′ = m · h\nφ = arctan(h′ / (e + b))"
    valid "Near the middle of a mirror without waves; toward its rim the image shrinks more."
    source { work: "mirror equation, 1/d + 1/b = 1/f with f = −R/2", clause: "", evidence: Physics, seen: "two worked problems of car mirrors in a public question archive, see the cases" }
    by convex_mirror_image
}

fn convex_mirror_image(mirror: &ConvexMirrorImage) -> Result<MirrorImage, OutOfReach> {
    positive("radius", mirror.radius, "6 ft")?;
    positive("object_distance", mirror.object_distance, "60 ft")?;
    positive("object_height", mirror.object_height, "3 ft")?;
    positive("eye_distance", mirror.eye_distance, "15 ft")?;
    let (radius, distance) = (mirror.radius.base(), mirror.object_distance.base());
    let magnification = radius / (2.0 * distance + radius);
    let behind = magnification * distance;
    let height = magnification * mirror.object_height.base();
    Ok(MirrorImage {
        magnification: Ratio::from_base(magnification),
        image_distance: Length::from_base(behind),
        image_height: Length::from_base(height),
        apparent: Angle::from_base(height.atan2(mirror.eye_distance.base() + behind)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn image(radius: f64, distance: f64) -> MirrorImage {
        let mirror = ConvexMirrorImage {
            radius: Length::from_base(radius),
            object_distance: Length::from_base(distance),
            object_height: Length::from_base(1.0),
            eye_distance: Length::from_base(5.0),
        };
        mirror.evaluate().unwrap()
    }

    proptest! {
        #[test]
        fn the_image_is_smaller_and_less_than_half_a_radius_behind(r in 0.2..5.0, d in 0.5..100.0) {
            let seen = image(r, d);
            prop_assert!(seen.magnification.base() < 1.0 && seen.image_distance.base() < r / 2.0);
            prop_assert!(image(r, d + 1.0).apparent < seen.apparent);
            let balance = 1.0 / d - 1.0 / seen.image_distance.base() + 2.0 / r;
            prop_assert!(balance.abs() < 1e-9);
        }
    }

    #[test]
    fn an_eye_at_the_mirror_is_refused() {
        let mirror = ConvexMirrorImage {
            radius: Length::from_base(1.0),
            object_distance: Length::from_base(5.0),
            object_height: Length::from_base(1.0),
            eye_distance: Length::from_base(0.0),
        };
        assert_eq!(mirror.evaluate().unwrap_err().input, "eye_distance");
    }
}
