//! How many cycles of the gate a wheel's bearing lasts.

use super::bearing_kind::BearingKind;
use super::bearing_life::revolutions;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Quantity as _, Ratio};
use std::f64::consts::PI;

formula! {
    /// Cycles of a sliding gate that nine in ten of its wheel bearings reach.
    ///
    /// One cycle is the way out and the way back. It is the life until the metal tires; water and grit end most wheels
    /// sooner, and a worn tread earlier still.
    pub struct WheelBearingCycles = "wheel-bearing-cycles" in Life {
        /// Basic dynamic load rating of the wheel's bearing.
        rating ("C"): Force,
        /// Load on the wheel.
        load ("P"): Force,
        /// What rolls inside the bearing.
        bearing ("–"): BearingKind,
        /// Diameter of the wheel over its running surface.
        wheel_diameter ("D"): Length,
        /// Travel of the leaf one way.
        travel ("s"): Length,
    }
    gives
    /// Life of a wheel's bearing.
    pub struct WheelCycles {
        /// Revolutions that nine in ten reach.
        revolutions ("L10"): Ratio,
        /// Revolutions in one cycle of the gate.
        each_cycle ("u"): Ratio,
        /// Cycles of the gate that nine in ten reach.
        cycles ("N"): Ratio,
    }
    formula "L10 = 10⁶ · (C / P)^p; p = 3 for balls, 10/3 for rollers\nu = 2 · s / (π · D)\nN = L10 / u"
    valid "Wheels that roll over the whole travel; loads up to the rating."
    source { work: "ISO 281", clause: "basic rating life", evidence: Seen, seen: "http://bearing-analysis.info/bearing-life-according-to-iso-281; the way rolled is geometry" }
    by wheel_cycles
}

fn wheel_cycles(wheel: &WheelBearingCycles) -> Result<WheelCycles, OutOfReach> {
    let revolutions = revolutions(wheel.rating, wheel.load, wheel.bearing)?;
    positive("wheel_diameter", wheel.wheel_diameter, "6 in")?;
    positive("travel", wheel.travel, "20 ft")?;
    let each_cycle = 2.0 * wheel.travel.base() / (PI * wheel.wheel_diameter.base());
    Ok(WheelCycles {
        revolutions: Ratio::from_base(revolutions),
        each_cycle: Ratio::from_base(each_cycle),
        cycles: Ratio::from_base(revolutions / each_cycle),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn wheel(load: f64, diameter: f64, travel: f64) -> Result<WheelCycles, OutOfReach> {
        WheelBearingCycles {
            rating: Force::from_base(10_000.0),
            load: Force::from_base(load),
            bearing: BearingKind::Ball,
            wheel_diameter: Length::from_base(diameter),
            travel: Length::from_base(travel),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn a_larger_wheel_and_a_shorter_travel_last_longer(
            load in 10.0..9000.0, diameter in 0.05..0.4, travel in 1.0..15.0
        ) {
            let cycles = wheel(load, diameter, travel).unwrap().cycles;
            prop_assert!(cycles < wheel(load, diameter * 1.1, travel).unwrap().cycles);
            prop_assert!(cycles > wheel(load, diameter, travel * 1.1).unwrap().cycles);
            prop_assert!(cycles > wheel(load * 1.1, diameter, travel).unwrap().cycles);
        }
    }

    #[test]
    fn no_travel_is_refused() {
        assert_eq!(wheel(100.0, 0.1, 0.0).unwrap_err().input, "travel");
        assert_eq!(wheel(1e5, 0.1, 1.0).unwrap_err().input, "load");
    }
}
