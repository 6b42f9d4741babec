//! How a moment, a pull and a shove share out over the anchors of a base plate.

use super::concrete::within;
use super::plate::{Plate, Shared, shared};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque};

formula! {
    /// Forces on the anchors under a stiff rectangular plate, bent about one axis, with the concrete pressing back.
    ///
    /// Rows of anchors lie square to the direction in which the moment tips the plate, evenly about its middle. The
    /// plate stays plane; where it is pressed to the concrete the pressure grows from the neutral axis to the edge,
    /// where it lifts the anchors pull. Anchors take no pressure. A thin plate bends and pries on its anchors, which
    /// raises their pull: make it as thick as its overhang asks for, or take more than this. Bent about both axes, take
    /// each in turn and add the pulls. The eccentricity is the one that the group formulas ask for.
    pub struct BasePlateAnchors = "base-plate-anchors" in Standing {
        /// Length of the plate in the direction in which it is tipped.
        length ("L"): Length,
        /// Width of the plate.
        width ("B"): Length,
        /// Rows of anchors along the length, 1 to 8.
        rows ("m"): u32,
        /// Spacing of the rows.
        row_spacing ("s"): Length,
        /// Anchors in a row, 1 to 8.
        in_row ("k"): u32,
        /// Tension area of an anchor.
        anchor_area ("As"): Area,
        /// Modulus of steel over that of concrete: 8 is usual.
        modular_ratio ("n"): Ratio,
        /// Force that presses the plate down over its middle.
        weight ("P"): Force,
        /// Force that lifts the plate over its middle.
        uplift ("U"): Force,
        /// Moment that tips the plate.
        moment ("M"): Torque,
        /// Shove along the plate.
        shear ("V"): Force,
    }
    gives
    /// Forces on the anchors of a plate.
    pub struct AnchorForces {
        /// Greatest pull on one anchor.
        greatest_tension ("Tmax"): Force,
        /// Pull of all anchors together.
        total_tension ("T"): Force,
        /// Anchors that are pulled.
        in_tension ("nT"): u32,
        /// Distance of that pull from the middle of the anchors that are pulled.
        eccentricity ("e′N"): Length,
        /// Length over which the plate presses on the concrete; 0 where it is lifted all over.
        contact ("x"): Length,
        /// Greatest pressure on the concrete.
        bearing ("p"): Pressure,
        /// Shove on each anchor where all share alike.
        shear_each ("V1"): Force,
    }
    formula "lifted all over: Ti = U / (m · k) + M · yi / (k · Σy²)\nin contact: Ti = n · As · p · (di − x) / x for di > x, with\nP − U = p · x · B / 2 − ΣTi\nM = p · x · B / 2 · (L / 2 − x / 3) + ΣTi · (di − L / 2)\npressed all over (e ≤ L/6): p = P / (B · L) + 6 · M / (B · L²), no pull\nV1 = V / (m · k)"
    valid "Stiff plates with one to eight even rows of one to eight anchors, on concrete or full grout; moment about one axis."
    source { work: "statics of a plate that stays plane, concrete without tension", clause: "ACI 318-19 17.5.1 and EN 1992-4 6.2 ask for it", evidence: Physics, seen: "forces of a tension-only example; sums over 4,000 strips of the plate" }
    by forces
}

fn forces(plate: &BasePlateAnchors) -> Result<AnchorForces, OutOfReach> {
    check(plate)?;
    let found = shared(&Plate {
        length: plate.length.base(),
        width: plate.width.base(),
        rows: rows(plate),
        stiffness: plate.modular_ratio.base() * plate.anchor_area.base() * f64::from(plate.in_row),
        down: plate.weight.base() - plate.uplift.base(),
        moment: plate.moment.base(),
    })
    .ok_or_else(|| {
        OutOfReach::new(
            "moment",
            "no balance was found for these forces; look at moment and sizes",
        )
    })?;
    let each = f64::from(plate.in_row);
    let count = f64::from(plate.rows * plate.in_row);
    let (total, in_tension, eccentricity) = resultant(&found);
    let greatest = found
        .tensions
        .iter()
        .map(|(_, pull)| *pull)
        .fold(0.0, f64::max)
        / each;
    Ok(AnchorForces {
        greatest_tension: Force::from_base(greatest),
        total_tension: Force::from_base(total),
        in_tension: in_tension * plate.in_row,
        eccentricity: Length::from_base(eccentricity),
        contact: Length::from_base(found.contact),
        bearing: Pressure::from_base(found.pressure),
        shear_each: plate.shear / count,
    })
}

