//! A travel whose ramps are rounded.

use super::jerk_limited_ramp::times;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Acceleration, Jerk, Length, Quantity as _, Time, Velocity};

formula! {
    /// Times of a travel from rest to rest with rounded ramps: up to seven parts.
    ///
    /// Three parts of speeding up, one of running, three of slowing down. A short travel loses the running part, a
    /// gentle jerk the middle part of each ramp; the count of the parts that are left tells which.
    pub struct JerkLimitedTravel = "jerk-limited-travel" in Motion {
        /// Distance from rest to rest.
        travel ("d"): Length,
        /// Running speed.
        cruise_speed ("v"): Velocity,
        /// Greatest acceleration and deceleration.
        acceleration ("a"): Acceleration,
        /// How fast the acceleration may change.
        jerk ("j"): Jerk,
    }
    gives
    /// Times of a travel with rounded ramps.
    pub struct TravelWithJerk {
        /// How many parts the travel has: 7 when all are there, 4 at the fewest.
        parts ("n"): u32,
        /// Highest speed that is reached.
        peak_speed ("vp"): Velocity,
        /// Greatest acceleration that is reached.
        peak_acceleration ("ap"): Acceleration,
        /// Time of each rounded end of a ramp.
        jerk_time ("tj"): Time,
        /// Time at the greatest acceleration in each ramp.
        steady_time ("ts"): Time,
        /// Time at the running speed.
        cruise_time ("tc"): Time,
        /// Time of the whole travel.
        total_time ("t"): Time,
    }
    formula "T(v) = v / a + a / j where v ≥ a² / j, otherwise 2 · √(v / j)\nv · T(v) ≤ d:  vp = v,  tc = d / v − T(v)\notherwise tc = 0 and vp · T(vp) = d:  vp = a / 2 · (√(a² / j² + 4 · d / a) − a / j), or (d · √j / 2)^(2/3) where that is below a² / j\nt = 2 · T(vp) + tc"
    valid "The same limits for speeding up and for slowing down."
    source { work: "motion with constant jerk", clause: "", evidence: Physics, seen: "area under the speed-time line; the least time of the double-S profile of textbooks on machine trajectories" }
    by jerk_limited_travel
}

fn jerk_limited_travel(run: &JerkLimitedTravel) -> Result<TravelWithJerk, OutOfReach> {
    positive("travel", run.travel, "20 ft")?;
    positive("cruise_speed", run.cruise_speed, "1 ft/s")?;
    positive("acceleration", run.acceleration, "0.5 ft/s²")?;
    positive("jerk", run.jerk, "3 ft/s³")?;
    let (travel, speed) = (run.travel.base(), run.cruise_speed.base());
    let (acceleration, jerk) = (run.acceleration.base(), run.jerk.base());
    let ramp = |speed: f64| {
        let (rounded, steady) = times(speed, acceleration, jerk);
        2.0 * rounded + steady
    };
    let runs = speed * ramp(speed) < travel;
    let peak = if runs {
        speed
    } else {
        meeting(travel, acceleration, jerk).min(speed)
    };
    let cruise_time = if runs {
        travel / speed - ramp(speed)
    } else {
        0.0
    };
    let (jerk_time, steady_time) = times(peak, acceleration, jerk);
    Ok(TravelWithJerk {
        parts: 4 + 2 * u32::from(steady_time > 0.0) + u32::from(runs),
        peak_speed: Velocity::from_base(peak),
        peak_acceleration: Acceleration::from_base(jerk * jerk_time),
        jerk_time: Time::from_base(jerk_time),
        steady_time: Time::from_base(steady_time),
        cruise_time: Time::from_base(cruise_time),
        total_time: Time::from_base(2.0 * ramp(peak) + cruise_time),
    })
}

/// Highest speed of a travel too short for the running speed.
fn meeting(travel: f64, acceleration: f64, jerk: f64) -> f64 {
    let rounded = acceleration / jerk;
    let full =
        0.5 * acceleration * ((rounded.powi(2) + 4.0 * travel / acceleration).sqrt() - rounded);
    if full >= acceleration * rounded {
        full
    } else {
        (0.5 * travel * jerk.sqrt()).powf(2.0 / 3.0)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(travel: f64, speed: f64, jerk: f64) -> JerkLimitedTravel {
        JerkLimitedTravel {
            travel: Length::from_base(travel),
            cruise_speed: Velocity::from_base(speed),
            acceleration: Acceleration::from_base(0.5),
            jerk: Jerk::from_base(jerk),
        }
    }

    proptest! {
        /// Area under the speed-time line is the travel.
        #[test]
        fn the_distances_add_up(travel in 0.01..10.0, speed in 0.1..2.0, jerk in 0.1..20.0) {
            let gives = run(travel, speed, jerk).evaluate().unwrap();
            let ramps = gives.total_time - gives.cruise_time;
            let way = gives.peak_speed.base() * (ramps.base() / 2.0 + gives.cruise_time.base());
            prop_assert!((way - travel).abs() < 1e-9 * travel.max(1.0), "{way} {travel}");
        }

        #[test]
        fn a_gentler_jerk_takes_longer(travel in 0.01..10.0, speed in 0.1..2.0, jerk in 0.1..20.0) {
            let gentle = run(travel, speed, jerk).evaluate().unwrap();
            let brisk = run(travel, speed, 1.1 * jerk).evaluate().unwrap();
            prop_assert!(brisk.total_time < gentle.total_time);
        }
    }

    #[test]
    fn parts_are_lost_as_the_travel_shrinks() {
        let parts = |travel, speed, jerk| run(travel, speed, jerk).evaluate().unwrap().parts;
        assert_eq!(parts(5.0, 1.0, 2.0), 7);
        assert_eq!(parts(1.0, 1.0, 2.0), 6);
        assert_eq!(parts(5.0, 0.1, 0.5), 5);
        assert_eq!(parts(0.01, 1.0, 0.5), 4);
    }
}
