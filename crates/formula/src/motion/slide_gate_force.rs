//! Force that moves a sliding leaf.

use super::slope::{GRAVITY, Incline};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Length, Mass, Quantity as _, Ratio};

formula! {
    /// Force that an operator must bring to move a sliding leaf along its travel, term by term.
    ///
    /// The slope is signed: above zero when the leaf climbs in the direction asked about, below zero when it runs
    /// downhill; ask once for each direction. All other terms always work against the motion. A total below zero means
    /// that the leaf runs away by itself and must be held back.
    ///
    /// On a track the wheels carry the weight and `load_factor` is 1. The wheels of a cantilever leaf carry more: with
    /// its center of gravity x ahead of the rear wheels and the wheels b apart, (2 · x − b) / b where x is above b.
    pub struct SlideGateForce = "slide-gate-force" in Motion {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Sum of the wheel loads over the weight: 1 on a track, more on a cantilever.
        load_factor ("k"): Ratio,
        /// Rise over run of the travel, above zero uphill, below zero downhill.
        slope ("i"): Ratio,
        /// Radius of the carrying wheels where they roll.
        wheel_radius ("R"): Length,
        /// Lever arm of rolling friction of wheel and track.
        lever_arm ("f"): Length,
        /// Radius of the wheel's axle or bearing.
        axle_radius ("r"): Length,
        /// Friction coefficient of the wheel's bearing.
        bearing_friction ("μb"): Ratio,
        /// Share of the wheel load lost at rims and flanges.
        rim_factor ("c"): Ratio,
        /// Force that brushes and seals take.
        seal_force ("Fs"): Force,
        /// Force of the wind that the guide rollers carry, square to the leaf.
        guide_load ("Nw"): Force,
        /// Share of the guide rollers' load that they take from the motion.
        guide_friction ("μg"): Ratio,
        /// Allowance for debris, ice or snow in the track.
        debris_force ("Fd"): Force,
        /// Acceleration at the start, not below zero.
        acceleration ("a"): Acceleration,
        /// Turning parts of the drive as a share of the leaf's mass, seen at the leaf.
        rotating_share ("ρ"): Ratio,
    }
    gives
    /// Force on a sliding leaf, term by term.
    pub struct SlideGateForces {
        /// Load on the carrying wheels.
        wheel_load ("N"): Force,
        /// Rolling resistance with bearings and rims.
        rolling ("Fr"): Force,
        /// Weight along the slope, below zero downhill.
        slope_force ("Fi"): Force,
        /// Brushes and seals.
        seals ("Fs"): Force,
        /// Guide rollers under wind.
        guides ("Fg"): Force,
        /// Debris, ice or snow.
        debris ("Fd"): Force,
        /// Speeding up leaf and drive.
        inertia ("Fa"): Force,
        /// All terms at steady speed.
        steady ("F0"): Force,
        /// All terms while speeding up.
        total ("F"): Force,
    }
    formula "N = k · m · g · cos θ, tan θ = i\nFr = N · ((f + μb · r) / R + c)\nFi = m · g · sin θ\nFg = μg · Nw\nFa = m · (1 + ρ) · a\nF0 = Fr + Fi + Fs + Fg + Fd\nF = F0 + Fa"
    valid "Straight travel at walking speed, slope up to 1 in 2, wheels that roll; a stuck wheel or a damaged track takes any force. Standard gravity, 9.80665 m/s²."
    source { work: "statics and Newton's second law; rolling resistance of drive handbooks", clause: "", evidence: Physics, seen: "moment balance about the axle of a wheel; the same terms on a gear maker's page (name withheld)" }
    by slide_gate_force
}

fn slide_gate_force(gate: &SlideGateForce) -> Result<SlideGateForces, OutOfReach> {
    check(gate)?;
    let incline = Incline::of(gate.slope)?;
    let weight: Force = gate.mass * Acceleration::from_base(GRAVITY);
    let wheel_load = weight * gate.load_factor * incline.cosine;
    let arm = gate.lever_arm + gate.bearing_friction * gate.axle_radius;
    let rolling = wheel_load * (arm.base() / gate.wheel_radius.base() + gate.rim_factor.base());
    let slope_force: Force = gate.mass * incline.gravity_along();
    let guides = gate.guide_load * gate.guide_friction;
    let inertia = gate.mass * (1.0 + gate.rotating_share.base()) * gate.acceleration;
    let steady = rolling + slope_force + gate.seal_force + guides + gate.debris_force;
    Ok(SlideGateForces {
        wheel_load,
        rolling,
        slope_force,
        seals: gate.seal_force,
        guides,
        debris: gate.debris_force,
        inertia,
        steady,
        total: steady + inertia,
    })
}

