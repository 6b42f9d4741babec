//! Whether a pad tips over its edge.

use super::pad::Pad;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Force, Length, MassDensity, Quantity as _, Ratio, Torque};

formula! {
    /// Safety of a pad against tipping over its edge.
    ///
    /// The pad stands by its weight alone: the ground beside it is not counted, it may be dug away. Measure the height
    /// of the force from the bottom of the pad. Weight that stands off center toward the edge goes in as a moment.
    /// The building code asks for 1.5 for walls that hold back earth, and the same is used for pads.
    pub struct PadOverturning = "pad-overturning" in Standing {
        /// Length of the pad in the direction of the force.
        length ("B"): Length,
        /// Width of the pad across the force.
        width ("L"): Length,
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
    }
    gives
    /// Safety of a pad against tipping.
    pub struct PadTipping {
        /// Weight of the pad.
        pad_weight ("W1"): Force,
        /// Weight of pad and what stands on it.
        weight ("W"): Force,
        /// Moment that tips the pad.
        overturning ("Mo"): Torque,
        /// Moment that holds it.
        resisting ("Mr"): Torque,
        /// Safety against tipping.
        safety ("Mr / Mo"): Ratio,
        /// How far the weight's line of action lies from the middle of the bottom.
        eccentricity ("e"): Length,
    }
    formula "W1 = ρ · g · B · L · t\nW = W1 + W2\nMo = H · h + M2\nMr = W · B / 2\nsafety = Mr / Mo\ne = Mo / W"
    valid "Rectangular pads, force square to an edge, ground that does not give way under the edge. Standard gravity."
    source { work: "statics", clause: "factor 1.5: IBC 1807.2.3", evidence: Physics, seen: "calculations for a freestanding sign in a city archive; a question of a structures course" }
    by overturning
}

fn overturning(pad: &PadOverturning) -> Result<PadTipping, OutOfReach> {
    let block = Pad::checked(pad.length, pad.width, pad.thickness, pad.density)?;
    not_negative("weight_on_top", pad.weight_on_top, "200 lbf")?;
    not_negative("force", pad.force, "500 lbf")?;
    not_negative("height", pad.height, "3 ft")?;
    not_negative("moment", pad.moment, "200 lbf·ft")?;
    let overturning = pad.force.base() * pad.height.base() + pad.moment.base();
    if overturning <= 0.0 {
        return Err(OutOfReach::new(
            "force",
            "nothing tips this pad; give a force with its height, or a moment",
        ));
    }
    let weight = block.weight + pad.weight_on_top.base();
    let resisting = weight * block.length / 2.0;
    Ok(PadTipping {
        pad_weight: Force::from_base(block.weight),
        weight: Force::from_base(weight),
        overturning: Torque::from_base(overturning),
        resisting: Torque::from_base(resisting),
        safety: Ratio::from_base(resisting / overturning),
        eccentricity: Length::from_base(overturning / weight),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn pad(length: f64, force: f64) -> PadTipping {
        PadOverturning {
            length: Length::from_base(length),
            width: Length::from_base(0.8),
            thickness: Length::from_base(0.5),
            density: MassDensity::from_base(2400.0),
            weight_on_top: Force::from_base(600.0),
            force: Force::from_base(force),
            height: Length::from_base(0.9),
            moment: Torque::from_base(0.0),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn a_longer_pad_is_safer_and_a_stronger_push_less(length in 0.2..4.0, force in 1.0..9000.0) {
            prop_assert!(pad(length * 1.1, force).safety > pad(length, force).safety);
            prop_assert!(pad(length, force * 1.1).safety < pad(length, force).safety);
        }

        /// At a safety of one the weight acts at the very edge.
        #[test]
        fn the_eccentricity_and_the_safety_say_the_same(length in 0.2..4.0, force in 1.0..9000.0) {
            let found = pad(length, force);
            let share = found.eccentricity.base() / (length / 2.0);
            prop_assert!((share * found.safety.base() - 1.0).abs() < 1e-9);
        }
    }
}
