//! Pull of a chain.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Quantity as _, Ratio, Torque};

formula! {
    /// Pull of a chain from the torque of its sprocket.
    pub struct ChainForceFromTorque = "chain-force-from-torque" in Motion {
        /// Torque of the sprocket.
        torque ("T"): Torque,
        /// Pitch of the chain.
        pitch ("p"): Length,
        /// Teeth of the sprocket.
        teeth ("z"): u32,
        /// Share of the torque that gets to the chain.
        efficiency ("η"): Ratio,
    }
    gives
    /// Pull of a chain.
    pub struct ChainForce {
        /// Pitch diameter of the sprocket.
        pitch_diameter ("d"): Length,
        /// Mean pull of the chain.
        force ("F"): Force,
        /// Pull where the chain runs at its least distance from the center.
        greatest_force ("F′"): Force,
    }
    formula "d = p / sin(180° / z)\nF = 2 · T · η / (p · z / π)\nF′ = 2 · T · η / (d · cos(180° / z))"
    valid "Roller chain on a sprocket of 6 teeth or more."
    source { work: "geometry of roller-chain sprockets", clause: "pitch circle", evidence: Physics, seen: "the pins of a chain stand on the corners of a regular polygon" }
    by chain_force_from_torque
}

fn chain_force_from_torque(sprocket: &ChainForceFromTorque) -> Result<ChainForce, OutOfReach> {
    not_negative("torque", sprocket.torque, "22 lbf·ft")?;
    positive("pitch", sprocket.pitch, "1/2 in")?;
    if sprocket.teeth < 6 {
        return Err(OutOfReach::new(
            "teeth",
            "a sprocket has 6 teeth or more; count them",
        ));
    }
    if !(sprocket.efficiency.base() > 0.0 && sprocket.efficiency.base() <= 1.0) {
        return Err(OutOfReach::new(
            "efficiency",
            "give a share above 0 and up to 1, such as 0.95",
        ));
    }
    let half_angle = std::f64::consts::PI / f64::from(sprocket.teeth);
    let pitch = sprocket.pitch.base();
    let diameter = pitch / half_angle.sin();
    let pull = 2.0 * sprocket.torque.base() * sprocket.efficiency.base();
    Ok(ChainForce {
        pitch_diameter: Length::from_base(diameter),
        force: Force::from_base(pull * half_angle / pitch),
        greatest_force: Force::from_base(pull / (diameter * half_angle.cos())),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sprocket(torque: f64, teeth: u32) -> ChainForceFromTorque {
        ChainForceFromTorque {
            torque: Torque::from_base(torque),
            pitch: Length::from_base(0.0127),
            teeth,
            efficiency: Ratio::from_base(0.95),
        }
    }

    proptest! {
        #[test]
        fn the_mean_is_below_the_greatest(torque in 1.0..100.0, teeth in 6_u32..60) {
            let gives = sprocket(torque, teeth).evaluate().unwrap();
            prop_assert!(gives.force < gives.greatest_force);
            let larger = sprocket(torque, teeth + 1).evaluate().unwrap();
            prop_assert!(larger.force < gives.force && larger.pitch_diameter > gives.pitch_diameter);
        }
    }

    #[test]
    fn a_sprocket_without_teeth_is_refused() {
        assert_eq!(sprocket(30.0, 2).evaluate().unwrap_err().input, "teeth");
    }
}
