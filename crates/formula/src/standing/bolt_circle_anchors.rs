//! Forces on anchors on a circle under a round or square base.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Quantity as _, Torque};

formula! {
    /// Greatest pull and shove on the anchors of a bolt circle under moment, uplift, shear and twist.
    ///
    /// The base turns about the middle of the circle, as on leveling nuts without grout: the anchors on one side pull,
    /// those on the other press as hard. That is on the safe side for the pull of a base that bears on concrete. The
    /// moment counts in its worst direction. Anchors on leveling nuts bend besides, more the longer they stand free.
    pub struct BoltCircleAnchors = "bolt-circle-anchors" in Standing {
        /// Number of anchors.
        count ("n"): u32,
        /// Radius of the circle.
        radius ("r"): Length,
        /// Moment at the base.
        moment ("M"): Torque,
        /// Force that presses the base down.
        weight ("P"): Force,
        /// Force that lifts the base.
        uplift ("U"): Force,
        /// Shove at the base.
        shear ("V"): Force,
        /// Twist about the upright axis.
        twist ("T"): Torque,
    }
    gives
    /// Forces on the worst anchor.
    pub struct CircleForces {
        /// Pull on the worst anchor, 0 where the weight keeps all pressed.
        tension ("Tmax"): Force,
        /// Press on the opposite anchor.
        compression ("Cmax"): Force,
        /// Pull of all anchors together that are pulled.
        total_tension ("T"): Force,
        /// Distance of that pull from the middle of the circle.
        eccentricity ("e"): Length,
        /// Shove on the worst anchor.
        shear_each ("Vmax"): Force,
    }
    formula "Tmax = 2 · M / (n · r) + (U − P) / n\nCmax = 2 · M / (n · r) + (P − U) / n\nTi = 2 · M / (n · r) · cos αi + (U − P) / n\nT = ΣTi, e = ΣTi · r · cos αi / T, over the anchors with Ti > 0\nVmax = V / n + T / (n · r)"
    valid "Three anchors or more, evenly on the circle; the base as stiff as its anchors are not."
    source { work: "statics of an elastic bolt circle", clause: "", evidence: Physics, seen: "a value in a public test file; sums over the anchors" }
    by circle
}

fn circle(base: &BoltCircleAnchors) -> Result<CircleForces, OutOfReach> {
    if !(3..=40).contains(&base.count) {
        return Err(OutOfReach::new(
            "count",
            "give the number of anchors on the circle, from 3 to 40",
        ));
    }
    positive("radius", base.radius, "5 in")?;
    not_negative("moment", base.moment, "2,000 lbf·ft")?;
    not_negative("weight", base.weight, "300 lbf")?;
    not_negative("uplift", base.uplift, "0 lbf")?;
    not_negative("shear", base.shear, "200 lbf")?;
    not_negative("twist", base.twist, "100 lbf·ft")?;
    let count = f64::from(base.count);
    let turning = 2.0 * base.moment.base() / (count * base.radius.base());
    let lifting = (base.uplift.base() - base.weight.base()) / count;
    let twisting = base.twist.base() / (count * base.radius.base());
    let (total, eccentricity) = pulled(base, turning, lifting);
    Ok(CircleForces {
        tension: Force::from_base((turning + lifting).max(0.0)),
        compression: Force::from_base((turning - lifting).max(0.0)),
        total_tension: Force::from_base(total),
        eccentricity: Length::from_base(eccentricity),
        shear_each: Force::from_base(base.shear.base() / count + twisting),
    })
}

/// Pull of the anchors that are pulled, and its distance from the middle; the moment tips the base toward one of them.
fn pulled(base: &BoltCircleAnchors, turning: f64, lifting: f64) -> (f64, f64) {
    let (mut total, mut tipping) = (0.0, 0.0);
    for anchor in 0..base.count {
        let angle = std::f64::consts::TAU * f64::from(anchor) / f64::from(base.count);
        let pull = (turning * angle.cos() + lifting).max(0.0);
        total += pull;
        tipping += pull * base.radius.base() * angle.cos();
    }
    let eccentricity = if total > 0.0 { tipping / total } else { 0.0 };
    (total, eccentricity.max(0.0))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        /// A force that follows the distance from the axis through an anchor carries the whole moment.
        #[test]
        fn the_anchors_carry_the_moment(count in 3_u32..20, radius in 0.05..1.0, moment in 1.0..1e5) {
            let base = BoltCircleAnchors {
                count,
                radius: Length::from_base(radius),
                moment: Torque::from_base(moment),
                weight: Force::from_base(0.0),
                uplift: Force::from_base(0.0),
                shear: Force::from_base(0.0),
                twist: Torque::from_base(0.0),
            };
            let greatest = base.evaluate().unwrap().tension.base();
            let carried: f64 = (0..count)
                .map(|anchor| {
                    let angle = std::f64::consts::TAU * f64::from(anchor) / f64::from(count);
                    greatest * radius * angle.cos().powi(2)
                })
                .sum();
            prop_assert!((carried - moment).abs() < 1e-9 * moment);
        }
    }
}
