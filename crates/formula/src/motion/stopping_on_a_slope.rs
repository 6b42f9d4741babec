//! A stop from forces: brake, friction, weight.

use super::slope::{GRAVITY, Incline};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Length, Mass, Quantity as _, Ratio, Time, Velocity};

formula! {
    /// Time and distance of a stop on a slope, from the forces that bring it about.
    ///
    /// Until the brake takes hold the leaf keeps its speed. Then brake and rolling friction slow leaf and turning parts
    /// together; going down, the weight along the slope works against them, going up it helps. A brake that is
    /// weaker than the weight along the slope never stops the leaf, and is refused.
    pub struct StoppingOnASlope = "stopping-on-a-slope" in Motion {
        /// Mass of the leaf.
        mass ("m"): Mass,
        /// Mass of the turning parts as the leaf feels it.
        rotating_mass ("mr"): Mass,
        /// Speed at the moment something is sensed.
        speed ("v"): Velocity,
        /// Time until the brake takes hold.
        reaction_time ("tr"): Time,
        /// Rise over run of the travel, above zero uphill, below zero downhill.
        slope ("i"): Ratio,
        /// Rolling friction as a share of the weight.
        friction ("μ"): Ratio,
        /// Force of the brake on the leaf; zero for a leaf that runs out.
        brake_force ("Fb"): Force,
    }
    gives
    /// Time and distance of a stop on a slope.
    pub struct StopOnASlope {
        /// Distance before the brake takes hold.
        reaction_distance ("s1"): Length,
        /// Weight along the slope, below zero when it drives the leaf on.
        slope_force ("Fi"): Force,
        /// Force of rolling friction.
        friction_force ("Fr"): Force,
        /// Deceleration of leaf and turning parts.
        deceleration ("b"): Acceleration,
        /// Time of braking.
        braking_time ("t2"): Time,
        /// Distance of braking.
        braking_distance ("s2"): Length,
        /// Time from sensing to standing.
        total_time ("t"): Time,
        /// Distance from sensing to standing.
        total_distance ("s"): Length,
    }
    formula "s1 = v · tr\nFi = m · g · sin θ,  Fr = μ · m · g · cos θ,  tan θ = i\nb = (Fb + Fr + Fi) / (m + mr)\nt2 = v / b,  s2 = v² / 2b\nt = tr + t2,  s = s1 + s2"
    valid "Slope up to 1 in 2; constant brake and friction. Standard gravity, 9.80665 m/s²."
    source { work: "Newton's second law", clause: "", evidence: Physics, seen: "balance of forces along the slope" }
    by stopping_on_a_slope
}

fn stopping_on_a_slope(leaf: &StoppingOnASlope) -> Result<StopOnASlope, OutOfReach> {
    positive("mass", leaf.mass, "640 lb")?;
    not_negative("rotating_mass", leaf.rotating_mass, "100 lb")?;
    not_negative("speed", leaf.speed, "1 ft/s")?;
    not_negative("reaction_time", leaf.reaction_time, "150 ms")?;
    not_negative("friction", leaf.friction, "0.015")?;
    not_negative("brake_force", leaf.brake_force, "100 lbf")?;
    let incline = Incline::of(leaf.slope)?;
    let weight: Force = leaf.mass * Acceleration::from_base(GRAVITY);
    let slope_force = weight * incline.sine;
    let friction_force = weight * incline.cosine * leaf.friction;
    let deceleration: Acceleration =
        (leaf.brake_force + friction_force + slope_force) / (leaf.mass + leaf.rotating_mass);
    if deceleration.base() <= 0.0 {
        return Err(OutOfReach::new(
            "brake_force",
            "the weight along the slope is more than brake and friction: the leaf runs away downhill; it needs a stronger brake",
        ));
    }
    let reaction_distance: Length = leaf.speed * leaf.reaction_time;
    let braking_time: Time = leaf.speed / deceleration;
    let braking_distance: Length = leaf.speed * braking_time / 2.0;
    Ok(StopOnASlope {
        reaction_distance,
        slope_force,
        friction_force,
        deceleration,
        braking_time,
        braking_distance,
        total_time: leaf.reaction_time + braking_time,
        total_distance: reaction_distance + braking_distance,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(slope: f64, brake: f64, rotating: f64) -> StoppingOnASlope {
        StoppingOnASlope {
            mass: Mass::from_base(300.0),
            rotating_mass: Mass::from_base(rotating),
            speed: Velocity::from_base(0.3),
            reaction_time: Time::from_base(0.15),
            slope: Ratio::from_base(slope),
            friction: Ratio::from_base(0.015),
            brake_force: Force::from_base(brake),
        }
    }

    proptest! {
        #[test]
        fn downhill_a_weak_brake_and_heavy_turning_parts_go_farther(
            slope in -0.02..0.05, brake in 50.0..500.0, rotating in 0.0..100.0
        ) {
            let base = leaf(slope, brake, rotating).evaluate().unwrap().total_distance;
            for worse in [
                leaf(slope - 0.001, brake, rotating),
                leaf(slope, brake - 5.0, rotating),
                leaf(slope, brake, rotating + 5.0),
            ] {
                prop_assert!(base < worse.evaluate().unwrap().total_distance);
            }
        }
    }

    #[test]
    fn a_leaf_that_runs_away_is_refused() {
        assert_eq!(
            leaf(-0.05, 50.0, 0.0).evaluate().unwrap_err().input,
            "brake_force"
        );
    }
}
