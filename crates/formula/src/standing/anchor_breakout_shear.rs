//! Concrete breakout of a row of anchors in shear at an edge.

use super::concrete::{AnchorKind, INCH, inches, strength_in_psi, within};
use super::factors::{in_a_row, lightweight, pounds, reduction, square_inches};
use super::shear_edge::{Row, broken_edge};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

quantity::words! {
    /// Which way a shove goes at an edge.
    pub enum ShearDirection {
        /// Toward the edge.
        Toward = "toward the edge",
        /// Along the edge.
        Parallel = "parallel to the edge",
    }
}

formula! {
    /// Strength of the concrete that one anchor, or a row of anchors along an edge, breaks out when shoved, by ACI 318-19.
    ///
    /// Take the row nearest to the edge, and with more rows each row in turn with its own edge distance. Where anchors
    /// slide in their holes the row nearest to the edge takes all. A shove along the edge is tried as well as the part
    /// of it toward the edge, and at a corner both edges are tried. Steel and pry-out have to hold as well. A shove away
    /// from every edge, as far as three edge distances and more, needs no such check.
    pub struct AnchorBreakoutShear = "anchor-breakout-shear" in Standing {
        /// How the anchors came into the concrete.
        anchor ("–"): AnchorKind,
        /// Direction of the shove.
        direction ("–"): ShearDirection,
        /// Diameter of the anchors.
        diameter ("da"): Length,
        /// Length that bears on the concrete: the embedment, for a sleeve that is apart two diameters.
        bearing_length ("le"): Length,
        /// Distance from the row to the edge.
        edge ("ca1"): Length,
        /// Distance from the row's first anchor to the edge on the left.
        corner_left ("ca2"): Length,
        /// Distance from the row's last anchor to the edge on the right.
        corner_right ("ca2"): Length,
        /// Thickness of the concrete.
        thickness ("ha"): Length,
        /// Anchors in the row.
        count ("n"): u32,
        /// Spacing of the anchors in the row.
        spacing ("s"): Length,
        /// Eccentricity of the shove along the row.
        eccentricity ("e′V"): Length,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Factor for cracking: 1 cracked without bars at the edge, 1.2 with a No. 4 bar, 1.4 uncracked.
        cracking_factor ("ψc,V"): Ratio,
        /// Factor for lightweight concrete: 1 for normal weight.
        lightweight_factor ("λa"): Ratio,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Breakout strength in shear.
    pub struct ShearBreakout {
        /// Edge distance that counts.
        counted_edge ("ca1′"): Length,
        /// Projected area of one anchor in deep concrete far from corners.
        reference_area ("AVco"): Area,
        /// Projected area of the row.
        projected_area ("AVc"): Area,
        /// Factor for eccentric shove.
        eccentricity_factor ("ψec,V"): Ratio,
        /// Factor for the nearer corner.
        edge_factor ("ψed,V"): Ratio,
        /// Factor for thin concrete.
        thickness_factor ("ψh,V"): Ratio,
        /// Basic strength of one anchor.
        basic ("Vb"): Force,
        /// Nominal strength of the row.
        nominal ("Vcbg"): Force,
        /// Design strength of the row.
        design ("φVcbg"): Force,
    }
    formula "AVco = 4.5 · ca1²\nAVc = (ca2,left + (n − 1) · s + ca2,right) · min(1.5 · ca1, ha), each ca2 not above 1.5 · ca1, each s not above 3 · ca1\nψec,V = 1 / (1 + e′V / (1.5 · ca1))\nψed,V = 0.7 + 0.3 · ca2,min / (1.5 · ca1), not above 1\nψh,V = √(1.5 · ca1 / ha), not below 1\nVb = min(7 · (le / da)^0.2 · √da, 9) · λa · √f′c · ca1^1.5, le not above 8 · da (lb, in, psi)\nVcbg = AVc / AVco · ψec,V · ψed,V · ψc,V · ψh,V · Vb\nalong the edge: twice that with ψed,V = 1\nboth ca2 and ha below 1.5 · ca1: ca1 = max(ca2,max / 1.5, ha / 1.5, s / 3)"
    valid "Anchors up to 4 in thick that bear on the concrete over their embedment; concrete from 1,000 psi to 10,000 psi for cast-in and 8,000 psi for post-installed anchors; static load."
    source { work: "ACI 318-19", clause: "17.7.2", evidence: Seen, seen: "worked examples with their formulas in an anchor maker's guide (name withheld), AISC Design Guide 1 values in a public test file; the reduced edge distance in narrow thin concrete from memory and its twin in tension, it only lowers the strength" }
    by breakout_shear
}

fn breakout_shear(row: &AnchorBreakoutShear) -> Result<ShearBreakout, OutOfReach> {
    check(row)?;
    let strength = strength_in_psi(row.concrete_strength, row.anchor)?;
    let found = broken_edge(&Row {
        edge: inches(row.edge),
        corners: [inches(row.corner_left), inches(row.corner_right)],
        thickness: inches(row.thickness),
        count: row.count,
        spacing: inches(row.spacing),
        eccentricity: inches(row.eccentricity),
    });
    let (edge_factor, twice) = match row.direction {
        ShearDirection::Toward => (found.edge_factor, 1.0),
        ShearDirection::Parallel => (1.0, 2.0),
    };
    let basic = basic(row, strength, found.counted);
    let nominal = pounds(
        twice * found.projected_area / found.reference_area
            * found.eccentricity_factor
            * edge_factor
            * row.cracking_factor.base()
            * found.thickness_factor
            * basic,
    );
    Ok(ShearBreakout {
        counted_edge: Length::from_base(found.counted * INCH),
        reference_area: square_inches(found.reference_area),
        projected_area: square_inches(found.projected_area),
        eccentricity_factor: Ratio::from_base(found.eccentricity_factor),
        edge_factor: Ratio::from_base(edge_factor),
        thickness_factor: Ratio::from_base(found.thickness_factor),
        basic: pounds(basic),
        nominal,
        design: nominal * row.reduction,
    })
}

/// Basic strength: the lesser of the two forms.
fn basic(row: &AnchorBreakoutShear, strength: f64, edge: f64) -> f64 {
    let diameter = inches(row.diameter);
    let length = inches(row.bearing_length).min(8.0 * diameter);
    let first = 7.0 * (length / diameter).powf(0.2) * diameter.sqrt();
    first.min(9.0) * row.lightweight_factor.base() * strength.sqrt() * edge.powf(1.5)
}

fn check(row: &AnchorBreakoutShear) -> Result<(), OutOfReach> {
    positive("diameter", row.diameter, "3/4 in")?;
    if inches(row.diameter) > 4.0 {
        return Err(OutOfReach::new(
            "diameter",
            "the method holds for anchors up to 4 in thick",
        ));
    }
    for (name, length) in [
        ("bearing_length", row.bearing_length),
        ("edge", row.edge),
        ("corner_left", row.corner_left),
        ("corner_right", row.corner_right),
        ("thickness", row.thickness),
    ] {
        positive(name, length, "6 in, or 20 ft where there is no edge")?;
    }
    in_a_row("count", row.count)?;
    not_negative("spacing", row.spacing, "6 in")?;
    if row.count > 1 {
        positive("spacing", row.spacing, "6 in")?;
    }
    not_negative("eccentricity", row.eccentricity, "1 in")?;
    if row.count > 1 && row.spacing.base() > 3.0 * row.edge.base() * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            "spacing",
            "anchors more than three edge distances apart do not act as a row; take each alone with a count of 1",
        ));
    }
    within(
        "cracking_factor",
        row.cracking_factor,
        1.0,
        1.4,
        "give 1 for cracked concrete without bars at the edge, 1.2 with a No. 4 bar between anchors and edge, 1.4 where it is shown to stay uncracked",
    )?;
    lightweight(row.lightweight_factor)?;
    reduction(row.reduction)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn row(
        edge: f64,
        corner: f64,
        thickness: f64,
        count: u32,
        spacing: f64,
    ) -> AnchorBreakoutShear {
        let length = |inches: f64| Length::from_base(inches * INCH);
        AnchorBreakoutShear {
            anchor: AnchorKind::PostInstalled,
            direction: ShearDirection::Toward,
            diameter: length(0.625),
            bearing_length: length(4.0),
            edge: length(edge),
            corner_left: length(corner),
            corner_right: length(500.0),
            thickness: length(thickness),
            count,
            spacing: length(spacing),
            eccentricity: length(0.0),
            concrete_strength: Pressure::from_base(20.7e6),
            cracking_factor: Ratio::from_base(1.0),
            lightweight_factor: Ratio::from_base(1.0),
            reduction: Ratio::from_base(0.7),
        }
    }

    fn strength(row: &AnchorBreakoutShear) -> f64 {
        row.evaluate().unwrap().nominal.base()
    }

    proptest! {
        #[test]
        fn farther_from_edge_and_corner_and_thicker_never_holds_less(
            edge in 2.0..20.0, corner in 2.0..40.0, thickness in 3.0..40.0
        ) {
            let base = strength(&row(edge, corner, thickness, 1, 0.0));
            let most = base * (1.0 - 1e-12);
            prop_assert!(strength(&row(edge + 0.5, corner, thickness, 1, 0.0)) >= most);
            prop_assert!(strength(&row(edge, corner + 0.5, thickness, 1, 0.0)) >= most);
            prop_assert!(strength(&row(edge, corner, thickness + 0.5, 1, 0.0)) >= most);
        }

        #[test]
        fn a_row_holds_no_more_than_its_anchors_alone(
            edge in 2.0..20.0, share in 0.1..1.0, count in 2_u32..6
        ) {
            let alone = strength(&row(edge, 500.0, 500.0, 1, 0.0));
            let together = strength(&row(edge, 500.0, 500.0, count, share * 3.0 * edge));
            prop_assert!(together > alone);
            prop_assert!(together <= f64::from(count) * alone * (1.0 + 1e-12));
        }

        #[test]
        fn along_the_edge_holds_at_least_twice(edge in 2.0..20.0, corner in 2.0..40.0) {
            let toward = row(edge, corner, 12.0, 1, 0.0);
            let along = AnchorBreakoutShear { direction: ShearDirection::Parallel, ..toward };
            prop_assert!(strength(&along) >= 2.0 * strength(&toward) * (1.0 - 1e-12));
        }
    }

    #[test]
    fn narrow_and_thin_concrete_lowers_the_edge_distance_that_counts() {
        let mut narrow = row(20.0, 6.0, 8.0, 1, 0.0);
        narrow.corner_right = Length::from_base(9.0 * INCH);
        let found = narrow.evaluate().unwrap();
        assert!((found.counted_edge.base() / INCH - 6.0).abs() < 1e-9);
    }
    #[test]
    fn anchors_of_a_row_stand_apart() {
        let refused = row(6.0, 20.0, 12.0, 2, 0.0).evaluate().unwrap_err();
        assert_eq!(refused.input, "spacing");
    }
}
