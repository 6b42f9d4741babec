//! Limits of ASTM F2200 on what is fixed to a gate.

use super::item_limit::item_limit;
use super::limit::{LimitVerdict, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use crate::table::{Stored, Table};
use quantity::{Length, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Thing on a gate whose place or size is limited.
    pub enum GateItem {
        /// How far something sticks down from the bottom edge.
        BottomProtrusion = "protrusion of the bottom edge",
        /// Height of the lowest barbed wire above ground.
        BarbedWire = "lowest barbed wire",
        /// Height of the lowest barbed tape above ground.
        BarbedTape = "lowest barbed tape",
        /// Height above ground of a weight-bearing roller that is neither guarded nor covered.
        OpenRoller = "uncovered weight-bearing roller",
    }
}

formula! {
    /// Whether a thing on a gate keeps the limit that ASTM F2200 sets for its place or size.
    ///
    /// Every such thing is asked once. A roller that carries weight and is not covered has to be higher than its limit.
    /// The specification lists exceptions to the rule on the bottom edge that were not read.
    pub struct F2200Construction = "f2200-construction" in Protection {
        /// Thing that is looked at.
        item ("–"): GateItem,
        /// Its height above ground, or how far it sticks out.
        measured ("z"): Length,
    }
    gives
    /// How a thing on a gate stands to its limit.
    pub struct ConstructionRule {
        /// The limit.
        limit ("zlim"): Length,
        /// Room to spare; below zero where the limit is not kept.
        spare ("–"): Length,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "protrusion of the bottom edge: z ≤ 0.50 in\nbarbed wire: z ≥ 6 ft\nbarbed tape: z ≥ 8 ft\nuncovered weight-bearing roller: z > 8 ft"
    valid "Powered vehicle gates, United States; rollers on sliding gates of usage class I to III."
    source { work: "ASTM F2200", clause: "general requirements; slide gate provisions", evidence: Seen, seen: "gate-operator manuals from 2005 to 2018 that reprint the provisions (addresses withheld); the standard itself was not at hand" }
    by construction_rule
}

static LIMITS: Stored = LazyLock::new(|| Table::read(include_str!("f2200_construction.toml")));

fn construction_rule(thing: &F2200Construction) -> Result<ConstructionRule, OutOfReach> {
    not_negative("measured", thing.measured, "1/4 in")?;
    let found = item_limit(&LIMITS, thing.item.word(), thing.measured)?;
    Ok(ConstructionRule {
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

    fn rule(item: GateItem, measured: f64) -> ConstructionRule {
        let measured = Length::from_base(measured);
        F2200Construction { item, measured }.evaluate().unwrap()
    }

    proptest! {
        #[test]
        fn the_verdict_agrees_with_the_room(place in 0..GateItem::ALL.len(), measured in 0.0..3.0) {
            let rule = rule(GateItem::ALL[place], measured);
            prop_assert_eq!(rule.verdict == LimitVerdict::Kept, rule.spare.base() >= 0.0);
        }
    }

    #[test]
    fn tape_hangs_higher_than_wire() {
        assert!(rule(GateItem::BarbedTape, 2.0).limit > rule(GateItem::BarbedWire, 2.0).limit);
    }

    #[test]
    fn a_height_below_zero_is_refused() {
        let thing = F2200Construction {
            item: GateItem::BarbedWire,
            measured: Length::from_base(-1.0),
        };
        assert_eq!(thing.evaluate().unwrap_err().input, "measured");
    }
}
