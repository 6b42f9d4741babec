//! Moment of the wind about the hinge of a turning leaf.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Force, Length, Quantity as _, Ratio, Torque};
use std::f64::consts::FRAC_PI_2;

formula! {
    /// Moment of the wind about the hinge line of a leaf that the wind meets at an angle.
    ///
    /// The force stays nearly whole until the leaf is turned well out of the wind: at 30° two thirds are left. The law is
    /// Hutton's, taken by experiment on flat plates and long used for roofs; near 70° it is a little above 1. The codes
    /// of practice let the force act off the middle: by a fifth of the length in ASCE 7, by a quarter for signs in
    /// EN 1991-1-4; toward the free end is the hard way. Where the wind's direction is not known, take it square
    /// to the leaf in every position.
    pub struct WindOnTurningLeaf = "wind-on-turning-leaf" in Wind {
        /// Force on the leaf with the wind square to it.
        square_force ("F"): Force,
        /// Length of the leaf from hinge line to free end.
        length ("L"): Length,
        /// Distance of the middle of the leaf's face from the hinge line.
        middle ("r"): Length,
        /// How far off the middle the force acts, as a share of the length: 0.2 in ASCE 7, 0.25 in EN 1991-1-4.
        eccentricity ("e"): Ratio,
        /// Angle between the wind and the leaf: 90° when it blows square to it, 0° along it.
        angle ("γ"): Angle,
    }
    gives
    /// Moment of the wind about the hinge.
    pub struct WindMoment {
        /// Share of the square force that is left at this angle.
        share ("n"): Ratio,
        /// Force square to the leaf.
        force ("Fn"): Force,
        /// Moment about the hinge line.
        moment ("M"): Torque,
        /// Force at the free end that would hold the leaf.
        end_force ("Fe"): Force,
    }
    formula "n = sin(γ)^(1.84 · cos γ − 1)\nFn = n · F\nM = Fn · (r + e · L)\nFe = M / L"
    valid "Flat leaves; wind from along the leaf to square to it. A gust that finds the leaf moving adds the leaf's own momentum, which is not counted."
    source { work: "Hutton's law for wind on inclined planes", clause: "", evidence: Seen, seen: "formula and table in a 19th-century pocketbook of engineering formulae (Molesworth, pressure of wind on roofs after Unwin): https://tekniskkulturarv.dk/book/a48005b8-d768-40d2-ad2d-cf3321a8ab02?page=155" }
    by wind_moment
}

fn wind_moment(leaf: &WindOnTurningLeaf) -> Result<WindMoment, OutOfReach> {
    not_negative("square_force", leaf.square_force, "900 lbf")?;
    positive("length", leaf.length, "10 ft")?;
    if !(0.0..=leaf.length.base()).contains(&leaf.middle.base()) {
        return Err(OutOfReach::new(
            "middle",
            "the middle of the face lies between hinge line and free end",
        ));
    }
    if !(0.0..=0.5).contains(&leaf.eccentricity.base()) {
        return Err(OutOfReach::new(
            "eccentricity",
            "give a share of the length from 0 to 0.5, such as 0.2",
        ));
    }
    let angle = leaf.angle.base();
    if !(0.0..=FRAC_PI_2 + 1e-9).contains(&angle) {
        return Err(OutOfReach::new(
            "angle",
            "give the angle between wind and leaf, from 0° along it to 90° square to it",
        ));
    }
    let share = angle.sin().powf(1.84 * angle.cos() - 1.0);
    let force = leaf.square_force * share;
    let arm = leaf.middle + leaf.length * leaf.eccentricity;
    Ok(WindMoment {
        share: Ratio::from_base(share),
        force,
        moment: Torque::from_base(force.base() * arm.base()),
        end_force: force * (arm.base() / leaf.length.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(degrees: f64, middle: f64) -> Result<WindMoment, OutOfReach> {
        WindOnTurningLeaf {
            square_force: Force::from_base(1000.0),
            length: Length::from_base(4.0),
            middle: Length::from_base(middle),
            eccentricity: Ratio::from_base(0.2),
            angle: Angle::from_base(degrees.to_radians()),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn the_share_rises_to_about_one_and_never_falls_below_the_projected_part(degrees in 0.0..90.0) {
            let share = at(degrees, 2.0).unwrap().share.base();
            prop_assert!((0.0..1.025).contains(&share));
            prop_assert!(share >= degrees.to_radians().sin() - 1e-9);
        }

        #[test]
        fn a_middle_farther_out_turns_harder(degrees in 1.0..90.0, middle in 0.5..3.0) {
            prop_assert!(at(degrees, middle).unwrap().moment < at(degrees, middle + 0.1).unwrap().moment);
        }
    }

    #[test]
    fn square_to_the_leaf_all_of_it_acts() {
        let square = at(90.0, 2.0).unwrap();
        assert!((square.share.base() - 1.0).abs() < 1e-12);
        assert!((square.moment.base() - 2800.0).abs() < 1e-6);
        assert_eq!(at(91.0, 2.0).unwrap_err().input, "angle");
        assert_eq!(at(45.0, 5.0).unwrap_err().input, "middle");
    }
}
