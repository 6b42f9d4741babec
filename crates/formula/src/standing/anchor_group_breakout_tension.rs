//! Concrete breakout of a rectangular group of anchors in tension.

use super::breakout::{Anchors, Breakout, breakout};
use super::concrete::{AnchorKind, INCH, inches, not_negative};
use crate::OutOfReach;
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength of the concrete that a rectangular group of anchors pulls out together, by ACI 318-19.
    ///
    /// All anchors of the group are in tension and evenly spaced in each direction. Edge distances are from the outer
    /// anchors to the edges of the concrete; where there is no edge give a large distance. The eccentricity is that
    /// of the pull on the anchors in tension, in each direction.
    pub struct AnchorGroupBreakoutTension = "anchor-group-breakout-tension" in Standing {
        /// How the anchors came into the concrete.
        anchor ("–"): AnchorKind,
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Breakout coefficient in inch-pound units: 24 cast-in, 17 post-installed, or the product's.
        coefficient ("kc"): Ratio,
        /// Factor for cracking: 1 in cracked concrete.
        cracking_factor ("ψc,N"): Ratio,
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
        /// Critical edge distance of post-installed anchors in uncracked concrete; otherwise 0.
        critical_edge ("cac"): Length,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Breakout strength of a group of anchors.
    pub struct AnchorGroupBreakout {
        /// Embedment that counts.
        effective_embedment ("hef′"): Length,
        /// Projected area of one cone far from edges.
        reference_area ("ANco"): Area,
        /// Projected area of the group.
        projected_area ("ANc"): Area,
        /// Factor for eccentric pull, both directions multiplied.
        eccentricity_factor ("ψec,N"): Ratio,
        /// Factor for the nearest edge.
        edge_factor ("ψed,N"): Ratio,
        /// Factor against splitting.
        splitting_factor ("ψcp,N"): Ratio,
        /// Basic strength of one anchor far from edges.
        basic ("Nb"): Force,
        /// Nominal strength of the group.
        nominal ("Ncbg"): Force,
        /// Design strength of the group.
        design ("φNcbg"): Force,
    }
    formula "ANco = 9 · hef²\nANc = (ca,left + (nx − 1) · sx + ca,right) · (ca,front + (ny − 1) · sy + ca,back), each ca not above 1.5 · hef, each s not above 3 · hef\nψec,N = 1 / (1 + e′N / (1.5 · hef)) for each direction\nψed,N, ψcp,N, Nb as for a single anchor\nNcbg = ANc / ANco · ψec,N · ψed,N · ψc,N · ψcp,N · Nb"
    valid "Embedment up to 25 in; spacing up to 3 embedments, anchors farther apart act alone; concrete from 1,000 psi to 10,000 psi for cast-in and 8,000 psi for post-installed anchors; no supplementary reinforcement counted, static load."
    source { work: "ACI 318-19", clause: "17.6.2", evidence: Seen, seen: "worked examples to ACI 318-19 of an anchor maker's design guide (name withheld) and of a public sheet, AISC Design Guide 1 values in a public test file; the code itself was not at hand" }
    by group
}

fn group(group: &AnchorGroupBreakoutTension) -> Result<AnchorGroupBreakout, OutOfReach> {
    check(group)?;
    let found = breakout(&Anchors {
        anchor: group.anchor,
        embedment: group.embedment,
        concrete_strength: group.concrete_strength,
        coefficient: group.coefficient,
        cracking_factor: group.cracking_factor,
        lightweight_factor: group.lightweight_factor,
        critical_edge: group.critical_edge,
        reduction: group.reduction,
        edges: [
            group.edge_left,
            group.edge_right,
            group.edge_front,
            group.edge_back,
        ],
        across: (group.count_across, group.spacing_across),
        along: (group.count_along, group.spacing_along),
    })?;
    let reach = 1.5 * found.effective_embedment;
    let eccentricity_factor = [group.eccentricity_across, group.eccentricity_along]
        .map(|eccentricity| 1.0 / (1.0 + inches(eccentricity) / reach))
        .iter()
        .product();
    let nominal = Force::from_base(Breakout::newtons(found.nominal * eccentricity_factor));
    Ok(AnchorGroupBreakout {
        effective_embedment: Length::from_base(found.effective_embedment * INCH),
        reference_area: Area::from_base(found.reference_area * Breakout::SQUARE_INCH),
        projected_area: Area::from_base(found.projected_area * Breakout::SQUARE_INCH),
        eccentricity_factor: Ratio::from_base(eccentricity_factor),
        edge_factor: Ratio::from_base(found.edge_factor),
        splitting_factor: Ratio::from_base(found.splitting_factor),
        basic: Force::from_base(Breakout::newtons(found.basic)),
        nominal,
        design: nominal * group.reduction,
    })
}

fn check(group: &AnchorGroupBreakoutTension) -> Result<(), OutOfReach> {
    for (name, count) in [
        ("count_across", group.count_across),
        ("count_along", group.count_along),
    ] {
        if !(1..=20).contains(&count) {
            return Err(OutOfReach::new(
                name,
                "give the number of anchors in the row, from 1 to 20",
            ));
        }
    }
    for (name, eccentricity) in [
        ("eccentricity_across", group.eccentricity_across),
        ("eccentricity_along", group.eccentricity_along),
    ] {
        not_negative(
            name,
            eccentricity,
            "give it as a distance, not below zero; 0 for a centered pull",
        )?;
    }
    let rows = [
        ("spacing_across", group.count_across, group.spacing_across),
        ("spacing_along", group.count_along, group.spacing_along),
    ];
    let apart = |(_, count, spacing): &&(&'static str, u32, Length)| {
        *count > 1 && spacing.base() > 3.0 * group.embedment.base() * (1.0 + 1e-9)
    };
    match rows.iter().find(apart) {
        Some((name, ..)) => Err(OutOfReach::new(
            name,
            "anchors more than three embedments apart do not act as a group; take each alone with anchor-breakout-tension",
        )),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn four(spacing: f64, edge: f64, eccentricity: f64) -> AnchorGroupBreakoutTension {
        let length = |inches: f64| Length::from_base(inches * INCH);
        AnchorGroupBreakoutTension {
            anchor: AnchorKind::CastIn,
            embedment: length(6.0),
            concrete_strength: Pressure::from_base(20.7e6),
            coefficient: Ratio::from_base(24.0),
            cracking_factor: Ratio::from_base(1.0),
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
            reduction: Ratio::from_base(0.7),
        }
    }

    proptest! {
        #[test]
        fn wider_apart_holds_more_and_never_more_than_four_alone(
            spacing in 1.0..17.0, edge in 1.0..40.0
        ) {
            let base = four(spacing, edge, 0.0).evaluate().unwrap();
            let wider = four(spacing + 0.5, edge, 0.0).evaluate().unwrap();
            prop_assert!(base.nominal < wider.nominal);
            prop_assert!(base.projected_area.base() <= 4.0 * base.reference_area.base());
        }

        #[test]
        fn an_eccentric_pull_holds_less(spacing in 1.0..18.0, eccentricity in 0.1..9.0) {
            let centered = four(spacing, 20.0, 0.0).evaluate().unwrap();
            let eccentric = four(spacing, 20.0, eccentricity).evaluate().unwrap();
            prop_assert!(eccentric.nominal < centered.nominal);
        }
    }

    #[test]
    fn anchors_too_far_apart_are_no_group() {
        assert_eq!(
            four(19.0, 20.0, 0.0).evaluate().unwrap_err().input,
            "spacing_across"
        );
    }
}
