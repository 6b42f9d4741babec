//! A change of speed whose ends are rounded.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Jerk, Length, Quantity as _, Time, Velocity};

formula! {
    /// Time and distance of a change of speed when the acceleration itself is built up and taken away gradually.
    ///
    /// It has three parts: the acceleration grows, stays, and shrinks. A small change of speed has no middle part and
    /// never gets to the acceleration that was set. It works for speeding up and for slowing down.
    pub struct JerkLimitedRamp = "jerk-limited-ramp" in Motion {
        /// Speed before.
        speed_before ("v0"): Velocity,
        /// Speed after.
        speed_after ("v1"): Velocity,
        /// Greatest acceleration or deceleration, as a value above zero.
        acceleration ("a"): Acceleration,
        /// How fast the acceleration may change, as a value above zero.
        jerk ("j"): Jerk,
    }
    gives
    /// Time and distance of a change of speed with rounded ends.
    pub struct RampWithJerk {
        /// Greatest acceleration that is reached.
        peak_acceleration ("ap"): Acceleration,
        /// Time of each rounded end.
        jerk_time ("tj"): Time,
        /// Time at the greatest acceleration.
        steady_time ("ts"): Time,
        /// Time of the whole change.
        total_time ("t"): Time,
        /// Distance of the whole change.
        distance ("s"): Length,
    }
    formula "Δ = |v1 − v0|\nΔ ≥ a² / j:  tj = a / j,  ts = Δ / a − tj,  ap = a\notherwise:  tj = √(Δ / j),  ts = 0,  ap = j · tj\nt = 2 · tj + ts,  s = (v0 + v1) / 2 · t"
    valid "The acceleration changes at the same rate at both ends."
    source { work: "motion with constant jerk", clause: "", evidence: Physics, seen: "area under the acceleration-time line; the ramp is symmetric, so its mean speed is the mean of its ends" }
    by jerk_limited_ramp
}

/// Times of a ramp: of each rounded end, and at the greatest acceleration.
pub(super) fn times(change: f64, acceleration: f64, jerk: f64) -> (f64, f64) {
    let rounded = acceleration / jerk;
    if change >= acceleration * rounded {
        (rounded, change / acceleration - rounded)
    } else {
        ((change / jerk).sqrt(), 0.0)
    }
}

fn jerk_limited_ramp(ramp: &JerkLimitedRamp) -> Result<RampWithJerk, OutOfReach> {
    not_negative("speed_before", ramp.speed_before, "1 ft/s")?;
    not_negative("speed_after", ramp.speed_after, "1 ft/s")?;
    positive("acceleration", ramp.acceleration, "0.5 ft/s²")?;
    positive("jerk", ramp.jerk, "3 ft/s³")?;
    let change = (ramp.speed_after.base() - ramp.speed_before.base()).abs();
    let (jerk_time, steady_time) = times(change, ramp.acceleration.base(), ramp.jerk.base());
    let total = 2.0 * jerk_time + steady_time;
    let mean = 0.5 * (ramp.speed_before.base() + ramp.speed_after.base());
    Ok(RampWithJerk {
        peak_acceleration: Acceleration::from_base(ramp.jerk.base() * jerk_time),
        jerk_time: Time::from_base(jerk_time),
        steady_time: Time::from_base(steady_time),
        total_time: Time::from_base(total),
        distance: Length::from_base(mean * total),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn ramp(before: f64, after: f64, jerk: f64) -> JerkLimitedRamp {
        JerkLimitedRamp {
            speed_before: Velocity::from_base(before),
            speed_after: Velocity::from_base(after),
            acceleration: Acceleration::from_base(0.4),
            jerk: Jerk::from_base(jerk),
        }
    }

    proptest! {
        #[test]
        fn the_same_up_and_down(low in 0.0..0.5, high in 0.5..1.0, jerk in 0.1..5.0) {
            let up = ramp(low, high, jerk).evaluate().unwrap();
            let down = ramp(high, low, jerk).evaluate().unwrap();
            prop_assert!((up.distance - down.distance).base().abs() < 1e-12);
            prop_assert!(up.peak_acceleration.base() <= 0.4 + 1e-12);
        }

        /// A very high jerk leaves the plain ramp.
        #[test]
        fn without_rounding_it_is_the_plain_ramp(change in 0.05..1.0) {
            let gives = ramp(0.0, change, 1e6).evaluate().unwrap();
            prop_assert!((gives.total_time.base() - change / 0.4).abs() < 1e-5);
        }
    }

    #[test]
    fn no_jerk_is_refused() {
        assert_eq!(ramp(0.0, 0.3, 0.0).evaluate().unwrap_err().input, "jerk");
    }
}
