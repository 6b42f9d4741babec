//! The smallest square pad that holds.

use super::concrete::within;
use super::pad::weight;
use super::pad_bearing::pressure;
use super::pad_sliding::resistance;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, MassDensity, Pressure, Quantity as _, Ratio, Torque, Volume};

formula! {
    /// Side of the smallest square pad of a given thickness that neither tips, nor slides, nor sinks.
    ///
    /// Each of the three asks for a side of its own; the largest one is the answer. The force may come from any of the
    /// four sides. Anchors, edges and frost ask for sizes of their own, see there; round the side up to what the form
    /// or the auger gives.
    pub struct PadSmallest = "pad-smallest" in Standing {
        /// Thickness of the pad.
        thickness ("t"): Length,
        /// Density of the concrete: 150 lb/ft³ is usual.
        density ("ρ"): MassDensity,
        /// Weight of what stands on the pad, over its middle.
        weight_on_top ("W2"): Force,
        /// Sideways force.
        force ("H"): Force,
        /// Height of the force above the bottom of the pad.
        height ("h"): Length,
        /// Further moment that tips the same way.
        moment ("M2"): Torque,
        /// Coefficient of friction of the soil; 0 for clay and silt.
        friction ("μ"): Ratio,
        /// Cohesion of the soil; 0 for sand and gravel.
        cohesion ("c"): Pressure,
        /// Allowed bearing pressure of the soil.
        allowed ("q"): Pressure,
        /// Safety that is asked for against tipping and sliding: 1.5 is usual.
        safety ("S"): Ratio,
    }
    gives
    /// The smallest square pad.
    pub struct SmallestPad {
        /// Side that tipping asks for.
        for_tipping ("Bt"): Length,
        /// Side that sliding asks for.
        for_sliding ("Bs"): Length,
        /// Side that bearing asks for.
        for_bearing ("Bb"): Length,
        /// Side of the pad.
        side ("B"): Length,
        /// Concrete of that pad.
        volume ("V"): Volume,
    }
    formula "W = ρ · g · B² · t + W2, Mo = H · h + M2\ntipping: W · B / 2 ≥ S · Mo\nsliding: μ · W or min(c · B², W / 2) ≥ S · H\nbearing: pmax(W, Mo, B) ≤ q\nB: the smallest side at which all three hold"
    valid "Square pads up to 10 m of side on undisturbed soil; force square to an edge. Standard gravity."
    source { work: "statics", clause: "the three calculations of pads", evidence: Physics, seen: "sides found by trial until the printed safeties of the sign pad come out" }
    by smallest
}

/// Largest side that is tried, in meters.
const LARGEST: f64 = 10.0;

fn smallest(pad: &PadSmallest) -> Result<SmallestPad, OutOfReach> {
    check(pad)?;
    let total = |side: f64| {
        let block = weight(side, side, pad.thickness.base(), pad.density.base());
        block + pad.weight_on_top.base()
    };
    let moment = pad.force.base() * pad.height.base() + pad.moment.base();
    let safety = pad.safety.base();
    let (friction, cohesion) = (pad.friction.base(), pad.cohesion.base());
    resistance(1.0, 1.0, friction, cohesion)?;
    let stands = |side: f64| total(side) * side / 2.0 >= safety * moment;
    let stays = |side: f64| {
        resistance(total(side), side * side, friction, cohesion)
            .is_ok_and(|resistance| resistance >= safety * pad.force.base())
    };
    let carries = |side: f64| {
        pressure(total(side), moment, side, side)
            .is_some_and(|(greatest, _)| greatest <= pad.allowed.base())
    };
    let for_tipping = least_side("force", stands)?;
    let for_sliding = least_side("friction", stays)?;
    let for_bearing = least_side("allowed", carries)?;
    let side = for_tipping.max(for_sliding).max(for_bearing);
    Ok(SmallestPad {
        for_tipping: Length::from_base(for_tipping),
        for_sliding: Length::from_base(for_sliding),
        for_bearing: Length::from_base(for_bearing),
        side: Length::from_base(side),
        volume: Volume::from_base(side * side * pad.thickness.base()),
    })
}

