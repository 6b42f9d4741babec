//! Where the closing force of a leaf is measured, by EN 12453.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

formula! {
    /// Heights and gaps at which the force of a closing sliding or swinging leaf is measured, by EN 12453.
    ///
    /// Three heights at each of three gaps, each point three times. What lies higher than 2.5 m is not counted. On a
    /// hinged leaf the front edge sees the lowest force: along the bottom edge it rises toward the hinge, and that is
    /// judged from the readings at the edge. Use a meter on a stand, never a hand or a body.
    pub struct En12453ClosingTestPoints = "en12453-closing-test-points" in Protection {
        /// Height of the leaf's bottom above ground.
        leaf_bottom ("zb"): Length,
        /// Height of the leaf's top above ground.
        leaf_top ("zt"): Length,
    }
    gives
    /// Heights above ground and gaps at which the closing force is measured.
    pub struct ClosingTestPoints {
        /// Lowest height.
        low ("z1"): Length,
        /// Middle height.
        middle ("z2"): Length,
        /// Highest height.
        high ("z3"): Length,
        /// Smallest gap left to close.
        smallest_gap ("e1"): Length,
        /// Middle gap left to close.
        middle_gap ("e2"): Length,
        /// Widest gap left to close.
        widest_gap ("e3"): Length,
        /// Number of points.
        points ("n"): u32,
        /// Number of readings in all.
        readings ("N"): u32,
    }
    formula "zt′ = min(zt, 2.5 m)\nz1 = zb + 50 mm,  z2 = (zb + zt′) / 2,  z3 = zt′ − 300 mm\ne = 50 mm, 300 mm, 500 mm\nn = 9,  N = 27"
    valid "Closing edges of sliding and swinging leaves more than 0.6 m high."
    source { work: "EN 12445:2000, now within EN 12453", clause: "points of measuring", evidence: Seen, seen: "three installers' and test services' pages that agree (addresses withheld); the standard itself was not at hand" }
    by test_points
}

/// Height up to which a leaf is measured, in m.
const HIGHEST: f64 = 2.5;
/// Smallest height of a leaf on which the three heights lie in order, in m.
const LEAST_LEAF: f64 = 0.6;

fn test_points(leaf: &En12453ClosingTestPoints) -> Result<ClosingTestPoints, OutOfReach> {
    not_negative("leaf_bottom", leaf.leaf_bottom, "80 mm")?;
    let bottom = leaf.leaf_bottom.base();
    let top = leaf.leaf_top.base().min(HIGHEST);
    if top - bottom <= LEAST_LEAF {
        return Err(OutOfReach::new(
            "leaf_top",
            "on a leaf no higher than 600 mm, counted up to 2.5 m above ground, the three heights fall together; measure at its middle and at its most prominent place",
        ));
    }
    Ok(ClosingTestPoints {
        low: Length::from_base(bottom + 0.05),
        middle: Length::from_base(f64::midpoint(bottom, top)),
        high: Length::from_base(top - 0.3),
        smallest_gap: Length::from_base(0.05),
        middle_gap: Length::from_base(0.3),
        widest_gap: Length::from_base(0.5),
        points: 9,
        readings: 27,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_heights_rise_and_lie_on_the_leaf(bottom in 0.0..1.0, height in 0.61..4.0) {
            let leaf = En12453ClosingTestPoints {
                leaf_bottom: Length::from_base(bottom),
                leaf_top: Length::from_base(bottom + height),
            };
            let points = leaf.evaluate().unwrap();
            prop_assert!(leaf.leaf_bottom < points.low && points.low < points.middle);
            prop_assert!(points.middle < points.high && points.high < leaf.leaf_top);
            prop_assert!(points.high.base() <= 2.2 + 1e-12);
        }
    }

    #[test]
    fn a_low_leaf_is_refused() {
        let leaf = En12453ClosingTestPoints {
            leaf_bottom: Length::from_base(0.1),
            leaf_top: Length::from_base(0.6),
        };
        assert_eq!(leaf.evaluate().unwrap_err().input, "leaf_top");
    }
}
