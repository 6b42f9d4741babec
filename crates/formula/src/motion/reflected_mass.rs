//! Turning parts of a drive as the leaf feels them.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Mass, MomentOfInertia, Quantity as _, Ratio};

formula! {
    /// Mass that the turning parts of a drive add to the leaf, through gear and pinion.
    ///
    /// A small rotor behind a high reduction weighs more to the leaf than one would think: the reduction counts twice,
    /// once for the speed and once for the force.
    pub struct ReflectedMass = "reflected-mass" in Motion {
        /// Moment of inertia of the rotor with what turns as fast as it.
        rotor_inertia ("J"): MomentOfInertia,
        /// Turns of the rotor for each turn of the output shaft.
        reduction ("i"): Ratio,
        /// Pitch radius of the pinion or sprocket, or lever arm of the drive.
        pitch_radius ("r"): Length,
        /// Mass of the leaf.
        leaf_mass ("m"): Mass,
    }
    gives
    /// Turning parts of a drive as the leaf feels them.
    pub struct MassReflected {
        /// Moment of inertia at the output shaft.
        output_inertia ("Jo"): MomentOfInertia,
        /// Mass at the leaf.
        mass ("mr"): Mass,
        /// That mass as a share of the leaf's own.
        share ("ρ"): Ratio,
    }
    formula "Jo = J · i²\nmr = Jo / r²\nρ = mr / m"
    valid "A gear without play; its efficiency left out."
    source { work: "kinetic energy of turning and moving parts", clause: "", evidence: Physics, seen: "½ · J · ω² = ½ · mr · v² with ω = i · v / r" }
    by reflected_mass
}

fn reflected_mass(drive: &ReflectedMass) -> Result<MassReflected, OutOfReach> {
    not_negative("rotor_inertia", drive.rotor_inertia, "0.0004 kg·m²")?;
    positive("reduction", drive.reduction, "30")?;
    positive("pitch_radius", drive.pitch_radius, "40 mm")?;
    positive("leaf_mass", drive.leaf_mass, "640 lb")?;
    let output = drive.rotor_inertia.base() * drive.reduction.base().powi(2);
    let mass = output / drive.pitch_radius.base().powi(2);
    Ok(MassReflected {
        output_inertia: MomentOfInertia::from_base(output),
        mass: Mass::from_base(mass),
        share: Ratio::from_base(mass / drive.leaf_mass.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn drive(reduction: f64, radius: f64) -> ReflectedMass {
        ReflectedMass {
            rotor_inertia: MomentOfInertia::from_base(4e-4),
            reduction: Ratio::from_base(reduction),
            pitch_radius: Length::from_base(radius),
            leaf_mass: Mass::from_base(300.0),
        }
    }

    proptest! {
        #[test]
        fn twice_the_reduction_is_four_times_the_mass(reduction in 1.0..100.0, radius in 0.01..0.1) {
            let base = drive(reduction, radius).evaluate().unwrap().mass.base();
            let doubled = drive(2.0 * reduction, radius).evaluate().unwrap().mass.base();
            prop_assert!((doubled - 4.0 * base).abs() < 1e-9 * doubled);
        }
    }

    #[test]
    fn a_pinion_without_radius_is_refused() {
        assert_eq!(
            drive(30.0, 0.0).evaluate().unwrap_err().input,
            "pitch_radius"
        );
    }
}
