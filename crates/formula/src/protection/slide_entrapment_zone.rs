//! Where a sliding leaf can catch somebody, by UL 325.

use crate::OutOfReach;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// Whether a place counts as one where somebody can be caught.
    pub enum ZoneVerdict {
        /// An entrapment zone.
        Zone = "entrapment zone",
        /// Not an entrapment zone by this rule.
        Clear = "no entrapment zone",
    }
}

formula! {
    /// Whether a gap between a sliding leaf and a fixed thing is an entrapment zone.
    ///
    /// The gap is the smallest at any point of the travel, between the moving leaf and a fixed edge or face opposite.
    pub struct SlideEntrapmentZone = "slide-entrapment-zone" in Protection {
        /// Smallest gap at any point of the travel.
        gap ("e"): Length,
        /// Height of the place above ground.
        height ("z"): Length,
    }
    gives
    /// What the rule says about a gap of a sliding leaf.
    pub struct SlideZone {
        /// How much wider than the limit the gap is; below zero where it is too narrow.
        margin ("e − 16 in"): Length,
        /// What the rule says.
        verdict ("–"): ZoneVerdict,
    }
    formula "entrapment zone where e < 16 in and z ≤ 6 ft"
    valid "Horizontal slide gates; the rule counts gaps only, not drawing-in or shearing."
    source { work: "UL 325, in force 2016 and 2018", clause: "definition of entrapment zone", evidence: Seen, seen: "a gate-operator manual that defines entrapment zones (address withheld); the standard itself was not at hand" }
    by zone
}

/// Narrowest gap that is no entrapment zone: 16 in.
pub(super) const GAP: f64 = 16.0 * 0.0254;
/// Height up to which the rule looks: 6 ft.
pub(super) const HEIGHT: f64 = 72.0 * 0.0254;
/// A thousandth of a millimeter, so that 16.0 in converted from another unit still is 16 in.
pub(super) const SLACK: f64 = 1e-6;

/// Refuses a distance below zero.
pub(super) fn distance(input: &'static str, value: Length) -> Result<f64, OutOfReach> {
    if value.base() >= 0.0 {
        return Ok(value.base());
    }
    Err(OutOfReach::new(
        input,
        "a distance is not below zero; give one such as 4 in",
    ))
}

fn zone(place: &SlideEntrapmentZone) -> Result<SlideZone, OutOfReach> {
    let gap = distance("gap", place.gap)?;
    let height = distance("height", place.height)?;
    let catches = gap < GAP - SLACK && height <= HEIGHT + SLACK;
    Ok(SlideZone {
        margin: Length::from_base(gap - GAP),
        verdict: if catches {
            ZoneVerdict::Zone
        } else {
            ZoneVerdict::Clear
        },
    })
}
