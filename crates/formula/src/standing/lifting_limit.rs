//! The weight that may be lifted by hand, by the revised lifting equation.

use super::lifting_frequency::{LiftingDuration, multiplier};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Frequency, Length, Mass, Quantity as _, Ratio};

quantity::words! {
    /// How well hands hold a load.
    pub enum Coupling {
        /// Handles or hand-holds of good shape.
        Good = "good",
        /// Poorer handles, or fingers bent under the load at 90°.
        Fair = "fair",
        /// Bulky, slippery or limp, without handles.
        Poor = "poor",
    }
}

formula! {
    /// Recommended weight of a two-handed lift by the revised NIOSH lifting equation, and the lifting index of a load.
    ///
    /// Worked at the start of the lift; where the load is set down with care, work it at the end as well, with the hands
    /// as they are there, and take the smaller weight. An index up to 1 is for nearly all healthy workers; above 1 split
    /// the load, use gear or get help; above 3 nobody should. Not for lifting with one hand, seated, kneeling, in a
    /// tight place, on slippery ground, above eight hours, loads that shift, or loads carried more than a few steps.
    pub struct LiftingLimit = "lifting-limit" in Standing {
        /// Mass of the load.
        load ("L"): Mass,
        /// Distance of the hands ahead of the ankles.
        reach ("H"): Length,
        /// Height of the hands above the floor, where the lift is looked at.
        hand_height ("V"): Length,
        /// Height of the hands above the floor at the start of the lift.
        start_height ("V0"): Length,
        /// Vertical distance of the lift.
        travel ("D"): Length,
        /// Angle by which the load lies to the side.
        turn ("A"): Angle,
        /// Lifts each minute, over a quarter of an hour.
        frequency ("F"): Frequency,
        /// How long lifting goes on in a day.
        duration ("–"): LiftingDuration,
        /// How well the hands hold it.
        coupling ("–"): Coupling,
    }
    gives
    /// Recommended weight and lifting index.
    pub struct LiftingIndex {
        /// Multiplier for reach.
        reach_multiplier ("HM"): Ratio,
        /// Multiplier for height.
        height_multiplier ("VM"): Ratio,
        /// Multiplier for travel.
        travel_multiplier ("DM"): Ratio,
        /// Multiplier for turning.
        turn_multiplier ("AM"): Ratio,
        /// Multiplier for frequency.
        frequency_multiplier ("FM"): Ratio,
        /// Multiplier for hold.
        coupling_multiplier ("CM"): Ratio,
        /// Recommended weight.
        limit ("RWL"): Mass,
        /// Recommended weight without regard to frequency.
        single_limit ("FIRWL"): Mass,
        /// Lifting index.
        index ("LI"): Ratio,
        /// Lifting index without regard to frequency.
        single_index ("FILI"): Ratio,
    }
    formula "HM = 10 in / H, not above 1\nVM = 1 − 0.0075 · |V − 30 in|\nDM = 0.82 + 1.8 in / D, not above 1\nAM = 1 − 0.0032 · A (degrees)\nCM: good 1; fair 1, below 30 in 0.95; poor 0.9\nFIRWL = 51 lb · HM · VM · DM · AM · CM\nRWL = FIRWL · FM\nLI = L / RWL, FILI = L / FIRWL"
    valid "Reach up to 25 in, height up to 70 in, travel up to 70 in, turning up to 135°."
    source { work: "NIOSH publication 94-110 (1994, revised 9/2021)", clause: "1.3 and 1.4", evidence: Seen, seen: "text of the manual as transcribed in a public repository, with its fourth example; the manual's multiplier tables reprinted in part" }
    by limit
}

/// Load constant in kilograms: 51 lb.
const LOAD_CONSTANT: f64 = 51.0 * 0.453_592_37;
/// One inch in meters.
const INCH: f64 = 0.0254;

