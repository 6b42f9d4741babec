//! Energy of a leaf or a vehicle that moves along a line.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Energy, Mass, Velocity};

formula! {
    /// Energy of motion of a body that moves along a line: a sliding leaf, a vehicle.
    pub struct KineticEnergy = "kinetic-energy" in Motion {
        /// Mass of the body.
        mass ("m"): Mass,
        /// Speed of the body.
        speed ("v"): Velocity,
    }
    gives
    /// Energy of motion along a line.
    pub struct EnergyOfMotion {
        /// Energy of motion.
        energy ("E"): Energy,
    }
    formula "E = ½ · m · v²"
    valid "Every part moves at the same speed; turning parts of a drive come on top."
    source { work: "definition of kinetic energy", clause: "", evidence: Physics, seen: "mechanics" }
    by kinetic_energy
}

fn kinetic_energy(body: &KineticEnergy) -> Result<EnergyOfMotion, OutOfReach> {
    positive("mass", body.mass, "640 lb")?;
    not_negative("speed", body.speed, "1 ft/s")?;
    Ok(EnergyOfMotion {
        energy: 0.5 * body.mass * body.speed * body.speed,
    })
}
