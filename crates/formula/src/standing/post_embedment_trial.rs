//! Depth that a post in the ground needs when the sideways bearing of the soil is given.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Pressure, Quantity as _};

formula! {
    /// Depth of a post or footing that nothing holds at the ground, for a given sideways bearing of the soil.
    ///
    /// The sideways bearing is the one at a third of the depth, which is not known beforehand: take a depth, work out
    /// the bearing, and see whether the depth that comes out is no more; `post-embedment-free` does that by itself. A
    /// square post or footing counts with its diagonal. Forces of daily use, not multiplied by load factors.
    pub struct PostEmbedmentTrial = "post-embedment-trial" in Standing {
        /// Sideways force.
        force ("P"): Force,
        /// Height of the force above the ground.
        height ("h"): Length,
        /// Diameter of the round post or footing, or diagonal of a square one.
        width ("b"): Length,
        /// Sideways bearing of the soil at a third of the depth.
        lateral_pressure ("S1"): Pressure,
    }
    gives
    /// Depth for a given sideways bearing.
    pub struct TrialEmbedment {
        /// Length in the formula.
        term ("A"): Length,
        /// Depth that is needed below the ground.
        depth ("d"): Length,
    }
    formula "A = 2.34 · P / (S1 · b)\nd = 0.5 · A · (1 + √(1 + 4.36 · h / A))"
    valid "Undisturbed, level ground; no bank, trench or old footing beside it; nothing at the ground that holds the post."
    source { work: "IBC 2018", clause: "1807.3.2.1, equation 18-1", evidence: Seen, seen: "text of the section at up.codes; footing sheets with their numbers" }
    by trial
}

fn trial(post: &PostEmbedmentTrial) -> Result<TrialEmbedment, OutOfReach> {
    positive("force", post.force, "300 lbf")?;
    not_negative("height", post.height, "6 ft")?;
    positive("width", post.width, "18 in")?;
    positive("lateral_pressure", post.lateral_pressure, "300 psf")?;
    let term = 2.34 * post.force.base() / (post.lateral_pressure.base() * post.width.base());
    Ok(TrialEmbedment {
        term: Length::from_base(term),
        depth: Length::from_base(depth(term, post.height.base())),
    })
}

/// Depth for the term A and the height of the force.
pub(super) fn depth(term: f64, height: f64) -> f64 {
    0.5 * (term + (term * term + 4.36 * height * term).sqrt())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn depth_of(force: f64, height: f64, width: f64, pressure: f64) -> f64 {
        let post = PostEmbedmentTrial {
            force: Force::from_base(force),
            height: Length::from_base(height),
            width: Length::from_base(width),
            lateral_pressure: Pressure::from_base(pressure),
        };
        post.evaluate().unwrap().depth.base()
    }

    proptest! {
        #[test]
        fn more_force_or_height_asks_for_depth_and_wider_or_firmer_for_less(
            force in 10.0..1e5, height in 0.0..20.0, width in 0.1..3.0, pressure in 1e3..1e5
        ) {
            let base = depth_of(force, height, width, pressure);
            prop_assert!(depth_of(force * 1.1, height, width, pressure) > base);
            prop_assert!(depth_of(force, height + 0.1, width, pressure) > base);
            prop_assert!(depth_of(force, height, width * 1.1, pressure) < base);
            prop_assert!(depth_of(force, height, width, pressure * 1.1) < base);
        }

        /// Of the ground's own balance nothing is lost: with the force at the ground the depth is the term itself.
        #[test]
        fn a_force_at_the_ground_needs_the_term(force in 10.0..1e5) {
            let term = 2.34 * force / (5e3 * 0.5);
            prop_assert!((depth_of(force, 0.0, 0.5, 5e3) - term).abs() < 1e-9 * term);
        }
    }
}
