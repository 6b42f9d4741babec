//! Off-tracking by the rule of thumb for wide curves.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Off-tracking on a wide curve, as it is worked on the back of an envelope.
    ///
    /// A little less than the true one: good to 1 in in 2 ft where the radius is five wheelbases, poor in a turn at a gate.
    pub struct OffTrackingSmallAngle = "off-tracking-small-angle" in Signal {
        /// Radius of the circle of the middle of the front axle.
        radius ("R"): Length,
        /// From the front axle to the rear axle.
        wheelbase ("L1"): Length,
        /// From the hitch, over the rear axle, to the axle of the trailer; 0 without a trailer.
        trailer ("L2"): Length,
    }
    gives
    /// Off-tracking by the rule of thumb.
    pub struct OffTrackedRoughly {
        /// How far the last axle is inside the circle of the front axle.
        off_tracking ("OT"): Length,
    }
    formula "OT = (L1² + L2²) / (2 · R)"
    valid "Radii of five wheelbases and more."
    source { work: "first term of the series of the sum-of-squares off-tracking", clause: "", evidence: Physics, seen: "R − √(R² − L²) unfolded; the difference is told by a case" }
    by roughly
}

fn roughly(rig: &OffTrackingSmallAngle) -> Result<OffTrackedRoughly, OutOfReach> {
    positive("radius", rig.radius, "100 ft")?;
    positive("wheelbase", rig.wheelbase, "20 ft")?;
    not_negative("trailer", rig.trailer, "18 ft")?;
    let squares = rig.wheelbase.base().powi(2) + rig.trailer.base().powi(2);
    if rig.radius.base() < 2.0 * squares.sqrt() {
        return Err(OutOfReach::new(
            "radius",
            "the rule of thumb is poor on so tight a circle; use the sum of squares, or a radius such as 100 ft",
        ));
    }
    Ok(OffTrackedRoughly {
        off_tracking: Length::from_base(squares / (2.0 * rig.radius.base())),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::OffTracking;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_stays_below_the_sum_of_squares(radius in 30.0..100.0, wheelbase in 2.0..8.0) {
            let [radius, wheelbase] = [radius, wheelbase].map(Length::from_base);
            let zero = Length::default();
            let rough = OffTrackingSmallAngle { radius, wheelbase, trailer: zero }.evaluate().unwrap().off_tracking;
            let exact = OffTracking { radius, wheelbase, hitch: zero, trailer: zero }.evaluate().unwrap().off_tracking;
            prop_assert!(rough < exact && rough.base() > 0.9 * exact.base());
        }
    }

    #[test]
    fn a_tight_circle_is_refused() {
        let rig = OffTrackingSmallAngle {
            radius: Length::from_base(10.0),
            wheelbase: Length::from_base(6.0),
            trailer: Length::default(),
        };
        assert_eq!(rig.evaluate().unwrap_err().input, "radius");
    }
}
