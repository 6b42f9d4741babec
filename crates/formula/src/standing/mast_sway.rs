//! How far the top of a mast turns in the wind.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque};

formula! {
    /// Turn and movement of the top of a mast under a force there, a force spread over its height and a moment, with
    /// the turning of its foot.
    ///
    /// A camera or a radio sees the turn, not the movement. The wind on the mast itself is the spread force; what sits
    /// above the top of the mast brings its force times its height above that top as a moment. A mast may swing in gusts
    /// by more than this still figure: a hand push on the finished mast shows what it does.
    pub struct MastSway = "mast-sway" in Standing {
        /// Sideways force at the top.
        top_force ("P"): Force,
        /// Sideways force spread evenly over the height.
        spread_force ("W"): Force,
        /// Moment at the top that turns the same way.
        moment ("M"): Torque,
        /// Height of the top above the foot.
        height ("h"): Length,
        /// Modulus of elasticity of the mast.
        modulus ("E"): Pressure,
        /// Second moment of area of the section in the plane of bending.
        second_moment ("I"): SecondMomentOfArea,
        /// Angle by which the foot turns.
        base_turn ("φ"): Angle,
    }
    gives
    /// Turn and movement of the top of a mast.
    pub struct Sway {
        /// Turn of the top.
        turn ("θ"): Angle,
        /// Movement of the top.
        movement ("y"): Length,
    }
    formula "θ = P · h² / (2 · E · I) + W · h² / (6 · E · I) + M · h / (E · I) + φ\ny = P · h³ / (3 · E · I) + W · h³ / (8 · E · I) + M · h² / (2 · E · I) + h · tan φ"
    valid "Straight masts of one section, small movements, steel below yield; foot turning by less than 10°; no swinging in time with gusts."
    source { work: "strength of materials: cantilever with a force, a spread load and a moment", clause: "", evidence: Physics, seen: "beam tables of any handbook; checked by integrating the curvature" }
    by sway
}

/// Most that a foot may turn, in radians, before movements stop being small.
const LARGEST_TURN: f64 = 0.1745;

fn sway(mast: &MastSway) -> Result<Sway, OutOfReach> {
    not_negative("top_force", mast.top_force, "20 lbf")?;
    not_negative("spread_force", mast.spread_force, "30 lbf")?;
    not_negative("moment", mast.moment, "10 lbf·ft")?;
    positive("height", mast.height, "12 ft")?;
    positive("modulus", mast.modulus, "29,000 ksi")?;
    positive("second_moment", mast.second_moment, "3 in⁴")?;
    if !(0.0..=LARGEST_TURN).contains(&mast.base_turn.base()) {
        return Err(OutOfReach::new(
            "base_turn",
            "give the angle by which the foot turns, from 0° to 10°, such as 0.2°",
        ));
    }
    let stiffness = mast.modulus.base() * mast.second_moment.base();
    let (force, spread) = (mast.top_force.base(), mast.spread_force.base());
    let (moment, height) = (mast.moment.base(), mast.height.base());
    let turn = (force / 2.0 + spread / 6.0) * height + moment;
    let movement = (force / 3.0 + spread / 8.0) * height + moment / 2.0;
    let foot = mast.base_turn.base();
    Ok(Sway {
        turn: Angle::from_base(turn * height / stiffness + foot),
        movement: Length::from_base(movement * height * height / stiffness + height * foot.tan()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::standing::PostDeflection;
    use proptest::prelude::*;

    fn mast(top: f64, spread: f64, height: f64) -> MastSway {
        MastSway {
            top_force: Force::from_base(top),
            spread_force: Force::from_base(spread),
            moment: Torque::from_base(30.0),
            height: Length::from_base(height),
            modulus: Pressure::from_base(200e9),
            second_moment: SecondMomentOfArea::from_base(1e-6),
            base_turn: Angle::from_base(0.001),
        }
    }

    fn turn(top: f64, spread: f64, height: f64) -> f64 {
        mast(top, spread, height).evaluate().unwrap().turn.base()
    }

    proptest! {
        #[test]
        fn the_higher_the_mast_the_more_it_turns(top in 0.0..500.0, spread in 0.0..500.0, height in 0.5..8.0) {
            prop_assert!(turn(top, spread, height) < turn(top, spread, height * 1.05));
        }

        #[test]
        fn a_force_at_the_top_turns_it_three_times_as_far_as_one_spread(force in 1.0..500.0, height in 0.5..8.0) {
            let bare = turn(0.0, 0.0, height);
            let (top, spread) = (turn(force, 0.0, height) - bare, turn(0.0, force, height) - bare);
            prop_assert!((top / spread - 3.0).abs() < 1e-6);
        }

        #[test]
        fn at_the_top_it_moves_as_a_post_does(force in 1.0..500.0, height in 0.5..8.0) {
            let mast = mast(force, 0.0, height);
            let post = PostDeflection {
                force: mast.top_force,
                moment: mast.moment,
                height: mast.height,
                latch_height: mast.height,
                modulus: mast.modulus,
                second_moment: mast.second_moment,
                base_turn: mast.base_turn,
            };
            let (mast, post) = (mast.evaluate().unwrap().movement, post.evaluate().unwrap().movement);
            prop_assert!((mast.base() / post.base() - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn no_height_and_a_foot_that_lies_down_are_refused() {
        assert!(mast(10.0, 10.0, 0.0).evaluate().is_err());
        let lies = MastSway {
            base_turn: Angle::from_base(0.2),
            ..mast(10.0, 10.0, 3.0)
        };
        assert_eq!(lies.evaluate().unwrap_err().input, "base_turn");
    }
}
