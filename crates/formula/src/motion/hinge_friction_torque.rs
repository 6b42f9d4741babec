//! Torque of friction in the hinges of a swing leaf.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Mass, Quantity as _, Ratio, Torque};

formula! {
    /// Torque of friction in the hinges of a leaf that hangs on two of them.
    ///
    /// The leaf's weight pulls the upper pin out and pushes the lower one in with the same force, the more the nearer
    /// the hinges stand to each other; a wind on the leaf presses both pins crosswise to that. The weight itself stands
    /// on the flat end of a pin or on a collar of the pin's width.
    ///
    /// Hinges out of line bind, dirt and rust cost several times as much, and ball bearings a small part of it: a pull
    /// scale at the free end of the released leaf, times its width, replaces this figure.
    pub struct HingeFrictionTorque = "hinge-friction-torque" in Motion {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Distance of the center of gravity from the hinge line.
        center ("x"): Length,
        /// Distance between the lowest hinge and the highest.
        spacing ("h"): Length,
        /// Diameter of the pins.
        pin_diameter ("d"): Length,
        /// Friction coefficient at the pins.
        friction ("μ"): Ratio,
        /// Force square to the leaf that the two hinges share, such as wind; 0 for none.
        side_load ("N"): Force,
    }
    gives
    /// Friction of the hinges.
    pub struct HingeFriction {
        /// Pull or push on each pin from the leaf's weight.
        couple ("H"): Force,
        /// Force across each pin.
        radial_load ("R"): Force,
        /// Friction torque at the side of each pin.
        pin_torque ("Tp"): Torque,
        /// Friction torque where the weight stands.
        thrust_torque ("Tt"): Torque,
        /// Friction torque of both hinges.
        torque ("Th"): Torque,
    }
    formula "H = m · g · x / h\nR = √(H² + (N / 2)²)\nTp = μ · R · d / 2\nTt = 2/3 · μ · m · g · d / 2\nTh = 2 · Tp + Tt"
    valid "Two hinges in line, plain pins that run freely, pressure spread evenly under the pin's end. Standard gravity, 9.80665 m/s²."
    source { work: "journal friction μ · R · r and flat pivot friction ⅔ · μ · W · r; moments about the lower hinge", clause: "", evidence: Physics, seen: "a statics text on pivot friction: https://adaptivebooks.org/library/statics/friction-the-application-of-statics-to-machine-design/pivot-friction" }
    by hinge_friction_torque
}

fn hinge_friction_torque(leaf: &HingeFrictionTorque) -> Result<HingeFriction, OutOfReach> {
    positive("mass", leaf.mass, "350 lb")?;
    positive("center", leaf.center, "4 ft 6 in")?;
    positive("spacing", leaf.spacing, "4 ft")?;
    positive("pin_diameter", leaf.pin_diameter, "3/4 in")?;
    not_negative("friction", leaf.friction, "0.2")?;
    not_negative("side_load", leaf.side_load, "60 lbf")?;
    let weight = leaf.mass.base() * GRAVITY;
    let radius = leaf.pin_diameter.base() / 2.0;
    let couple = weight * leaf.center.base() / leaf.spacing.base();
    let radial = couple.hypot(leaf.side_load.base() / 2.0);
    let pin = leaf.friction.base() * radial * radius;
    let thrust = 2.0 / 3.0 * leaf.friction.base() * weight * radius;
    Ok(HingeFriction {
        couple: Force::from_base(couple),
        radial_load: Force::from_base(radial),
        pin_torque: Torque::from_base(pin),
        thrust_torque: Torque::from_base(thrust),
        torque: Torque::from_base(2.0 * pin + thrust),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(mass: f64, spacing: f64, side: f64) -> HingeFrictionTorque {
        HingeFrictionTorque {
            mass: Mass::from_base(mass),
            center: Length::from_base(1.2),
            spacing: Length::from_base(spacing),
            pin_diameter: Length::from_base(0.02),
            friction: Ratio::from_base(0.2),
            side_load: Force::from_base(side),
        }
    }

    proptest! {
        #[test]
        fn hinges_farther_apart_turn_easier(mass in 10.0..600.0, spacing in 0.3..2.0, side in 0.0..900.0) {
            let near = leaf(mass, spacing, side).evaluate().unwrap();
            let far = leaf(mass, spacing + 0.1, side).evaluate().unwrap();
            prop_assert!(far.torque < near.torque);
            prop_assert!((far.thrust_torque - near.thrust_torque).base().abs() < 1e-9);
        }

        #[test]
        fn twice_the_mass_and_wind_is_twice_the_torque(mass in 10.0..600.0, side in 0.0..900.0) {
            let one = leaf(mass, 1.2, side).evaluate().unwrap();
            let two = leaf(2.0 * mass, 1.2, 2.0 * side).evaluate().unwrap();
            prop_assert!((two.torque - 2.0 * one.torque).base().abs() < 1e-6);
        }
    }

    #[test]
    fn hinges_in_one_place_are_refused() {
        assert_eq!(
            leaf(100.0, 0.0, 0.0).evaluate().unwrap_err().input,
            "spacing"
        );
    }
}
