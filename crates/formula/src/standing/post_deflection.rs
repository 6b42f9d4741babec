//! How far a post moves where the latch meets it.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque};

formula! {
    /// Movement of a post at the height of the latch under a force and a moment, with the turning of its foot.
    ///
    /// The post is held at its foot, which may turn by a given angle: a footing in soft ground that moves 1/2 in at
    /// grade turns the post by about that over two thirds of its depth. The moment acts at the height of the force,
    /// as the weight of a leaf does through its hinges.
    pub struct PostDeflection = "post-deflection" in Standing {
        /// Sideways force.
        force ("P"): Force,
        /// Moment that turns the post the same way, at the height of the force.
        moment ("M"): Torque,
        /// Height of force and moment above the foot.
        height ("a"): Length,
        /// Height of the latch, or of the point asked about, above the foot.
        latch_height ("z"): Length,
        /// Modulus of elasticity of the post.
        modulus ("E"): Pressure,
        /// Second moment of area of the section in the plane of bending.
        second_moment ("I"): SecondMomentOfArea,
        /// Angle by which the foot turns.
        base_turn ("φ"): Angle,
    }
    gives
    /// Movement of a post at the latch.
    pub struct PostMovement {
        /// Movement from bending of the post.
        bending ("yb"): Length,
        /// Movement from turning of the foot.
        turning ("yφ"): Length,
        /// Movement at the latch.
        movement ("y"): Length,
    }
    formula "z ≤ a: yb = P · z² · (3 · a − z) / (6 · E · I) + M · z² / (2 · E · I)\nz > a: yb = P · a² · (3 · z − a) / (6 · E · I) + M · a · (2 · z − a) / (2 · E · I)\nyφ = z · tan φ\ny = yb + yφ"
    valid "Straight posts of one section, small movements, steel below yield; foot turning by less than 10°."
    source { work: "strength of materials: cantilever with a force and a moment", clause: "", evidence: Physics, seen: "beam tables of any handbook; checked by integrating the curvature" }
    by deflection
}

/// Most that a foot may turn, in radians, before movements stop being small.
const LARGEST_TURN: f64 = 0.1745;

fn deflection(post: &PostDeflection) -> Result<PostMovement, OutOfReach> {
    not_negative("force", post.force, "150 lbf")?;
    not_negative("moment", post.moment, "2,000 lbf·ft")?;
    positive("height", post.height, "4 ft")?;
    not_negative("latch_height", post.latch_height, "4 ft")?;
    positive("modulus", post.modulus, "29,000 ksi")?;
    positive("second_moment", post.second_moment, "12 in⁴")?;
    if !(0.0..=LARGEST_TURN).contains(&post.base_turn.base()) {
        return Err(OutOfReach::new(
            "base_turn",
            "give the angle by which the foot turns, from 0° to 10°, such as 0.2°",
        ));
    }
    let stiffness = post.modulus.base() * post.second_moment.base();
    let (a, z) = (post.height.base(), post.latch_height.base());
    let below = z.min(a);
    let above = (z - a).max(0.0);
    let of_force = below * below * (3.0 * a - below) / 6.0 + above * a * a / 2.0;
    let of_moment = below * below / 2.0 + above * a;
    let bending = (post.force.base() * of_force + post.moment.base() * of_moment) / stiffness;
    let turning = z * post.base_turn.base().tan();
    Ok(PostMovement {
        bending: Length::from_base(bending),
        turning: Length::from_base(turning),
        movement: Length::from_base(bending + turning),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn movement(height: f64, latch: f64, second_moment: f64) -> f64 {
        let post = PostDeflection {
            force: Force::from_base(700.0),
            moment: Torque::from_base(1500.0),
            height: Length::from_base(height),
            latch_height: Length::from_base(latch),
            modulus: Pressure::from_base(200e9),
            second_moment: SecondMomentOfArea::from_base(second_moment),
            base_turn: Angle::from_base(0.002),
        };
        post.evaluate().unwrap().movement.base()
    }

    proptest! {
        #[test]
        fn the_higher_the_latch_the_more_it_moves(height in 0.2..3.0, latch in 0.0..3.0) {
            prop_assert!(movement(height, latch, 4e-6) < movement(height, latch + 0.05, 4e-6));
        }

        #[test]
        fn a_stiffer_post_moves_less(height in 0.2..3.0, latch in 0.1..3.0, second in 1e-7..1e-4) {
            prop_assert!(movement(height, latch, second * 1.1) < movement(height, latch, second));
        }

        #[test]
        fn the_line_has_no_step_at_the_force(height in 0.2..3.0) {
            let (below, above) = (height * (1.0 - 1e-9), height * (1.0 + 1e-9));
            prop_assert!((movement(height, below, 4e-6) - movement(height, above, 4e-6)).abs() < 1e-9);
        }
    }
}
