//! Least edge distance and greatest depth of post-installed anchors without a report, as recalled.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// Kind of a post-installed anchor.
    pub enum PostInstalledAnchor {
        /// Wedge or sleeve anchor that is set by torque.
        Torque = "torque-controlled expansion",
        /// Drop-in anchor that is set by a blow.
        Displacement = "displacement-controlled expansion",
        /// Screw anchor.
        Screw = "screw",
        /// Undercut anchor.
        Undercut = "undercut",
        /// Adhesive anchor.
        Adhesive = "adhesive",
    }
}

formula! {
    /// Least edge distance of a post-installed anchor whose report is not at hand, and how deep it may go into a slab.
    ///
    /// Recalled, to be looked up before anything rests on it: get the product's report. The depth is not limited for
    /// adhesive anchors here; their reports ask for concrete behind the hole.
    pub struct AnchorLeastEdgeRecalled = "anchor-least-edge-recalled" in Standing {
        /// Kind of anchor.
        anchor ("–"): PostInstalledAnchor,
        /// Diameter of the anchor.
        diameter ("da"): Length,
        /// Thickness of the concrete.
        thickness ("ha"): Length,
    }
    gives
    /// Least edge distance and greatest embedment.
    pub struct LeastEdge {
        /// Multiple of the diameter.
        multiple ("k"): Ratio,
        /// Least edge distance.
        least_edge ("ca,min"): Length,
        /// Greatest embedment of an expansion, screw or undercut anchor.
        greatest_embedment ("hef,max"): Length,
    }
    formula "ca,min = k · da; k = 8 torque-controlled, 10 displacement-controlled, 6 screw, undercut and adhesive\nhef,max = max(2/3 · ha, ha − 4 in)"
    valid "Anchors qualified by ACI 355.2 or 355.4 without tested distances at hand."
    source { work: "ACI 318-19", clause: "table 17.9.2(b) and 17.9.4", evidence: Memory, seen: "recalled" }
    by least_edge
}

fn least_edge(anchor: &AnchorLeastEdgeRecalled) -> Result<LeastEdge, OutOfReach> {
    positive("diameter", anchor.diameter, "5/8 in")?;
    positive("thickness", anchor.thickness, "6 in")?;
    let multiple = match anchor.anchor {
        PostInstalledAnchor::Torque => 8.0,
        PostInstalledAnchor::Displacement => 10.0,
        PostInstalledAnchor::Screw
        | PostInstalledAnchor::Undercut
        | PostInstalledAnchor::Adhesive => 6.0,
    };
    let thickness = anchor.thickness.base();
    let greatest = (2.0 / 3.0 * thickness).max(thickness - 4.0 * 0.0254);
    Ok(LeastEdge {
        multiple: Ratio::from_base(multiple),
        least_edge: anchor.diameter * multiple,
        greatest_embedment: Length::from_base(greatest),
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
        fn some_concrete_always_stays_behind_the_anchor(thickness in 0.05..2.0) {
            for anchor in PostInstalledAnchor::ALL {
                let asked = AnchorLeastEdgeRecalled {
                    anchor: *anchor,
                    diameter: Length::from_base(0.012),
                    thickness: Length::from_base(thickness),
                };
                prop_assert!(asked.evaluate().unwrap().greatest_embedment.base() < thickness);
            }
        }
    }
}
