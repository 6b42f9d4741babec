//! Concrete cone of fasteners in tension by EN 1992-4.

use super::concrete::within;
use super::cone_reach::{counted_embedment, projected_area};
use super::en1992_steel::MPA;
use super::factors::in_a_row;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};

quantity::words! {
    /// How close the bars of the concrete lie around a fastener.
    pub enum BarSpacing {
        /// 150 mm and more, or thin bars of up to 10 mm at 100 mm and more.
        Wide = "wide",
        /// Closer, or not known.
        Close = "close",
    }
}

formula! {
    /// Resistance of the concrete cone that one fastener or a rectangular group pulls out, by EN 1992-4.
    ///
    /// Recalled, but for the rule for narrow members; look it up before anything rests on it. Concrete counts as cracked
    /// unless shown otherwise. The help that a pressed plate gives is not counted. Steel, pull-out, splitting and, for
    /// bonded fasteners, the combined failure have to hold as well.
    pub struct En1992Cone = "en1992-cone" in Standing {
        /// Coefficient: 8.9 cast-in and 7.7 post-installed in cracked concrete, 12.7 and 11.0 uncracked.
        coefficient ("k1"): Ratio,
        /// Characteristic cylinder strength of the concrete.
        concrete_strength ("fck"): Pressure,
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Fasteners in a row from left to right.
        count_across ("nx"): u32,
        /// Spacing of the fasteners from left to right.
        spacing_across ("sx"): Length,
        /// Fasteners in a row from front to back.
        count_along ("ny"): u32,
        /// Spacing of the fasteners from front to back.
        spacing_along ("sy"): Length,
        /// Distance from the outer fasteners to the left edge.
        edge_left ("c"): Length,
        /// Distance from the outer fasteners to the right edge.
        edge_right ("c"): Length,
        /// Distance from the outer fasteners to the front edge.
        edge_front ("c"): Length,
        /// Distance from the outer fasteners to the back edge.
        edge_back ("c"): Length,
        /// Eccentricity of the pull from left to right.
        eccentricity_across ("eN,x"): Length,
        /// Eccentricity of the pull from front to back.
        eccentricity_along ("eN,y"): Length,
        /// How close bars lie around the fasteners.
        bars ("–"): BarSpacing,
        /// Partial factor of the concrete: 1.5 times that of the installation.
        partial ("γMc"): Ratio,
    }
    gives
    /// Cone resistance.
    pub struct ConeResistance {
        /// Embedment that counts.
        counted_embedment ("hef′"): Length,
        /// Projected area of one cone far from edges.
        reference_area ("A0c,N"): Area,
        /// Projected area of the fasteners.
        projected_area ("Ac,N"): Area,
        /// Factor for the nearest edge.
        edge_factor ("ψs,N"): Ratio,
        /// Factor for close bars.
        spalling_factor ("ψre,N"): Ratio,
        /// Factor for eccentric pull, both directions multiplied.
        eccentricity_factor ("ψec,N"): Ratio,
        /// Characteristic resistance of one fastener far from edges.
        basic ("N0Rk,c"): Force,
        /// Characteristic resistance.
        characteristic ("NRk,c"): Force,
        /// Design resistance.
        design ("NRd,c"): Force,
    }
    formula "N0Rk,c = k1 · √fck · hef^1.5 (N, mm, MPa)\nA0c,N = (3 · hef)²\nψs,N = 0.7 + 0.3 · c / (1.5 · hef), not above 1\nψre,N = 0.5 + hef / 200 mm, not above 1, with close bars\nψec,N = 1 / (1 + 2 · eN / (3 · hef)) for each direction\nNRk,c = N0Rk,c · Ac,N / A0c,N · ψs,N · ψre,N · ψec,N\nNRd,c = NRk,c / γMc\nthree or more edges within 1.5 · hef: hef = max(cmax / 1.5, smax / 3)"
    valid "Concrete from 12 MPa to 90 MPa; embedment from 40 mm; spacing up to 3 · hef, fasteners farther apart act alone."
    source { work: "EN 1992-4:2018", clause: "7.2.1.4", evidence: Memory, seen: "recalled; the rule for narrow members (7.2.1.4(8)) and the reference area in a worked sheet" }
    by cone
}

