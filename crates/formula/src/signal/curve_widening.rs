//! How much wider a lane is in a curve.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Width that a vehicle takes in a curve: its track, and what its front hangs out beyond it.
    ///
    /// For long curves of a drive, where the last axle has come to its circle. Clearances to both sides come on top.
    pub struct CurveWidening = "curve-widening" in Signal {
        /// Radius of the circle of the middle of the front axle.
        radius ("R"): Length,
        /// Width over the tires on a straight.
        width ("u"): Length,
        /// From the front axle to the rear axle.
        wheelbase ("L"): Length,
        /// From the hitch, over the rear axle, to the axle of the trailer; 0 without a trailer.
        trailer ("L2"): Length,
        /// From the front axle to the foremost point.
        front_overhang ("A"): Length,
    }
    gives
    /// Width in a curve.
    pub struct WidthInCurve {
        /// Width of the track in the curve.
        track_width ("U"): Length,
        /// What the front hangs out beyond it.
        front_width ("FA"): Length,
        /// Both together.
        whole_width ("U + FA"): Length,
    }
    formula "U = u + R − √(R² − L² − L2²)\nFA = √(R² + A · (2 · L + A)) − R"
    valid "Steady circles; R is well above the wheelbases."
    source { work: "AASHTO, A Policy on Geometric Design of Highways and Streets, 7th ed. 2018: widening of the traveled way on curves", clause: "track width and width of the front overhang", evidence: Memory, seen: "not looked up; both follow from right triangles about the center of the turn" }
    by widened
}

fn widened(lane: &CurveWidening) -> Result<WidthInCurve, OutOfReach> {
    positive("radius", lane.radius, "100 ft")?;
    positive("width", lane.width, "8 ft")?;
    positive("wheelbase", lane.wheelbase, "20 ft")?;
    not_negative("trailer", lane.trailer, "18 ft")?;
    not_negative("front_overhang", lane.front_overhang, "4 ft")?;
    let (radius, base) = (lane.radius.base(), lane.wheelbase.base());
    let left = radius * radius - base * base - lane.trailer.base().powi(2);
    if left <= 0.0 {
        return Err(OutOfReach::new(
            "radius",
            "on so tight a circle the last axle never comes to a steady one; give a wider radius, such as 100 ft",
        ));
    }
    let track = lane.width.base() + radius - left.sqrt();
    let ahead = lane.front_overhang.base();
    let front = (radius * radius + ahead * (2.0 * base + ahead)).sqrt() - radius;
    Ok(WidthInCurve {
        track_width: Length::from_base(track),
        front_width: Length::from_base(front),
        whole_width: Length::from_base(track + front),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lane([radius, width, wheelbase, front]: [f64; 4]) -> CurveWidening {
        let [radius, width, wheelbase, front_overhang] =
            [radius, width, wheelbase, front].map(Length::from_base);
        CurveWidening {
            radius,
            width,
            wheelbase,
            trailer: Length::default(),
            front_overhang,
        }
    }

    proptest! {
        #[test]
        fn a_wide_curve_takes_hardly_more_than_a_straight(radius in 20.0..500.0, wheelbase in 2.0..8.0, front in 0.0..2.0) {
            let of = |radius| lane([radius, 2.5, wheelbase, front]).evaluate().unwrap().whole_width.base();
            prop_assert!(of(radius) > 2.5 && of(radius + 5.0) < of(radius));
            prop_assert!(of(1e7) - 2.5 < 1e-4);
        }
    }

    #[test]
    fn a_circle_smaller_than_the_wheelbase_is_refused() {
        assert_eq!(
            lane([5.0, 2.5, 6.0, 1.0]).evaluate().unwrap_err().input,
            "radius"
        );
    }
}
