//! Time and distance that a leaf needs to stop.

use super::slope::Incline;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Ratio, Time, Velocity};

formula! {
    /// Time and distance from the moment that something is sensed until a leaf stands.
    ///
    /// Until the brake takes hold the leaf keeps its speed. The slope is signed: above zero when the leaf climbs, which
    /// shortens the stop; below zero downhill, which lengthens it.
    pub struct StoppingDistance = "stopping-distance" in Motion {
        /// Speed of the leaf.
        speed ("v"): Velocity,
        /// Response time of the sensing device.
        device_time ("td"): Time,
        /// Time of the controller until the brake takes hold.
        controller_time ("tc"): Time,
        /// Deceleration by brake and friction on level ground, as a value above zero.
        deceleration ("b"): Acceleration,
        /// Rise over run of the travel, above zero uphill, below zero downhill.
        slope ("i"): Ratio,
    }
    gives
    /// Time and distance of a stop.
    pub struct Stop {
        /// Time before the brake takes hold.
        reaction_time ("t1"): Time,
        /// Distance before the brake takes hold.
        reaction_distance ("s1"): Length,
        /// Deceleration on the slope.
        slope_deceleration ("b′"): Acceleration,
        /// Time of braking.
        braking_time ("t2"): Time,
        /// Distance of braking.
        braking_distance ("s2"): Length,
        /// Time from sensing to standing.
        total_time ("t"): Time,
        /// Distance from sensing to standing.
        total_distance ("s"): Length,
    }
    formula "t1 = td + tc,  s1 = v · t1\nb′ = b + g · sin θ, tan θ = i\nt2 = v / b′,  s2 = v² / (2 · b′)\nt = t1 + t2,  s = s1 + s2"
    valid "Constant deceleration; a brake that holds on the slope."
    source { work: "motion with constant acceleration", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by stopping_distance
}

fn stopping_distance(leaf: &StoppingDistance) -> Result<Stop, OutOfReach> {
    not_negative("speed", leaf.speed, "1 ft/s")?;
    not_negative("device_time", leaf.device_time, "50 ms")?;
    not_negative("controller_time", leaf.controller_time, "100 ms")?;
    positive("deceleration", leaf.deceleration, "1.5 ft/s²")?;
    let slope_deceleration = leaf.deceleration + Incline::of(leaf.slope)?.gravity_along();
    if slope_deceleration.base() <= 0.0 {
        return Err(OutOfReach::new(
            "deceleration",
            "on this slope the brake does not stop the leaf at all; it needs more deceleration or less slope",
        ));
    }
    let reaction_time = leaf.device_time + leaf.controller_time;
    let reaction_distance: Length = leaf.speed * reaction_time;
    let braking_time: Time = leaf.speed / slope_deceleration;
    let braking_distance: Length = leaf.speed * braking_time / 2.0;
    Ok(Stop {
        reaction_time,
        reaction_distance,
        slope_deceleration,
        braking_time,
        braking_distance,
        total_time: reaction_time + braking_time,
        total_distance: reaction_distance + braking_distance,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(speed: f64, milliseconds: f64, slope: f64) -> StoppingDistance {
        StoppingDistance {
            speed: Velocity::from_base(speed),
            device_time: Time::from_base(milliseconds / 1000.0),
            controller_time: Time::from_base(0.1),
            deceleration: Acceleration::from_base(0.6),
            slope: Ratio::from_base(slope),
        }
    }

    proptest! {
        #[test]
        fn faster_later_or_more_downhill_goes_farther(
            speed in 0.05..1.0, milliseconds in 0.0..500.0, slope in -0.04..0.05
        ) {
            let base = leaf(speed, milliseconds, slope).evaluate().unwrap().total_distance;
            for worse in [
                leaf(speed + 0.01, milliseconds, slope),
                leaf(speed, milliseconds + 1.0, slope),
                leaf(speed, milliseconds, slope - 0.001),
            ] {
                prop_assert!(base < worse.evaluate().unwrap().total_distance);
            }
        }
    }

    #[test]
    fn a_brake_weaker_than_the_slope_is_refused() {
        assert_eq!(
            leaf(0.3, 50.0, -0.1).evaluate().unwrap_err().input,
            "deceleration"
        );
    }
}
