//! Where the hinge side of a swinging leaf can catch somebody, by UL 325.

use super::slide_entrapment_zone::{SLACK, ZoneVerdict, distance};
use crate::OutOfReach;
use quantity::{Length, Quantity as _};

formula! {
    /// Whether the hinge side of a swinging leaf is an entrapment zone.
    ///
    /// Measured from the center line of the pivot to the end of the wall, pillar or column that carries the leaf, both
    /// open and closed. ASTM F2200 has the same limit: up to it the hinge needs no further protection. Fingers can be
    /// caught in much less.
    pub struct SwingPivotEntrapmentZone = "swing-pivot-entrapment-zone" in Protection {
        /// Distance from the center line of the pivot to the end of the wall or post.
        distance ("d"): Length,
    }
    gives
    /// What the rule says about the hinge side.
    pub struct SwingPivotZone {
        /// How much nearer the wall ends than the limit; below zero where it is too far.
        margin ("4 in − d"): Length,
        /// What the rule says.
        verdict ("–"): ZoneVerdict,
    }
    formula "entrapment zone where d > 4 in"
    valid "Swing gates, United States; up to 6 ft above ground."
    source { work: "UL 325, in force 2016 and 2018, definition of entrapment zone; ASTM F2200", clause: "7.1.1.1, as cited", evidence: Seen, seen: "gate-operator manuals that define entrapment zones and reprint the swing-gate provisions (addresses withheld); the standards themselves were not at hand" }
    by zone
}

/// Greatest distance that is no entrapment zone: 4 in.
const FARTHEST: f64 = 4.0 * 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn zone(leaf: &SwingPivotEntrapmentZone) -> Result<SwingPivotZone, OutOfReach> {
    let offset = distance("distance", leaf.distance)?;
    Ok(SwingPivotZone {
        margin: Length::from_base(FARTHEST - offset),
        verdict: if offset > FARTHEST + SLACK {
            ZoneVerdict::Zone
        } else {
            ZoneVerdict::Clear
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn zone_at(distance: f64) -> ZoneVerdict {
        let distance = Length::from_base(distance);
        SwingPivotEntrapmentZone { distance }
            .evaluate()
            .unwrap()
            .verdict
    }

    proptest! {
        #[test]
        fn farther_never_clears_it(distance in 0.0..0.5, more in 0.0..0.5) {
            if zone_at(distance) == ZoneVerdict::Zone {
                prop_assert_eq!(zone_at(distance + more), ZoneVerdict::Zone);
            }
        }
    }
}
