//! How fast a trailer comes into line behind what pulls it straight.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Quantity as _};

formula! {
    /// Angle that is left between a trailer and a straight pull after a way: the trailer's axle follows a tractrix.
    ///
    /// Each length of the trailer driven straight on divides the tangent of half the angle by e, 2.718: after two of them
    /// a square trailer still stands 15° askew. This is the way that a rig needs behind a turn before it passes a gate in line.
    pub struct TrailerStraightens = "trailer-straightens" in Signal {
        /// Angle between trailer and pull at first.
        first ("θ0"): Angle,
        /// From the coupling to the trailer's axle.
        length ("L"): Length,
        /// Way that the coupling is pulled, straight.
        way ("s"): Length,
    }
    gives
    /// Angle that is left.
    pub struct StillAskew {
        /// Angle between trailer and pull.
        angle ("θ"): Angle,
        /// How far the axle is still beside the line.
        aside ("y"): Length,
    }
    formula "tan(θ/2) = tan(θ0/2) · e^(−s/L)\ny = L · sin θ"
    valid "The coupling moves on a straight line."
    source { work: "the classical tractrix", clause: "", evidence: Physics, seen: "dθ/ds = −sin θ / L, integrated; held against a step by step drive" }
    by askew
}

fn askew(trailer: &TrailerStraightens) -> Result<StillAskew, OutOfReach> {
    positive("length", trailer.length, "18 ft")?;
    not_negative("way", trailer.way, "20 ft")?;
    not_negative("first", trailer.first, "45°")?;
    if trailer.first.base() >= std::f64::consts::PI {
        return Err(OutOfReach::new(
            "first",
            "a trailer that points back at what pulls it does not straighten; give an angle such as 45°",
        ));
    }
    let length = trailer.length.base();
    let half = (trailer.first.base() / 2.0).tan() * (-trailer.way.base() / length).exp();
    let angle = 2.0 * half.atan();
    Ok(StillAskew {
        angle: Angle::from_base(angle),
        aside: Length::from_base(length * angle.sin()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn after(first: f64, way: f64) -> f64 {
        let trailer = TrailerStraightens {
            first: Angle::from_base(first),
            length: Length::from_base(5.0),
            way: Length::from_base(way),
        };
        trailer.evaluate().unwrap().angle.base()
    }

    proptest! {
        #[test]
        fn two_ways_are_one_way(first in 0.01..3.0, one in 0.0..10.0, other in 0.0..10.0) {
            prop_assert!((after(after(first, one), other) - after(first, one + other)).abs() < 1e-9);
            prop_assert!(after(first, one) <= first);
        }
    }

    #[test]
    fn a_trailer_that_points_back_is_refused() {
        let trailer = TrailerStraightens {
            first: Angle::from_base(3.2),
            length: Length::from_base(5.0),
            way: Length::from_base(1.0),
        };
        assert_eq!(trailer.evaluate().unwrap_err().input, "first");
    }
}