/// Distances of the rows from the middle of the plate.
fn rows(plate: &BasePlateAnchors) -> Vec<f64> {
    let middle = f64::from(plate.rows - 1) / 2.0;
    (0..plate.rows)
        .map(|row| (f64::from(row) - middle) * plate.row_spacing.base())
        .collect()
}

/// Total pull, rows that are pulled, and how far the pull lies from their middle.
fn resultant(found: &Shared) -> (f64, u32, f64) {
    let pulled: Vec<&(f64, f64)> = found
        .tensions
        .iter()
        .filter(|(_, pull)| *pull > 0.0)
        .collect();
    let total: f64 = pulled.iter().map(|(_, pull)| pull).sum();
    let mut rows = 0_u32;
    let mut middle = 0.0;
    for (place, _) in &pulled {
        rows += 1;
        middle += place;
    }
    if rows == 0 || total <= 0.0 {
        return (0.0, 0, 0.0);
    }
    middle /= f64::from(rows);
    let acting: f64 = pulled.iter().map(|(place, pull)| place * pull).sum::<f64>() / total;
    (total, rows, (acting - middle).abs())
}

fn check(plate: &BasePlateAnchors) -> Result<(), OutOfReach> {
    positive("length", plate.length, "12 in")?;
    positive("width", plate.width, "12 in")?;
    for (name, count) in [("rows", plate.rows), ("in_row", plate.in_row)] {
        if !(1..=8).contains(&count) {
            return Err(OutOfReach::new(name, "give a number from 1 to 8"));
        }
    }
    not_negative("row_spacing", plate.row_spacing, "8 in")?;
    if plate.rows > 1 {
        positive("row_spacing", plate.row_spacing, "8 in")?;
    }
    let outer = f64::from(plate.rows - 1) * plate.row_spacing.base();
    if outer >= plate.length.base() {
        return Err(OutOfReach::new(
            "row_spacing",
            "the outer rows lie beyond the plate; look at its length and the spacing of the rows",
        ));
    }
    positive("anchor_area", plate.anchor_area, "0.334 in²")?;
    within(
        "modular_ratio",
        plate.modular_ratio,
        1.0,
        40.0,
        "give the modulus of steel over that of concrete, such as 8, from 1 to 40",
    )?;
    not_negative("weight", plate.weight, "500 lbf")?;
    not_negative("uplift", plate.uplift, "0 lbf")?;
    not_negative("moment", plate.moment, "2,000 lbf·ft")?;
    not_negative("shear", plate.shear, "300 lbf")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn plate(rows: u32, weight: f64, uplift: f64, moment: f64) -> BasePlateAnchors {
        BasePlateAnchors {
            length: Length::from_base(0.30),
            width: Length::from_base(0.25),
            rows,
            row_spacing: Length::from_base(0.09),
            in_row: 2,
            anchor_area: Area::from_base(1.57e-4),
            modular_ratio: Ratio::from_base(8.0),
            weight: Force::from_base(weight),
            uplift: Force::from_base(uplift),
            moment: Torque::from_base(moment),
            shear: Force::from_base(1000.0),
        }
    }

    proptest! {
        #[test]
        fn the_forces_balance(
            rows in 1_u32..4, weight in 0.0..2e4, uplift in 0.0..2e4, moment in 1.0..5e3
        ) {
            let asked = plate(rows, weight, uplift, moment);
            let found = asked.evaluate().unwrap();
            let full = found.contact.base() >= 0.3 * (1.0 - 1e-9);
            prop_assume!(!full);
            let pressed = 0.5 * found.bearing.base() * found.contact.base() * 0.25;
            let down = weight - uplift;
            let scale = weight + uplift + moment / 0.1;
            prop_assert!((pressed - found.total_tension.base() - down).abs() < 1e-6 * scale);
        }

        #[test]
        fn more_moment_pulls_more_and_more_weight_less(
            rows in 2_u32..4, weight in 0.0..2e4, moment in 10.0..5e3
        ) {
            let pull = |weight: f64, moment: f64| {
                plate(rows, weight, 0.0, moment).evaluate().unwrap().greatest_tension.base()
            };
            let base = pull(weight, moment);
            prop_assert!(pull(weight, moment * 1.1) >= base);
            prop_assert!(pull(weight + 500.0, moment) <= base + 1e-9);
        }
    }

    #[test]
    fn a_weight_within_the_middle_third_pulls_no_anchor() {
        let found = plate(2, 1e4, 0.0, 400.0).evaluate().unwrap();
        assert_eq!(found.in_tension, 0);
        assert!((found.contact.base() - 0.3).abs() < 1e-12);
    }
}
