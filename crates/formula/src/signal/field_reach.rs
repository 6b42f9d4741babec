//! Where the field of a detector that looks down meets the ground.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Quantity as _};
use std::f64::consts::FRAC_PI_2;

formula! {
    /// Where the field of a radar, ultrasonic or infrared detector that is tilted down begins and ends on level ground.
    ///
    /// The cone of the data sheet is the edge at which its sensitivity has fallen by half: a truck is seen beyond it, a person
    /// perhaps not up to it. So the edge is walked and chalked. On ground that falls away the field ends farther out.
    pub struct FieldReach = "field-reach" in Signal {
        /// Height of the detector above the ground.
        height ("h"): Length,
        /// How far the middle of its field is tilted down from level.
        tilt ("t"): Angle,
        /// Whole opening of the field up and down.
        opening ("v"): Angle,
        /// Whole opening of the field to its sides.
        spread ("w"): Angle,
        /// Range on the data sheet, along the field.
        range ("r"): Length,
    }
    gives
    /// The field on the ground, measured from below the detector.
    pub struct ReachOnGround {
        /// Where it begins.
        near ("n"): Length,
        /// Where it ends.
        far ("f"): Length,
        /// Its width where it ends.
        width ("b"): Length,
    }
    formula "n = h / tan(t + v / 2), 0 where that is straight down or more\nf = h / tan(t − v / 2), at most √(r² − h²)\nb = 2 · √(h² + f²) · tan(w / 2)"
    valid "Level ground, and a field that meets it within its range."
    source { work: "trigonometry of a cone over a plane", clause: "", evidence: Physics, seen: "worked again in another library, see the cases" }
    by reach
}

fn reach(at: &FieldReach) -> Result<ReachOnGround, OutOfReach> {
    positive("height", at.height, "10 ft")?;
    not_negative("tilt", at.tilt, "30°")?;
    not_negative("opening", at.opening, "20°")?;
    not_negative("spread", at.spread, "40°")?;
    let (tilt, half) = (at.tilt.base(), at.opening.base() / 2.0);
    if tilt > FRAC_PI_2 || half >= FRAC_PI_2 || at.spread.base() >= 2.0 * FRAC_PI_2 {
        return Err(OutOfReach::new(
            "tilt",
            "a detector looks between level and straight down, with a field that opens less than 180°",
        ));
    }
    let (height, range) = (at.height.base(), at.range.base());
    if range <= height {
        return Err(OutOfReach::new(
            "range",
            "the range ends above the ground; hang the detector lower",
        ));
    }
    let ends = (range * range - height * height).sqrt();
    let near = if tilt + half >= FRAC_PI_2 {
        0.0
    } else {
        height / (tilt + half).tan()
    };
    if near >= ends {
        return Err(OutOfReach::new(
            "tilt",
            "the field passes over the ground within its range; tilt the detector down",
        ));
    }
    let steep = tilt - half;
    let far = if steep <= 0.0 {
        ends
    } else {
        (height / steep.tan()).min(ends)
    };
    let slant = height.hypot(far);
    Ok(ReachOnGround {
        near: Length::from_base(near),
        far: Length::from_base(far),
        width: Length::from_base(2.0 * slant * (at.spread.base() / 2.0).tan()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(tilt: f64, opening: f64) -> FieldReach {
        FieldReach {
            height: Length::from_base(3.0),
            tilt: Angle::from_base(tilt.to_radians()),
            opening: Angle::from_base(opening.to_radians()),
            spread: Angle::from_base(0.7),
            range: Length::from_base(20.0),
        }
    }

    proptest! {
        #[test]
        fn more_tilt_comes_nearer(tilt in 25.0..70.0, opening in 5.0..30.0) {
            let (flat, steep) = (at(tilt, opening).evaluate().unwrap(), at(tilt + 3.0, opening).evaluate().unwrap());
            prop_assert!(steep.near <= flat.near && steep.far < flat.far && flat.near < flat.far);
        }
    }

    #[test]
    fn a_field_that_never_comes_down_is_refused() {
        assert_eq!(at(0.0, 5.0).evaluate().unwrap_err().input, "tilt");
        let short = FieldReach {
            range: Length::from_base(2.0),
            ..at(30.0, 20.0)
        };
        assert_eq!(short.evaluate().unwrap_err().input, "range");
    }
}
