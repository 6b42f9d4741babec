//! Concrete edge of fasteners in shear by EN 1992-4.

use super::concrete::within;
use super::en1992_cone::{partial, strength};
use super::en1992_steel::MPA;
use super::factors::in_a_row;
use super::shear_edge::{Row, broken_edge};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Area, Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Resistance of the concrete edge against one fastener or a row of fasteners along it, by EN 1992-4.
    ///
    /// Recalled; look it up before anything rests on it. The row nearest to the edge is taken, without play in its
    /// holes. A force away from the edge needs no such check. Steel and pry-out have to hold as well.
    pub struct En1992Edge = "en1992-edge" in Standing {
        /// Coefficient: 1.7 in cracked concrete, 2.4 uncracked.
        coefficient ("k9"): Ratio,
        /// Characteristic cylinder strength of the concrete.
        concrete_strength ("fck"): Pressure,
        /// Outside diameter of the fastener.
        diameter ("dnom"): Length,
        /// Length that bears: the embedment.
        bearing_length ("lf"): Length,
        /// Distance from the row to the edge.
        edge ("c1"): Length,
        /// Distance from the row's first fastener to the edge on the left.
        corner_left ("c2"): Length,
        /// Distance from the row's last fastener to the edge on the right.
        corner_right ("c2"): Length,
        /// Thickness of the concrete.
        thickness ("h"): Length,
        /// Fasteners in the row.
        count ("n"): u32,
        /// Spacing of the fasteners in the row.
        spacing ("s2"): Length,
        /// Eccentricity of the force along the row.
        eccentricity ("eV"): Length,
        /// Angle between the force and the line square to the edge, 0° to 90°.
        direction ("αV"): Angle,
        /// Factor for bars at the edge: 1, or 1.4 in cracked concrete with edge bars and close stirrups.
        reinforcement_factor ("ψre,V"): Ratio,
        /// Partial factor of the concrete: 1.5 is usual.
        partial ("γMc"): Ratio,
    }
    gives
    /// Resistance of the edge.
    pub struct EdgeResistance {
        /// Edge distance that counts.
        counted_edge ("c1′"): Length,
        /// Projected area of one fastener in deep concrete far from corners.
        reference_area ("A0c,V"): Area,
        /// Projected area of the row.
        projected_area ("Ac,V"): Area,
        /// Factor for the nearer corner.
        edge_factor ("ψs,V"): Ratio,
        /// Factor for thin concrete.
        thickness_factor ("ψh,V"): Ratio,
        /// Factor for eccentric force.
        eccentricity_factor ("ψec,V"): Ratio,
        /// Factor for the direction of the force.
        direction_factor ("ψα,V"): Ratio,
        /// Characteristic resistance of one fastener.
        basic ("V0Rk,c"): Force,
        /// Characteristic resistance of the row.
        characteristic ("VRk,c"): Force,
        /// Design resistance of the row.
        design ("VRd,c"): Force,
    }
    formula "α = 0.1 · (lf / c1)^0.5, β = 0.1 · (dnom / c1)^0.2\nV0Rk,c = k9 · dnom^α · lf^β · √fck · c1^1.5 (N, mm, MPa); lf not above 12 · dnom, for dnom > 24 mm not above max(8 · dnom, 300 mm)\nA0c,V = 4.5 · c1²\nψs,V = 0.7 + 0.3 · c2 / (1.5 · c1), not above 1\nψh,V = √(1.5 · c1 / h), not below 1\nψec,V = 1 / (1 + 2 · eV / (3 · c1))\nψα,V = √(1 / (cos² αV + (0.5 · sin αV)²))\nVRk,c = V0Rk,c · Ac,V / A0c,V · ψs,V · ψh,V · ψec,V · ψα,V · ψre,V\nVRd,c = VRk,c / γMc"
    valid "Concrete from 12 MPa to 90 MPa; fasteners up to 60 mm thick; spacing up to 3 · c1, fasteners farther apart act alone."
    source { work: "EN 1992-4:2018", clause: "7.2.2.5", evidence: Memory, seen: "recalled" }
    by edge
}

