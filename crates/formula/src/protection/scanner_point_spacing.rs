//! Distance between the points that a scanner measures.

use super::limit::{LimitVerdict, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _};

formula! {
    /// Distance between neighboring points of a turning scanner at a range, against the thinnest thing it has to see.
    ///
    /// A scanner that is declared for safety states its detection capability by range, and that holds. Without it, two
    /// points on the thing are asked here, so that one lost point does not lose a leg. Seen at a slant, points on the
    /// ground lie farther apart than at right angles.
    pub struct ScannerPointSpacing = "scanner-point-spacing" in Protection {
        /// Distance from the scanner to the farthest place that it watches.
        range ("R"): Length,
        /// Angle from one point to the next.
        step ("Δφ"): Angle,
        /// Thickness of the thinnest thing that has to be seen.
        thing ("d"): Length,
    }
    gives
    /// Spacing of a scanner's points.
    pub struct PointSpacing {
        /// Distance between neighboring points there.
        spacing ("s"): Length,
        /// Greatest range at which two points meet the thing.
        farthest ("Rmax"): Length,
        /// Whether two points meet the thing at the range.
        verdict ("–"): LimitVerdict,
    }
    formula "s = R · Δφ\nRmax = d / (2 · Δφ)\nkept where 2 · s ≤ d"
    valid "Small steps of up to 5°, a thing at right angles to the view."
    source { work: "length of an arc", clause: "", evidence: Physics, seen: "definition of the radian; two points on the thing are our own margin" }
    by point_spacing
}

fn point_spacing(scan: &ScannerPointSpacing) -> Result<PointSpacing, OutOfReach> {
    positive("range", scan.range, "15 ft")?;
    positive("thing", scan.thing, "70 mm")?;
    positive("step", scan.step, "0.25°")?;
    if scan.step.base().to_degrees() > 5.0 + 1e-9 {
        return Err(OutOfReach::new(
            "step",
            "a scanner with steps above 5° sees no legs; give its step, such as 0.25°",
        ));
    }
    let spacing = scan.range * scan.step.base();
    Ok(PointSpacing {
        spacing,
        farthest: scan.thing / (2.0 * scan.step.base()),
        verdict: verdict(is_at_most(spacing * 2.0, scan.thing)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn scan(range: f64, degrees: f64) -> ScannerPointSpacing {
        ScannerPointSpacing {
            range: Length::from_base(range),
            step: Angle::from_base(degrees.to_radians()),
            thing: Length::from_base(0.07),
        }
    }

    proptest! {
        #[test]
        fn at_the_farthest_range_two_points_just_meet(degrees in 0.05..2.0) {
            let farthest = scan(1.0, degrees).evaluate().unwrap().farthest.base();
            let at = scan(farthest, degrees).evaluate().unwrap();
            prop_assert!((2.0 * at.spacing.base() - 0.07).abs() < 1e-12);
            prop_assert_eq!(scan(farthest * 1.01, degrees).evaluate().unwrap().verdict, LimitVerdict::Broken);
        }
    }

    #[test]
    fn a_coarse_step_is_refused() {
        assert_eq!(scan(5.0, 10.0).evaluate().unwrap_err().input, "step");
    }
}
