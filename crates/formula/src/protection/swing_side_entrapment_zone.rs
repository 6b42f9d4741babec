//! Where a swinging leaf can catch somebody against a fixed thing, by UL 325.

use super::slide_entrapment_zone::{GAP, HEIGHT, SLACK, ZoneVerdict, distance};
use crate::OutOfReach;
use quantity::{Length, Quantity as _};

formula! {
    /// Whether a gap between a swinging leaf, or a moving operator arm, and a fixed thing is an entrapment zone.
    ///
    /// The gap is the smallest at any point of the travel to a wall, post, curb, bank or parked thing, overtravel
    /// counted; ASTM F2200 asks the same 16 in between the open leaf and a wall. The gap under the leaf and the hinge
    /// side have their own limits.
    pub struct SwingSideEntrapmentZone = "swing-side-entrapment-zone" in Protection {
        /// Smallest gap at any point of the travel.
        gap ("e"): Length,
        /// Height of the place above ground.
        height ("z"): Length,
    }
    gives
    /// What the rule says about a gap beside a swinging leaf.
    pub struct SwingSideZone {
        /// How much wider than the limit the gap is; below zero where it is too narrow.
        margin ("e − 16 in"): Length,
        /// What the rule says.
        verdict ("–"): ZoneVerdict,
    }
    formula "entrapment zone where e < 16 in and z ≤ 6 ft"
    valid "Swing gates and their moving arms, United States; the rule counts gaps only, not drawing-in or shearing."
    source { work: "UL 325, in force 2016 and 2018, definition of entrapment zone; ASTM F2200, swing gates", clause: "", evidence: Seen, seen: "gate-operator manuals that define entrapment zones and reprint the swing-gate provisions (addresses withheld); the standards themselves were not at hand" }
    by zone
}

fn zone(place: &SwingSideEntrapmentZone) -> Result<SwingSideZone, OutOfReach> {
    let gap = distance("gap", place.gap)?;
    let height = distance("height", place.height)?;
    let catches = gap < GAP - SLACK && height <= HEIGHT + SLACK;
    Ok(SwingSideZone {
        margin: Length::from_base(gap - GAP),
        verdict: if catches {
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

    fn zone_at(gap: f64, height: f64) -> ZoneVerdict {
        let place = SwingSideEntrapmentZone {
            gap: Length::from_base(gap),
            height: Length::from_base(height),
        };
        place.evaluate().unwrap().verdict
    }

    proptest! {
        #[test]
        fn a_wider_gap_or_a_higher_place_never_makes_a_zone(
            gap in 0.0..1.0, height in 0.0..3.0, more in 0.0..1.0
        ) {
            if zone_at(gap, height) == ZoneVerdict::Clear {
                prop_assert_eq!(zone_at(gap + more, height), ZoneVerdict::Clear);
                prop_assert_eq!(zone_at(gap, height + more), ZoneVerdict::Clear);
            }
        }
    }
}
