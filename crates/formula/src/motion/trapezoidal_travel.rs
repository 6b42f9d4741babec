//! Time and distance of a travel with ramps.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Time, Velocity};

formula! {
    /// Times and distances of a travel from rest to rest: ramp up, run, ramp down, creep.
    ///
    /// The leaf brakes to creep speed, goes the creep distance slowly, and stops at its end with the same braking, so
    /// that the last stop lies inside the creep distance. A creep distance of zero leaves the creep out. Where the
    /// travel is too short to reach the running speed, the ramps meet at a lower peak.
    pub struct TrapezoidalTravel = "trapezoidal-travel" in Motion {
        /// Distance from rest to rest, creep included.
        travel ("d"): Length,
        /// Running speed.
        cruise_speed ("v"): Velocity,
        /// Acceleration of the ramp up.
        acceleration ("a"): Acceleration,
        /// Deceleration of the ramp down and of the last stop, as a value above zero.
        deceleration ("b"): Acceleration,
        /// Speed of the creep at the end; of no effect without a creep distance.
        creep_speed ("vc"): Velocity,
        /// Distance of the creep with the last stop; zero for none.
        creep_distance ("dc"): Length,
    }
    gives
    /// Times and distances of a travel with ramps.
    pub struct Travel {
        /// Highest speed that is reached.
        peak_speed ("vp"): Velocity,
        /// Time of the ramp up.
        acceleration_time ("t1"): Time,
        /// Time at the running speed.
        cruise_time ("t2"): Time,
        /// Time of the ramp down and of the last stop.
        deceleration_time ("t3"): Time,
        /// Time at creep speed.
        creep_time ("t4"): Time,
        /// Time of the whole travel.
        total_time ("t"): Time,
        /// Distance of the ramp up.
        acceleration_distance ("d1"): Length,
        /// Distance at the running speed.
        cruise_distance ("d2"): Length,
        /// Distance of the ramp down to creep speed, or to rest without creep.
        deceleration_distance ("d3"): Length,
    }
    formula "vp = v, or √(2 · (d − dc + vc²/2b) · a · b / (a + b)) if that is less\nd1 = vp² / 2a,  t1 = vp / a\nd3 = (vp² − vc²) / 2b,  t3 = vp / b\nd2 = d − dc − d1 − d3,  t2 = d2 / v\nt4 = (dc − vc²/2b) / vc\nt = t1 + t2 + t3 + t4"
    valid "Constant acceleration and deceleration; the creep distance at least holds the last stop, and the rest of the travel the ramp up to creep speed."
    source { work: "motion with constant acceleration", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by trapezoidal_travel
}

fn trapezoidal_travel(run: &TrapezoidalTravel) -> Result<Travel, OutOfReach> {
    check(run)?;
    let (up, down) = (run.acceleration.base(), run.deceleration.base());
    let creep = Creep::of(run)?;
    let before_creep = run.travel.base() - run.creep_distance.base();
    if before_creep < creep.speed.powi(2) / (2.0 * up) {
        return Err(OutOfReach::new(
            "creep_distance",
            "the travel before the creep is too short to reach creep speed; give a shorter creep or a longer travel",
        ));
    }
    let meeting = 2.0 * (before_creep + creep.stop) * up * down / (up + down);
    let peak = run.cruise_speed.base().min(meeting.sqrt());
    let rise = peak.powi(2) / (2.0 * up);
    let fall = peak.powi(2) / (2.0 * down) - creep.stop;
    let cruise = (before_creep - rise - fall).max(0.0);
    let times = [peak / up, cruise / peak, peak / down, creep.time()];
    Ok(Travel {
        peak_speed: Velocity::from_base(peak),
        acceleration_time: Time::from_base(times[0]),
        cruise_time: Time::from_base(times[1]),
        deceleration_time: Time::from_base(times[2]),
        creep_time: Time::from_base(times[3]),
        total_time: Time::from_base(times.iter().sum()),
        acceleration_distance: Length::from_base(rise),
        cruise_distance: Length::from_base(cruise),
        deceleration_distance: Length::from_base(fall),
    })
}

/// The creep at the end: its speed, the distance of the last stop, and the distance at steady speed before that.
struct Creep {
    speed: f64,
    stop: f64,
    steady: f64,
}

impl Creep {
    fn of(run: &TrapezoidalTravel) -> Result<Self, OutOfReach> {
        let distance = run.creep_distance.base();
        if distance <= 0.0 {
            return Ok(Self {
                speed: 0.0,
                stop: 0.0,
                steady: 0.0,
            });
        }
        positive("creep_speed", run.creep_speed, "3 in/s")?;
        if run.creep_speed > run.cruise_speed {
            return Err(OutOfReach::new(
                "creep_speed",
                "the creep is not faster than the running speed",
            ));
        }
        let speed = run.creep_speed.base();
        let stop = speed.powi(2) / (2.0 * run.deceleration.base());
        if distance < stop {
            return Err(OutOfReach::new(
                "creep_distance",
                format!(
                    "the last stop from creep speed alone takes {:.0} mm; give at least that, or 0 for no creep",
                    stop * 1000.0
                ),
            ));
        }
        Ok(Self {
            speed,
            stop,
            steady: distance - stop,
        })
    }

    fn time(&self) -> f64 {
        if self.steady > 0.0 {
            self.steady / self.speed
        } else {
            0.0
        }
    }
}

fn check(run: &TrapezoidalTravel) -> Result<(), OutOfReach> {
    positive("travel", run.travel, "20 ft")?;
    positive("cruise_speed", run.cruise_speed, "1 ft/s")?;
    positive("acceleration", run.acceleration, "0.5 ft/s²")?;
    positive("deceleration", run.deceleration, "0.5 ft/s²")?;
    not_negative("creep_speed", run.creep_speed, "3 in/s")?;
    not_negative("creep_distance", run.creep_distance, "1 ft")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn run(travel: f64, speed: f64, creep: f64) -> TrapezoidalTravel {
        TrapezoidalTravel {
            travel: Length::from_base(travel),
            cruise_speed: Velocity::from_base(speed),
            acceleration: Acceleration::from_base(0.3),
            deceleration: Acceleration::from_base(0.2),
            creep_speed: Velocity::from_base(0.08),
            creep_distance: Length::from_base(creep),
        }
    }

    proptest! {
        #[test]
        fn never_faster_than_running_speed_all_the_way(travel in 0.5..12.0, speed in 0.1..1.0) {
            for creep in [0.0, 0.4] {
                let gives = run(travel, speed, creep).evaluate().unwrap();
                prop_assert!(gives.total_time.base() >= travel / speed);
                prop_assert!(gives.peak_speed.base() <= speed);
            }
        }

        #[test]
        fn the_distances_add_up(travel in 0.5..12.0, speed in 0.1..1.0) {
            let gives = run(travel, speed, 0.4).evaluate().unwrap();
            let sum = gives.acceleration_distance + gives.cruise_distance + gives.deceleration_distance;
            prop_assert!((sum.base() + 0.4 - travel).abs() < 1e-9);
        }

        #[test]
        fn a_longer_travel_takes_longer(travel in 0.5..12.0, speed in 0.1..1.0, more in 0.001..1.0) {
            let (short, long) = (run(travel, speed, 0.0), run(travel + more, speed, 0.0));
            prop_assert!(short.evaluate().unwrap().total_time < long.evaluate().unwrap().total_time);
        }

        /// At v²/2a + v²/2b the trapezoid becomes a triangle; both sides of that travel give nearly the same time.
        #[test]
        fn the_triangle_joins_the_trapezoid(speed in 0.1..1.0) {
            let limit = speed * speed * (1.0 / 0.6 + 1.0 / 0.4);
            let below = run(limit * (1.0 - 1e-9), speed, 0.0).evaluate().unwrap();
            let above = run(limit * (1.0 + 1e-9), speed, 0.0).evaluate().unwrap();
            prop_assert!((above.total_time - below.total_time).base() < 1e-6);
            prop_assert!((above.peak_speed - below.peak_speed).base() < 1e-6);
        }
    }

    #[test]
    fn a_creep_that_cannot_hold_its_stop_is_refused() {
        assert_eq!(
            run(6.0, 0.3, 0.01).evaluate().unwrap_err().input,
            "creep_distance"
        );
        assert_eq!(
            run(0.405, 0.3, 0.4).evaluate().unwrap_err().input,
            "creep_distance"
        );
    }
}
