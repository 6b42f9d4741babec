//! Minimum distance of a light curtain that is approached head-on, by ISO 13855:2010.

use super::approach::{HAND, WALK, in_millimeters, millimeters, stopping_seconds};
use crate::OutOfReach;
use quantity::{Length, Quantity as _, Time, Velocity};

formula! {
    /// Least distance from a light curtain to the danger when people approach it head-on, by ISO 13855:2010.
    ///
    /// Up to a detection capability of 40 mm the speed of a hand, 2000 mm/s, is tried first; where that leads beyond
    /// 500 mm, walking speed is used, and the distance is not less than 500 mm. From 40 mm to 70 mm, walking speed and
    /// an arm's length of 850 mm hold. Where one can reach over or under the field, more is needed.
    pub struct Iso138552010MinimumDistance = "iso13855-2010-minimum-distance" in Protection {
        /// Whole time from actuation of the sensor until the danger has ended.
        stopping_time ("T"): Time,
        /// Detection capability: the thinnest rod that is seen everywhere in the field.
        capability ("d"): Length,
    }
    gives
    /// Least distance of a light curtain approached head-on.
    pub struct Iso138552010Distance {
        /// Speed of approach that decides.
        approach_speed ("K"): Velocity,
        /// Allowance for reaching in before being seen.
        intrusion ("C"): Length,
        /// Distance at the speed of a hand, before the second step; with 850 mm there is only one step.
        first_step ("S1"): Length,
        /// Minimum distance.
        distance ("S"): Length,
    }
    formula "S = K · T + C\nd ≤ 40 mm: C = 8 · (d − 14 mm), not below 0; K = 2000 mm/s, S not below 100 mm; if S > 500 mm, K = 1600 mm/s, S not below 500 mm\n40 mm < d ≤ 70 mm: C = 850 mm, K = 1600 mm/s"
    valid "Light curtains approached at right angles, detection capability up to 70 mm, machinery in workplaces; nobody reaches over, under or around."
    source { work: "ISO 13855:2010", clause: "6.2.3", evidence: Seen, seen: "operating manuals of light curtains and of a multiple-beam device that reprint the rule (addresses withheld); the standard itself was not at hand" }
    by minimum_distance
}

/// Longest distance at which the speed of a hand decides, and shortest at which walking does, in mm.
const STEP: f64 = 500.0;
/// Shortest distance at all, in mm.
const LEAST: f64 = 100.0;

fn minimum_distance(
    curtain: &Iso138552010MinimumDistance,
) -> Result<Iso138552010Distance, OutOfReach> {
    let time = stopping_seconds(curtain.stopping_time)?;
    let capability = in_millimeters(curtain.capability);
    if !(capability > 0.0 && capability <= 70.0 + 1e-9) {
        return Err(OutOfReach::new(
            "capability",
            "give a detection capability above 0 and up to 70 mm, such as 30 mm; coarser fields and single beams have other rules",
        ));
    }
    let found = if capability <= 40.0 + 1e-9 {
        fine(time, capability)
    } else {
        coarse(time)
    };
    Ok(Iso138552010Distance {
        approach_speed: Velocity::from_base(found.speed / 1000.0),
        intrusion: millimeters(found.intrusion),
        first_step: millimeters(found.first),
        distance: millimeters(found.distance),
    })
}

/// What was found, in mm and mm/s.
struct Found {
    speed: f64,
    intrusion: f64,
    first: f64,
    distance: f64,
}

fn fine(time: f64, capability: f64) -> Found {
    let intrusion = (8.0 * (capability - 14.0)).max(0.0);
    let first = HAND * time + intrusion;
    let (speed, distance) = if first <= STEP {
        (HAND, first.max(LEAST))
    } else {
        (WALK, (WALK * time + intrusion).max(STEP))
    };
    Found {
        speed,
        intrusion,
        first,
        distance,
    }
}

fn coarse(time: f64) -> Found {
    let distance = WALK * time + 850.0;
    Found {
        speed: WALK,
        intrusion: 850.0,
        first: distance,
        distance,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn distance(time: f64, capability: f64) -> f64 {
        let curtain = Iso138552010MinimumDistance {
            stopping_time: Time::from_base(time),
            capability: millimeters(capability),
        };
        curtain.evaluate().unwrap().distance.base()
    }

    proptest! {
        #[test]
        fn a_longer_stop_or_a_coarser_field_never_lets_it_stand_nearer(
            time in 0.0..2.0, more in 0.0..0.5, capability in 1.0..69.0, coarser in 0.0..1.0
        ) {
            let base = distance(time, capability);
            prop_assert!(base <= distance(time + more, capability));
            prop_assert!(base <= distance(time, capability + coarser) + 1e-12);
            prop_assert!(base >= 0.1);
        }
    }

    #[test]
    fn a_single_beam_is_refused() {
        let beam = Iso138552010MinimumDistance {
            stopping_time: Time::from_base(0.3),
            capability: millimeters(300.0),
        };
        assert_eq!(beam.evaluate().unwrap_err().input, "capability");
    }
}
