//! Wind force on a see-through leaf, sign or frame by ASCE 7.

use super::POUND_PER_SQUARE_FOOT;
use super::wall::{LEAST_SOLIDITY, check_gust, check_pressure};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio};
use std::sync::LazyLock;

quantity::words! {
    /// Shape of the members of an open frame.
    pub enum MemberShape {
        /// Flat-sided: tubes, bars, angles, boards.
        Flat = "flat",
        /// Round: pipes, rods, wires.
        Round = "round",
    }
}

formula! {
    /// Force of the wind on an open sign or a single-plane open frame, such as a leaf of pickets or mesh.
    ///
    /// The coefficient is on the solid area, members only. Round members that are thin, or in slow air, take more:
    /// the print divides them at D · √qz = 2.5 with D in feet and qz in pounds on each square foot. A pressure with
    /// the directionality factor in it makes that product smaller, which is the safe side.
    /// Ice or wet snow can close a mesh: then it is a solid face.
    pub struct Asce7OpenSignForce = "asce7-open-sign-force" in Wind {
        /// Velocity pressure at the middle of the solid area, directionality factor included.
        velocity_pressure ("qz"): Pressure,
        /// Gust-effect factor: 0.85 for a rigid frame.
        gust_factor ("G"): Ratio,
        /// Area of the members alone, as seen by the wind.
        solid_area ("Af"): Area,
        /// Solid share of the gross area, up to 0.7.
        solidity ("ε"): Ratio,
        /// Shape of the members.
        member_shape ("–"): MemberShape,
        /// Diameter of a round member; of flat ones the width, which has no effect.
        member_width ("D"): Length,
    }
    gives
    /// Force of the wind on an open face.
    pub struct Asce7OpenSign {
        /// Force coefficient on the solid area.
        coefficient ("Cf"): Ratio,
        /// Pressure on the gross area that gives the same force.
        gross_pressure ("p"): Pressure,
        /// Force on the face.
        force ("F"): Force,
    }
    formula "F = qz · G · Cf · Af\np = qz · G · Cf · ε"
    valid "Solid share above 0 and up to 70 %; a single plane of members. Above 70 % the face counts as solid: asce7-wall-force."
    source { work: "ASCE 7-16 and 7-22", clause: "29.4 (equation 29.4-1, figure 29.4-1, open signs and single-plane open frames)", evidence: Seen, seen: "a carport lateral analysis that quotes the table; a public transcription of CIRSOC 102-2025, figure 4.5-2, which agrees" }
    by open_sign_force
}

static COEFFICIENTS: Stored =
    LazyLock::new(|| Table::read(include_str!("asce7_open_sign_coefficient.toml")));

/// Product of diameter and root of pressure at which the print divides round members, in ft·√psf.
const ROUND_LIMIT: f64 = 2.5;

fn open_sign_force(sign: &Asce7OpenSignForce) -> Result<Asce7OpenSign, OutOfReach> {
    check_pressure(sign.velocity_pressure)?;
    check_gust(sign.gust_factor)?;
    if sign.solid_area.base() < 0.0 {
        return Err(OutOfReach::new("solid_area", "an area is not below zero"));
    }
    let coefficient = coefficient(sign)?;
    let pressure = sign.velocity_pressure * sign.gust_factor * coefficient;
    Ok(Asce7OpenSign {
        coefficient: Ratio::from_base(coefficient),
        gross_pressure: pressure * sign.solidity,
        force: pressure * sign.solid_area,
    })
}

/// Coefficient of the last row whose solidity is reached.
fn coefficient(sign: &Asce7OpenSignForce) -> Result<f64, OutOfReach> {
    let solidity = sign.solidity.base();
    if !(solidity > 0.0 && solidity <= LEAST_SOLIDITY) {
        return Err(OutOfReach::new(
            "solidity",
            "an open frame has a solid share above 0 and up to 70 %; above that use asce7-wall-force",
        ));
    }
    if sign.member_width.base() <= 0.0 {
        return Err(OutOfReach::new(
            "member_width",
            "give the diameter or width of a member, such as 1 in",
        ));
    }
    let table = Table::of(&COEFFICIENTS)?;
    let cells = table.column("solidity").zip(table.column(column(sign)));
    cells
        .filter_map(|(from, cell)| Some((from.number()?, cell.number()?)))
        .take_while(|(from, _)| *from <= solidity)
        .last()
        .map(|(_, coefficient)| coefficient)
        .ok_or_else(|| OutOfReach::new("table", "the table of coefficients has no row for this"))
}

fn column(sign: &Asce7OpenSignForce) -> &'static str {
    let feet = sign.member_width.base() / 0.3048;
    let pounds = sign.velocity_pressure.base() / POUND_PER_SQUARE_FOOT;
    match sign.member_shape {
        MemberShape::Flat => "flat",
        MemberShape::Round if feet * pounds.sqrt() <= ROUND_LIMIT => "round, small or slow",
        MemberShape::Round => "round, large or fast",
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    #[test]
    fn flat_falls_and_round_rises_with_solidity() {
        let table = Table::read(include_str!("asce7_open_sign_coefficient.toml")).unwrap();
        assert!(
            table
                .numbers("flat")
                .windows(2)
                .all(|pair| pair[0] > pair[1])
        );
        for round in ["round, small or slow", "round, large or fast"] {
            assert!(
                table
                    .numbers(round)
                    .windows(2)
                    .all(|pair| pair[0] < pair[1])
            );
        }
    }

    fn frame(shape: MemberShape, solidity: f64, inches: f64) -> Asce7OpenSignForce {
        Asce7OpenSignForce {
            velocity_pressure: Pressure::from_base(1000.0),
            gust_factor: Ratio::from_base(0.85),
            solid_area: Area::from_base(10.0 * solidity),
            solidity: Ratio::from_base(solidity),
            member_shape: shape,
            member_width: Length::from_base(inches * 0.0254),
        }
    }

    proptest! {
        #[test]
        fn thin_round_members_take_more_than_thick_ones(solidity in 0.01..0.7) {
            let thin = frame(MemberShape::Round, solidity, 1.0).evaluate().unwrap();
            let thick = frame(MemberShape::Round, solidity, 12.0).evaluate().unwrap();
            prop_assert!(thin.force > thick.force);
        }

        #[test]
        fn gross_pressure_times_gross_area_is_the_force(solidity in 0.01..0.7) {
            let wind = frame(MemberShape::Flat, solidity, 1.0).evaluate().unwrap();
            prop_assert!((wind.gross_pressure.base() * 10.0 - wind.force.base()).abs() < 1e-6);
        }
    }
}
