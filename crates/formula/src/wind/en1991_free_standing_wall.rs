//! Wind pressure on a free-standing wall or a solid leaf by EN 1991-1-4.

use crate::OutOfReach;
use crate::table::{Stored, Table, interpolated};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};
use std::sync::LazyLock;

formula! {
    /// Net wind pressure on the four zones of a free-standing wall without return corners, and the force on all of it.
    ///
    /// The zones are counted from the free end that the wind meets first: A to 0.3 · h, B to 2 · h, C to 4 · h, D
    /// beyond; either end may be the windward one. A wall with openings of 20 % has 1.2 in every zone; between 80 % and
    /// 100 % solid the interpolation is linear. National annexes may set other coefficients.
    pub struct En1991FreeStandingWall = "en1991-free-standing-wall" in Wind {
        /// Peak velocity pressure at the top of the wall.
        peak_pressure ("qp"): Pressure,
        /// Length of the wall.
        length ("l"): Length,
        /// Height of the wall.
        height ("h"): Length,
        /// Solid share of the gross area: 1 without openings, not below 0.8.
        solidity ("φ"): Ratio,
    }
    gives
    /// Net wind pressure on a free-standing wall.
    pub struct En1991WallPressure {
        /// Net pressure coefficient of zone A, at the windward end.
        coefficient_a ("cp,net,A"): Ratio,
        /// Net pressure coefficient of zone B.
        coefficient_b ("cp,net,B"): Ratio,
        /// Net pressure coefficient of zone C.
        coefficient_c ("cp,net,C"): Ratio,
        /// Net pressure coefficient of zone D.
        coefficient_d ("cp,net,D"): Ratio,
        /// Net pressure on zone A.
        pressure_a ("wA"): Pressure,
        /// Net pressure on zone B.
        pressure_b ("wB"): Pressure,
        /// Net pressure on zone C.
        pressure_c ("wC"): Pressure,
        /// Net pressure on zone D.
        pressure_d ("wD"): Pressure,
        /// Force on the whole wall, its structural factor taken as 1.
        force ("F"): Force,
    }
    formula "w = qp · cp,net in each zone\nF = Σ w · h · zone length"
    valid "Solid share 80 % to 100 %; below that the wall is a lattice. Recommended values, no return corners, before any national annex."
    source { work: "EN 1991-1-4:2005+A1:2010", clause: "7.4.1 (figure 7.19, table 7.9)", evidence: Seen, seen: "the table and a worked wall in the public library xcfem/xc; the same numbers from memory; the standard itself was not at hand" }
    by wall_pressure
}

static COEFFICIENTS: Stored =
    LazyLock::new(|| Table::read(include_str!("en1991_wall_coefficient.toml")));

/// The zones in the table's columns: where each ends, in wall heights from the windward end.
const ZONES: [(&str, f64); 4] = [("A", 0.3), ("B", 2.0), ("C", 4.0), ("D", f64::INFINITY)];
/// Coefficient of every zone of a wall that is 80 % solid.
const PIERCED: f64 = 1.2;
/// Solid share of such a wall.
const PIERCED_SOLIDITY: f64 = 0.8;

fn coefficients(slenderness: f64, solidity: f64) -> Result<[f64; 4], OutOfReach> {
    let table = Table::of(&COEFFICIENTS)?;
    let share = (solidity - PIERCED_SOLIDITY) / (1.0 - PIERCED_SOLIDITY);
    Ok(ZONES.map(|(zone, _)| {
        let points = table.numbers("l/h").into_iter().zip(table.numbers(zone));
        PIERCED + share * (interpolated(slenderness, points) - PIERCED)
    }))
}

fn wall_pressure(wall: &En1991FreeStandingWall) -> Result<En1991WallPressure, OutOfReach> {
    check(wall)?;
    let slenderness = wall.length.base() / wall.height.base();
    let coefficients = coefficients(slenderness, wall.solidity.base())?;
    let [a, b, c, d] = coefficients;
    let pressure = |coefficient: f64| wall.peak_pressure * coefficient;
    Ok(En1991WallPressure {
        coefficient_a: Ratio::from_base(a),
        coefficient_b: Ratio::from_base(b),
        coefficient_c: Ratio::from_base(c),
        coefficient_d: Ratio::from_base(d),
        pressure_a: pressure(a),
        pressure_b: pressure(b),
        pressure_c: pressure(c),
        pressure_d: pressure(d),
        force: wall.peak_pressure * wall.height * wall.height * summed(&coefficients, slenderness),
    })
}

/// Sum of coefficient times zone length, in wall heights.
fn summed(coefficients: &[f64; 4], slenderness: f64) -> f64 {
    let mut start = 0.0;
    let mut sum = 0.0;
    for ((_, end), coefficient) in ZONES.iter().zip(coefficients) {
        let end = end.min(slenderness);
        sum += coefficient * (end - start).max(0.0);
        start = end;
    }
    sum
}

fn check(wall: &En1991FreeStandingWall) -> Result<(), OutOfReach> {
    if wall.peak_pressure.base() < 0.0 {
        return Err(OutOfReach::new(
            "peak_pressure",
            "a velocity pressure is not below zero; give one such as 900 Pa",
        ));
    }
    if wall.length.base() <= 0.0 {
        return Err(OutOfReach::new(
            "length",
            "give the length of the wall, such as 6 m",
        ));
    }
    if wall.height.base() <= 0.0 {
        return Err(OutOfReach::new(
            "height",
            "give the height of the wall, such as 1.8 m",
        ));
    }
    if !(PIERCED_SOLIDITY..=1.0).contains(&wall.solidity.base()) {
        return Err(OutOfReach::new(
            "solidity",
            "a wall has a solid share from 80 % to 100 %; a more open leaf is a lattice, which this does not cover",
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

    #[test]
    fn coefficients_fall_along_the_wall_and_rise_with_its_slenderness() {
        let table = Table::read(include_str!("en1991_wall_coefficient.toml")).unwrap();
        for row in &table.rows {
            let zones: Vec<f64> = row[1..]
                .iter()
                .filter_map(crate::table::Cell::number)
                .collect();
            assert_eq!(zones.len(), 4);
            assert!(zones.windows(2).all(|pair| pair[0] >= pair[1]));
        }
        for (zone, _) in ZONES {
            assert!(
                table
                    .numbers(zone)
                    .windows(2)
                    .all(|pair| pair[0] <= pair[1])
            );
        }
    }

    fn wall(length: f64, solidity: f64) -> En1991WallPressure {
        En1991FreeStandingWall {
            peak_pressure: Pressure::from_base(1000.0),
            length: Length::from_base(length),
            height: Length::from_base(2.0),
            solidity: Ratio::from_base(solidity),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn a_longer_or_more_solid_wall_takes_more(length in 0.5..40.0, solidity in 0.8..0.99) {
            let base = wall(length, solidity);
            prop_assert!(base.force < wall(length + 0.5, solidity).force);
            prop_assert!(base.force <= wall(length, solidity + 0.01).force);
            prop_assert!(base.force.base() <= base.pressure_a.base() * length * 2.0 + 1e-6);
        }
    }
}
