//! Concrete breakout of a single anchor in tension.

use super::breakout::{Anchors, Breakout, breakout};
use super::concrete::{AnchorKind, INCH};
use crate::OutOfReach;
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength of the concrete cone that a single anchor pulls out, by ACI 318-19.
    ///
    /// Edge distances are from the center of the anchor to the four edges of the concrete; where there is no edge give
    /// a large distance. Concrete counts as cracked unless analysis shows otherwise. Where three or more edges are
    /// nearer than one and a half embedments, the embedment that counts is limited by them. Steel, pull-out and, for
    /// bonded anchors, bond have to hold as well.
    pub struct AnchorBreakoutTension = "anchor-breakout-tension" in Standing {
        /// How the anchor came into the concrete.
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
        /// Distance to the left edge.
        edge_left ("ca"): Length,
        /// Distance to the right edge.
        edge_right ("ca"): Length,
        /// Distance to the front edge.
        edge_front ("ca"): Length,
        /// Distance to the back edge.
        edge_back ("ca"): Length,
        /// Critical edge distance of a post-installed anchor in uncracked concrete; otherwise 0.
        critical_edge ("cac"): Length,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Breakout strength of a single anchor.
    pub struct AnchorBreakout {
        /// Embedment that counts.
        effective_embedment ("hef′"): Length,
        /// Projected area of a cone far from edges.
        reference_area ("ANco"): Area,
        /// Projected area that the edges leave.
        projected_area ("ANc"): Area,
        /// Factor for the nearest edge.
        edge_factor ("ψed,N"): Ratio,
        /// Factor against splitting.
        splitting_factor ("ψcp,N"): Ratio,
        /// Basic strength of one anchor far from edges.
        basic ("Nb"): Force,
        /// Nominal strength.
        nominal ("Ncb"): Force,
        /// Design strength.
        design ("φNcb"): Force,
    }
    formula "ANco = 9 · hef²\nANc = (ca,left + ca,right) · (ca,front + ca,back), each ca not above 1.5 · hef\nψed,N = 0.7 + 0.3 · ca,min / (1.5 · hef), not above 1\nψcp,N = max(ca,min, 1.5 · hef) / cac where ca,min < cac, not above 1\nNb = kc · λa · √f′c · hef^1.5, or for cast-in with 11 in ≤ hef ≤ 25 in the larger of it and 16 · λa · √f′c · hef^(5/3) (lb, in, psi)\nNcb = ANc / ANco · ψed,N · ψc,N · ψcp,N · Nb\nthree or more edges within 1.5 · hef: hef = max(ca,max / 1.5, s / 3)"
    valid "Embedment up to 25 in; concrete from 1,000 psi to 10,000 psi for cast-in and 8,000 psi for post-installed anchors; one anchor, no supplementary reinforcement counted, static load."
    source { work: "ACI 318-19", clause: "17.6.2", evidence: Seen, seen: "worked examples to ACI 318-11 and 318-19, AISC Design Guide 1 values in a public test file, an anchor maker's tables; narrow-member rule from memory and its twin EN 1992-4 7.2.1.4(8) in a worked sheet; the code itself was not at hand" }
    by single
}

fn single(anchor: &AnchorBreakoutTension) -> Result<AnchorBreakout, OutOfReach> {
    let alone = (1, Length::from_base(0.0));
    let found = breakout(&Anchors {
        anchor: anchor.anchor,
        embedment: anchor.embedment,
        concrete_strength: anchor.concrete_strength,
        coefficient: anchor.coefficient,
        cracking_factor: anchor.cracking_factor,
        lightweight_factor: anchor.lightweight_factor,
        critical_edge: anchor.critical_edge,
        reduction: anchor.reduction,
        edges: [
            anchor.edge_left,
            anchor.edge_right,
            anchor.edge_front,
            anchor.edge_back,
        ],
        across: alone,
        along: alone,
    })?;
    let nominal = Force::from_base(Breakout::newtons(found.nominal));
    Ok(AnchorBreakout {
        effective_embedment: Length::from_base(found.effective_embedment * INCH),
        reference_area: Area::from_base(found.reference_area * Breakout::SQUARE_INCH),
        projected_area: Area::from_base(found.projected_area * Breakout::SQUARE_INCH),
        edge_factor: Ratio::from_base(found.edge_factor),
        splitting_factor: Ratio::from_base(found.splitting_factor),
        basic: Force::from_base(Breakout::newtons(found.basic)),
        nominal,
        design: nominal * anchor.reduction,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn anchor(kind: AnchorKind, embedment: f64, edges: [f64; 4]) -> AnchorBreakoutTension {
        let edges = edges.map(|inches| Length::from_base(inches * INCH));
        AnchorBreakoutTension {
            anchor: kind,
            embedment: Length::from_base(embedment * INCH),
            concrete_strength: Pressure::from_base(20.7e6),
            coefficient: super::super::breakout_coefficient(kind),
            cracking_factor: Ratio::from_base(1.0),
            lightweight_factor: Ratio::from_base(1.0),
            edge_left: edges[0],
            edge_right: edges[1],
            edge_front: edges[2],
            edge_back: edges[3],
            critical_edge: Length::from_base(0.0),
            reduction: Ratio::from_base(0.7),
        }
    }

    fn strength(kind: AnchorKind, embedment: f64, edges: [f64; 4]) -> f64 {
        anchor(kind, embedment, edges)
            .evaluate()
            .unwrap()
            .nominal
            .base()
    }

    proptest! {
        #[test]
        fn deeper_holds_more_with_up_to_two_near_edges(
            embedment in 1.0..24.0, more in 0.01..1.0, left in 1.0..60.0, front in 1.0..60.0
        ) {
            for kind in AnchorKind::ALL {
                let edges = [left, 500.0, front, 500.0];
                prop_assert!(
                    strength(*kind, embedment, edges) < strength(*kind, embedment + more, edges)
                );
            }
        }

        /// Not below the edge distances at which the narrow-member rule changes the embedment.
        #[test]
        fn farther_from_an_edge_never_holds_less(
            embedment in 1.0..24.0, left in 1.0..60.0, front in 1.0..60.0, more in 0.01..5.0
        ) {
            let near = strength(AnchorKind::CastIn, embedment, [left, 500.0, front, 500.0]);
            let far = strength(AnchorKind::CastIn, embedment, [left + more, 500.0, front, 500.0]);
            prop_assert!(near <= far * (1.0 + 1e-12));
        }

        #[test]
        fn the_projected_area_never_exceeds_that_far_from_edges(
            embedment in 1.0..24.0, edges in prop::array::uniform4(1.0..60.0)
        ) {
            let gives = anchor(AnchorKind::CastIn, embedment, edges).evaluate().unwrap();
            prop_assert!(gives.projected_area.base() <= gives.reference_area.base() * (1.0 + 1e-12));
            prop_assert!(gives.edge_factor.base() <= 1.0 && gives.edge_factor.base() >= 0.7);
        }
    }

    #[test]
    fn a_short_edge_before_the_critical_one_lowers_an_uncracked_anchor() {
        let mut uncracked = anchor(AnchorKind::PostInstalled, 12.0, [10.0, 500.0, 500.0, 500.0]);
        uncracked.critical_edge = Length::from_base(30.0 * INCH);
        let gives = uncracked.evaluate().unwrap();
        assert!((gives.splitting_factor.base() - 0.6).abs() < 1e-12);
    }
}
