//! Depth of a post that a slab or pavement holds at the ground.

use super::post_ground::{DEEPEST_COUNTED, checked};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Pressure, PressurePerDepth, Quantity as _, Ratio, Torque};

formula! {
    /// Depth of a post or footing that a rigid slab or pavement holds at the ground, by the pole formula.
    ///
    /// Only where the slab is tied to the footing or closes all around it, carries the reaction, and will stay there.
    /// The slab has to take that reaction, which is larger than the force above. A square footing counts with its
    /// diagonal.
    pub struct PostEmbedmentHeld = "post-embedment-held" in Standing {
        /// Sideways force.
        force ("P"): Force,
        /// Height of the force above the ground.
        height ("h"): Length,
        /// Diameter of the round post or footing, or diagonal of a square one.
        width ("b"): Length,
        /// Sideways bearing of the soil for each unit of depth.
        lateral ("S"): PressurePerDepth,
        /// Allowed multiple of the sideways bearing: 1, or 2 for a pole that takes no harm from 1/2 in of movement.
        lateral_factor ("F"): Ratio,
    }
    gives
    /// Depth of a post that is held at the ground.
    pub struct HeldEmbedment {
        /// Moment in the post at the ground.
        moment ("Mg"): Torque,
        /// Sideways bearing at the full depth.
        lateral_pressure ("S3"): Pressure,
        /// Depth that is needed below the ground.
        depth ("d"): Length,
    }
    formula "Mg = P · h\nS3 = F · S · min(d, 12 ft)\nd = √(4.25 · Mg / (S3 · b)), until d agrees with itself"
    valid "Undisturbed, level ground; no bank, trench or old footing beside it; factor 1 to 2.67; forces of daily use, not multiplied by load factors."
    source { work: "IBC 2018", clause: "1807.3.2.2, equation 18-3; 1806.3.4 for the factor", evidence: Seen, seen: "text of the section at up.codes; footing sheets with their numbers" }
    by held
}

fn held(post: &PostEmbedmentHeld) -> Result<HeldEmbedment, OutOfReach> {
    positive("force", post.force, "300 lbf")?;
    positive("height", post.height, "6 ft")?;
    let ground = checked(post.height, post.width, post.lateral, post.lateral_factor)?;
    let moment = post.force.base() * ground.height;
    let share = 4.25 * moment / (ground.lateral * ground.width);
    let growing = share.cbrt();
    let depth = if growing <= DEEPEST_COUNTED {
        growing
    } else {
        (share / DEEPEST_COUNTED).sqrt()
    };
    Ok(HeldEmbedment {
        moment: Torque::from_base(moment),
        lateral_pressure: Pressure::from_base(ground.lateral * depth.min(DEEPEST_COUNTED)),
        depth: Length::from_base(depth),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::standing::PostEmbedmentFree;
    use proptest::prelude::*;

    fn post(force: f64, height: f64, width: f64) -> PostEmbedmentHeld {
        PostEmbedmentHeld {
            force: Force::from_base(force),
            height: Length::from_base(height),
            width: Length::from_base(width),
            lateral: PressurePerDepth::from_base(23_563.0),
            lateral_factor: Ratio::from_base(1.0),
        }
    }

    proptest! {
        /// Down to 12 ft; beyond it the two formulas stop counting the growth of the bearing at different depths.
        #[test]
        fn a_held_post_needs_less_depth_than_a_free_one(
            force in 10.0..5e3, height in 0.1..5.0, width in 0.4..3.0
        ) {
            let held = post(force, height, width);
            let free = PostEmbedmentFree {
                force: held.force,
                height: held.height,
                width: held.width,
                lateral: held.lateral,
                lateral_factor: held.lateral_factor,
            };
            prop_assert!(held.evaluate().unwrap().depth < free.evaluate().unwrap().depth);
        }

        #[test]
        fn the_depth_agrees_with_itself(force in 10.0..1e6, height in 0.1..20.0, width in 0.2..3.0) {
            let found = post(force, height, width).evaluate().unwrap();
            let square = 4.25 * force * height / (found.lateral_pressure.base() * width);
            prop_assert!((square.sqrt() - found.depth.base()).abs() < 1e-9 * square.sqrt());
        }
    }
}
