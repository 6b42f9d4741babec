//! How far a driver has to see to stop in time.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Ratio, Time, Velocity};

formula! {
    /// The distance from which a driver has to see a closed leaf, or a person in the way, to stop before it.
    ///
    /// While the driver understands and reacts the vehicle keeps its speed; then it slows down as most drivers brake, not as
    /// hard as its tires allow. Downhill its weight pushes on.
    pub struct StoppingSightDistance = "stopping-sight-distance" in Signal {
        /// Speed of the vehicle.
        speed ("V"): Velocity,
        /// Time from seeing to braking: 2.5 s for drivers whom nobody has warned.
        reaction_time ("t"): Time,
        /// Braking on level ground: 11.2 ft/s² is what nine of ten drivers do.
        deceleration ("a"): Acceleration,
        /// Rise over run in the direction of travel; below zero downhill.
        grade ("G"): Ratio,
    }
    gives
    /// How far and how long it goes on.
    pub struct DriverStop {
        /// Distance before the brakes take hold.
        reaction_distance ("d1"): Length,
        /// Distance of braking.
        braking_distance ("d2"): Length,
        /// Distance in all.
        total_distance ("d"): Length,
        /// Time in all.
        total_time ("T"): Time,
    }
    formula "d1 = V · t\nd2 = V² / (2 · (a + g · G))\nd = d1 + d2\nT = t + V / (a + g · G)"
    valid "Dry or wet pavement; not ice, mud or loose gravel. Standard gravity."
    source { work: "AASHTO, A Policy on Geometric Design of Highways and Streets", clause: "stopping sight distance: 2.5 s and 11.2 ft/s²", evidence: Seen, seen: "reviewcivilpe.com, accessengineeringlibrary.com (a handbook's abstract) and two public calculators with the formula" }
    by stopping_sight_distance
}

/// Standard gravity in meters per second squared.
const GRAVITY: f64 = 9.80665;

fn stopping_sight_distance(stop: &StoppingSightDistance) -> Result<DriverStop, OutOfReach> {
    not_negative("speed", stop.speed, "10 mph")?;
    not_negative("reaction_time", stop.reaction_time, "2.5 s")?;
    positive("deceleration", stop.deceleration, "11.2 ft/s²")?;
    let deceleration = stop.deceleration.base() + GRAVITY * stop.grade.base();
    if deceleration <= 0.0 {
        return Err(OutOfReach::new(
            "grade",
            "so steep downhill the brakes only hold it; give a grade such as -0.05",
        ));
    }
    let deceleration = Acceleration::from_base(deceleration);
    let braking_time: Time = stop.speed / deceleration;
    let reaction_distance: Length = stop.speed * stop.reaction_time;
    let braking_distance: Length = stop.speed * braking_time / 2.0;
    Ok(DriverStop {
        reaction_distance,
        braking_distance,
        total_distance: reaction_distance + braking_distance,
        total_time: stop.reaction_time + braking_time,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn stop(speed: f64, grade: f64) -> StoppingSightDistance {
        StoppingSightDistance {
            speed: Velocity::from_base(speed),
            reaction_time: Time::from_base(2.5),
            deceleration: Acceleration::from_base(3.4),
            grade: Ratio::from_base(grade),
        }
    }

    proptest! {
        #[test]
        fn faster_and_steeper_downhill_go_on_farther(v in 1.0..30.0, grade in -0.2..0.2) {
            let here = stop(v, grade).evaluate().unwrap();
            prop_assert!(stop(v + 1.0, grade).evaluate().unwrap().total_distance > here.total_distance);
            prop_assert!(stop(v, grade - 0.01).evaluate().unwrap().total_distance > here.total_distance);
        }
    }

    #[test]
    fn a_hill_that_the_brakes_only_hold_is_refused() {
        assert_eq!(stop(5.0, -0.5).evaluate().unwrap_err().input, "grade");
        assert_eq!(stop(-1.0, 0.0).evaluate().unwrap_err().input, "speed");
    }
}
