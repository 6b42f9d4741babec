//! What a leaf brings to its stop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Energy, Force, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Energy that a leaf brings to its positive stop after it has passed its limit.
    ///
    /// The turning parts of the drive come with it. A drive that still pushes over the gap adds its work; a brake takes
    /// away, as a push below zero. A leaf that the brake stops within the gap brings nothing.
    pub struct OvertravelEnergy = "overtravel-energy" in Motion {
        /// Mass of the leaf.
        mass ("m"): Mass,
        /// Mass of the turning parts as the leaf feels it.
        rotating_mass ("mr"): Mass,
        /// Speed at the limit.
        speed ("v"): Velocity,
        /// Push on the leaf over the gap: above zero for a drive that keeps pushing, below zero for a brake.
        push ("F"): Force,
        /// Way between the limit and the positive stop.
        gap ("s"): Length,
    }
    gives
    /// What a leaf brings to its stop.
    pub struct EnergyAtStop {
        /// Speed at the positive stop.
        speed_at_stop ("vs"): Velocity,
        /// Energy at the positive stop.
        energy ("E"): Energy,
    }
    formula "E = ½ · (m + mr) · v² + F · s, not below zero\nvs = √(2 · E / (m + mr))"
    valid "A constant push over the gap."
    source { work: "work and kinetic energy", clause: "", evidence: Physics, seen: "the work of a force is the gain of kinetic energy" }
    by overtravel_energy
}

fn overtravel_energy(leaf: &OvertravelEnergy) -> Result<EnergyAtStop, OutOfReach> {
    positive("mass", leaf.mass, "640 lb")?;
    not_negative("rotating_mass", leaf.rotating_mass, "100 lb")?;
    not_negative("speed", leaf.speed, "3 in/s")?;
    not_negative("gap", leaf.gap, "1 in")?;
    let mass = leaf.mass.base() + leaf.rotating_mass.base();
    let brought = 0.5 * mass * leaf.speed.base().powi(2) + leaf.push.base() * leaf.gap.base();
    let energy = brought.max(0.0);
    Ok(EnergyAtStop {
        speed_at_stop: Velocity::from_base((2.0 * energy / mass).sqrt()),
        energy: Energy::from_base(energy),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(speed: f64, push: f64) -> OvertravelEnergy {
        OvertravelEnergy {
            mass: Mass::from_base(300.0),
            rotating_mass: Mass::from_base(60.0),
            speed: Velocity::from_base(speed),
            push: Force::from_base(push),
            gap: Length::from_base(0.03),
        }
    }

    proptest! {
        #[test]
        fn faster_or_pushed_brings_more(speed in 0.0..1.0, push in 0.0..800.0) {
            let base = leaf(speed, push).evaluate().unwrap().energy;
            prop_assert!(base < leaf(speed + 0.01, push).evaluate().unwrap().energy);
            prop_assert!(base < leaf(speed, push + 1.0).evaluate().unwrap().energy);
        }
    }

    #[test]
    fn a_brake_that_is_strong_enough_leaves_nothing() {
        let stopped = leaf(0.1, -500.0).evaluate().unwrap();
        assert!(stopped.energy.base().abs() < 1e-12 && stopped.speed_at_stop.base().abs() < 1e-12);
    }
}
