//! Moment, stress and deflection of a beam that rests on two supports.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{
    Force, ForcePerLength, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque, Volume,
};

formula! {
    /// Moment, bending stress and deflection in the middle of a straight beam on two supports: a rail between uprights,
    /// a slat, a frame between its wheels.
    pub struct SimpleBeam = "simple-beam" in Leaf {
        /// Distance between the supports.
        length ("L"): Length,
        /// Load in the middle.
        middle_load ("P"): Force,
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
    /// A beam on two supports.
    pub struct SimpleBending {
        /// Moment in the middle.
        moment ("M"): Torque,
        /// Bending stress in the middle.
        stress ("σ"): Pressure,
        /// Deflection in the middle.
        deflection ("δ"): Length,
    }
    formula "M = P · L / 4 + w · L² / 8\nσ = M / S\nδ = P · L³ / (48 · E · I) + 5 · w · L⁴ / (384 · E · I)"
    valid "Slender straight beams of one section, small deflections, stress below yield; the deflection by shear is left out."
    source { work: "beam theory, handbook cases of a simply supported beam", clause: "", evidence: Seen, seen: "Stresses and deflections in beams: http://mobile.engineeringtoolbox.com/beam-stress-deflection-d_1312.php" }
    by bend
}

fn bend(beam: &SimpleBeam) -> Result<SimpleBending, OutOfReach> {
    positive("length", beam.length, "100 in")?;
    not_negative("middle_load", beam.middle_load, "200 lbf")?;
    not_negative("uniform_load", beam.uniform_load, "10 lbf/ft")?;
    positive("elasticity", beam.elasticity, "29000 ksi")?;
    positive("inertia", beam.inertia, "7.8 in⁴")?;
    positive("modulus", beam.modulus, "3.9 in³")?;
    let (length, load, spread) = (
        beam.length.base(),
        beam.middle_load.base(),
        beam.uniform_load.base(),
    );
    let moment = load * length / 4.0 + spread * length.powi(2) / 8.0;
    let stiffness = beam.elasticity.base() * beam.inertia.base();
    let deflection = load * length.powi(3) / 48.0 + 5.0 * spread * length.powi(4) / 384.0;
    Ok(SimpleBending {
        moment: Torque::from_base(moment),
        stress: Pressure::from_base(moment / beam.modulus.base()),
        deflection: Length::from_base(deflection / stiffness),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::leaf::CantileverBeam;
    use proptest::prelude::*;

    fn beam(length: f64, middle_load: f64, uniform_load: f64) -> SimpleBeam {
        SimpleBeam {
            length: Length::from_base(length),
            middle_load: Force::from_base(middle_load),
            uniform_load: ForcePerLength::from_base(uniform_load),
            elasticity: Pressure::from_base(200e9),
            inertia: SecondMomentOfArea::from_base(3e-6),
            modulus: Volume::from_base(6e-5),
        }
    }

    proptest! {
        /// From its middle a beam on two supports is two cantilevers that its supports push up.
        #[test]
        fn half_a_beam_is_a_cantilever(length in 0.4..8.0, load in 1.0..2000.0) {
            let whole = beam(length, load, 0.0).evaluate().unwrap();
            let half = CantileverBeam {
                length: Length::from_base(length / 2.0),
                end_load: Force::from_base(load / 2.0),
                uniform_load: ForcePerLength::from_base(0.0),
                elasticity: Pressure::from_base(200e9),
                inertia: SecondMomentOfArea::from_base(3e-6),
                modulus: Volume::from_base(6e-5),
            };
            let half = half.evaluate().unwrap();
            prop_assert!((whole.deflection.base() / half.deflection.base() - 1.0).abs() < 1e-9);
            prop_assert!((whole.moment.base() / half.moment.base() - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn supports_at_one_place_are_refused() {
        assert_eq!(beam(0.0, 1.0, 1.0).evaluate().unwrap_err().input, "length");
    }
}
