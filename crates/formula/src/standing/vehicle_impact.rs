//! What a vehicle brings to a bollard, and the mean force that stops it.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Acceleration, Energy, Force, Length, Mass, Quantity as _, Ratio, Time, Velocity};

formula! {
    /// Kinetic energy of a vehicle, and mean deceleration, force and time when it is stopped over a distance.
    ///
    /// The distance is all the give there is: of the bollard, of the ground and of the vehicle's front. The greatest
    /// force is higher than the mean, twice and more. A figure for comparing, not a crash rating: only a test of the
    /// whole assembly in its footing gives one.
    pub struct VehicleImpact = "vehicle-impact" in Standing {
        /// Mass of the vehicle with its load.
        mass ("m"): Mass,
        /// Speed at the bollard.
        speed ("v"): Velocity,
        /// Distance over which it stops.
        distance ("d"): Length,
    }
    gives
    /// Stop of a vehicle.
    pub struct Impact {
        /// Kinetic energy.
        energy ("E"): Energy,
        /// Mean force.
        force ("F"): Force,
        /// Mean deceleration.
        deceleration ("a"): Acceleration,
        /// Mean deceleration over standard gravity.
        gravities ("a / g"): Ratio,
        /// Time of the stop at an even deceleration.
        time ("t"): Time,
    }
    formula "E = m · v² / 2\nF = E / d\na = v² / (2 · d)\nt = 2 · d / v"
    valid "Straight impact, even deceleration; standard gravity, 9.80665 m/s²."
    source { work: "Newton's second law", clause: "", evidence: Physics, seen: "energies in the notes of UFGS 02840 and in articles on ASTM F2656" }
    by impact
}

/// Standard gravity in m/s².
const GRAVITY: f64 = 9.806_65;

fn impact(vehicle: &VehicleImpact) -> Result<Impact, OutOfReach> {
    positive("mass", vehicle.mass, "5,000 lb")?;
    positive("speed", vehicle.speed, "10 mph")?;
    positive("distance", vehicle.distance, "2 ft")?;
    let (speed, distance) = (vehicle.speed.base(), vehicle.distance.base());
    let energy = vehicle.mass.base() * speed * speed / 2.0;
    let deceleration = speed * speed / (2.0 * distance);
    Ok(Impact {
        energy: Energy::from_base(energy),
        force: Force::from_base(energy / distance),
        deceleration: Acceleration::from_base(deceleration),
        gravities: Ratio::from_base(deceleration / GRAVITY),
        time: Time::from_base(2.0 * distance / speed),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn stop(mass: f64, speed: f64, distance: f64) -> Impact {
        VehicleImpact {
            mass: Mass::from_base(mass),
            speed: Velocity::from_base(speed),
            distance: Length::from_base(distance),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn force_is_mass_times_deceleration_and_takes_the_speed_away(
            mass in 100.0..3e4, speed in 0.5..30.0, distance in 0.1..30.0
        ) {
            let found = stop(mass, speed, distance);
            let force = mass * found.deceleration.base();
            prop_assert!((found.force.base() - force).abs() < 1e-9 * force);
            let lost = found.deceleration.base() * found.time.base();
            prop_assert!((lost - speed).abs() < 1e-9 * speed);
        }

        #[test]
        fn twice_the_speed_is_four_times_the_energy(mass in 100.0..3e4, speed in 0.5..15.0) {
            let ratio = stop(mass, 2.0 * speed, 1.0).energy / stop(mass, speed, 1.0).energy;
            prop_assert!((ratio.base() - 4.0).abs() < 1e-9);
        }
    }
}
