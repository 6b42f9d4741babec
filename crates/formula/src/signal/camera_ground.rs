//! From where to where a tilted camera sees the ground.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Angle, Length, Quantity as _};
use std::f64::consts::FRAC_PI_2;

formula! {
    /// Nearest and farthest ground in the middle of a picture.
    ///
    /// Between the foot of the camera and the near edge lies ground that it never sees. A picture whose upper edge looks
    /// above the horizon has no far edge.
    pub struct CameraGround = "camera-ground" in Signal {
        /// Height of the lens above the ground that it looks at.
        height ("h"): Length,
        /// Tilt of its axis below level.
        tilt ("τ"): Angle,
        /// Angle from the lower to the upper edge of the picture.
        angle ("α"): Angle,
    }
    gives
    /// Ground in the picture.
    pub struct GroundSeen {
        /// From the foot of the camera to the nearest ground in the picture; zero where it sees its own foot.
        near ("d₁"): Length,
        /// From the foot of the camera to the farthest.
        far ("d₂"): Length,
    }
    formula "d₁ = h / tan(τ + α / 2)\nd₂ = h / tan(τ − α / 2)"
    valid "Level ground; a picture whose upper edge looks below the horizon."
    source { work: "geometry of the pinhole camera (any optics handbook)", clause: "", evidence: Physics, seen: "cases worked independently" }
    by camera_ground
}

fn camera_ground(camera: &CameraGround) -> Result<GroundSeen, OutOfReach> {
    let height = above_zero("height", camera.height)?;
    let (tilt, half) = (camera.tilt.base(), camera.angle.base() / 2.0);
    if !(half > 0.0 && half < FRAC_PI_2) {
        return Err(OutOfReach::new(
            "angle",
            "a picture takes in from 0° to 180°",
        ));
    }
    if !(tilt > half && tilt <= FRAC_PI_2) {
        return Err(OutOfReach::new(
            "tilt",
            "tilted by no more than half the angle of the picture it looks over the horizon: there is no far edge",
        ));
    }
    let lower = tilt + half;
    let near = if lower < FRAC_PI_2 {
        height / lower.tan()
    } else {
        0.0
    };
    Ok(GroundSeen {
        near: Length::from_base(near),
        far: Length::from_base(height / (tilt - half).tan()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn ground(height: f64, tilt: f64, angle: f64) -> Result<GroundSeen, OutOfReach> {
        let camera = CameraGround {
            height: Length::from_base(height),
            tilt: Angle::from_base(tilt.to_radians()),
            angle: Angle::from_base(angle.to_radians()),
        };
        camera.evaluate()
    }

    proptest! {
        #[test]
        fn the_near_edge_is_nearer_and_both_grow_with_height(tilt in 21.0..69.0, height in 1.0..10.0) {
            let one = ground(height, tilt, 40.0).unwrap();
            let two = ground(2.0 * height, tilt, 40.0).unwrap();
            prop_assert!(one.near < one.far);
            prop_assert!((two.near.base() - 2.0 * one.near.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn a_picture_over_the_horizon_is_refused_and_one_straight_down_sees_its_foot() {
        assert_eq!(ground(3.0, 10.0, 40.0).unwrap_err().input, "tilt");
        assert_eq!(ground(3.0, 30.0, 0.0).unwrap_err().input, "angle");
        assert_eq!(ground(-3.0, 30.0, 40.0).unwrap_err().input, "height");
        assert!(ground(3.0, 80.0, 40.0).unwrap().near.base().abs() < 1e-12);
    }
}
