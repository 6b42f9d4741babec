//! Energy of a leaf that swings about its hinges.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{AngularVelocity, Energy, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Energy of motion of a swinging leaf whose mass is spread evenly over its width.
    ///
    /// A leaf that is heavier toward its free end carries more, up to three times as much with all its mass there.
    pub struct SwingKineticEnergy = "swing-kinetic-energy" in Motion {
        /// Mass of the leaf.
        mass ("m"): Mass,
        /// Width from the hinge line to the free end.
        width ("w"): Length,
        /// Turning speed of the leaf.
        turning_speed ("ω"): AngularVelocity,
    }
    gives
    /// Energy of a swinging leaf.
    pub struct SwingEnergy {
        /// Speed of the free end.
        edge_speed ("v"): Velocity,
        /// Energy of motion.
        energy ("E"): Energy,
    }
    formula "J = m · w² / 3\nv = ω · w\nE = ½ · J · ω²"
    valid "Even mass over the width; the highest turning speed of the travel, not the mean, counts."
    source { work: "energy of a turning body, moment of inertia of a rod about its end", clause: "", evidence: Physics, seen: "mechanics; the same formula on a door maker's safety page (name withheld)" }
    by swing_kinetic_energy
}

fn swing_kinetic_energy(leaf: &SwingKineticEnergy) -> Result<SwingEnergy, OutOfReach> {
    positive("mass", leaf.mass, "400 lb")?;
    positive("width", leaf.width, "8 ft")?;
    not_negative("turning_speed", leaf.turning_speed, "6 deg/s")?;
    let edge_speed = leaf.width.base() * leaf.turning_speed.base();
    Ok(SwingEnergy {
        edge_speed: Velocity::from_base(edge_speed),
        energy: Energy::from_base(leaf.mass.base() * edge_speed.powi(2) / 6.0),
    })
}
