//! Force that lifts a leaf straight up.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Force, Mass, Quantity as _};

formula! {
    /// Force that moves a leaf straight up and down, with counterweight and springs, term by term.
    ///
    /// The unbalanced force is signed: above zero the leaf falls, below zero it rises by itself. Springs come in by
    /// the force with which they lift at this height; ask torsion-spring-lift for it, or give zero.
    pub struct VerticalLiftForce = "vertical-lift-force" in Motion {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Mass of the counterweight on the rope; zero for none.
        counterweight_mass ("mc"): Mass,
        /// Force with which springs lift at this height; zero for none.
        spring_lift ("Fs"): Force,
        /// Friction in the rails, against every motion.
        friction ("Ff"): Force,
        /// Acceleration at the start, not below zero.
        acceleration ("a"): Acceleration,
    }
    gives
    /// Force that lifts a leaf, term by term.
    pub struct VerticalLiftForces {
        /// Weight of the leaf.
        weight ("G"): Force,
        /// What falls when nothing holds the leaf; below zero it rises.
        unbalanced ("F0"): Force,
        /// Speeding up leaf and counterweight.
        speeding_up ("Fa"): Force,
        /// What the drive must bring to open.
        opening ("Fo"): Force,
        /// What the drive must bring to close; below zero it must hold the leaf back.
        closing ("Fz"): Force,
    }
    formula "G = m · g\nF0 = (m − mc) · g − Fs\nFa = (m + mc) · a\nFo = F0 + Ff + Fa\nFz = −F0 + Ff + Fa"
    valid "A leaf hung so that leaf and counterweight move by the same way; the mass of ropes and drums left out. Standard gravity, 9.80665 m/s²."
    source { work: "statics and Newton's second law", clause: "", evidence: Physics, seen: "forces on leaf and counterweight, rope between them" }
    by vertical_lift_force
}

fn vertical_lift_force(lift: &VerticalLiftForce) -> Result<VerticalLiftForces, OutOfReach> {
    positive("mass", lift.mass, "640 lb")?;
    not_negative("counterweight_mass", lift.counterweight_mass, "600 lb")?;
    not_negative("spring_lift", lift.spring_lift, "600 lbf")?;
    not_negative("friction", lift.friction, "20 lbf")?;
    not_negative("acceleration", lift.acceleration, "0.5 ft/s²")?;
    let gravity = Acceleration::from_base(GRAVITY);
    let weight: Force = lift.mass * gravity;
    let unbalanced = weight - lift.counterweight_mass * gravity - lift.spring_lift;
    let speeding_up: Force = (lift.mass + lift.counterweight_mass) * lift.acceleration;
    Ok(VerticalLiftForces {
        weight,
        unbalanced,
        speeding_up,
        opening: unbalanced + lift.friction + speeding_up,
        closing: lift.friction + speeding_up - unbalanced,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lift(counterweight: f64, acceleration: f64) -> VerticalLiftForce {
        VerticalLiftForce {
            mass: Mass::from_base(200.0),
            counterweight_mass: Mass::from_base(counterweight),
            spring_lift: Force::from_base(0.0),
            friction: Force::from_base(0.0),
            acceleration: Acceleration::from_base(acceleration),
        }
    }

    proptest! {
        /// Let go, two masses on one rope speed up by (m − mc) · g / (m + mc): the drive then brings nothing.
        #[test]
        fn without_a_drive_it_falls_as_two_masses_on_a_rope_do(counterweight in 0.0..200.0) {
            let acceleration = GRAVITY * (200.0 - counterweight) / (200.0 + counterweight);
            let gives = lift(counterweight, acceleration).evaluate().unwrap();
            prop_assert!(gives.closing.base().abs() < 1e-9);
        }
    }

    #[test]
    fn a_force_below_zero_is_refused() {
        let wrong = VerticalLiftForce {
            friction: Force::from_base(-1.0),
            ..lift(100.0, 0.1)
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "friction");
    }
}
