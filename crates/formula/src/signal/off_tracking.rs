//! How far the last axle cuts a curve on a steady circle.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Off-tracking on a steady circle: how far inside the circle of the front axle the last axle rolls.
    ///
    /// The sum of the squares of the wheelbases tells it; a hitch behind an axle takes its square off the sum, and one
    /// before it does the same. Short turns at a gate end before the circle is steady: the last axle is then less far
    /// inside, and only a step by step drive tells how far.
    pub struct OffTracking = "off-tracking" in Signal {
        /// Radius of the circle of the middle of the front axle.
        radius ("R"): Length,
        /// From the front axle to the rear axle of the vehicle that steers.
        wheelbase ("L1"): Length,
        /// From its rear axle to the hitch; 0 where it tows nothing or the trailer hangs over the axle.
        hitch ("S"): Length,
        /// From the hitch to the axle of the trailer; 0 without a trailer.
        trailer ("L2"): Length,
    }
    gives
    /// Off-tracking.
    pub struct OffTracked {
        /// Radius of the circle of the middle of the last axle.
        last_radius ("r"): Length,
        /// How far it is inside the circle of the front axle.
        off_tracking ("OT"): Length,
    }
    formula "r = √(R² − L1² + S² − L2²)\nOT = R − r"
    valid "Slow, on firm level ground, after so long a turn that the circle is steady."
    source { work: "Western Highway Institute, sum-of-squares off-tracking; SAE J695", clause: "steady state", evidence: Physics, seen: "right triangles about the center of the turn; held against a step by step drive" }
    by off_tracked
}

fn off_tracked(rig: &OffTracking) -> Result<OffTracked, OutOfReach> {
    positive("radius", rig.radius, "50 ft")?;
    positive("wheelbase", rig.wheelbase, "20 ft")?;
    not_negative("hitch", rig.hitch, "3 ft")?;
    not_negative("trailer", rig.trailer, "18 ft")?;
    let squares = [rig.wheelbase, rig.trailer].map(|length| length.base().powi(2));
    let radius = rig.radius.base();
    let left = radius * radius - squares[0] - squares[1] + rig.hitch.base().powi(2);
    if left <= 0.0 || radius <= rig.wheelbase.base() {
        return Err(OutOfReach::new(
            "radius",
            "on so tight a circle the last axle never comes to a steady one; give a wider radius, such as 60 ft",
        ));
    }
    let last = left.sqrt();
    Ok(OffTracked {
        last_radius: Length::from_base(last),
        off_tracking: Length::from_base(radius - last),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn rig([radius, wheelbase, hitch, trailer]: [f64; 4]) -> OffTracking {
        let [radius, wheelbase, hitch, trailer] =
            [radius, wheelbase, hitch, trailer].map(Length::from_base);
        OffTracking {
            radius,
            wheelbase,
            hitch,
            trailer,
        }
    }

    proptest! {
        #[test]
        fn a_wider_circle_and_a_longer_hitch_cut_less(radius in 20.0..80.0, base in 2.0..8.0, trailer in 0.0..12.0) {
            let of = |radius, hitch| rig([radius, base, hitch, trailer]).evaluate().unwrap().off_tracking.base();
            prop_assert!(of(radius + 1.0, 0.0) < of(radius, 0.0));
            prop_assert!(of(radius, 1.0) < of(radius, 0.0));
            prop_assert!(of(radius, 0.0) > 0.0);
        }
    }

    #[test]
    fn a_circle_that_never_steadies_is_refused() {
        // WB-62 at its own least radius: only a step by step drive answers.
        let long = rig([12.497, 5.944, 0.0, 12.497]);
        assert_eq!(long.evaluate().unwrap_err().input, "radius");
        assert_eq!(
            rig([0.0, 5.0, 0.0, 0.0]).evaluate().unwrap_err().input,
            "radius"
        );
    }
}
