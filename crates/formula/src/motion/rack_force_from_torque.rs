//! Pull of a rack.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Quantity as _, Ratio, Torque};

formula! {
    /// Pull of a rack from the torque of its pinion.
    ///
    /// The teeth also push rack and pinion apart, with about a third of the pull at the usual pressure angle; that
    /// push is what a loose rack or a weak bracket gives way to.
    pub struct RackForceFromTorque = "rack-force-from-torque" in Motion {
        /// Torque of the pinion.
        torque ("T"): Torque,
        /// Module of the teeth: pitch diameter over the number of teeth.
        module ("m"): Length,
        /// Teeth of the pinion.
        teeth ("z"): u32,
        /// Share of the torque that gets to the rack.
        efficiency ("η"): Ratio,
        /// Tangent of the pressure angle: 0.364 at 20°.
        pressure_tangent ("tan α"): Ratio,
    }
    gives
    /// Pull of a rack.
    pub struct RackForce {
        /// Pitch diameter of the pinion.
        pitch_diameter ("d"): Length,
        /// Pull along the rack.
        force ("F"): Force,
        /// Push that parts rack and pinion.
        parting_force ("Fr"): Force,
    }
    formula "d = m · z\nF = 2 · T · η / d\nFr = F · tan α"
    valid "Straight teeth; 6 teeth or more. A diametral pitch P, in teeth for each inch, is a module of 1 in / P."
    source { work: "gear geometry and the law of the lever", clause: "", evidence: Physics, seen: "torque over the pitch radius" }
    by rack_force_from_torque
}

fn rack_force_from_torque(pinion: &RackForceFromTorque) -> Result<RackForce, OutOfReach> {
    not_negative("torque", pinion.torque, "22 lbf·ft")?;
    let pitch_diameter = pitch_diameter(pinion.module, pinion.teeth)?;
    if !(pinion.efficiency.base() > 0.0 && pinion.efficiency.base() <= 1.0) {
        return Err(OutOfReach::new(
            "efficiency",
            "give a share above 0 and up to 1, such as 0.9",
        ));
    }
    not_negative("pressure_tangent", pinion.pressure_tangent, "0.364")?;
    let force = 2.0 * pinion.torque.base() * pinion.efficiency.base() / pitch_diameter.base();
    Ok(RackForce {
        pitch_diameter,
        force: Force::from_base(force),
        parting_force: Force::from_base(force * pinion.pressure_tangent.base()),
    })
}

/// Pitch diameter of a pinion.
pub(super) fn pitch_diameter(module: Length, teeth: u32) -> Result<Length, OutOfReach> {
    positive("module", module, "4 mm")?;
    if teeth < 6 {
        return Err(OutOfReach::new(
            "teeth",
            "a pinion has 6 teeth or more; count them",
        ));
    }
    Ok(module * f64::from(teeth))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn pinion(torque: f64, teeth: u32) -> RackForceFromTorque {
        RackForceFromTorque {
            torque: Torque::from_base(torque),
            module: Length::from_base(0.004),
            teeth,
            efficiency: Ratio::from_base(0.9),
            pressure_tangent: Ratio::from_base(0.364),
        }
    }

    proptest! {
        #[test]
        fn more_torque_or_fewer_teeth_pull_harder(torque in 1.0..100.0, teeth in 8_u32..40) {
            let base = pinion(torque, teeth).evaluate().unwrap().force;
            prop_assert!(base < pinion(torque + 1.0, teeth).evaluate().unwrap().force);
            prop_assert!(base < pinion(torque, teeth - 1).evaluate().unwrap().force);
        }
    }

    #[test]
    fn a_pinion_without_teeth_is_refused() {
        assert_eq!(pinion(30.0, 0).evaluate().unwrap_err().input, "teeth");
    }
}
