//! Energy and speed of what falls.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Energy, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Energy and speed of a leaf or an arm whose center of gravity has fallen by a height.
    ///
    /// A leaf that tips over falls by the height of its center of gravity; one that drops in its rails by the drop.
    pub struct FallEnergy = "fall-energy" in Motion {
        /// Mass that falls.
        mass ("m"): Mass,
        /// Height by which its center of gravity comes down.
        drop ("h"): Length,
    }
    gives
    /// What falls brings with it.
    pub struct EnergyOfFall {
        /// Speed of a body that falls freely by that height.
        speed ("v"): Velocity,
        /// Energy.
        energy ("E"): Energy,
    }
    formula "E = m · g · h\nv = √(2 · g · h)"
    valid "A free fall from rest; nothing holds it back. A leaf that tips turns, and its free end is faster than this. Standard gravity, 9.80665 m/s²."
    source { work: "potential and kinetic energy", clause: "", evidence: Physics, seen: "mechanics" }
    by fall_energy
}

fn fall_energy(body: &FallEnergy) -> Result<EnergyOfFall, OutOfReach> {
    positive("mass", body.mass, "640 lb")?;
    not_negative("drop", body.drop, "1 ft")?;
    let height = body.drop.base();
    Ok(EnergyOfFall {
        speed: Velocity::from_base((2.0 * GRAVITY * height).sqrt()),
        energy: Energy::from_base(body.mass.base() * GRAVITY * height),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn body(drop: f64) -> FallEnergy {
        FallEnergy {
            mass: Mass::from_base(290.0),
            drop: Length::from_base(drop),
        }
    }

    proptest! {
        #[test]
        fn the_energy_is_that_of_its_speed(drop in 0.0..20.0) {
            let gives = body(drop).evaluate().unwrap();
            let moving = 0.5 * 290.0 * gives.speed.base().powi(2);
            prop_assert!((moving - gives.energy.base()).abs() < 1e-9 * moving.max(1.0));
        }
    }

    #[test]
    fn a_drop_upward_is_refused() {
        assert_eq!(body(-0.1).evaluate().unwrap_err().input, "drop");
    }
}