fn cone(group: &En1992Cone) -> Result<ConeResistance, OutOfReach> {
    check(group)?;
    let millimeters = |length: Length| length.base() * 1e3;
    let edges = [
        group.edge_left,
        group.edge_right,
        group.edge_front,
        group.edge_back,
    ]
    .map(millimeters);
    let rows = [
        (group.count_across, millimeters(group.spacing_across)),
        (group.count_along, millimeters(group.spacing_along)),
    ];
    let depth = counted_embedment(millimeters(group.embedment), &edges, rows);
    let reach = 1.5 * depth;
    let reference_area = 9.0 * depth * depth;
    let projected_area = projected_area(&edges, rows, reach);
    let least = edges.iter().copied().fold(f64::INFINITY, f64::min);
    let edge_factor = (0.7 + 0.3 * least / reach).min(1.0);
    let spalling_factor = match group.bars {
        BarSpacing::Wide => 1.0,
        BarSpacing::Close => (0.5 + depth / 200.0).min(1.0),
    };
    let eccentricity_factor = [group.eccentricity_across, group.eccentricity_along]
        .map(|eccentricity| 1.0 / (1.0 + millimeters(eccentricity) / reach))
        .iter()
        .product::<f64>();
    let basic =
        group.coefficient.base() * (group.concrete_strength.base() / MPA).sqrt() * depth.powf(1.5);
    let characteristic = basic * projected_area / reference_area
        * edge_factor
        * spalling_factor
        * eccentricity_factor;
    Ok(ConeResistance {
        counted_embedment: Length::from_base(depth * 1e-3),
        reference_area: Area::from_base(reference_area * 1e-6),
        projected_area: Area::from_base(projected_area * 1e-6),
        edge_factor: Ratio::from_base(edge_factor),
        spalling_factor: Ratio::from_base(spalling_factor),
        eccentricity_factor: Ratio::from_base(eccentricity_factor),
        basic: Force::from_base(basic),
        characteristic: Force::from_base(characteristic),
        design: Force::from_base(characteristic / group.partial.base()),
    })
}

fn check(group: &En1992Cone) -> Result<(), OutOfReach> {
    within(
        "coefficient",
        group.coefficient,
        5.0,
        12.7,
        "give 8.9 for cast-in and 7.7 for post-installed fasteners in cracked concrete, 12.7 and 11.0 uncracked, or the product's",
    )?;
    strength(group.concrete_strength)?;
    if group.embedment.base() < 0.04 * (1.0 - 1e-9) {
        return Err(OutOfReach::new(
            "embedment",
            "give the effective embedment, from 40 mm, such as 100 mm",
        ));
    }
    in_a_row("count_across", group.count_across)?;
    in_a_row("count_along", group.count_along)?;
    for (name, length) in [
        ("edge_left", group.edge_left),
        ("edge_right", group.edge_right),
        ("edge_front", group.edge_front),
        ("edge_back", group.edge_back),
    ] {
        positive(name, length, "150 mm, or 5 m where there is no edge")?;
    }
    for (name, length) in [
        ("spacing_across", group.spacing_across),
        ("spacing_along", group.spacing_along),
        ("eccentricity_across", group.eccentricity_across),
        ("eccentricity_along", group.eccentricity_along),
    ] {
        not_negative(name, length, "150 mm")?;
    }
    for (name, count, spacing) in [
        ("spacing_across", group.count_across, group.spacing_across),
        ("spacing_along", group.count_along, group.spacing_along),
    ] {
        if count > 1 && spacing.base() > 3.0 * group.embedment.base() * (1.0 + 1e-9) {
            return Err(OutOfReach::new(
                name,
                "fasteners more than three embedments apart do not act as a group; take each alone with a count of 1",
            ));
        }
    }
    partial(group.partial)
}

/// Refuses a strength of concrete that the standard does not know.
pub(super) fn strength(strength: Pressure) -> Result<(), OutOfReach> {
    if (12.0 * MPA..=90.0 * MPA).contains(&strength.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        "concrete_strength",
        "give the cylinder strength of the concrete, from 12 MPa to 90 MPa, such as 20 MPa for C20/25",
    ))
}

/// Refuses a partial factor that is none.
pub(super) fn partial(factor: Ratio) -> Result<(), OutOfReach> {
    within(
        "partial",
        factor,
        1.0,
        3.0,
        "give the partial factor, such as 1.5, or 1 for the characteristic resistance",
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn four(embedment: f64, spacing: f64, edge: f64) -> En1992Cone {
        En1992Cone {
            coefficient: Ratio::from_base(7.7),
            concrete_strength: Pressure::from_base(25e6),
            embedment: Length::from_base(embedment),
            count_across: 2,
            spacing_across: Length::from_base(spacing),
            count_along: 2,
            spacing_along: Length::from_base(spacing),
            edge_left: Length::from_base(edge),
            edge_right: Length::from_base(9.0),
            edge_front: Length::from_base(9.0),
            edge_back: Length::from_base(9.0),
            eccentricity_across: Length::from_base(0.0),
            eccentricity_along: Length::from_base(0.0),
            bars: BarSpacing::Close,
            partial: Ratio::from_base(1.5),
        }
    }

    proptest! {
        /// Deeper holds more far from edges; beside one the edge takes a larger part of a deeper cone.
        #[test]
        fn deeper_wider_and_farther_from_the_edge_holds_more(
            embedment in 0.06..0.4, share in 0.1..2.8, edge in 0.03..0.5
        ) {
            let spacing = share * embedment;
            let hold = |group: En1992Cone| group.evaluate().unwrap().characteristic.base();
            let base = hold(four(embedment, spacing, edge));
            let free = hold(four(embedment, spacing, 9.0));
            prop_assert!(hold(four(embedment * 1.02, spacing, 9.0)) > free);
            prop_assert!(hold(four(embedment, spacing * 1.02, edge)) > base);
            prop_assert!(hold(four(embedment, spacing, edge + 0.01)) >= base * (1.0 - 1e-12));
        }
    }
}
