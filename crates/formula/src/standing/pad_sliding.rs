//! Whether a pad slides.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Pressure, Quantity as _, Ratio};

formula! {
    /// Safety of a pad against sliding on its soil, by friction or by cohesion.
    ///
    /// A soil resists with one or the other: friction of the weight on sand and gravel, cohesion under the bottom on
    /// clay and silt, and cohesion counts for no more than half the weight. The ground in front is not counted. Uplift
    /// comes off the weight first.
    pub struct PadSliding = "pad-sliding" in Standing {
        /// Weight that presses on the bottom.
        weight ("W"): Force,
        /// Area of the bottom.
        area ("A"): Area,
        /// Coefficient of friction of the soil; 0 for clay and silt.
        friction ("μ"): Ratio,
        /// Cohesion of the soil; 0 for sand and gravel.
        cohesion ("c"): Pressure,
        /// Sideways force.
        force ("H"): Force,
    }
    gives
    /// Safety of a pad against sliding.
    pub struct PadSlide {
        /// Resistance against sliding.
        resistance ("R"): Force,
        /// Safety against sliding.
        safety ("R / H"): Ratio,
    }
    formula "R = μ · W, or on clay and silt min(c · A, W / 2)\nsafety = R / H"
    valid "Level bottom on undisturbed soil; no water pressure under it."
    source { work: "IBC", clause: "1806.3 with table 1806.2; half the dead load as the limit of cohesion", evidence: Seen, seen: "the table with its notes in a code change proposal; the limit of half the weight from memory, it only lowers the resistance" }
    by sliding
}

fn sliding(pad: &PadSliding) -> Result<PadSlide, OutOfReach> {
    positive("weight", pad.weight, "2,500 lbf")?;
    positive("area", pad.area, "6 ft²")?;
    within(
        "friction",
        pad.friction,
        0.0,
        1.0,
        "give the coefficient of friction of the soil, such as 0.25, or 0 where cohesion counts",
    )?;
    not_negative("cohesion", pad.cohesion, "130 psf")?;
    positive("force", pad.force, "500 lbf")?;
    let resistance = resistance(
        pad.weight.base(),
        pad.area.base(),
        pad.friction.base(),
        pad.cohesion.base(),
    )?;
    Ok(PadSlide {
        resistance: Force::from_base(resistance),
        safety: Ratio::from_base(resistance / pad.force.base()),
    })
}

/// Resistance against sliding in newtons: friction or cohesion, never both.
pub(super) fn resistance(
    weight: f64,
    area: f64,
    friction: f64,
    cohesion: f64,
) -> Result<f64, OutOfReach> {
    match (friction > 0.0, cohesion > 0.0) {
        (true, false) => Ok(friction * weight),
        (false, true) => Ok((cohesion * area).min(weight / 2.0)),
        _ => Err(OutOfReach::new(
            "friction",
            "give either friction or cohesion and 0 for the other, as the soil table has them",
        )),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn pad(weight: f64, friction: f64, cohesion: f64) -> PadSliding {
        PadSliding {
            weight: Force::from_base(weight),
            area: Area::from_base(0.6),
            friction: Ratio::from_base(friction),
            cohesion: Pressure::from_base(cohesion),
            force: Force::from_base(900.0),
        }
    }

    proptest! {
        #[test]
        fn friction_grows_with_the_weight_and_cohesion_only_up_to_half_of_it(weight in 10.0..1e5) {
            let on_sand = |weight: f64| pad(weight, 0.25, 0.0).evaluate().unwrap().safety;
            prop_assert!(on_sand(weight * 1.1) > on_sand(weight));
            let on_clay = pad(weight, 0.0, 6224.0).evaluate().unwrap();
            prop_assert!(on_clay.resistance.base() <= weight / 2.0 + 1e-9);
        }
    }

    #[test]
    fn both_or_neither_is_refused() {
        assert_eq!(
            pad(1e4, 0.25, 6224.0).evaluate().unwrap_err().input,
            "friction"
        );
        assert_eq!(pad(1e4, 0.0, 0.0).evaluate().unwrap_err().input, "friction");
    }
}
