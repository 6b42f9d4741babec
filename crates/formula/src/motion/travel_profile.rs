//! Segments of a travel whose slow-down begins at a set point.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Acceleration, Length, Quantity as _, Time, Velocity};

quantity::words! {
    /// Whether a travel is long enough for the speed that was set.
    pub enum SpeedReached {
        /// It gets up to the running speed.
        Running = "the running speed",
        /// The slow-down begins before that.
        LowerPeak = "a lower peak",
    }
}

quantity::words! {
    /// How a travel comes to its stop.
    pub enum TravelEnding {
        /// It creeps and stands where it should.
        Creeps = "it creeps and stands at the stop",
        /// It is still braking when it gets to the stop.
        Strikes = "it strikes the stop while braking",
    }
}

formula! {
    /// Times and distances of each part of a travel: soft start, run, slow-down, creep, last stop.
    ///
    /// The slow-down begins at a set point, which is given as its distance before the stop. Where the set point comes
    /// before the running speed is reached, the slow-down begins at a lower peak. Where the set point is too near the
    /// stop, the leaf strikes the stop with the arrival speed; the arrival speed is zero otherwise.
    pub struct TravelProfile = "travel-profile" in Motion {
        /// Distance from rest to the stop.
        travel ("d"): Length,
        /// Running speed.
        cruise_speed ("v"): Velocity,
        /// Acceleration of the soft start.
        acceleration ("a"): Acceleration,
        /// Deceleration of the slow-down and of the last stop, as a value above zero.
        deceleration ("b"): Acceleration,
        /// Distance before the stop at which the slow-down begins.
        set_point ("ds"): Length,
        /// Speed of the creep.
        creep_speed ("vc"): Velocity,
    }
    gives
    /// Times and distances of each part of a travel.
    pub struct ProfileOfTravel {
        /// Speed that it gets up to, in words.
        reaches ("–"): SpeedReached,
        /// How it comes to the stop, in words.
        ending ("–"): TravelEnding,
        /// Highest speed.
        peak_speed ("vp"): Velocity,
        /// Time of the soft start.
        start_time ("t1"): Time,
        /// Distance of the soft start.
        start_distance ("d1"): Length,
        /// Time at the running speed.
        cruise_time ("t2"): Time,
        /// Distance at the running speed.
        cruise_distance ("d2"): Length,
        /// Time of the slow-down to creep speed.
        slow_down_time ("t3"): Time,
        /// Distance of the slow-down to creep speed.
        slow_down_distance ("d3"): Length,
        /// Time at creep speed.
        creep_time ("t4"): Time,
        /// Distance at creep speed.
        creep_distance ("d4"): Length,
        /// Time of the last stop.
        stop_time ("t5"): Time,
        /// Distance of the last stop.
        stop_distance ("d5"): Length,
        /// Time of the whole travel.
        total_time ("t"): Time,
        /// Speed with which it strikes the stop.
        arrival_speed ("va"): Velocity,
    }
    formula "vp = min(v, √(2 · a · (d − ds)))\nd1 = vp² / 2a,  t1 = vp / a\nd2 = d − ds − d1,  t2 = d2 / vp\nvp² / 2b ≤ ds:  d3 = (vp² − vc²) / 2b,  d5 = vc² / 2b,  d4 = ds − d3 − d5,  va = 0\notherwise:  d3 = ds,  va = √(vp² − 2 · b · ds)\nt3 = (vp − vc) / b, or (vp − va) / b where it strikes,  t4 = d4 / vc,  t5 = vc / b"
    valid "Constant acceleration and deceleration; a set point that the leaf passes at creep speed or faster."
    source { work: "motion with constant acceleration", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by travel_profile
}

fn travel_profile(run: &TravelProfile) -> Result<ProfileOfTravel, OutOfReach> {
    check(run)?;
    let (up, down) = (run.acceleration.base(), run.deceleration.base());
    let (cruise, creep) = (run.cruise_speed.base(), run.creep_speed.base());
    let set_point = run.set_point.base();
    let before = run.travel.base() - set_point;
    let peak = cruise.min((2.0 * up * before).sqrt());
    if peak < creep {
        return Err(OutOfReach::new(
            "set_point",
            "the slow-down begins so early that the leaf has not reached creep speed; give a shorter distance",
        ));
    }
    let rise = peak.powi(2) / (2.0 * up);
    let running = (before - rise).max(0.0);
    let tail = Tail::of(peak, creep, down, set_point);
    let times = [
        peak / up,
        running / peak,
        tail.slow_down.0,
        tail.creep.0,
        tail.stop.0,
    ];
    Ok(ProfileOfTravel {
        reaches: if peak < cruise {
            SpeedReached::LowerPeak
        } else {
            SpeedReached::Running
        },
        ending: if tail.arrival > 0.0 {
            TravelEnding::Strikes
        } else {
            TravelEnding::Creeps
        },
        peak_speed: Velocity::from_base(peak),
        start_time: Time::from_base(times[0]),
        start_distance: Length::from_base(rise),
        cruise_time: Time::from_base(times[1]),
        cruise_distance: Length::from_base(running),
        slow_down_time: Time::from_base(times[2]),
        slow_down_distance: Length::from_base(tail.slow_down.1),
        creep_time: Time::from_base(times[3]),
        creep_distance: Length::from_base(tail.creep.1),
        stop_time: Time::from_base(times[4]),
        stop_distance: Length::from_base(tail.stop.1),
        total_time: Time::from_base(times.iter().sum()),
        arrival_speed: Velocity::from_base(tail.arrival),
    })
}

/// What follows the set point: time and distance of each part, and the speed at the stop.
struct Tail {
    slow_down: (f64, f64),
    creep: (f64, f64),
    stop: (f64, f64),
    arrival: f64,
}

impl Tail {
    fn of(peak: f64, creep: f64, down: f64, room: f64) -> Self {
        let needed = peak.powi(2) / (2.0 * down);
        if needed > room {
            let arrival = (peak.powi(2) - 2.0 * down * room).sqrt();
            return Self {
                slow_down: ((peak - arrival) / down, room),
                creep: (0.0, 0.0),
                stop: (0.0, 0.0),
                arrival,
            };
        }
        let stop = creep.powi(2) / (2.0 * down);
        Self {
            slow_down: ((peak - creep) / down, needed - stop),
            creep: ((room - needed) / creep, room - needed),
            stop: (creep / down, stop),
            arrival: 0.0,
        }
    }
}

fn check(run: &TravelProfile) -> Result<(), OutOfReach> {
    positive("travel", run.travel, "20 ft")?;
    positive("cruise_speed", run.cruise_speed, "1 ft/s")?;
    positive("acceleration", run.acceleration, "0.5 ft/s²")?;
    positive("deceleration", run.deceleration, "0.5 ft/s²")?;
    positive("set_point", run.set_point, "2 ft")?;
    positive("creep_speed", run.creep_speed, "3 in/s")?;
    if run.creep_speed > run.cruise_speed {
        return Err(OutOfReach::new(
            "creep_speed",
            "the creep is not faster than the running speed",
        ));
    }
    if run.set_point >= run.travel {
        return Err(OutOfReach::new(
            "set_point",
            "the slow-down begins within the travel; give less than the travel",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::motion::TrapezoidalTravel;
    use proptest::prelude::*;

    fn run(travel: f64, speed: f64, set_point: f64) -> TravelProfile {
        TravelProfile {
            travel: Length::from_base(travel),
            cruise_speed: Velocity::from_base(speed),
            acceleration: Acceleration::from_base(0.3),
            deceleration: Acceleration::from_base(0.2),
            set_point: Length::from_base(set_point),
            creep_speed: Velocity::from_base(0.08),
        }
    }

    proptest! {
        #[test]
        fn the_distances_add_up(travel in 1.0..12.0, speed in 0.1..1.0, share in 0.05..0.9) {
            let gives = run(travel, speed, share * travel).evaluate().unwrap();
            let sum = gives.start_distance + gives.cruise_distance + gives.slow_down_distance
                + gives.creep_distance + gives.stop_distance;
            prop_assert!((sum.base() - travel).abs() < 1e-9);
        }

        #[test]
        fn a_later_set_point_is_never_slower(travel in 2.0..12.0, speed in 0.1..1.0, share in 0.1..0.9) {
            let early = run(travel, speed, share * travel).evaluate().unwrap();
            let late = run(travel, speed, 0.95 * share * travel).evaluate().unwrap();
            prop_assert!(late.total_time.base() <= early.total_time.base() + 1e-9);
            prop_assert!(late.arrival_speed >= early.arrival_speed);
        }

        /// Where both apply, the two ways to describe a travel agree.
        #[test]
        fn it_agrees_with_the_travel_that_is_given_by_its_creep(travel in 3.0..12.0, speed in 0.1..0.6) {
            let ours = run(travel, speed, 1.5).evaluate().unwrap();
            prop_assume!(ours.reaches == SpeedReached::Running && ours.ending == TravelEnding::Creeps);
            let other = TrapezoidalTravel {
                travel: Length::from_base(travel),
                cruise_speed: Velocity::from_base(speed),
                acceleration: Acceleration::from_base(0.3),
                deceleration: Acceleration::from_base(0.2),
                creep_speed: Velocity::from_base(0.08),
                creep_distance: ours.creep_distance + ours.stop_distance,
            };
            let other = other.evaluate().unwrap();
            prop_assert!((other.total_time - ours.total_time).base().abs() < 1e-9);
        }
    }

    #[test]
    fn a_set_point_outside_the_travel_is_refused() {
        assert_eq!(
            run(2.0, 0.3, 2.5).evaluate().unwrap_err().input,
            "set_point"
        );
        assert_eq!(
            run(2.0, 0.3, 1.999).evaluate().unwrap_err().input,
            "set_point"
        );
    }
}
