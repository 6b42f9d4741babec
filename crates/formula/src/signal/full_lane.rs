//! A lane with room for so many vehicles.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio};

formula! {
    /// Share of vehicles that find the lane full, where each that finds no room drives on.
    ///
    /// The load may be above 1: what does not fit goes away.
    pub struct FullLane = "full-lane" in Signal {
        /// Vehicles that come in the time that one takes at the reader.
        load ("ρ"): Ratio,
        /// Vehicles that find room, the one at the reader among them.
        room ("K"): u32,
    }
    gives
    /// What finds the lane full.
    pub struct TurnedAway {
        /// Share of vehicles that find no room.
        turned_away ("PK"): Ratio,
        /// Share of the time that nobody stands there.
        idle ("P₀"): Ratio,
    }
    formula "PK = (1 − ρ) · ρᴷ / (1 − ρᴷ⁺¹),  1 / (K + 1) at ρ = 1\nP₀ = (1 − ρ) / (1 − ρᴷ⁺¹)"
    valid "Arrivals at random, times at the reader without memory; 1 to 1000 places."
    source { work: "birth and death of a queue in balance", clause: "", evidence: Physics, seen: "each state weighs ρ times the one before it; sums to one" }
    by full_lane
}

fn full_lane(lane: &FullLane) -> Result<TurnedAway, OutOfReach> {
    positive("load", lane.load, "0.8")?;
    if !(1..=1000).contains(&lane.room) {
        return Err(OutOfReach::new("room", "give 1 to 1000 places"));
    }
    // The sum of the weights against the largest, so that no load is too large.
    let load = lane.load.base();
    let least = load.min(1.0 / load);
    let mut weight = 1.0;
    let mut sum = 1.0;
    for _ in 0..lane.room {
        weight *= least;
        sum += weight;
    }
    let (light, heavy) = (weight / sum, 1.0 / sum);
    let (full, empty) = if load <= 1.0 {
        (light, heavy)
    } else {
        (heavy, light)
    };
    Ok(TurnedAway {
        turned_away: Ratio::from_base(full),
        idle: Ratio::from_base(empty),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn away(load: f64, room: u32) -> f64 {
        let lane = FullLane {
            load: Ratio::from_base(load),
            room,
        };
        lane.evaluate().unwrap().turned_away.base()
    }

    proptest! {
        #[test]
        fn more_room_turns_fewer_away(load in 0.01..20.0, room in 1..200u32) {
            prop_assert!(away(load, room + 1) <= away(load, room));
            prop_assert!(away(load * 1.01, room) >= away(load, room));
        }
    }

    #[test]
    fn at_a_load_of_one_all_states_weigh_the_same() {
        assert!((away(1.0, 3) - 0.25).abs() < 1e-12);
        assert!((away(50.0, 10) - 0.98).abs() < 1e-3);
        let none = FullLane {
            load: Ratio::from_base(1.0),
            room: 0,
        };
        assert_eq!(none.evaluate().unwrap_err().input, "room");
    }
}
