//! A long beam on soil under the load of one wheel.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{
    Force, Length, Pressure, PressurePerDepth, Quantity as _, SecondMomentOfArea, Torque,
};

formula! {
    /// Settlement, pressure and bending of a long beam that lies on soil, under one wheel far from its ends and at an end.
    ///
    /// The soil presses back in proportion to how far the beam sinks into it, place by place. The stiffness of soil is a
    /// rough figure: the moment changes only with its fourth root, a softer soil gives the larger moment and a stiffer one
    /// the larger pressure. Under a wheel at the very end the beam sinks four times as deep, and its top is pulled. A beam
    /// is long where it reaches three times the length `Lc` to each side of the wheel. The beam's own weight is left out.
    pub struct BeamOnSoil = "beam-on-soil" in Standing {
        /// Load of the wheel.
        load ("P"): Force,
        /// Width of the beam where it lies on the soil.
        width ("b"): Length,
        /// Second moment of area of its section, uncracked.
        inertia ("I"): SecondMomentOfArea,
        /// Elasticity of its concrete.
        elasticity ("E"): Pressure,
        /// Pressure of the soil for each unit that the beam sinks in.
        stiffness ("k"): PressurePerDepth,
    }
    gives
    /// A long beam under one wheel.
    pub struct BeamOnSoilLoad {
        /// Length over which the beam spreads the load.
        spread ("Lc = 1/λ"): Length,
        /// How far the beam sinks under the wheel.
        settlement ("y"): Length,
        /// Pressure on the soil under the wheel.
        pressure ("p"): Pressure,
        /// Moment under the wheel, which pulls the bottom.
        moment ("M"): Torque,
        /// Pressure on the soil with the wheel at the end of the beam.
        end_pressure ("pe"): Pressure,
        /// Greatest moment with the wheel at the end, which pulls the top.
        end_moment ("Me"): Torque,
    }
    formula "λ = (k · b / (4 · E · I))^¼\ny = P · λ / (2 · k · b), p = k · y\nM = P / (4 · λ)\nat the end: pe = 4 · p, Me = e^(−π/4) · sin(π/4) · P / λ"
    valid "A straight beam of one section on even soil that does not lift off; one wheel; 3 · Lc of beam on each side of it, or on one side for a wheel at the end."
    source { work: "M. Hetényi, Beams on Elastic Foundation (1946)", clause: "infinite and half-infinite beam under one load", evidence: Seen, seen: "the infinite beam in public test suites of frame programs; both kinds worked again with beam elements" }
    by sunk
}

fn sunk(beam: &BeamOnSoil) -> Result<BeamOnSoilLoad, OutOfReach> {
    positive("load", beam.load, "16,000 lbf")?;
    positive("width", beam.width, "14 in")?;
    positive("inertia", beam.inertia, "12,000 in⁴")?;
    positive("elasticity", beam.elasticity, "3,400 ksi")?;
    positive("stiffness", beam.stiffness, "100 lbf/in³")?;
    let load = beam.load.base();
    let line = beam.stiffness.base() * beam.width.base();
    let inverse = (line / (4.0 * beam.elasticity.base() * beam.inertia.base())).powf(0.25);
    if !(1e-6..=1e6).contains(&inverse) {
        return Err(OutOfReach::new(
            "stiffness",
            "a beam and a soil of these figures are no track bed; look at their units",
        ));
    }
    let settlement = load * inverse / (2.0 * line);
    let pressure = beam.stiffness.base() * settlement;
    let quarter = std::f64::consts::FRAC_PI_4;
    Ok(BeamOnSoilLoad {
        spread: Length::from_base(1.0 / inverse),
        settlement: Length::from_base(settlement),
        pressure: Pressure::from_base(pressure),
        moment: Torque::from_base(load / (4.0 * inverse)),
        end_pressure: Pressure::from_base(4.0 * pressure),
        end_moment: Torque::from_base((-quarter).exp() * quarter.sin() * load / inverse),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn beam(load: f64, width: f64, depth: f64, stiffness: f64) -> BeamOnSoil {
        BeamOnSoil {
            load: Force::from_base(load),
            width: Length::from_base(width),
            inertia: SecondMomentOfArea::from_base(width * depth.powi(3) / 12.0),
            elasticity: Pressure::from_base(25e9),
            stiffness: PressurePerDepth::from_base(stiffness),
        }
    }

    /// Settlement at a distance from the load, as the differential equation has it.
    fn at(found: &BeamOnSoilLoad, distance: f64) -> f64 {
        let share = distance / found.spread.base();
        found.settlement.base() * (-share).exp() * (share.cos() + share.sin())
    }

    proptest! {
        #[test]
        fn softer_soil_bends_the_beam_more_and_is_pressed_less(
            load in 1e2..2e5, width in 0.2..1.0, depth in 0.2..1.2, stiffness in 1e6..2e8
        ) {
            let firm = beam(load, width, depth, stiffness).evaluate().unwrap();
            let soft = beam(load, width, depth, stiffness / 16.0).evaluate().unwrap();
            prop_assert!((soft.moment.base() / firm.moment.base() - 2.0).abs() < 1e-9);
            prop_assert!(soft.pressure < firm.pressure);
            prop_assert!(soft.settlement > firm.settlement);
        }

        /// All that the soil presses back along the beam carries the wheel.
        #[test]
        fn the_soil_carries_the_wheel(load in 1e2..2e5, width in 0.2..1.0, depth in 0.2..1.2) {
            let stiffness = 3e7;
            let found = beam(load, width, depth, stiffness).evaluate().unwrap();
            let steps = 4000;
            let reach = 20.0 * found.spread.base();
            let step = reach / f64::from(steps);
            let sum: f64 = (0..steps)
                .map(|place| at(&found, (f64::from(place) + 0.5) * step) * step)
                .sum();
            let carried = 2.0 * sum * stiffness * width;
            prop_assert!((carried / load - 1.0).abs() < 1e-4);
        }
    }

    #[test]
    fn no_soil_is_refused() {
        assert_eq!(
            beam(1e4, 0.4, 0.6, 0.0).evaluate().unwrap_err().input,
            "stiffness"
        );
    }
}
