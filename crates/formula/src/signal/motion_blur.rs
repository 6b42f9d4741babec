//! How far something moves in the picture while the shutter is open.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Angle, Length, Quantity as _, Ratio, Time, Velocity};

formula! {
    /// Blur of something that moves, in pixels, and the longest exposure for one pixel of it.
    ///
    /// What comes straight at the camera hardly blurs; what crosses before it blurs most. A rule of plate-reading manuals,
    /// one second over eleven times the speed in km/h, lets the vehicle go an inch along its way.
    pub struct MotionBlur = "motion-blur" in Signal {
        /// Speed.
        speed ("v"): Velocity,
        /// Time that the shutter is open.
        shutter ("t"): Time,
        /// Width of what one pixel shows there.
        pixel ("p"): Length,
        /// Angle between its way and the line to the camera; 90° crosses the picture.
        angle ("φ"): Angle,
    }
    gives
    /// What the picture shows of it.
    pub struct Blur {
        /// Way that it goes while the shutter is open.
        travel ("s"): Length,
        /// Pixels over which it is smeared.
        blur ("n"): Ratio,
    }
    formula "s = v · t\nn = s · |sin φ| / p"
    valid "An exposure that is short beside the time in the picture."
    source { work: "kinematics", clause: "", evidence: Physics, seen: "cases worked independently; the shutter table of a plate-reading manual follows from it" }
    by motion_blur
}

fn motion_blur(moving: &MotionBlur) -> Result<Blur, OutOfReach> {
    let pixel = above_zero("pixel", moving.pixel)?;
    let not_negative = [
        ("speed", moving.speed.base()),
        ("shutter", moving.shutter.base()),
    ];
    for (input, value) in not_negative {
        if !(value >= 0.0 && value.is_finite()) {
            return Err(OutOfReach::new(input, "this is not below zero"));
        }
    }
    if !moving.angle.base().is_finite() {
        return Err(OutOfReach::new("angle", "give an angle"));
    }
    let travel = moving.speed.base() * moving.shutter.base();
    Ok(Blur {
        travel: Length::from_base(travel),
        blur: Ratio::from_base(travel * moving.angle.base().sin().abs() / pixel),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn moving(speed: f64, angle: f64) -> MotionBlur {
        MotionBlur {
            speed: Velocity::from_base(speed),
            shutter: Time::from_base(0.002),
            pixel: Length::from_base(0.004),
            angle: Angle::from_base(angle),
        }
    }

    proptest! {
        #[test]
        fn blur_grows_with_speed_and_vanishes_head_on(speed in 0.0..30.0) {
            let slow = moving(speed, 1.0).evaluate().unwrap();
            let fast = moving(speed + 1.0, 1.0).evaluate().unwrap();
            prop_assert!(slow.blur < fast.blur);
            prop_assert!(moving(speed, 0.0).evaluate().unwrap().blur.base() < 1e-12);
        }
    }

    #[test]
    fn a_speed_below_zero_is_refused() {
        assert_eq!(moving(-1.0, 1.0).evaluate().unwrap_err().input, "speed");
        assert_eq!(moving(1.0, f64::NAN).evaluate().unwrap_err().input, "angle");
    }
}
