//! Where the bottom of a swinging leaf can catch somebody, by UL 325.

use super::slide_entrapment_zone::{GAP, SLACK, ZoneVerdict, distance};
use crate::OutOfReach;
use quantity::Length;

formula! {
    /// Whether the gap under a swinging leaf is an entrapment zone.
    ///
    /// Asked at every point of the travel, because ground rises and falls under the leaf. Other gaps of a swinging
    /// leaf, to walls, posts and at the hinge, have their own limits.
    pub struct SwingEntrapmentZone = "swing-bottom-entrapment-zone" in Protection {
        /// Gap from the bottom edge to the ground at one point of the travel.
        bottom_gap ("e"): Length,
    }
    gives
    /// What the rule says about the gap under a swinging leaf.
    pub struct SwingZone {
        /// What the rule says.
        verdict ("–"): ZoneVerdict,
    }
    formula "entrapment zone where 4 in < e < 16 in"
    valid "Swing gates, bottom edge; another text asks a contact edge from 6 in on."
    source { work: "UL 325, in force 2016 and 2018", clause: "definition of entrapment zone", evidence: Seen, seen: "a gate-operator manual that defines entrapment zones (address withheld); the standard itself was not at hand" }
    by zone
}

/// Widest gap under the leaf that is no entrapment zone: 4 in.
const LOW: f64 = 4.0 * 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn zone(leaf: &SwingEntrapmentZone) -> Result<SwingZone, OutOfReach> {
    let gap = distance("bottom_gap", leaf.bottom_gap)?;
    let catches = gap > LOW + SLACK && gap < GAP - SLACK;
    Ok(SwingZone {
        verdict: if catches {
            ZoneVerdict::Zone
        } else {
            ZoneVerdict::Clear
        },
    })
}
