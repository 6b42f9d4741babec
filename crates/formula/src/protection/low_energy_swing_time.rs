//! Least time of a low-energy swing leaf by its mass and width.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Energy, Length, Mass, Quantity as _, Time};

formula! {
    /// Least time in which a swing leaf turns so that its energy stays below that of a low-energy pedestrian door.
    ///
    /// A rule for doors, and a yardstick for light leaves: a leaf so slow hardly hurts by its energy of motion, but the
    /// push of the drive behind it still crushes. Most vehicle gates are far above it.
    pub struct LowEnergySwingTime = "low-energy-swing-time" in Protection {
        /// Mass of the leaf, spread evenly over its width.
        mass ("m"): Mass,
        /// Width of the leaf from hinge to tip.
        width ("L"): Length,
        /// Angle through which it turns at even speed.
        angle ("θ"): Angle,
    }
    gives
    /// Least time of a low-energy leaf.
    pub struct LowEnergyTime {
        /// Greatest energy of motion.
        energy ("E"): Energy,
        /// Least time over the angle.
        time ("t"): Time,
    }
    formula "E = 1.25 lbf·ft\nt = θ · L · √(m / (6 · E))"
    valid "Uniform leaves hinged at one edge, even speed; doors take at least 3 s over the first 80° whatever their mass."
    source { work: "ANSI/BHMA A156.19-1997", clause: "4.5", evidence: Seen, seen: "a public excerpt of the standard for the energy; the time follows from the energy of a leaf that turns about its edge" }
    by least_time
}

/// Greatest energy of motion: 1.25 foot-pounds of force, in joules.
const ENERGY: f64 = 1.25 * 0.3048 * 4.448_221_615_260_5;

fn least_time(leaf: &LowEnergySwingTime) -> Result<LowEnergyTime, OutOfReach> {
    positive("mass", leaf.mass, "150 lb")?;
    positive("width", leaf.width, "36 in")?;
    positive("angle", leaf.angle, "80°")?;
    let root = (leaf.mass.base() / (6.0 * ENERGY)).sqrt();
    Ok(LowEnergyTime {
        energy: Energy::from_base(ENERGY),
        time: Time::from_base(leaf.angle.base() * leaf.width.base() * root),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(mass: f64, width: f64) -> LowEnergySwingTime {
        LowEnergySwingTime {
            mass: Mass::from_base(mass),
            width: Length::from_base(width),
            angle: Angle::from_base(1.4),
        }
    }

    proptest! {
        #[test]
        fn at_the_least_time_the_leaf_has_the_energy(mass in 1.0..500.0, width in 0.3..6.0) {
            let found = leaf(mass, width).evaluate().unwrap();
            let rate = 1.4 / found.time.base();
            let energy = mass * width * width / 3.0 * rate * rate / 2.0;
            prop_assert!((energy - found.energy.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn a_leaf_without_mass_is_refused() {
        assert_eq!(leaf(0.0, 1.0).evaluate().unwrap_err().input, "mass");
    }
}