/// The smallest side from which a condition holds.
fn least_side(input: &'static str, holds: impl Fn(f64) -> bool) -> Result<f64, OutOfReach> {
    if !holds(LARGEST) {
        return Err(OutOfReach::new(
            input,
            "no square pad up to 10 m of side does it; make the pad thicker, brace the load, or look for firmer ground",
        ));
    }
    let (mut low, mut high) = (0.0, LARGEST);
    for _ in 0..100 {
        let middle = f64::midpoint(low, high);
        if holds(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Ok(high)
}

fn check(pad: &PadSmallest) -> Result<(), OutOfReach> {
    positive("thickness", pad.thickness, "18 in")?;
    if !(500.0..=5000.0).contains(&pad.density.base()) {
        return Err(OutOfReach::new(
            "density",
            "give the density of the concrete, such as 150 lb/ft³, from 32 to 312 lb/ft³",
        ));
    }
    not_negative("weight_on_top", pad.weight_on_top, "200 lbf")?;
    positive("force", pad.force, "500 lbf")?;
    not_negative("height", pad.height, "3 ft")?;
    not_negative("moment", pad.moment, "200 lbf·ft")?;
    within(
        "friction",
        pad.friction,
        0.0,
        1.0,
        "give the coefficient of friction of the soil, such as 0.25, or 0 where cohesion counts",
    )?;
    not_negative("cohesion", pad.cohesion, "130 psf")?;
    positive("allowed", pad.allowed, "2,000 psf")?;
    within(
        "safety",
        pad.safety,
        1.0,
        5.0,
        "give the safety that is asked for, such as 1.5, from 1 to 5",
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::standing::{PadBearing, PadOverturning, PadSliding};
    use proptest::prelude::*;
    use quantity::Area;

    fn pad(force: f64, height: f64) -> PadSmallest {
        PadSmallest {
            thickness: Length::from_base(0.45),
            density: MassDensity::from_base(2400.0),
            weight_on_top: Force::from_base(700.0),
            force: Force::from_base(force),
            height: Length::from_base(height),
            moment: Torque::from_base(50.0),
            friction: Ratio::from_base(0.25),
            cohesion: Pressure::from_base(0.0),
            allowed: Pressure::from_base(95e3),
            safety: Ratio::from_base(1.5),
        }
    }

    proptest! {
        /// The three calculations of pads agree: just larger holds, and at the side itself one of them is used up.
        #[test]
        fn the_pad_holds_and_a_smaller_one_does_not(force in 100.0..9000.0, height in 0.3..2.5) {
            let asked = pad(force, height);
            let side = asked.evaluate().unwrap().side.base();
            let holds = |side: f64| {
                let side = Length::from_base(side);
                let tipping = PadOverturning {
                    length: side, width: side, thickness: asked.thickness, density: asked.density,
                    weight_on_top: asked.weight_on_top, force: asked.force, height: asked.height,
                    moment: asked.moment,
                }.evaluate().unwrap();
                let sliding = PadSliding {
                    weight: tipping.weight, area: Area::from_base(side.base().powi(2)),
                    friction: asked.friction, cohesion: asked.cohesion, force: asked.force,
                }.evaluate().unwrap();
                let bearing = PadBearing {
                    weight: tipping.weight, moment: tipping.overturning, length: side, width: side,
                    allowed: asked.allowed,
                }.evaluate();
                tipping.safety.base() >= 1.5 && sliding.safety.base() >= 1.5
                    && bearing.is_ok_and(|found| found.used.base() <= 1.0)
            };
            prop_assert!(holds(side * 1.0001));
            prop_assert!(!holds(side * 0.9999));
        }
    }

    #[test]
    fn soil_that_cannot_carry_the_pad_itself_is_refused() {
        let mut soft = pad(500.0, 0.9);
        soft.allowed = Pressure::from_base(5e3);
        assert_eq!(soft.evaluate().unwrap_err().input, "allowed");
    }
}
