//! Moment, stress and deflection of a beam held at one end.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{
    Force, ForcePerLength, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque, Volume,
};

formula! {
    /// Moment, shear, bending stress and deflection of a straight beam held fast at one end: an arm, an upright, a post.
    pub struct CantileverBeam = "cantilever-beam" in Leaf {
        /// Free length.
        length ("L"): Length,
        /// Load at the free end.
        end_load ("P"): Force,
        /// Load spread evenly over the length.
        uniform_load ("w"): ForcePerLength,
        /// Modulus of elasticity.
        elasticity ("E"): Pressure,
        /// Second moment of the section.
        inertia ("I"): SecondMomentOfArea,
        /// Section modulus.
        modulus ("S"): Volume,
    }
    gives
    /// A beam held at one end.
    pub struct CantileverBending {
        /// Moment where it is held.
        moment ("M"): Torque,
        /// Shear where it is held.
        shear ("V"): Force,
        /// Bending stress where it is held.
        stress ("σ"): Pressure,
        /// Deflection of the free end.
        deflection ("δ"): Length,
    }
    formula "M = P · L + w · L² / 2\nV = P + w · L\nσ = M / S\nδ = P · L³ / (3 · E · I) + w · L⁴ / (8 · E · I)"
    valid "Slender straight beams of one section, small deflections, stress below yield; the deflection by shear is left out."
    source { work: "beam theory, handbook cases of a cantilever", clause: "", evidence: Seen, seen: "Cantilever beams: https://www.engineeringtoolbox.com/amp/cantilever-beams-d_1848.html" }
    by bend
}

fn bend(beam: &CantileverBeam) -> Result<CantileverBending, OutOfReach> {
    positive("length", beam.length, "8 ft")?;
    not_negative("end_load", beam.end_load, "100 lbf")?;
    not_negative("uniform_load", beam.uniform_load, "10 lbf/ft")?;
    positive("elasticity", beam.elasticity, "29000 ksi")?;
    positive("inertia", beam.inertia, "7.8 in⁴")?;
    positive("modulus", beam.modulus, "3.9 in³")?;
    let (length, load, spread) = (
        beam.length.base(),
        beam.end_load.base(),
        beam.uniform_load.base(),
    );
    let moment = load * length + spread * length.powi(2) / 2.0;
    let stiffness = beam.elasticity.base() * beam.inertia.base();
    let deflection = load * length.powi(3) / 3.0 + spread * length.powi(4) / 8.0;
    Ok(CantileverBending {
        moment: Torque::from_base(moment),
        shear: Force::from_base(load + spread * length),
        stress: Pressure::from_base(moment / beam.modulus.base()),
        deflection: Length::from_base(deflection / stiffness),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn beam(length: f64, end_load: f64, uniform_load: f64) -> CantileverBeam {
        CantileverBeam {
            length: Length::from_base(length),
            end_load: Force::from_base(end_load),
            uniform_load: ForcePerLength::from_base(uniform_load),
            elasticity: Pressure::from_base(200e9),
            inertia: SecondMomentOfArea::from_base(3e-6),
            modulus: Volume::from_base(6e-5),
        }
    }

    proptest! {
        /// Two loads together do what each does alone.
        #[test]
        fn loads_add_up(length in 0.2..8.0, end in 0.0..2000.0, spread in 0.0..500.0) {
            let both = beam(length, end, spread).evaluate().unwrap();
            let (one, other) = (beam(length, end, 0.0).evaluate().unwrap(), beam(length, 0.0, spread).evaluate().unwrap());
            prop_assert!((both.deflection - one.deflection - other.deflection).base().abs() < 1e-12);
            prop_assert!((both.stress - one.stress - other.stress).base().abs() < 1e-3);
        }

        #[test]
        fn twice_as_long_sags_eight_and_sixteen_times(length in 0.2..4.0) {
            let ratio = |end, spread| {
                let (one, two) = (beam(length, end, spread).evaluate().unwrap(), beam(2.0 * length, end, spread).evaluate().unwrap());
                two.deflection.base() / one.deflection.base()
            };
            prop_assert!((ratio(100.0, 0.0) - 8.0).abs() < 1e-9 && (ratio(0.0, 100.0) - 16.0).abs() < 1e-9);
        }
    }

    #[test]
    fn a_beam_without_stiffness_is_refused() {
        let limp = CantileverBeam {
            inertia: SecondMomentOfArea::from_base(0.0),
            ..beam(1.0, 1.0, 1.0)
        };
        assert_eq!(limp.evaluate().unwrap_err().input, "inertia");
    }
}
