//! Edge distance below which an adhesive anchor in uncracked concrete may split it.

use super::concrete::{AnchorKind, INCH, PSI, inches, strength_in_psi, within};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Critical edge distance of an adhesive anchor in uncracked concrete, by the formula of product reports.
    ///
    /// Below it the bond counts for less, for fear of splitting. In cracked concrete it does not count. A report that
    /// prints its own formula prevails.
    pub struct AnchorAdhesiveCriticalEdge = "anchor-adhesive-critical-edge" in Standing {
        /// Diameter of the rod.
        diameter ("d"): Length,
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Characteristic bond stress in uncracked concrete.
        uncracked_stress ("τk,uncr"): Pressure,
        /// Coefficient of breakout in uncracked concrete from the report, in inch-pound units: 24 is usual.
        coefficient ("kuncr"): Ratio,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Thickness of the concrete.
        thickness ("h"): Length,
    }
    gives
    /// Critical edge distance.
    pub struct AdhesiveCriticalEdge {
        /// Bond stress that counts in the formula.
        counted_stress ("τ′"): Pressure,
        /// Critical edge distance.
        critical_edge ("cac"): Length,
    }
    formula "τ′ = min(τk,uncr, kuncr · √(hef · f′c) / (π · d)) (psi, in)\ncac = hef · (τ′ / 1,160 psi)^0.4 · (3.1 − 0.7 · h / hef), h / hef not above 2.4"
    valid "Adhesive anchors qualified by ACI 355.4; concrete from 1,000 psi to 8,000 psi, at least as thick as the embedment."
    source { work: "product reports to ACI 355.4", clause: "equation 17.4.5.5c for ACI 318-14, D-27a for ACI 318-11", evidence: Seen, seen: "the equation quoted from reports in an anchor maker's guide to ACI 318-19 (name withheld), page 62" }
    by critical_edge
}

fn critical_edge(anchor: &AnchorAdhesiveCriticalEdge) -> Result<AdhesiveCriticalEdge, OutOfReach> {
    positive("diameter", anchor.diameter, "5/8 in")?;
    positive("embedment", anchor.embedment, "6 in")?;
    positive("uncracked_stress", anchor.uncracked_stress, "1,300 psi")?;
    within(
        "coefficient",
        anchor.coefficient,
        7.0,
        30.0,
        "in inch-pound units: 24 in uncracked concrete unless the report has another",
    )?;
    let strength = strength_in_psi(anchor.concrete_strength, AnchorKind::PostInstalled)?;
    let embedment = inches(anchor.embedment);
    let thickness = inches(anchor.thickness) / embedment;
    if thickness < 1.0 {
        return Err(OutOfReach::new(
            "thickness",
            "the concrete is thicker than the anchor is deep; give its thickness, such as 12 in",
        ));
    }
    let limit = anchor.coefficient.base() * (embedment * strength).sqrt()
        / (std::f64::consts::PI * inches(anchor.diameter));
    let stress = (anchor.uncracked_stress.base() / PSI).min(limit);
    let edge = embedment * (stress / 1_160.0).powf(0.4) * (3.1 - 0.7 * thickness.min(2.4));
    Ok(AdhesiveCriticalEdge {
        counted_stress: Pressure::from_base(stress * PSI),
        critical_edge: Length::from_base(edge * INCH),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn edge(thickness: f64, stress: f64) -> f64 {
        let anchor = AnchorAdhesiveCriticalEdge {
            diameter: Length::from_base(0.016),
            embedment: Length::from_base(0.15),
            uncracked_stress: Pressure::from_base(stress),
            coefficient: Ratio::from_base(24.0),
            concrete_strength: Pressure::from_base(25e6),
            thickness: Length::from_base(thickness),
        };
        anchor.evaluate().unwrap().critical_edge.base()
    }

    proptest! {
        #[test]
        fn thicker_concrete_never_splits_sooner_and_a_stronger_bond_never_later(
            thickness in 0.16..1.0, stress in 3e6..20e6
        ) {
            prop_assert!(edge(thickness + 0.01, stress) <= edge(thickness, stress));
            prop_assert!(edge(thickness, stress * 1.05) >= edge(thickness, stress));
        }
    }
}
