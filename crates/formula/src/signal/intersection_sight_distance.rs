//! How far along the road a driver has to see who drives out.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _, Time, Velocity};

quantity::words! {
    /// What drives out, by how long it takes to be under way.
    pub enum GapVehicle {
        /// Car, pickup or van.
        Car = "car",
        /// Truck in one piece.
        Truck = "truck",
        /// Truck with trailer or semi-trailer.
        Combination = "combination truck",
    }
}

quantity::words! {
    /// What the driver who leaves does on the road.
    pub enum Maneuver {
        /// Turns across the near lane.
        LeftTurn = "left turn",
        /// Turns into the near lane.
        RightTurn = "right turn",
    }
}

formula! {
    /// The length of road that a driver who waits to drive out has to see, so that nobody on the road must brake hard.
    ///
    /// A driver takes a gap of some seconds whatever the speed of the road: the road's speed makes it a distance. A lane more
    /// to cross adds 0.5 s for a car and 0.7 s for a truck; a steep way up to the road adds 0.2 s for each percent over 3 %.
    pub struct IntersectionSightDistance = "intersection-sight-distance" in Signal {
        /// Speed on the road.
        road_speed ("V"): Velocity,
        /// What drives out.
        vehicle ("–"): GapVehicle,
        /// What its driver does.
        maneuver ("–"): Maneuver,
    }
    gives
    /// What has to be in view.
    pub struct RoadInView {
        /// Gap in the traffic that a driver takes.
        gap ("tg"): Time,
        /// Length of road that has to be seen.
        distance ("ISD"): Length,
    }
    formula "ISD = V · tg\ntg for a left turn: 7.5 s car, 9.5 s truck, 11.5 s combination; for a right turn 1 s less"
    valid "Two-lane road without median, way out not steeper than 3 %; traffic on the right."
    source { work: "AASHTO, A Policy on Geometric Design of Highways and Streets", clause: "intersection sight distance, stop control on the minor road", evidence: Seen, seen: "a highway engineering handbook, page 83, table 2.3A, digilib.universitaspertamina.ac.id" }
    by intersection_sight_distance
}

fn intersection_sight_distance(road: &IntersectionSightDistance) -> Result<RoadInView, OutOfReach> {
    not_negative("road_speed", road.road_speed, "30 mph")?;
    let left = match road.vehicle {
        GapVehicle::Car => 7.5,
        GapVehicle::Truck => 9.5,
        GapVehicle::Combination => 11.5,
    };
    let seconds = match road.maneuver {
        Maneuver::LeftTurn => left,
        Maneuver::RightTurn => left - 1.0,
    };
    let gap = Time::from_base(seconds);
    Ok(RoadInView {
        gap,
        distance: road.road_speed * gap,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn seen(speed: f64, vehicle: GapVehicle, maneuver: Maneuver) -> f64 {
        let road = IntersectionSightDistance {
            road_speed: Velocity::from_base(speed),
            vehicle,
            maneuver,
        };
        road.evaluate().unwrap().distance.base()
    }

    proptest! {
        #[test]
        fn longer_vehicles_and_turns_across_need_more(v in 1.0..30.0) {
            use {GapVehicle::*, Maneuver::*};
            prop_assert!(seen(v, Car, LeftTurn) < seen(v, Truck, LeftTurn));
            prop_assert!(seen(v, Truck, LeftTurn) < seen(v, Combination, LeftTurn));
            prop_assert!(seen(v, Car, RightTurn) < seen(v, Car, LeftTurn));
            prop_assert!((seen(2.0 * v, Car, LeftTurn) - 2.0 * seen(v, Car, LeftTurn)).abs() < 1e-9);
        }
    }

    #[test]
    fn a_road_that_runs_backwards_is_refused() {
        let road = IntersectionSightDistance {
            road_speed: Velocity::from_base(-1.0),
            vehicle: GapVehicle::Car,
            maneuver: Maneuver::LeftTurn,
        };
        assert_eq!(road.evaluate().unwrap_err().input, "road_speed");
    }
}
