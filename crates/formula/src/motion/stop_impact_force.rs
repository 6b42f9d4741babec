//! Force on a positive stop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, ForcePerLength, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Greatest force on a springy stop that a leaf runs into while its drive keeps pushing.
    ///
    /// The spring of stop, post and buffer takes up the energy of the leaf and the work of the drive. Even a leaf that
    /// only leans on the stop and is pushed at once loads it with twice the push.
    pub struct StopImpactForce = "stop-impact-force" in Motion {
        /// Mass of leaf and turning parts together.
        mass ("m"): Mass,
        /// Speed at the stop.
        speed ("v"): Velocity,
        /// Push of the drive that goes on.
        push ("P"): Force,
        /// Stiffness of the stop: force for each unit of length that it gives.
        stiffness ("k"): ForcePerLength,
    }
    gives
    /// Greatest force on a stop.
    pub struct ImpactOnStop {
        /// How far the stop gives.
        deflection ("x"): Length,
        /// Greatest force on the stop.
        force ("F"): Force,
    }
    formula "½ · m · v² + P · x = ½ · k · x²\nx = (P + √(P² + k · m · v²)) / k\nF = k · x"
    valid "A stop that springs along a straight line and does not yield; a real one that yields or rebounds takes less."
    source { work: "work and kinetic energy; energy of a spring", clause: "", evidence: Physics, seen: "energy balance at the turning point; the impact formula of texts on strength of materials" }
    by stop_impact_force
}

fn stop_impact_force(leaf: &StopImpactForce) -> Result<ImpactOnStop, OutOfReach> {
    positive("mass", leaf.mass, "640 lb")?;
    not_negative("speed", leaf.speed, "3 in/s")?;
    not_negative("push", leaf.push, "150 lbf")?;
    positive("stiffness", leaf.stiffness, "5000 lbf/ft")?;
    let (push, stiffness) = (leaf.push.base(), leaf.stiffness.base());
    let moving = stiffness * leaf.mass.base() * leaf.speed.base().powi(2);
    let force = push + push.hypot(moving.sqrt());
    Ok(ImpactOnStop {
        deflection: Length::from_base(force / stiffness),
        force: Force::from_base(force),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(speed: f64, push: f64, stiffness: f64) -> StopImpactForce {
        StopImpactForce {
            mass: Mass::from_base(350.0),
            speed: Velocity::from_base(speed),
            push: Force::from_base(push),
            stiffness: ForcePerLength::from_base(stiffness),
        }
    }

    proptest! {
        #[test]
        fn the_energies_balance(speed in 0.01..1.0, push in 0.0..900.0, stiffness in 1e3..1e6) {
            let gives = leaf(speed, push, stiffness).evaluate().unwrap();
            let x = gives.deflection.base();
            let brought = 0.5 * 350.0 * speed * speed + push * x;
            prop_assert!((0.5 * stiffness * x * x - brought).abs() < 1e-9 * brought);
        }

        #[test]
        fn a_stiffer_stop_is_hit_harder(speed in 0.01..1.0, push in 0.0..900.0, stiffness in 1e3..1e6) {
            let (soft, stiff) = (leaf(speed, push, stiffness), leaf(speed, push, 1.1 * stiffness));
            prop_assert!(soft.evaluate().unwrap().force < stiff.evaluate().unwrap().force);
        }
    }

    #[test]
    fn a_push_at_once_counts_twice() {
        let gives = leaf(0.0, 400.0, 5e4).evaluate().unwrap();
        assert!((gives.force.base() - 800.0).abs() < 1e-9);
    }
}
