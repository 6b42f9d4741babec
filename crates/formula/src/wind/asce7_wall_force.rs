//! Wind force on a solid wall, sign or leaf by ASCE 7, wind square to the face (Cases A and B).

use super::wall::{Proportions, check_gust, check_pressure, opening_factor};
use crate::OutOfReach;
use crate::table::{Stored, Table, interpolated};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque};
use std::sync::LazyLock;

formula! {
    /// Force of the wind on a solid freestanding wall, sign or leaf, blowing square to it.
    ///
    /// Case A puts the force at the middle of the width, Case B a fifth of the width nearer to the windward end.
    /// Where the face is at least twice as wide as high, wind from an angle counts as well: see `asce7-wall-case-c`.
    /// Between the printed coefficients the interpolation is linear in both proportions, as the figure permits.
    pub struct Asce7WallForce = "asce7-wall-force" in Wind {
        /// Velocity pressure at the top of the face, directionality factor included.
        velocity_pressure ("qh"): Pressure,
        /// Gust-effect factor: 0.85 for a rigid face.
        gust_factor ("G"): Ratio,
        /// Horizontal width of the face.
        width ("B"): Length,
        /// Height of the face itself, the gap below left out.
        face_height ("s"): Length,
        /// Height of the top of the face above ground.
        top_height ("h"): Length,
        /// Gross area of the face, openings included.
        area ("As"): Area,
        /// Solid share of the gross area: 1 without openings, not below 0.7.
        solidity ("ε"): Ratio,
    }
    gives
    /// Force of square wind on a solid face, and where it acts.
    pub struct Asce7Wall {
        /// Net force coefficient from the figure.
        coefficient ("Cf"): Ratio,
        /// Factor for openings.
        opening_factor ("δ"): Ratio,
        /// Pressure on the gross area.
        pressure ("p"): Pressure,
        /// Force on the face.
        force ("F"): Force,
        /// Height of the force above ground.
        force_height ("ȳ"): Length,
        /// Moment of the force about the ground line.
        base_moment ("M"): Torque,
        /// Case B: distance of the force from the middle of the width, toward the windward end.
        eccentricity ("e"): Length,
        /// Case B: moment about the upright middle line.
        torsion ("T"): Torque,
    }
    formula "δ = 1 − (1 − ε)^1.5\np = qh · G · Cf · δ\nF = p · As\nȳ = h − s/2, and 0.05 · h higher where s = h\nM = F · ȳ\ne = 0.2 · B\nT = F · e"
    valid "Solid share 70 % to 100 %; s/h up to 1, at and below 0.16 one row; B/s at and below 0.05 and at and above 45 one column; single face, no return corners. Cases A and B only: with B/s of 2 or more, Case C has to be asked too."
    source { work: "ASCE 7-16 and 7-22", clause: "29.3.1 (equation 29.3-1, figure 29.3-1 Cases A and B)", evidence: Seen, seen: "published calculations to ASCE 7-10 and 7-05; the figure in public transcriptions of CIRSOC 102-2025, which follows ASCE 7-16, checked against the commentary's expression; opening factor in an engineering article" }
    by wall_force
}

static COEFFICIENTS: Stored =
    LazyLock::new(|| Table::read(include_str!("asce7_wall_coefficient.toml")));

/// Net force coefficient of the figure, linear in B/s and s/h.
fn coefficient(face: &Proportions) -> Result<f64, OutOfReach> {
    let table = Table::of(&COEFFICIENTS)?;
    let rows = table.rows.iter().filter_map(|row| {
        let clearance = row.first()?.number()?;
        let cells = table.columns.iter().zip(row).skip(1);
        let points =
            cells.filter_map(|(aspect, cell)| Some((aspect.parse().ok()?, cell.number()?)));
        Some((clearance, interpolated(face.aspect, points)))
    });
    Ok(interpolated(face.clearance, rows))
}