fn check(gate: &SlideGateForce) -> Result<(), OutOfReach> {
    positive("mass", gate.mass, "640 lb")?;
    if gate.load_factor.base() < 1.0 {
        return Err(OutOfReach::new(
            "load_factor",
            "the wheels carry at least the weight: give 1 on a track, more on a cantilever",
        ));
    }
    positive("wheel_radius", gate.wheel_radius, "3 in")?;
    if gate.axle_radius >= gate.wheel_radius {
        return Err(OutOfReach::new(
            "axle_radius",
            "the axle is thinner than its wheel; give radii, not diameters",
        ));
    }
    not_negative("lever_arm", gate.lever_arm, "0.02 in")?;
    not_negative("axle_radius", gate.axle_radius, "0.4 in")?;
    not_negative("bearing_friction", gate.bearing_friction, "0.005")?;
    not_negative("rim_factor", gate.rim_factor, "0.003")?;
    not_negative("seal_force", gate.seal_force, "5 lbf")?;
    not_negative("guide_load", gate.guide_load, "300 lbf")?;
    not_negative("guide_friction", gate.guide_friction, "0.05")?;
    not_negative("debris_force", gate.debris_force, "10 lbf")?;
    not_negative("acceleration", gate.acceleration, "0.5 ft/s²")?;
    not_negative("rotating_share", gate.rotating_share, "0.2")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn gate(mass: f64, slope: f64) -> SlideGateForce {
        SlideGateForce {
            mass: Mass::from_base(mass),
            load_factor: Ratio::from_base(1.3),
            slope: Ratio::from_base(slope),
            wheel_radius: Length::from_base(0.06),
            lever_arm: Length::from_base(0.0005),
            axle_radius: Length::from_base(0.01),
            bearing_friction: Ratio::from_base(0.005),
            rim_factor: Ratio::from_base(0.003),
            seal_force: Force::from_base(20.0),
            guide_load: Force::from_base(900.0),
            guide_friction: Ratio::from_base(0.03),
            debris_force: Force::from_base(40.0),
            acceleration: Acceleration::from_base(0.25),
            rotating_share: Ratio::from_base(0.4),
        }
    }

    proptest! {
        #[test]
        fn a_heavier_leaf_takes_more_on_the_level_and_uphill(
            mass in 1.0..3000.0, more in 0.1..500.0, slope in 0.0..0.5
        ) {
            let (light, heavy) = (gate(mass, slope), gate(mass + more, slope));
            prop_assert!(light.evaluate().unwrap().total < heavy.evaluate().unwrap().total);
        }

        /// At a constant sum of wheel load, rolling falls with the cosine while the slope term rises with the sine.
        #[test]
        fn a_steeper_climb_takes_more(mass in 1.0..3000.0, slope in -0.5..0.49) {
            let (less, more) = (gate(mass, slope), gate(mass, slope + 0.01));
            prop_assert!(less.evaluate().unwrap().total < more.evaluate().unwrap().total);
        }

        #[test]
        fn uphill_and_downhill_differ_by_twice_the_weight_along_the_slope(
            mass in 1.0..3000.0, slope in 0.0..0.5
        ) {
            let up = gate(mass, slope).evaluate().unwrap();
            let down = gate(mass, -slope).evaluate().unwrap();
            let difference = (up.total - down.total).base();
            prop_assert!((difference - 2.0 * up.slope_force.base()).abs() < 1e-6);
            prop_assert!((up.rolling - down.rolling).base().abs() < 1e-9);
        }

        #[test]
        fn the_terms_add_up(mass in 1.0..3000.0, slope in -0.5..0.5) {
            let force = gate(mass, slope).evaluate().unwrap();
            let sum = force.rolling + force.slope_force + force.seals + force.guides
                + force.debris + force.inertia;
            prop_assert!((sum - force.total).base().abs() < 1e-6);
        }
    }

    #[test]
    fn a_diameter_given_as_a_radius_is_noticed() {
        let wrong = SlideGateForce {
            axle_radius: Length::from_base(0.08),
            ..gate(300.0, 0.0)
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "axle_radius");
    }
}
