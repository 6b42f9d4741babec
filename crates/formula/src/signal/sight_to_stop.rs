//! How far a driver must see to stop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Ratio, Time, Velocity};

/// Standard gravity.
const GRAVITY: f64 = 9.80665;

formula! {
    /// Distance from which a driver must see a shut gate to stop before it.
    ///
    /// Road design takes 2.5 s until the brake takes hold and 11.2 ft/s², which nine of ten drivers exceed on a wet road.
    /// Loose gravel, leaves and ice hold less: give what was tried there.
    pub struct SightToStop = "sight-to-stop" in Signal {
        /// Speed of the vehicle.
        speed ("v"): Velocity,
        /// Until the brake takes hold.
        reaction ("t"): Time,
        /// Deceleration on the level.
        deceleration ("a"): Acceleration,
        /// Rise over run of the way, above zero uphill, below zero downhill.
        grade ("G"): Ratio,
    }
    gives
    /// The way to a stop.
    pub struct WayToStop {
        /// Way until the brake takes hold.
        reacting ("d1"): Length,
        /// Way while braking.
        braking ("d2"): Length,
        /// Whole way.
        distance ("d"): Length,
    }
    formula "d1 = v · t\nd2 = v² / (2 · (a + g · G))\nd = d1 + d2"
    valid "Constant deceleration on an even grade that the brakes hold; g is 9.80665 m/s²."
    source { work: "stopping sight distance of road design, AASHTO", clause: "", evidence: Seen, seen: "roadway design manual of a state, 4.11.1: www.txdot.gov/manuals/des/rdw/chapter-4--basic-design-criteria/4-11-sight-distance/4-11-1-stopping-sight-distance.html" }
    by sight_to_stop
}

fn sight_to_stop(vehicle: &SightToStop) -> Result<WayToStop, OutOfReach> {
    not_negative("speed", vehicle.speed, "10 mph")?;
    not_negative("reaction", vehicle.reaction, "2.5 s")?;
    positive("deceleration", vehicle.deceleration, "11.2 ft/s²")?;
    let held = vehicle.deceleration.base() + GRAVITY * vehicle.grade.base();
    if held <= 0.0 {
        return Err(OutOfReach::new(
            "grade",
            "so steep down that these brakes do not hold; give a gentler grade or a road that grips",
        ));
    }
    let speed = vehicle.speed.base();
    let reacting = vehicle.speed * vehicle.reaction;
    let braking = Length::from_base(speed * speed / (2.0 * held));
    Ok(WayToStop {
        reacting,
        braking,
        distance: reacting + braking,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn vehicle(speed: f64, grade: f64) -> SightToStop {
        SightToStop {
            speed: Velocity::from_base(speed),
            reaction: Time::from_base(2.5),
            deceleration: Acceleration::from_base(3.4),
            grade: Ratio::from_base(grade),
        }
    }

    proptest! {
        #[test]
        fn faster_and_steeper_down_is_farther(speed in 0.1..30.0, grade in -0.2..0.2) {
            let here = vehicle(speed, grade).evaluate().unwrap().distance;
            prop_assert!(vehicle(speed * 1.1, grade).evaluate().unwrap().distance > here);
            prop_assert!(vehicle(speed, grade - 0.01).evaluate().unwrap().distance > here);
        }
    }

    #[test]
    fn a_slide_down_is_refused() {
        assert_eq!(vehicle(5.0, -0.4).evaluate().unwrap_err().input, "grade");
    }
}