fn wall_force(wall: &Asce7WallForce) -> Result<Asce7Wall, OutOfReach> {
    check_pressure(wall.velocity_pressure)?;
    check_gust(wall.gust_factor)?;
    let face = Proportions::of(wall.width, wall.face_height, wall.top_height)?;
    check_area(wall)?;
    let coefficient = coefficient(&face)?;
    let opening_factor = opening_factor(wall.solidity)?;
    let pressure = wall.velocity_pressure * wall.gust_factor * coefficient * opening_factor;
    let force: Force = pressure * wall.area;
    let force_height = wall.top_height - wall.face_height / 2.0 + on_ground(wall, &face);
    let eccentricity = 0.2 * wall.width;
    Ok(Asce7Wall {
        coefficient: Ratio::from_base(coefficient),
        opening_factor: Ratio::from_base(opening_factor),
        pressure,
        force,
        force_height,
        base_moment: Torque::from_base(force.base() * force_height.base()),
        eccentricity,
        torsion: Torque::from_base(force.base() * eccentricity.base()),
    })
}

/// How much higher than its middle the force acts on a face that stands on the ground.
fn on_ground(wall: &Asce7WallForce, face: &Proportions) -> Length {
    if face.clearance < 1.0 {
        return Length::from_base(0.0);
    }
    0.05 * wall.top_height
}

fn check_area(wall: &Asce7WallForce) -> Result<(), OutOfReach> {
    let rectangle = wall.width.base() * wall.face_height.base();
    if wall.area.base() > 0.0 && wall.area.base() <= rectangle * 1.001 {
        return Ok(());
    }
    Err(OutOfReach::new(
        "area",
        "the gross area is above zero and not more than width times face height",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    /// The commentary says that the coefficients are this expression, rounded to the nearest 0.05.
    fn fitted(aspect: f64, clearance: f64) -> f64 {
        let x = aspect.ln();
        (1.563 + 0.008542 * x - 0.06148 * clearance + 0.009011 * x * x
            - 0.2603 * clearance * clearance
            - 0.08393 * clearance * x)
            / 0.85
    }

    #[test]
    fn every_printed_coefficient_is_the_commentary_rounded() {
        let table = Table::read(include_str!("asce7_wall_coefficient.toml")).unwrap();
        let mut cells = 0;
        for row in &table.rows {
            let clearance = row[0].number().unwrap();
            for (column, cell) in table.columns.iter().zip(row).skip(1) {
                let exact = fitted(column.parse().unwrap(), clearance);
                let rounded = (exact * 20.0).round() / 20.0;
                let printed = cell.number().unwrap();
                assert!(
                    (rounded - printed).abs() < 1e-9,
                    "s/h {clearance}, B/s {column}: {exact}"
                );
                cells += 1;
            }
        }
        assert_eq!(cells, 84);
    }

    fn wall(width: f64, face: f64, gap: f64, solidity: f64) -> Asce7WallForce {
        Asce7WallForce {
            velocity_pressure: Pressure::from_base(1000.0),
            gust_factor: Ratio::from_base(0.85),
            width: Length::from_base(width),
            face_height: Length::from_base(face),
            top_height: Length::from_base(face + gap),
            area: Area::from_base(width * face),
            solidity: Ratio::from_base(solidity),
        }
    }

    proptest! {
        #[test]
        fn the_coefficient_lies_between_the_printed_extremes(
            width in 0.1..60.0, face in 0.2..6.0, gap in 0.0..9.0, solidity in 0.7..1.0
        ) {
            let wind = wall(width, face, gap, solidity).evaluate().unwrap();
            prop_assert!((1.3..=1.95).contains(&wind.coefficient.base()));
            prop_assert!(wind.force_height <= Length::from_base(face + gap));
        }

        #[test]
        fn a_more_solid_face_takes_more(solidity in 0.7..0.99) {
            let less = wall(6.0, 2.0, 0.1, solidity).evaluate().unwrap();
            let more = wall(6.0, 2.0, 0.1, solidity + 0.01).evaluate().unwrap();
            prop_assert!(less.force < more.force);
        }
    }

    #[test]
    fn a_leaf_of_pickets_is_sent_to_the_open_frame() {
        let refused = wall(6.0, 2.0, 0.1, 0.4).evaluate().unwrap_err();
        assert_eq!(refused.input, "solidity");
    }
}
