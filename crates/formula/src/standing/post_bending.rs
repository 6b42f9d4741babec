//! Stresses at the foot of a post that stands out of the ground.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque, Volume};

formula! {
    /// Bending, pressing and shear at the foot of a post under a sideways force, a moment and a weight.
    ///
    /// The foot is where the post is held: the top of the footing or of the base plate's weld. A leaf that hangs from
    /// the post brings its weight times its reach as a moment. Elastic stresses against yield over a safety factor; a
    /// welded foot, a hole for a bracket or rust at the ground takes section away and must be counted off first.
    pub struct PostBending = "post-bending" in Standing {
        /// Sideways force.
        force ("P"): Force,
        /// Height of the force above the foot.
        height ("h"): Length,
        /// Further moment at the foot in the same plane, such as the weight of a leaf times its reach.
        moment ("M0"): Torque,
        /// Weight that stands or hangs on the post.
        weight ("N"): Force,
        /// Area of the section.
        area ("A"): Area,
        /// Area of the section that takes shear: the webs of a tube or channel.
        shear_area ("Av"): Area,
        /// Elastic section modulus in the plane of bending.
        section_modulus ("S"): Volume,
        /// Yield strength of the steel.
        yield_strength ("Fy"): Pressure,
        /// Safety factor against yield: 1.67 is usual.
        safety_factor ("Ω"): Ratio,
    }
    gives
    /// Stresses at the foot of a post.
    pub struct PostStresses {
        /// Moment at the foot.
        base_moment ("M"): Torque,
        /// Bending stress.
        bending ("fb"): Pressure,
        /// Pressing stress.
        pressing ("fa"): Pressure,
        /// Shear stress, the mean over the webs.
        shear ("fv"): Pressure,
        /// Equivalent stress of all three.
        equivalent ("fe"): Pressure,
        /// Allowed stress.
        allowed ("Fy/Ω"): Pressure,
        /// Share of the allowed stress that is used.
        used ("fe · Ω / Fy"): Ratio,
    }
    formula "M = P · h + M0\nfb = M / S\nfa = N / A\nfv = P / Av\nfe = √((fb + fa)² + 3 · fv²)"
    valid "Straight posts bent in one plane, stocky enough not to buckle; steel below yield."
    source { work: "statics and strength of materials; equivalent stress by von Mises", clause: "", evidence: Physics, seen: "beam theory; safety factor 1.67 is that of steel design by allowable strength" }
    by bending
}

fn bending(post: &PostBending) -> Result<PostStresses, OutOfReach> {
    not_negative("force", post.force, "300 lbf")?;
    not_negative("height", post.height, "5 ft")?;
    not_negative("moment", post.moment, "2,000 lbf·ft")?;
    not_negative("weight", post.weight, "500 lbf")?;
    positive("area", post.area, "4.3 in²")?;
    positive("shear_area", post.shear_area, "2.1 in²")?;
    positive("section_modulus", post.section_modulus, "5 in³")?;
    positive("yield_strength", post.yield_strength, "46 ksi")?;
    within(
        "safety_factor",
        post.safety_factor,
        1.0,
        10.0,
        "give the safety factor against yield, such as 1.67, from 1 to 10",
    )?;
    let base_moment = post.force.base() * post.height.base() + post.moment.base();
    let bending = base_moment / post.section_modulus.base();
    let pressing = post.weight.base() / post.area.base();
    let shear = post.force.base() / post.shear_area.base();
    let equivalent = (bending + pressing).hypot(3f64.sqrt() * shear);
    let allowed = post.yield_strength.base() / post.safety_factor.base();
    Ok(PostStresses {
        base_moment: Torque::from_base(base_moment),
        bending: Pressure::from_base(bending),
        pressing: Pressure::from_base(pressing),
        shear: Pressure::from_base(shear),
        equivalent: Pressure::from_base(equivalent),
        allowed: Pressure::from_base(allowed),
        used: Ratio::from_base(equivalent / allowed),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn post(force: f64, height: f64, modulus: f64) -> PostStresses {
        PostBending {
            force: Force::from_base(force),
            height: Length::from_base(height),
            moment: Torque::from_base(500.0),
            weight: Force::from_base(2000.0),
            area: Area::from_base(2.8e-3),
            shear_area: Area::from_base(1.4e-3),
            section_modulus: Volume::from_base(modulus),
            yield_strength: Pressure::from_base(317e6),
            safety_factor: Ratio::from_base(1.67),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn a_stiffer_section_is_used_less_and_a_higher_force_uses_more(
            force in 0.0..1e4, height in 0.1..5.0, modulus in 1e-5..1e-3
        ) {
            let base = post(force, height, modulus).used;
            prop_assert!(post(force, height, modulus * 1.1).used < base);
            prop_assert!(post(force, height + 0.1, modulus).used >= base);
            prop_assert!(post(force + 10.0, height, modulus).used > base);
        }

        #[test]
        fn the_equivalent_stress_is_no_less_than_bending_and_pressing(
            force in 0.0..1e4, height in 0.1..5.0
        ) {
            let found = post(force, height, 8e-5);
            let sum = found.bending + found.pressing;
            prop_assert!(found.equivalent.base() >= sum.base() * (1.0 - 1e-12));
        }
    }
}
