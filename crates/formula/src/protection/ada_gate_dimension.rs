//! Dimensions of a walk gate and its hardware, by the 2010 ADA Standards.

use super::item_limit::item_limit;
use super::limit::{LimitVerdict, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use crate::table::{Stored, Table};
use quantity::{Length, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Thing at a walk gate that is measured.
    pub enum WalkGateItem {
        /// Clear width with the leaf at 90°.
        ClearWidth = "clear width",
        /// Whole height of the threshold.
        Threshold = "threshold",
        /// Height of the upright part of the threshold; what is above it is beveled.
        ThresholdStep = "upright part of the threshold",
        /// Height above the ground of the lowest handle or latch.
        LowHardware = "lowest handle or latch",
        /// Height above the ground of the highest handle or latch.
        HighHardware = "highest handle or latch",
        /// Width of the clear ground at a control.
        GroundWidth = "width of clear ground",
        /// Length of the clear ground at a control.
        GroundLength = "length of clear ground",
    }
}

formula! {
    /// Whether a dimension of a walk gate or its hardware keeps the 2010 ADA Standards.
    ///
    /// Ask once for each thing. The rules are federal ones of the United States for places that the public or employees
    /// use; a home has its own. Whether they apply is for the authority having jurisdiction.
    pub struct AdaGateDimension = "ada-gate-dimension" in Protection {
        /// Thing that is measured.
        item ("–"): WalkGateItem,
        /// Its measure.
        measured ("x"): Length,
    }
    gives
    /// How a dimension stands to its limit.
    pub struct AdaDimension {
        /// The limit.
        limit ("xlim"): Length,
        /// Room to spare; below zero where the limit is not kept.
        spare ("–"): Length,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "clear width: x ≥ 32 in\nthreshold: x ≤ 1/2 in, its upright part x ≤ 1/4 in, beveled 1:2 above\nhandles and latches: 34 in ≤ x ≤ 48 in\nclear ground: 30 in by 48 in"
    valid "Walk gates that fall under the 2010 ADA Standards, United States."
    source { work: "2010 ADA Standards", clause: "303, 305, 404.2.3, 404.2.5, 404.2.7", evidence: Seen, seen: "public pages of the standards and of the earlier guidelines" }
    by dimension
}

static LIMITS: Stored = LazyLock::new(|| Table::read(include_str!("ada_gate_dimension.toml")));

fn dimension(gate: &AdaGateDimension) -> Result<AdaDimension, OutOfReach> {
    not_negative("measured", gate.measured, "36 in")?;
    let found = item_limit(&LIMITS, gate.item.word(), gate.measured)?;
    Ok(AdaDimension {
        limit: found.limit,
        spare: found.spare,
        verdict: verdict(found.kept),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn found(item: WalkGateItem, measured: f64) -> Result<AdaDimension, OutOfReach> {
        let measured = Length::from_base(measured);
        AdaGateDimension { item, measured }.evaluate()
    }

    proptest! {
        #[test]
        fn the_verdict_agrees_with_the_room(place in 0..WalkGateItem::ALL.len(), measured in 0.0..3.0) {
            let found = found(WalkGateItem::ALL[place], measured).unwrap();
            prop_assert_eq!(found.verdict == LimitVerdict::Kept, found.spare.base() >= 0.0);
        }
    }

    #[test]
    fn there_is_room_for_hardware_and_a_step_lies_within_the_threshold() {
        let limit = |item| found(item, 1.0).unwrap().limit;
        assert!(limit(WalkGateItem::LowHardware) < limit(WalkGateItem::HighHardware));
        assert!(limit(WalkGateItem::ThresholdStep) < limit(WalkGateItem::Threshold));
    }

    #[test]
    fn a_width_below_zero_is_refused() {
        let negative = found(WalkGateItem::ClearWidth, -1.0);
        assert_eq!(negative.unwrap_err().input, "measured");
    }
}
