//! Wind force on a long solid wall, sign or leaf by ASCE 7, wind from an angle (Case C).

use super::wall::{Proportions, check_gust, check_pressure, opening_factor};
use crate::OutOfReach;
use crate::table::{Stored, Table, interpolated};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};
use std::sync::LazyLock;

formula! {
    /// Force of wind from an angle on a solid face at least twice as wide as high, strip by strip.
    ///
    /// The strips are one face height wide, counted from the windward end; either end may be the windward one. A face
    /// close to the ground takes less: the coefficients are multiplied by 1.8 − s/h where s/h is above 0.8.
    /// Between printed proportions the interpolation is linear; a strip that only one of the two neighbors has takes
    /// that neighbor's coefficient. The reduction for a return corner is not taken.
    pub struct Asce7WallCaseC = "asce7-wall-case-c" in Wind {
        /// Velocity pressure at the top of the face, directionality factor included.
        velocity_pressure ("qh"): Pressure,
        /// Gust-effect factor: 0.85 for a rigid face.
        gust_factor ("G"): Ratio,
        /// Horizontal width of the face, at least twice its height.
        width ("B"): Length,
        /// Height of the face itself, the gap below left out.
        face_height ("s"): Length,
        /// Height of the top of the face above ground.
        top_height ("h"): Length,
        /// Solid share of the gross area: 1 without openings, not below 0.7.
        solidity ("ε"): Ratio,
    }
    gives
    /// Force of oblique wind on a long solid face.
    pub struct Asce7WallObliqueForce {
        /// Coefficient of the first strip from the windward end, before the factors for ground and openings.
        first_coefficient ("Cf,0–s"): Ratio,
        /// Coefficient of the second strip.
        second_coefficient ("Cf,s–2s"): Ratio,
        /// Factor for a face close to the ground.
        ground_factor ("k"): Ratio,
        /// Largest pressure, on the first strip.
        edge_pressure ("p₁"): Pressure,
        /// Pressure on the second strip.
        second_pressure ("p₂"): Pressure,
        /// Force on the whole face.
        force ("F"): Force,
        /// Distance of the force from the windward end.
        force_distance ("x̄"): Length,
    }
    formula "k = 1.8 − s/h where s/h > 0.8, otherwise 1\nδ = 1 − (1 − ε)^1.5\np = qh · G · Cf · k · δ in each strip\nF = Σ p · s · strip width"
    valid "B/s of 2 or more, at and above 45 one row; solid share 70 % to 100 %; rectangular face, no return corners."
    source { work: "ASCE 7-16 and 7-22", clause: "29.3.1 (equation 29.3-1, figure 29.3-1 Case C)", evidence: Seen, seen: "the figure in public transcriptions of CIRSOC 102-2025, which follows ASCE 7-16; the standard itself was not at hand" }
    by oblique_force
}

static COEFFICIENTS: Stored = LazyLock::new(|| Table::read(include_str!("asce7_wall_case_c.toml")));

/// The strips in the table's columns: where each ends, in face heights from the windward end.
const STRIPS: [(&str, f64); 7] = [
    ("0 to s", 1.0),
    ("s to 2s", 2.0),
    ("2s to 3s", 3.0),
    ("3s to 4s", 4.0),
    ("4s to 5s", 5.0),
    ("5s to 10s", 10.0),
    ("beyond 10s", f64::INFINITY),
];

/// Coefficients of the strips, by linear interpolation in B/s over the rows that have the strip.
fn coefficients(aspect: f64) -> Result<[f64; 7], OutOfReach> {
    let table = Table::of(&COEFFICIENTS)?;
    let of_strip = |(name, _): (&str, f64)| {
        let cells = table.column("B/s").zip(table.column(name));
        interpolated(
            aspect,
            cells.filter_map(|(aspect, cell)| Some((aspect.number()?, cell.number()?))),
        )
    };
    Ok(STRIPS.map(of_strip))
}

fn oblique_force(wall: &Asce7WallCaseC) -> Result<Asce7WallObliqueForce, OutOfReach> {
    check_pressure(wall.velocity_pressure)?;
    check_gust(wall.gust_factor)?;
    let face = Proportions::of(wall.width, wall.face_height, wall.top_height)?;
    if face.aspect < 2.0 {
        return Err(OutOfReach::new(
            "width",
            "wind from an angle counts where the face is at least twice as wide as high; here asce7-wall-force suffices",
        ));
    }
    let coefficients = coefficients(face.aspect)?;
    let ground_factor = if face.clearance > 0.8 {
        1.8 - face.clearance
    } else {
        1.0
    };
    let common =
        wall.velocity_pressure * wall.gust_factor * ground_factor * opening_factor(wall.solidity)?;
    let (sum, moment) = summed(&coefficients, face.aspect);
    Ok(Asce7WallObliqueForce {
        first_coefficient: Ratio::from_base(coefficients[0]),
        second_coefficient: Ratio::from_base(coefficients[1]),
        ground_factor: Ratio::from_base(ground_factor),
        edge_pressure: common * coefficients[0],
        second_pressure: common * coefficients[1],
        force: common * wall.face_height * wall.face_height * sum,
        force_distance: wall.face_height * (moment / sum),
    })
}

/// Sum of coefficient times strip width, and its first moment about the windward end, both in face heights.
fn summed(coefficients: &[f64; 7], aspect: f64) -> (f64, f64) {
    let (mut start, mut sum, mut moment) = (0.0, 0.0, 0.0);
    for ((_, end), coefficient) in STRIPS.iter().zip(coefficients) {
        let end = end.min(aspect);
        if end > start {
            let part = coefficient * (end - start);
            sum += part;
            moment += part * f64::midpoint(start, end);
            start = end;
        }
    }
    (sum, moment)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::table::Cell;
    use proptest::prelude::*;

    #[test]
    fn coefficients_do_not_rise_away_from_the_windward_end_up_to_five_heights() {
        let table = Table::read(include_str!("asce7_wall_case_c.toml")).unwrap();
        for row in &table.rows {
            let strips: Vec<f64> = row[1..6].iter().filter_map(Cell::number).collect();
            assert!(strips.windows(2).all(|pair| pair[0] >= pair[1]), "{row:?}");
        }
    }

    fn wall(width: f64, gap: f64) -> Asce7WallCaseC {
        Asce7WallCaseC {
            velocity_pressure: Pressure::from_base(1000.0),
            gust_factor: Ratio::from_base(0.85),
            width: Length::from_base(width),
            face_height: Length::from_base(2.0),
            top_height: Length::from_base(2.0 + gap),
            solidity: Ratio::from_base(1.0),
        }
    }

    proptest! {
        #[test]
        fn the_windward_half_takes_more_than_half(width in 4.0..80.0, gap in 0.0..5.0) {
            let wind = wall(width, gap).evaluate().unwrap();
            prop_assert!(wind.force_distance.base() < width / 2.0);
            prop_assert!(wind.edge_pressure >= wind.second_pressure);
            prop_assert!(wind.force.base() <= wind.edge_pressure.base() * width * 2.0);
        }

        #[test]
        fn a_longer_edge_strip_is_no_milder(width in 4.0..80.0, more in 0.0..5.0) {
            let (short, long) = (wall(width, 3.0), wall(width + more, 3.0));
            prop_assert!(short.evaluate().unwrap().edge_pressure <= long.evaluate().unwrap().edge_pressure);
        }
    }

    #[test]
    fn a_square_face_is_sent_back() {
        assert_eq!(wall(3.0, 0.0).evaluate().unwrap_err().input, "width");
    }
}
