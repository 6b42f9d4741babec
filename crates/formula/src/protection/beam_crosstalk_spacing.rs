//! How far apart two pairs of beams stand so that they do not dazzle each other.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Quantity as _};

formula! {
    /// Least distance between the axes of two like pairs of beams that shine the same way.
    ///
    /// A receiver that stands in the light of another pair's emitter can go on seeing light when its own beam is
    /// broken: a person is missed. The light is a cone from the emitter; the neighbor's receiver has to lie outside it,
    /// with its lens, and both tilted as far as they may be out of line. Pairs that shine against each other's
    /// direction, coded pairs and makers' own figures go before this.
    pub struct BeamCrosstalkSpacing = "beam-crosstalk-spacing" in Protection {
        /// Distance from emitter to receiver.
        range ("R"): Length,
        /// Half angle of the emitter's cone of light.
        half_angle ("α"): Angle,
        /// How far out of line the emitter may be tilted.
        misalignment ("δ"): Angle,
        /// Diameter of the lens.
        lens ("D"): Length,
        /// Distance between the axes of the pairs.
        spacing ("a"): Length,
    }
    gives
    /// Least distance between two pairs of beams.
    pub struct CrosstalkSpacing {
        /// Diameter of the patch of light at the receiver.
        spot ("d"): Length,
        /// Least distance between the axes.
        least ("amin"): Length,
        /// Distance to spare; below zero where the pairs are too near.
        spare ("a − amin"): Length,
        /// Whether they are far enough apart.
        verdict ("–"): LimitVerdict,
    }
    formula "d = 2 · R · tan α\namin = R · tan(α + δ) + D / 2"
    valid "Parallel pairs with the same direction of light, without shiny faces near; light beyond the printed half angle is not nothing."
    source { work: "geometry of a cone", clause: "", evidence: Physics, seen: "right triangle; the patch of light agrees with a through-beam sensor's data sheet" }
    by crosstalk
}

fn crosstalk(pair: &BeamCrosstalkSpacing) -> Result<CrosstalkSpacing, OutOfReach> {
    positive("range", pair.range, "16 ft")?;
    not_negative("lens", pair.lens, "20 mm")?;
    not_negative("spacing", pair.spacing, "2 ft")?;
    not_negative("misalignment", pair.misalignment, "1°")?;
    positive("half_angle", pair.half_angle, "2°")?;
    let widest = pair.half_angle.base() + pair.misalignment.base();
    if widest > std::f64::consts::FRAC_PI_4 {
        return Err(OutOfReach::new(
            "half_angle",
            "a cone wider than 45° to a side is no beam; use the maker's distances",
        ));
    }
    let least = pair.range * widest.tan() + pair.lens / 2.0;
    Ok(CrosstalkSpacing {
        spot: pair.range * (2.0 * pair.half_angle.base().tan()),
        least,
        spare: pair.spacing - least,
        verdict: verdict(is_at_least(pair.spacing, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn pair(range: f64, half: f64, tilt: f64) -> BeamCrosstalkSpacing {
        BeamCrosstalkSpacing {
            range: Length::from_base(range),
            half_angle: Angle::from_base(half.to_radians()),
            misalignment: Angle::from_base(tilt.to_radians()),
            lens: Length::from_base(0.02),
            spacing: Length::from_base(1.0),
        }
    }

    proptest! {
        #[test]
        fn the_receiver_lies_outside_the_patch_of_light(
            range in 0.5..40.0, half in 0.2..10.0, tilt in 0.0..5.0
        ) {
            let found = pair(range, half, tilt).evaluate().unwrap();
            prop_assert!(found.least.base() >= found.spot.base() / 2.0 + 0.01 - 1e-12);
            prop_assert!(found.least <= pair(range, half, tilt + 0.5).evaluate().unwrap().least);
        }
    }

    #[test]
    fn a_flood_light_is_refused() {
        assert_eq!(
            pair(5.0, 60.0, 0.0).evaluate().unwrap_err().input,
            "half_angle"
        );
    }
}
