//! Bond of adhesive anchors in tension.

use super::concrete::{INCH, PSI, inches};
use super::factors::{in_a_row, lightweight, pounds, reduction, square_inches};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength of the bond of one adhesive anchor or of a rectangular group in tension, by ACI 318-19.
    ///
    /// The bond stress is that of the product's report for cracked or uncracked concrete, temperature, moisture and
    /// earthquake, or the least one of `anchor-minimum-bond`. How far the bond reaches around an anchor always follows
    /// from the uncracked stress. Breakout, steel and, near an edge in uncracked concrete, splitting have to hold as
    /// well. What hangs on the anchors all the time may be no more than the sustained strength on each anchor.
    pub struct AnchorBondTension = "anchor-bond-tension" in Standing {
        /// Diameter of the rod.
        diameter ("da"): Length,
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Characteristic bond stress that counts: cracked or uncracked.
        bond_stress ("τ"): Pressure,
        /// Characteristic bond stress in uncracked concrete.
        uncracked_stress ("τuncr"): Pressure,
        /// Factor for lightweight concrete: 1 for normal weight.
        lightweight_factor ("λa"): Ratio,
        /// Anchors in a row from left to right.
        count_across ("nx"): u32,
        /// Spacing of the anchors from left to right.
        spacing_across ("sx"): Length,
        /// Anchors in a row from front to back.
        count_along ("ny"): u32,
        /// Spacing of the anchors from front to back.
        spacing_along ("sy"): Length,
        /// Distance from the outer anchors to the left edge.
        edge_left ("ca"): Length,
        /// Distance from the outer anchors to the right edge.
        edge_right ("ca"): Length,
        /// Distance from the outer anchors to the front edge.
        edge_front ("ca"): Length,
        /// Distance from the outer anchors to the back edge.
        edge_back ("ca"): Length,
        /// Eccentricity of the pull from left to right.
        eccentricity_across ("e′N,x"): Length,
        /// Eccentricity of the pull from front to back.
        eccentricity_along ("e′N,y"): Length,
        /// Critical edge distance in uncracked concrete; 0 in cracked concrete.
        critical_edge ("cac"): Length,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Bond strength.
    pub struct AnchorBond {
        /// How far the bond reaches around an anchor.
        reach ("cNa"): Length,
        /// Area of influence of one anchor far from edges.
        reference_area ("ANao"): Area,
        /// Area of influence of the anchors.
        projected_area ("ANa"): Area,
        /// Factor for eccentric pull, both directions multiplied.
        eccentricity_factor ("ψec,Na"): Ratio,
        /// Factor for the nearest edge.
        edge_factor ("ψed,Na"): Ratio,
        /// Factor against splitting.
        splitting_factor ("ψcp,Na"): Ratio,
        /// Basic strength of one anchor.
        basic ("Nba"): Force,
        /// Nominal strength of the anchors together.
        nominal ("Nag"): Force,
        /// Design strength of the anchors together.
        design ("φNag"): Force,
        /// Lasting pull that one anchor may have.
        sustained ("0.55 φNba"): Force,
    }
    formula "cNa = 10 · da · √(τuncr / 1,100 psi)\nANao = (2 · cNa)²\nANa = (ca,left + (nx − 1) · sx + ca,right) · (ca,front + (ny − 1) · sy + ca,back), each ca not above cNa, each s not above 2 · cNa\nψec,Na = 1 / (1 + e′N / cNa) for each direction\nψed,Na = 0.7 + 0.3 · ca,min / cNa, not above 1\nψcp,Na = max(ca,min, cNa) / cac where ca,min < cac, not above 1\nNba = λa · τ · π · da · hef\nNag = ANa / ANao · ψec,Na · ψed,Na · ψcp,Na · Nba"
    valid "Embedment from 4 to 20 diameters; spacing up to twice the reach, anchors farther apart act alone."
    source { work: "ACI 318-19", clause: "17.6.5 and 17.5.2.2", evidence: Seen, seen: "the clauses quoted in an anchor maker's guide to the code (name withheld) and of ACI 318-14 at up.codes; a value in a public test file" }
    by bond
}

fn bond(anchors: &AnchorBondTension) -> Result<AnchorBond, OutOfReach> {
    check(anchors)?;
    let diameter = inches(anchors.diameter);
    let reach = 10.0 * diameter * (anchors.uncracked_stress.base() / PSI / 1_100.0).sqrt();
    let edges = [
        anchors.edge_left,
        anchors.edge_right,
        anchors.edge_front,
        anchors.edge_back,
    ]
    .map(inches);
    let across = (anchors.count_across, inches(anchors.spacing_across));
    let along = (anchors.count_along, inches(anchors.spacing_along));
    apart("spacing_across", across, reach)?;
    apart("spacing_along", along, reach)?;
    let projected_area =
        side(edges[0], edges[1], across, reach) * side(edges[2], edges[3], along, reach);
    let reference_area = (2.0 * reach).powi(2);
    let least = edges.iter().copied().fold(f64::INFINITY, f64::min);
    let edge_factor = (0.7 + 0.3 * least / reach).min(1.0);
    let splitting_factor = splitting(least, inches(anchors.critical_edge), reach);
    let eccentricity_factor = [anchors.eccentricity_across, anchors.eccentricity_along]
        .map(|eccentricity| 1.0 / (1.0 + inches(eccentricity) / reach))
        .iter()
        .product::<f64>();
    let basic = anchors.lightweight_factor.base()
        * (anchors.bond_stress.base() / PSI)
        * std::f64::consts::PI
        * diameter
        * inches(anchors.embedment);
    let nominal = pounds(
        projected_area / reference_area
            * eccentricity_factor
            * edge_factor
            * splitting_factor
            * basic,
    );
    Ok(AnchorBond {
        reach: Length::from_base(reach * INCH),
        reference_area: square_inches(reference_area),
        projected_area: square_inches(projected_area),
        eccentricity_factor: Ratio::from_base(eccentricity_factor),
        edge_factor: Ratio::from_base(edge_factor),
        splitting_factor: Ratio::from_base(splitting_factor),
        basic: pounds(basic),
        nominal,
        design: nominal * anchors.reduction,
        sustained: pounds(0.55 * basic) * anchors.reduction,
    })
}

