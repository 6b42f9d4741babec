//! Dimensions of a walk gate and its hardware, by the 2010 ADA Standards.

use super::limit::{LimitVerdict, is_at_least, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
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
        /// Height of handles and latches above the ground.
        Hardware = "handles and latches",
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
    /// How a dimension stands to its limits.
    pub struct AdaDimension {
        /// Least measure; 0 where there is none.
        least ("xmin"): Length,
        /// Greatest measure; 1000 ft where there is none.
        greatest ("xmax"): Length,
        /// Whether the limits are kept.
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
    let table = Table::of(&LIMITS)?;
    let wanted = gate.item.word();
    let row = table
        .column("item")
        .zip(table.column("least"))
        .zip(table.column("greatest"))
        .find(|((item, _), _)| item.words() == Some(wanted));
    let (least, greatest) = row
        .and_then(|((_, least), greatest)| Some((least.number()?, greatest.number()?)))
        .map(|(least, greatest)| (inches(least), inches(greatest)))
        .ok_or_else(|| OutOfReach::new("item", "the table has no row for this thing"))?;
    Ok(AdaDimension {
        least,
        greatest,
        verdict: verdict(is_at_least(gate.measured, least) && is_at_most(gate.measured, greatest)),
    })
}

fn inches(number: f64) -> Length {
    Length::from_base(number * 0.0254)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn kept_between_the_limits_only(place in 0..WalkGateItem::ALL.len(), measured in 0.0..3.0) {
            let gate = AdaGateDimension {
                item: WalkGateItem::ALL[place],
                measured: Length::from_base(measured),
            };
            let found = gate.evaluate().unwrap();
            let inside = found.least <= gate.measured && gate.measured <= found.greatest;
            prop_assert_eq!(found.verdict == LimitVerdict::Kept, inside);
            prop_assert!(found.least < found.greatest);
        }
    }

    #[test]
    fn a_width_below_zero_is_refused() {
        let gate = AdaGateDimension {
            item: WalkGateItem::ClearWidth,
            measured: inches(-1.0),
        };
        assert_eq!(gate.evaluate().unwrap_err().input, "measured");
    }
}
