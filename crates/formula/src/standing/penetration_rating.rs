//! How a barrier is rated by how far the vehicle came.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// Rating of how far a test vehicle came past a barrier.
    pub enum Penetration {
        /// Up to 3.3 ft.
        P1 = "P1",
        /// Up to 23 ft.
        P2 = "P2",
        /// Up to 98.4 ft.
        P3 = "P3",
    }
}

formula! {
    /// Penetration rating of a vehicle barrier by ASTM F2656, and the room that must be kept clear behind it.
    ///
    /// The standard says from which side of the barrier, and to which point of the vehicle, the distance is measured;
    /// editions differ. Cargo and parts fly farther. Whatever must not be struck stands beyond the limit of the rating,
    /// not beyond the distance of one test.
    pub struct PenetrationRating = "penetration-rating" in Standing {
        /// How far the vehicle came in the test.
        distance ("d"): Length,
    }
    gives
    /// Penetration rating.
    pub struct RatedPenetration {
        /// The rating.
        rating ("–"): Penetration,
        /// Largest distance of that rating.
        limit ("dmax"): Length,
    }
    formula "P1: d ≤ 1 m (3.3 ft)\nP2: d ≤ 7 m (23.0 ft)\nP3: d ≤ 30 m (98.4 ft)"
    valid "Tests by ASTM F2656; beyond 30 m there is no rating."
    source { work: "ASTM F2656", clause: "penetration ratings", evidence: Seen, seen: "the limits in articles of two barrier makers (names and addresses withheld)" }
    by rating
}

/// The ratings with their limits in meters, and with the limit that is printed in feet where that is a little more.
const LIMITS: [(Penetration, f64, f64); 3] = [
    (Penetration::P1, 1.0, 3.3 * 0.3048),
    (Penetration::P2, 7.0, 23.0 * 0.3048),
    (Penetration::P3, 30.0, 30.0),
];

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn rating(test: &PenetrationRating) -> Result<RatedPenetration, OutOfReach> {
    not_negative("distance", test.distance, "3 ft")?;
    LIMITS
        .into_iter()
        .find(|(_, _, farthest)| test.distance.base() <= farthest * (1.0 + 1e-9))
        .map(|(rating, limit, _)| RatedPenetration {
            rating,
            limit: Length::from_base(limit),
        })
        .ok_or_else(|| {
            OutOfReach::new(
                "distance",
                "a vehicle that came farther than 30 m was not stopped: there is no rating",
            )
        })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_limit_is_no_less_than_the_distance(distance in 0.0..30.0) {
            let test = PenetrationRating { distance: Length::from_base(distance) };
            prop_assert!(test.evaluate().unwrap().limit.base() * 1.006 >= distance);
        }
    }
}