fn edge(row: &En1992Edge) -> Result<EdgeResistance, OutOfReach> {
    check(row)?;
    let millimeters = |length: Length| length.base() * 1e3;
    let found = broken_edge(&Row {
        edge: millimeters(row.edge),
        corners: [millimeters(row.corner_left), millimeters(row.corner_right)],
        thickness: millimeters(row.thickness),
        count: row.count,
        spacing: millimeters(row.spacing),
        eccentricity: millimeters(row.eccentricity),
    });
    let (sine, cosine) = row.direction.base().sin_cos();
    let direction_factor = 1.0 / cosine.hypot(0.5 * sine);
    let basic = basic(row, found.counted);
    let characteristic = basic * found.projected_area / found.reference_area
        * found.edge_factor
        * found.thickness_factor
        * found.eccentricity_factor
        * direction_factor
        * row.reinforcement_factor.base();
    Ok(EdgeResistance {
        counted_edge: Length::from_base(found.counted * 1e-3),
        reference_area: Area::from_base(found.reference_area * 1e-6),
        projected_area: Area::from_base(found.projected_area * 1e-6),
        edge_factor: Ratio::from_base(found.edge_factor),
        thickness_factor: Ratio::from_base(found.thickness_factor),
        eccentricity_factor: Ratio::from_base(found.eccentricity_factor),
        direction_factor: Ratio::from_base(direction_factor),
        basic: Force::from_base(basic),
        characteristic: Force::from_base(characteristic),
        design: Force::from_base(characteristic / row.partial.base()),
    })
}

/// Characteristic resistance of one fastener, in newtons.
fn basic(row: &En1992Edge, edge: f64) -> f64 {
    let diameter = row.diameter.base() * 1e3;
    let most = if diameter <= 24.0 {
        12.0 * diameter
    } else {
        (8.0 * diameter).max(300.0)
    };
    let length = (row.bearing_length.base() * 1e3).min(most);
    let alpha = 0.1 * (length / edge).sqrt();
    let beta = 0.1 * (diameter / edge).powf(0.2);
    row.coefficient.base()
        * diameter.powf(alpha)
        * length.powf(beta)
        * (row.concrete_strength.base() / MPA).sqrt()
        * edge.powf(1.5)
}

fn check(row: &En1992Edge) -> Result<(), OutOfReach> {
    within(
        "coefficient",
        row.coefficient,
        1.0,
        2.4,
        "give 1.7 in cracked concrete, 2.4 where it is shown to stay uncracked",
    )?;
    strength(row.concrete_strength)?;
    positive("diameter", row.diameter, "16 mm")?;
    if row.diameter.base() > 0.06 {
        return Err(OutOfReach::new(
            "diameter",
            "the method holds for fasteners up to 60 mm thick",
        ));
    }
    for (name, length) in [
        ("bearing_length", row.bearing_length),
        ("edge", row.edge),
        ("corner_left", row.corner_left),
        ("corner_right", row.corner_right),
        ("thickness", row.thickness),
    ] {
        positive(name, length, "150 mm, or 5 m where there is no edge")?;
    }
    in_a_row("count", row.count)?;
    not_negative("spacing", row.spacing, "150 mm")?;
    not_negative("eccentricity", row.eccentricity, "20 mm")?;
    if row.count > 1 && row.spacing.base() > 3.0 * row.edge.base() * (1.0 + 1e-9) {
        return Err(OutOfReach::new(
            "spacing",
            "fasteners more than three edge distances apart do not act as a row; take each alone with a count of 1",
        ));
    }
    if !(0.0..=std::f64::consts::FRAC_PI_2 + 1e-9).contains(&row.direction.base()) {
        return Err(OutOfReach::new(
            "direction",
            "give the angle from the line square to the edge, from 0° toward the edge to 90° along it",
        ));
    }
    within(
        "reinforcement_factor",
        row.reinforcement_factor,
        1.0,
        1.4,
        "give 1, or 1.4 in cracked concrete with edge bars and close stirrups",
    )?;
    partial(row.partial)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn hold(edge: f64, corner: f64, thickness: f64, degrees: f64) -> f64 {
        let row = En1992Edge {
            coefficient: Ratio::from_base(1.7),
            concrete_strength: Pressure::from_base(25e6),
            diameter: Length::from_base(0.016),
            bearing_length: Length::from_base(0.1),
            edge: Length::from_base(edge),
            corner_left: Length::from_base(corner),
            corner_right: Length::from_base(9.0),
            thickness: Length::from_base(thickness),
            count: 1,
            spacing: Length::from_base(0.0),
            eccentricity: Length::from_base(0.0),
            direction: Angle::from_base(degrees.to_radians()),
            reinforcement_factor: Ratio::from_base(1.0),
            partial: Ratio::from_base(1.5),
        };
        row.evaluate().unwrap().characteristic.base()
    }

    proptest! {
        #[test]
        fn farther_thicker_and_along_the_edge_holds_no_less(
            edge in 0.05..0.5, corner in 0.05..1.0, thickness in 0.1..1.0, degrees in 0.0..89.0
        ) {
            let base = hold(edge, corner, thickness, degrees) * (1.0 - 1e-12);
            prop_assert!(hold(edge, corner + 0.01, thickness, degrees) >= base);
            prop_assert!(hold(edge, corner, thickness + 0.01, degrees) >= base);
            prop_assert!(hold(edge, corner, thickness, degrees + 1.0) >= base);
        }
    }
}