/// One side of the area of influence.
fn side(before: f64, after: f64, (count, spacing): (u32, f64), reach: f64) -> f64 {
    before.min(reach) + after.min(reach) + f64::from(count.saturating_sub(1)) * spacing
}

/// Factor against splitting in uncracked concrete; a critical edge of zero leaves it out.
fn splitting(least: f64, critical: f64, reach: f64) -> f64 {
    if least >= critical {
        return 1.0;
    }
    (least.max(reach) / critical).min(1.0)
}

/// Refuses anchors too far apart to act together.
fn apart(input: &'static str, row: (u32, f64), reach: f64) -> Result<(), OutOfReach> {
    if row.0 > 1 && row.1 > 2.0 * reach * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            input,
            "anchors farther apart than twice the reach of the bond do not act as a group; take each alone with a count of 1",
        ));
    }
    Ok(())
}

fn check(anchors: &AnchorBondTension) -> Result<(), OutOfReach> {
    positive("diameter", anchors.diameter, "5/8 in")?;
    let ratio = anchors.embedment.base() / anchors.diameter.base();
    if !(4.0 * (1.0 - 1e-9)..=20.0 * (1.0 + 1e-9)).contains(&ratio) {
        return Err(OutOfReach::new(
            "embedment",
            "the method holds from 4 to 20 diameters of the rod; deeper or shallower adhesive anchors need tests",
        ));
    }
    for (name, stress) in [
        ("bond_stress", anchors.bond_stress),
        ("uncracked_stress", anchors.uncracked_stress),
    ] {
        positive(name, stress, "650 psi")?;
    }
    if anchors.bond_stress.base() > anchors.uncracked_stress.base() * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            "bond_stress",
            "no bond counts for more than the one in uncracked concrete; look whether the two are exchanged",
        ));
    }
    lightweight(anchors.lightweight_factor)?;
    in_a_row("count_across", anchors.count_across)?;
    in_a_row("count_along", anchors.count_along)?;
    for (name, length) in [
        ("edge_left", anchors.edge_left),
        ("edge_right", anchors.edge_right),
        ("edge_front", anchors.edge_front),
        ("edge_back", anchors.edge_back),
    ] {
        positive(name, length, "6 in, or 20 ft where there is no edge")?;
    }
    for (name, length) in [
        ("spacing_across", anchors.spacing_across),
        ("spacing_along", anchors.spacing_along),
        ("eccentricity_across", anchors.eccentricity_across),
        ("eccentricity_along", anchors.eccentricity_along),
        ("critical_edge", anchors.critical_edge),
    ] {
        not_negative(name, length, "6 in")?;
    }
    reduction(anchors.reduction)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn four(spacing: f64, edge: f64, eccentricity: f64) -> AnchorBondTension {
        let length = |inches: f64| Length::from_base(inches * INCH);
        AnchorBondTension {
            diameter: length(0.625),
            embedment: length(6.0),
            bond_stress: Pressure::from_base(600.0 * PSI),
            uncracked_stress: Pressure::from_base(1_300.0 * PSI),
            lightweight_factor: Ratio::from_base(1.0),
            count_across: 2,
            spacing_across: length(spacing),
            count_along: 2,
            spacing_along: length(spacing),
            edge_left: length(edge),
            edge_right: length(500.0),
            edge_front: length(500.0),
            edge_back: length(500.0),
            eccentricity_across: length(eccentricity),
            eccentricity_along: length(0.0),
            critical_edge: length(0.0),
            reduction: Ratio::from_base(0.65),
        }
    }

    proptest! {
        #[test]
        fn wider_apart_holds_more_and_never_more_than_all_alone(
            spacing in 1.0..13.0, edge in 1.0..40.0
        ) {
            let base = four(spacing, edge, 0.0).evaluate().unwrap();
            let wider = four(spacing + 0.4, edge, 0.0).evaluate().unwrap();
            prop_assert!(base.nominal < wider.nominal);
            prop_assert!(base.projected_area.base() <= 4.0 * base.reference_area.base());
            prop_assert!(base.nominal.base() <= 4.0 * base.basic.base());
        }

        #[test]
        fn an_eccentric_pull_and_a_near_edge_hold_less(spacing in 1.0..13.0, more in 0.1..6.0) {
            let base = four(spacing, 10.0, 0.0).evaluate().unwrap();
            prop_assert!(four(spacing, 10.0, more).evaluate().unwrap().nominal < base.nominal);
            let near = four(spacing, 6.5 - more, 0.0);
            if let Ok(near) = near.evaluate() {
                prop_assert!(near.nominal < base.nominal);
            }
        }
    }

    #[test]
    fn exchanged_bond_stresses_are_noticed() {
        let mut wrong = four(6.0, 10.0, 0.0);
        wrong.bond_stress = Pressure::from_base(1_400.0 * PSI);
        assert_eq!(wrong.evaluate().unwrap_err().input, "bond_stress");
    }
}