fn limit(lift: &LiftingLimit) -> Result<LiftingIndex, OutOfReach> {
    positive("load", lift.load, "44 lb")?;
    let reach = upto("reach", lift.reach, 25.0)?;
    let height = upto("hand_height", lift.hand_height, 70.0)?;
    let start = upto("start_height", lift.start_height, 70.0)?;
    let travel = upto("travel", lift.travel, 70.0)?;
    let turn = lift.turn.base().to_degrees();
    if !(0.0..=135.0 + 1e-9).contains(&turn) {
        return Err(OutOfReach::new(
            "turn",
            "give the angle to the side, from 0° to 135°; farther round no weight is recommended",
        ));
    }
    positive("frequency", lift.frequency, "0.2 per minute")?;
    let each_minute = (lift.frequency.base() * 60.0).max(0.2);
    let reach_multiplier = 10.0 / reach.max(10.0);
    let height_multiplier = 1.0 - 0.0075 * (height - 30.0).abs();
    let travel_multiplier = 0.82 + 1.8 / travel.max(10.0);
    let turn_multiplier = 1.0 - 0.0032 * turn;
    let high = |height: f64| height >= 30.0 * (1.0 - 1e-9);
    let frequency_multiplier = multiplier("frequency", each_minute, lift.duration, high(start))?;
    let coupling_multiplier = match (lift.coupling, high(height)) {
        (Coupling::Good, _) | (Coupling::Fair, true) => 1.0,
        (Coupling::Fair, false) => 0.95,
        (Coupling::Poor, _) => 0.9,
    };
    let single_limit = LOAD_CONSTANT
        * reach_multiplier
        * height_multiplier
        * travel_multiplier
        * turn_multiplier
        * coupling_multiplier;
    let limit = single_limit * frequency_multiplier;
    let load = lift.load.base();
    Ok(LiftingIndex {
        reach_multiplier: Ratio::from_base(reach_multiplier),
        height_multiplier: Ratio::from_base(height_multiplier),
        travel_multiplier: Ratio::from_base(travel_multiplier),
        turn_multiplier: Ratio::from_base(turn_multiplier),
        frequency_multiplier: Ratio::from_base(frequency_multiplier),
        coupling_multiplier: Ratio::from_base(coupling_multiplier),
        limit: Mass::from_base(limit),
        single_limit: Mass::from_base(single_limit),
        index: Ratio::from_base(load / limit),
        single_index: Ratio::from_base(load / single_limit),
    })
}

/// A length in inches, refused beyond what the equation reaches.
fn upto(input: &'static str, length: Length, most: f64) -> Result<f64, OutOfReach> {
    not_negative(input, length, "20 in")?;
    let inches = length.base() / INCH;
    if inches <= most * (1.0 + 1e-9) {
        return Ok(inches);
    }
    Err(OutOfReach::new(
        input,
        format!(
            "beyond {most} in no weight is recommended; come nearer, or use gear or a second person"
        ),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lift(reach: f64, height: f64, travel: f64, turn: f64) -> LiftingLimit {
        LiftingLimit {
            load: Mass::from_base(20.0),
            reach: Length::from_base(reach * INCH),
            hand_height: Length::from_base(height * INCH),
            start_height: Length::from_base(height * INCH),
            travel: Length::from_base(travel * INCH),
            turn: Angle::from_base(turn.to_radians()),
            frequency: Frequency::from_base(0.5 / 60.0),
            duration: LiftingDuration::Hour,
            coupling: Coupling::Fair,
        }
    }

    proptest! {
        #[test]
        fn never_more_than_the_load_constant_and_less_with_every_strain(
            reach in 0.0..24.0, height in 0.0..69.0, travel in 0.0..69.0, turn in 0.0..134.0
        ) {
            let limit = |lift: LiftingLimit| lift.evaluate().unwrap().limit.base();
            let base = limit(lift(reach, height, travel, turn));
            prop_assert!(base > 0.0 && base <= LOAD_CONSTANT);
            prop_assert!(limit(lift(reach + 1.0, height, travel, turn)) <= base);
            prop_assert!(limit(lift(reach, height, travel + 1.0, turn)) <= base);
            prop_assert!(limit(lift(reach, height, travel, turn + 1.0)) < base);
        }
    }

    #[test]
    fn too_far_a_reach_is_refused() {
        assert_eq!(
            lift(26.0, 30.0, 10.0, 0.0).evaluate().unwrap_err().input,
            "reach"
        );
        assert_eq!(
            lift(20.0, 30.0, 10.0, 140.0).evaluate().unwrap_err().input,
            "turn"
        );
    }
}
