//! What a round steel bollard holds in bending, and the energy that its foot takes.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Energy, Force, Length, Pressure, Quantity as _, Ratio, Torque, Volume};

formula! {
    /// Sideways force at which the foot of a pipe bollard gives way, and the energy it takes while leaning.
    ///
    /// The foot bends like a hinge at its full plastic moment until the lean that is given; concrete fill is not
    /// counted. The footing has to hold that moment in the ground: see `post-embedment-free`. An estimate for a
    /// bollard that guards against bumps; where security asks for a rating, only a tested assembly has one.
    pub struct BollardBending = "bollard-bending" in Standing {
        /// Outside diameter of the pipe.
        diameter ("D"): Length,
        /// Wall of the pipe.
        wall ("t"): Length,
        /// Yield strength of the steel.
        yield_strength ("Fy"): Pressure,
        /// Height of the vehicle's bumper above the foot.
        height ("h"): Length,
        /// How far the bollard may lean at that height.
        lean ("x"): Length,
        /// Energy of the vehicle; 0 to leave it out.
        energy ("E"): Energy,
    }
    gives
    /// Force and energy of a bollard.
    pub struct BollardStrength {
        /// Plastic section modulus.
        plastic_modulus ("Z"): Volume,
        /// Plastic moment.
        moment ("Mp"): Torque,
        /// Force at the height of the bumper.
        force ("F"): Force,
        /// Energy taken over the lean.
        taken ("W"): Energy,
        /// Share of the vehicle's energy that is taken; 1 and more stops it. 0 where no energy was given.
        share ("W / E"): Ratio,
    }
    formula "Z = (D³ − (D − 2 · t)³) / 6\nMp = Z · Fy\nF = Mp / h\nW = Mp · x / h"
    valid "Round steel pipe with a wall that does not buckle (D / t up to 60), held in a footing that does not give; lean up to half the height."
    source { work: "plastic bending of a round tube", clause: "", evidence: Physics, seen: "integration over the section" }
    by bending
}

fn bending(bollard: &BollardBending) -> Result<BollardStrength, OutOfReach> {
    positive("diameter", bollard.diameter, "6.625 in")?;
    positive("wall", bollard.wall, "0.28 in")?;
    positive("yield_strength", bollard.yield_strength, "35 ksi")?;
    positive("height", bollard.height, "18 in")?;
    not_negative("lean", bollard.lean, "6 in")?;
    not_negative("energy", bollard.energy, "5,000 ft·lbf")?;
    let (outside, wall) = (bollard.diameter.base(), bollard.wall.base());
    let slenderness = Ratio::from_base(outside / wall);
    within(
        "wall",
        slenderness,
        2.0,
        60.0,
        "give the wall of the pipe, no more than half its diameter and no less than a sixtieth: a thinner one buckles",
    )?;
    let height = bollard.height.base();
    if bollard.lean.base() > height / 2.0 {
        return Err(OutOfReach::new(
            "lean",
            "beyond half its height the bollard lies down and lets the vehicle over it",
        ));
    }
    let modulus = (outside.powi(3) - (outside - 2.0 * wall).powi(3)) / 6.0;
    let moment = modulus * bollard.yield_strength.base();
    let taken = moment * bollard.lean.base() / height;
    let energy = bollard.energy.base();
    Ok(BollardStrength {
        plastic_modulus: Volume::from_base(modulus),
        moment: Torque::from_base(moment),
        force: Force::from_base(moment / height),
        taken: Energy::from_base(taken),
        share: Ratio::from_base(if energy > 0.0 { taken / energy } else { 0.0 }),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bollard(wall: f64, height: f64) -> BollardStrength {
        BollardBending {
            diameter: Length::from_base(0.168),
            wall: Length::from_base(wall),
            yield_strength: Pressure::from_base(240e6),
            height: Length::from_base(height),
            lean: Length::from_base(0.15),
            energy: Energy::from_base(8e3),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn a_thicker_wall_takes_more_and_a_higher_bumper_less(wall in 0.003..0.05, height in 0.35..1.0) {
            prop_assert!(bollard(wall + 1e-3, height).taken > bollard(wall, height).taken);
            prop_assert!(bollard(wall, height + 0.05).force < bollard(wall, height).force);
        }
    }

    #[test]
    fn a_bollard_that_lies_down_is_refused() {
        let flat = BollardBending {
            diameter: Length::from_base(0.168),
            wall: Length::from_base(0.007),
            yield_strength: Pressure::from_base(240e6),
            height: Length::from_base(0.5),
            lean: Length::from_base(0.3),
            energy: Energy::from_base(0.0),
        };
        assert_eq!(flat.evaluate().unwrap_err().input, "lean");
    }
}
