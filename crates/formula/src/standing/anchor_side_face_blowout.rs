//! The side of the concrete bursting beside a deep headed anchor.

use super::concrete::{AnchorKind, inches, strength_in_psi};
use super::factors::{in_a_row, in_square_inches, lightweight, pounds, reduction};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength against the side of the concrete bursting beside the heads of deep anchors near an edge, by ACI 318-19.
    ///
    /// Only anchors deeper than two and a half edge distances ask for it; others are refused, and need no check. One
    /// anchor near a corner holds less. Anchors along the edge less than six edge distances apart act together.
    pub struct AnchorSideFaceBlowout = "anchor-side-face-blowout" in Standing {
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Distance from the anchors to the nearest edge.
        edge ("ca1"): Length,
        /// Distance from a single anchor to the edge square to it; a large one where there is none.
        corner ("ca2"): Length,
        /// Net bearing area of the head.
        bearing_area ("Abrg"): Area,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Factor for lightweight concrete: 1 for normal weight.
        lightweight_factor ("λa"): Ratio,
        /// Anchors in the row along the edge.
        count ("n"): u32,
        /// Spacing of the anchors along the edge.
        spacing ("s1"): Length,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Strength against bursting of the side.
    pub struct SideFaceBlowout {
        /// Strength of one anchor away from a corner.
        basic ("Nsb"): Force,
        /// Factor for the corner, or for the row.
        factor ("ψ"): Ratio,
        /// Nominal strength of the anchor or of the row.
        nominal ("Nsbg"): Force,
        /// Design strength of the anchor or of the row.
        design ("φNsbg"): Force,
    }
    formula "Nsb = 160 · ca1 · √Abrg · λa · √f′c (lb, in, psi), where hef > 2.5 · ca1\none anchor, ca2 < 3 · ca1: ψ = (1 + ca2 / ca1) / 4, 1 ≤ ca2 / ca1\na row, s1 < 6 · ca1: ψ = 1 + s / (6 · ca1), s from the first anchor to the last\nNsbg = ψ · Nsb"
    valid "Cast-in headed anchors; concrete from 1,000 psi to 10,000 psi; rows evenly spaced, less than six edge distances from anchor to anchor."
    source { work: "ACI 318-19", clause: "17.6.4.1, 17.6.4.1.1, 17.6.4.2", evidence: Seen, seen: "the clauses quoted in an anchor maker's guide to the code (name withheld)" }
    by blowout
}

fn blowout(anchors: &AnchorSideFaceBlowout) -> Result<SideFaceBlowout, OutOfReach> {
    check(anchors)?;
    let strength = strength_in_psi(anchors.concrete_strength, AnchorKind::CastIn)?;
    let edge = inches(anchors.edge);
    let basic = 160.0
        * edge
        * in_square_inches(anchors.bearing_area).sqrt()
        * anchors.lightweight_factor.base()
        * strength.sqrt();
    let factor = if anchors.count > 1 {
        let outer = f64::from(anchors.count - 1) * inches(anchors.spacing);
        1.0 + outer / (6.0 * edge)
    } else {
        (1.0 + (inches(anchors.corner) / edge).clamp(1.0, 3.0)) / 4.0
    };
    let nominal = pounds(factor * basic);
    Ok(SideFaceBlowout {
        basic: pounds(basic),
        factor: Ratio::from_base(factor),
        nominal,
        design: nominal * anchors.reduction,
    })
}

fn check(anchors: &AnchorSideFaceBlowout) -> Result<(), OutOfReach> {
    positive("embedment", anchors.embedment, "12 in")?;
    positive("edge", anchors.edge, "3 in")?;
    positive("corner", anchors.corner, "20 ft")?;
    positive("bearing_area", anchors.bearing_area, "0.654 in²")?;
    not_negative("spacing", anchors.spacing, "6 in")?;
    if anchors.count > 1 {
        positive("spacing", anchors.spacing, "6 in")?;
    }
    lightweight(anchors.lightweight_factor)?;
    reduction(anchors.reduction)?;
    in_a_row("count", anchors.count)?;
    if anchors.embedment.base() <= 2.5 * anchors.edge.base() {
        return Err(OutOfReach::new(
            "embedment",
            "the anchor is no deeper than two and a half edge distances: the side does not burst, and no check is asked for",
        ));
    }
    if anchors.count > 1 && anchors.spacing.base() >= 6.0 * anchors.edge.base() {
        return Err(OutOfReach::new(
            "spacing",
            "anchors six edge distances apart or more act alone; take each with a count of 1",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn anchors(edge: f64, corner: f64, count: u32, spacing: f64) -> AnchorSideFaceBlowout {
        AnchorSideFaceBlowout {
            embedment: Length::from_base(0.6),
            edge: Length::from_base(edge),
            corner: Length::from_base(corner),
            bearing_area: Area::from_base(4e-4),
            concrete_strength: Pressure::from_base(25e6),
            lightweight_factor: Ratio::from_base(1.0),
            count,
            spacing: Length::from_base(spacing),
            reduction: Ratio::from_base(0.7),
        }
    }

    proptest! {
        #[test]
        fn a_corner_takes_away_up_to_half(edge in 0.03..0.2, corner in 0.01..2.0) {
            let found = anchors(edge, corner, 1, 0.0).evaluate().unwrap();
            prop_assert!((0.5..=1.0).contains(&found.factor.base()));
        }

        #[test]
        fn a_row_holds_more_than_one_and_no_more_than_all_alone(
            edge in 0.05..0.2, count in 2_u32..8, share in 0.05..0.99
        ) {
            let spacing = share * 6.0 * edge;
            let row = anchors(edge, 6.0, count, spacing).evaluate().unwrap();
            let one = anchors(edge, 6.0, 1, 0.0).evaluate().unwrap();
            prop_assert!(row.nominal > one.nominal);
            prop_assert!(row.nominal.base() <= f64::from(count) * one.nominal.base());
        }
    }

    #[test]
    fn shallow_anchors_need_no_check() {
        assert_eq!(
            anchors(0.25, 1.0, 1, 0.0).evaluate().unwrap_err().input,
            "embedment"
        );
    }
    #[test]
    fn anchors_of_a_row_stand_apart() {
        let refused = anchors(0.1, 1.0, 2, 0.0).evaluate().unwrap_err();
        assert_eq!(refused.input, "spacing");
    }
}
