//! Forces on the anchors of a plate that stands on leveling nuts.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Quantity as _, Torque};

formula! {
    /// Forces on the anchors of a rectangular group under a plate on leveling nuts, tipped both ways at once.
    ///
    /// Nothing but the anchors carries the plate: those on one side pull, those on the other press. The plate stays
    /// plane and all anchors are alike. Only the anchors that are pulled count for the pull in all; its place is told
    /// from the middle of the whole group. Anchors that stand free bend besides, see `anchor-stand-off`.
    pub struct FreePlateAnchors = "free-plate-anchors" in Standing {
        /// Anchors in a row from left to right.
        count_across ("nx"): u32,
        /// Spacing of the anchors from left to right.
        spacing_across ("sx"): Length,
        /// Anchors in a row from front to back.
        count_along ("ny"): u32,
        /// Spacing of the anchors from front to back.
        spacing_along ("sy"): Length,
        /// Force that presses the plate down over its middle.
        weight ("P"): Force,
        /// Force that lifts the plate over its middle.
        uplift ("U"): Force,
        /// Moment that tips the plate to the right.
        moment_across ("Mx"): Torque,
        /// Moment that tips the plate to the back.
        moment_along ("My"): Torque,
    }
    gives
    /// Forces on the anchors of a plate that stands free.
    pub struct FreePlateForces {
        /// Greatest pull on one anchor, 0 where all are pressed.
        greatest_tension ("Tmax"): Force,
        /// Greatest press on one anchor, 0 where all are pulled.
        greatest_compression ("Cmax"): Force,
        /// Pull of all anchors together that are pulled.
        total_tension ("T"): Force,
        /// Distance of that pull from the middle of the group, from left to right.
        offset_across ("ex"): Length,
        /// Distance of that pull from the middle of the group, from front to back.
        offset_along ("ey"): Length,
        /// Pull of the outermost anchors on the right, one behind another.
        outer_across ("Tx"): Force,
        /// Pull of the outermost anchors at the back, side by side.
        outer_along ("Ty"): Force,
    }
    formula "Ti = (U − P) / (nx · ny) + Mx · xi / Σx² + My · yi / Σy², pulls above zero, presses below\nT = ΣTi, ex = ΣTi · xi / T, ey = ΣTi · yi / T, over the anchors with Ti > 0"
    valid "Even rectangular groups of up to 20 by 20 anchors; moments only across two rows or more."
    source { work: "statics of an elastic group of anchors", clause: "", evidence: Physics, seen: "sums over the anchors; least squares of a plane" }
    by free
}

/// Anchors in a direction, with their spacing and the pull of the outermost for the moment in that direction.
struct Way {
    count: u32,
    spacing: f64,
    outermost: f64,
}

impl Way {
    /// Places from the middle, with the pull that the moment causes there.
    fn places(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let half = f64::from(self.count - 1) / 2.0;
        (0..self.count).map(move |at| {
            let steps = f64::from(at) - half;
            let share = if half > 0.0 { steps / half } else { 0.0 };
            (steps * self.spacing, share * self.outermost)
        })
    }
}

fn free(plate: &FreePlateAnchors) -> Result<FreePlateForces, OutOfReach> {
    check(plate)?;
    let (nx, ny) = (plate.count_across, plate.count_along);
    let across = way(nx, ny, plate.spacing_across, plate.moment_across);
    let along = way(ny, nx, plate.spacing_along, plate.moment_along);
    let even = (plate.uplift.base() - plate.weight.base()) / f64::from(nx * ny);
    let mut found = Sums::default();
    for (column, (x, by_x)) in (1..).zip(across.places()) {
        for (row, (y, by_y)) in (1..).zip(along.places()) {
            found.count(even + by_x + by_y, [x, y], [column == nx, row == ny]);
        }
    }
    let middle = |turning: f64| {
        let place = if found.total > 0.0 {
            turning / found.total
        } else {
            0.0
        };
        Length::from_base(place.max(0.0))
    };
    Ok(FreePlateForces {
        greatest_tension: Force::from_base(found.most),
        greatest_compression: Force::from_base(-found.least),
        total_tension: Force::from_base(found.total),
        offset_across: middle(found.turning[0]),
        offset_along: middle(found.turning[1]),
        outer_across: Force::from_base(found.outer[0]),
        outer_along: Force::from_base(found.outer[1]),
    })
}

