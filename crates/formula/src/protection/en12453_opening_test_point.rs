//! Where the opening force of a swinging leaf is measured, by EN 12453.

use super::limit::is_at_most;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

formula! {
    /// Whether the opening force of a swinging leaf is measured against what stands behind it, and at which height.
    ///
    /// Ask with the smallest clear distance between the fully open leaf and a wall, post, curb or the like. A thing
    /// that juts out is measured at its most prominent place instead.
    pub struct En12453OpeningTestPoint = "en12453-opening-test-point" in Protection {
        /// Smallest clear distance behind the fully open leaf.
        clearance ("e"): Length,
        /// Height of the leaf's top above ground.
        leaf_top ("zt"): Length,
    }
    gives
    /// Point at which the opening force is measured.
    pub struct OpeningTestPoint {
        /// Number of points.
        points ("n"): u32,
        /// Height of the point above ground.
        height ("z"): Length,
    }
    formula "n = 1 where e ≤ 500 mm, otherwise 0\nz = 1000 mm"
    valid "Swinging leaves that reach higher than 1000 mm."
    source { work: "EN 12445:2000, now within EN 12453", clause: "points of measuring", evidence: Seen, seen: "three installers' and test services' pages that agree (addresses withheld); the standard itself was not at hand" }
    by test_point
}

fn test_point(leaf: &En12453OpeningTestPoint) -> Result<OpeningTestPoint, OutOfReach> {
    not_negative("clearance", leaf.clearance, "300 mm")?;
    let height = Length::from_base(1.0);
    if leaf.leaf_top < height {
        return Err(OutOfReach::new(
            "leaf_top",
            "this leaf ends below 1000 mm; measure at its most prominent place",
        ));
    }
    let near = is_at_most(leaf.clearance, Length::from_base(0.5));
    Ok(OpeningTestPoint {
        points: u32::from(near),
        height,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn points(clearance: f64) -> u32 {
        let leaf = En12453OpeningTestPoint {
            clearance: Length::from_base(clearance),
            leaf_top: Length::from_base(1.8),
        };
        leaf.evaluate().unwrap().points
    }

    proptest! {
        #[test]
        fn more_room_never_asks_for_more_points(clearance in 0.0..1.0, more in 0.0..1.0) {
            prop_assert!(points(clearance + more) <= points(clearance));
        }
    }
}
