//! Turning circle of a truck from the angle of its inner front wheel.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _};
use std::f64::consts::FRAC_PI_2;

formula! {
    /// Radius of the circle of the outer front wheel, from the angle to which the inner one is cramped.
    ///
    /// What a truck's papers give as its cramp angle. Two axles only: a tandem rear axle scrubs, and its truck turns on a
    /// wider circle than this; chalk it on a yard.
    pub struct TurningByLock = "turning-by-lock" in Signal {
        /// From the front axle to the rear axle.
        wheelbase ("L"): Length,
        /// Between the pivots of the front wheels.
        track ("k"): Length,
        /// Angle of the inner front wheel at full lock.
        inner_angle ("B"): Angle,
    }
    gives
    /// Turning circle.
    pub struct CircleByLock {
        /// Angle of the outer front wheel.
        outer_angle ("A"): Angle,
        /// Radius of the circle of the outer front wheel.
        wheel_radius ("TR"): Length,
    }
    formula "cot A = k / L + cot B\nTR = L / sin A"
    valid "Two axles, front wheels that roll without scrubbing."
    source { work: "SAE J695, turning ability of motor vehicles", clause: "turning radius", evidence: Seen, seen: "worked example of a truck handbook, kept in a city's record: miweblink2.metro-inet.us/RVPublic/0/doc/17311/Page39.aspx" }
    by circle
}

fn circle(truck: &TurningByLock) -> Result<CircleByLock, OutOfReach> {
    positive("wheelbase", truck.wheelbase, "17 ft")?;
    positive("track", truck.track, "6 ft 6 in")?;
    positive("inner_angle", truck.inner_angle, "33°")?;
    if truck.inner_angle.base() > FRAC_PI_2 {
        return Err(OutOfReach::new(
            "inner_angle",
            "no front wheel turns beyond square; give its cramp angle, such as 33°",
        ));
    }
    let wheelbase = truck.wheelbase.base();
    let inner = truck.inner_angle.base();
    let cotangent = truck.track.base() / wheelbase + inner.cos() / inner.sin();
    let outer = 1.0_f64.atan2(cotangent);
    Ok(CircleByLock {
        outer_angle: Angle::from_base(outer),
        wheel_radius: Length::from_base(wheelbase / outer.sin()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn truck(wheelbase: f64, track: f64, angle: f64) -> TurningByLock {
        TurningByLock {
            wheelbase: Length::from_base(wheelbase),
            track: Length::from_base(track),
            inner_angle: Angle::from_base(angle),
        }
    }

    proptest! {
        #[test]
        fn the_outer_wheel_turns_less_and_more_cramp_turns_tighter(wheelbase in 2.0..8.0, track in 1.2..2.2, angle in 0.2..1.2) {
            let of = |angle| truck(wheelbase, track, angle).evaluate().unwrap();
            prop_assert!(of(angle).outer_angle.base() < angle);
            prop_assert!(of(angle + 0.1).wheel_radius < of(angle).wheel_radius);
        }
    }

    #[test]
    fn a_wheel_beyond_square_is_refused() {
        assert_eq!(
            truck(5.0, 2.0, 1.7).evaluate().unwrap_err().input,
            "inner_angle"
        );
    }
}