/// What the anchors add up to.
#[derive(Default)]
struct Sums {
    most: f64,
    least: f64,
    total: f64,
    turning: [f64; 2],
    outer: [f64; 2],
}

impl Sums {
    /// Counts one anchor, at its place, that may be one of the outermost.
    fn count(&mut self, force: f64, place: [f64; 2], outermost: [bool; 2]) {
        self.most = self.most.max(force);
        self.least = self.least.min(force);
        let pull = force.max(0.0);
        self.total += pull;
        for way in 0..2 {
            self.turning[way] += pull * place[way];
            if outermost[way] {
                self.outer[way] += pull;
            }
        }
    }
}

/// One direction of the group: the outermost anchor pulls `M · y / Σy²`.
fn way(count: u32, beside: u32, spacing: Length, moment: Torque) -> Way {
    let half = f64::from(count - 1) / 2.0;
    let squares: f64 = (0..count)
        .map(|at| (f64::from(at) - half).powi(2))
        .sum::<f64>()
        * f64::from(beside);
    let outermost = if count > 1 {
        moment.base() * half / (squares * spacing.base())
    } else {
        0.0
    };
    Way {
        count,
        spacing: spacing.base(),
        outermost,
    }
}

fn check(plate: &FreePlateAnchors) -> Result<(), OutOfReach> {
    super::factors::in_a_row("count_across", plate.count_across)?;
    super::factors::in_a_row("count_along", plate.count_along)?;
    for (name, moment, count) in [
        ("moment_across", plate.moment_across, plate.count_across),
        ("moment_along", plate.moment_along, plate.count_along),
    ] {
        not_negative(name, moment, "2,000 lbf·ft")?;
        if count == 1 && moment.base() > 0.0 {
            return Err(OutOfReach::new(
                name,
                "a single row of anchors on leveling nuts holds no moment across it; set a second row, or grout the plate",
            ));
        }
    }
    for (name, spacing, count) in [
        ("spacing_across", plate.spacing_across, plate.count_across),
        ("spacing_along", plate.spacing_along, plate.count_along),
    ] {
        if count > 1 {
            positive(name, spacing, "8 in")?;
        }
    }
    not_negative("weight", plate.weight, "300 lbf")?;
    not_negative("uplift", plate.uplift, "0 lbf")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn plate(count: [u32; 2], moment: [f64; 2], weight: f64) -> FreePlateAnchors {
        FreePlateAnchors {
            count_across: count[0],
            spacing_across: Length::from_base(0.2),
            count_along: count[1],
            spacing_along: Length::from_base(0.15),
            weight: Force::from_base(weight),
            uplift: Force::from_base(0.0),
            moment_across: Torque::from_base(moment[0]),
            moment_along: Torque::from_base(moment[1]),
        }
    }

    proptest! {
        #[test]
        fn weight_presses_and_moment_pulls(
            nx in 2_u32..6, ny in 2_u32..6, mx in 0.0..1e4, my in 0.0..1e4, weight in 0.0..1e5
        ) {
            let pull = |weight: f64, mx: f64| {
                plate([nx, ny], [mx, my], weight).evaluate().unwrap().greatest_tension.base()
            };
            prop_assert!(pull(weight + 10.0, mx) <= pull(weight, mx));
            prop_assert!(pull(weight, mx + 10.0) >= pull(weight, mx));
        }

        /// Without weight the presses are the pulls, mirrored.
        #[test]
        fn without_weight_both_sides_are_alike(nx in 2_u32..6, ny in 2_u32..6, mx in 1.0..1e4, my in 1.0..1e4) {
            let found = plate([nx, ny], [mx, my], 0.0).evaluate().unwrap();
            let (pull, press) = (found.greatest_tension.base(), found.greatest_compression.base());
            prop_assert!((pull - press).abs() < 1e-9 * pull);
        }
    }

    #[test]
    fn a_single_row_holds_no_moment_across_it() {
        let refused = plate([1, 2], [100.0, 0.0], 0.0).evaluate().unwrap_err();
        assert_eq!(refused.input, "moment_across");
    }
}
