//! Edge distance below which a mechanical anchor in uncracked concrete may split it.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Ratio, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Kind of a mechanical post-installed anchor.
    pub enum MechanicalAnchor {
        /// Wedge or sleeve anchor that is set by torque.
        Torque = "torque-controlled expansion",
        /// Drop-in anchor that is set by a blow.
        Displacement = "displacement-controlled expansion",
        /// Screw anchor.
        Screw = "screw",
        /// Undercut anchor.
        Undercut = "undercut",
    }
}

formula! {
    /// Critical edge distance of a mechanical anchor in uncracked concrete, where its report has none.
    ///
    /// Below it breakout in uncracked concrete counts for less, for fear of splitting. In cracked concrete it does not
    /// count. Adhesive anchors have a formula of their own, `anchor-adhesive-critical-edge`.
    pub struct AnchorCriticalEdge = "anchor-critical-edge" in Standing {
        /// Kind of anchor.
        anchor ("–"): MechanicalAnchor,
        /// Effective embedment.
        embedment ("hef"): Length,
    }
    gives
    /// Critical edge distance.
    pub struct MechanicalCriticalEdge {
        /// Multiple of the embedment.
        multiple ("k"): Ratio,
        /// Critical edge distance.
        critical_edge ("cac"): Length,
    }
    formula "cac = k · hef, k from the table"
    valid "Anchors qualified by ACI 355.2 whose report has no critical edge distance."
    source { work: "ACI 318-19", clause: "table 17.9.5", evidence: Seen, seen: "the multiples in an anchor software guide (name withheld)" }
    by critical_edge
}

static MULTIPLES: Stored = LazyLock::new(|| Table::read(include_str!("anchor_critical_edge.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn critical_edge(anchor: &AnchorCriticalEdge) -> Result<MechanicalCriticalEdge, OutOfReach> {
    positive("embedment", anchor.embedment, "3 in")?;
    let table = Table::of(&MULTIPLES)?;
    let multiple = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(anchor.anchor.word()))
        .and_then(|row| row.get(1).and_then(Cell::number))
        .ok_or_else(|| OutOfReach::new("anchor", "the table has no multiple for this anchor"))?;
    Ok(MechanicalCriticalEdge {
        multiple: Ratio::from_base(multiple),
        critical_edge: anchor.embedment * multiple,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn no_critical_edge_is_nearer_than_the_cone_reaches() {
        for anchor in MechanicalAnchor::ALL {
            let found = AnchorCriticalEdge {
                anchor: *anchor,
                embedment: Length::from_base(0.1),
            };
            assert!(found.evaluate().unwrap().critical_edge.base() >= 0.15);
        }
    }
}
