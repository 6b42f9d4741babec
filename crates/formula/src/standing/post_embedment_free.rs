//! Depth of a post that nothing holds at the ground.

use super::post_embedment_trial::depth;
use super::post_ground::{DEEPEST_COUNTED, Ground, checked};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Pressure, PressurePerDepth, Quantity as _, Ratio};

formula! {
    /// Depth of a post or footing that nothing holds at the ground, by the pole formula.
    ///
    /// Use this one unless a rigid slab or pavement is there to hold the post at the ground and stays there. The
    /// sideways bearing grows with depth, so the depth is found by trial until it agrees with itself. The soil counts
    /// from the ground down; leave out what frost, plowing or a trench will loosen. A square footing counts with its
    /// diagonal. Sign and pole makers' habit of a third of the height in the ground is no substitute.
    pub struct PostEmbedmentFree = "post-embedment-free" in Standing {
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
    /// Depth of a post that nothing holds at the ground.
    pub struct FreeEmbedment {
        /// Sideways bearing at a third of the depth.
        lateral_pressure ("S1"): Pressure,
        /// Length in the formula.
        term ("A"): Length,
        /// Depth that is needed below the ground.
        depth ("d"): Length,
    }
    formula "S1 = F · S · min(d / 3, 12 ft)\nA = 2.34 · P / (S1 · b)\nd = 0.5 · A · (1 + √(1 + 4.36 · h / A)), until d agrees with itself"
    valid "Undisturbed, level ground; no bank, trench or old footing beside it; factor 1 to 2.67; forces of daily use, not multiplied by load factors."
    source { work: "IBC 2018", clause: "1807.3.2.1, equation 18-1; 1806.3.4 for the factor", evidence: Seen, seen: "text of the section at up.codes; footing sheets with their numbers, one of them iterated" }
    by free
}

fn free(post: &PostEmbedmentFree) -> Result<FreeEmbedment, OutOfReach> {
    positive("force", post.force, "300 lbf")?;
    let ground = checked(post.height, post.width, post.lateral, post.lateral_factor)?;
    let term = |depth: f64| 2.34 * post.force.base() / (pressure(&ground, depth) * ground.width);
    let mut low = 0.0;
    let mut high = 1.0;
    while high < 1e4 && depth(term(high), ground.height) > high {
        high *= 2.0;
    }
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if depth(term(middle), ground.height) > middle {
            low = middle;
        } else {
            high = middle;
        }
    }
    if high > 100.0 {
        return Err(OutOfReach::new(
            "force",
            "this needs more than 100 m of depth; look for a wider footing, firmer soil or a smaller force",
        ));
    }
    Ok(FreeEmbedment {
        lateral_pressure: Pressure::from_base(pressure(&ground, high)),
        term: Length::from_base(term(high)),
        depth: Length::from_base(high),
    })
}

/// Sideways bearing at a third of the depth.
fn pressure(ground: &Ground, depth: f64) -> f64 {
    ground.lateral * (depth / 3.0).min(DEEPEST_COUNTED)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::standing::PostEmbedmentTrial;
    use proptest::prelude::*;

    fn post(force: f64, height: f64, width: f64) -> PostEmbedmentFree {
        PostEmbedmentFree {
            force: Force::from_base(force),
            height: Length::from_base(height),
            width: Length::from_base(width),
            lateral: PressurePerDepth::from_base(23_563.0),
            lateral_factor: Ratio::from_base(2.0),
        }
    }

    proptest! {
        #[test]
        fn the_depth_agrees_with_itself(force in 10.0..1e5, height in 0.1..20.0, width in 0.2..3.0) {
            let found = post(force, height, width).evaluate().unwrap();
            let trial = PostEmbedmentTrial {
                force: Force::from_base(force),
                height: Length::from_base(height),
                width: Length::from_base(width),
                lateral_pressure: found.lateral_pressure,
            };
            let again = trial.evaluate().unwrap().depth;
            prop_assert!((again - found.depth).base().abs() < 1e-6 * found.depth.base());
        }

        #[test]
        fn a_wider_footing_needs_less_depth(force in 10.0..1e5, height in 0.1..20.0, width in 0.2..3.0) {
            let narrow = post(force, height, width).evaluate().unwrap();
            let wide = post(force, height, width * 1.2).evaluate().unwrap();
            prop_assert!(wide.depth < narrow.depth);
        }
    }

    #[test]
    fn a_factor_that_nobody_allows_is_refused() {
        let mut wrong = post(1000.0, 2.0, 0.5);
        wrong.lateral_factor = Ratio::from_base(4.0);
        assert_eq!(wrong.evaluate().unwrap_err().input, "lateral_factor");
    }
}
