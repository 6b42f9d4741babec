//! Resistance of a conductor from its metal and cross-section.

use super::conductor_diameter::metal_area;
use crate::OutOfReach;
use quantity::{
    ConductorSize, Quantity as _, Ratio, ResistancePerLength, Temperature, celsius, difference,
};

quantity::words! {
    /// Metal of a conductor.
    pub enum Metal {
        /// Annealed copper, 100 % of the standard conductivity.
        Copper = "copper",
        /// Commercially pure aluminum, 60 % of the standard conductivity.
        Aluminum = "aluminum",
    }
}

quantity::words! {
    /// Whether a conductor is one wire or a bundle of strands.
    pub enum Stranding {
        /// One solid wire.
        Solid = "solid",
        /// Concentric strands, laid round each other.
        Stranded = "stranded",
    }
}

formula! {
    /// Nominal direct-current resistance of one conductor for each unit of length, at the temperature of its metal.
    ///
    /// The metal is taken as pure as the standard wants it and the cross-section as its gauge or its metric size says.
    /// Strands run in a helix and are 2 % longer than the conductor. A conductor on the drum may have more: for a limit
    /// that a maker must keep, use `iec-60228-resistance` (metric sizes) or `nec-table-8-resistance` (gauges); a design
    /// takes the larger. Copper-clad aluminum is neither metal here and has about half again the resistance of copper.
    pub struct ConductorResistance = "conductor-resistance" in Power {
        /// Size of the conductor.
        size ("A"): ConductorSize,
        /// Metal of the conductor.
        metal ("ρ"): Metal,
        /// Solid or stranded.
        stranding ("k"): Stranding,
        /// Temperature of the metal.
        temperature ("T"): Temperature,
    }
    gives
    /// Resistance of a conductor.
    pub struct ConductorOhms {
        /// Resistance for each unit of length at the temperature.
        resistance ("R′"): ResistancePerLength,
        /// Resistance at 20 °C.
        at_20_celsius ("R′20"): ResistancePerLength,
        /// Ratio of the two.
        factor ("R′/R′20"): Ratio,
    }
    formula "R′20 = k · ρ20 / A\nR′ = R′20 · (1 + α20 · (T − 20 °C))\ncopper: ρ20 = 1/58 Ω·mm²/m, α20 = 0.00393 /K\naluminum: ρ20 = 1/34.80 Ω·mm²/m, α20 = 0.00403 /K\nk = 1 solid, 1.02 stranded"
    valid "Metal from −50 °C to 200 °C; direct current, or 60 Hz in sizes below 1/0 AWG. Strands 2 % longer: common practice for concentric lay; fine bunched strands may take up to 4 %."
    source { work: "IEC 60028 and IEC 60105 (standard resistivities); ASTM B258 (cross-section)", clause: "", evidence: Seen, seen: "table 30.1 of a handbook of industrial power engineering: digilib.universitaspertamina.ac.id, page 968 to 970" }
    by conductor_resistance
}

/// Strands are longer than their conductor by this factor: common practice for concentric lay.
const LAY: f64 = 1.02;

/// Resistivity at 20 °C in Ω·m, and its temperature coefficient there in 1/K.
fn constants(metal: Metal) -> (f64, f64) {
    match metal {
        Metal::Copper => (1e-6 / 58.0, 0.00393),
        Metal::Aluminum => (1e-6 / 34.80, 0.00403),
    }
}

/// Refuses a temperature of the metal outside −50 °C to 200 °C.
pub(super) fn check_temperature(temperature: Temperature) -> Result<(), OutOfReach> {
    if (celsius(-50.0)..=celsius(200.0)).contains(&temperature) {
        return Ok(());
    }
    Err(OutOfReach::new(
        "temperature",
        "give the temperature of the metal from −50 °C to 200 °C, such as 75 °C for a loaded conductor",
    ))
}

fn conductor_resistance(conductor: &ConductorResistance) -> Result<ConductorOhms, OutOfReach> {
    check_temperature(conductor.temperature)?;
    let (resistivity, coefficient) = constants(conductor.metal);
    let lay = match conductor.stranding {
        Stranding::Solid => 1.0,
        Stranding::Stranded => LAY,
    };
    let warmer = difference(conductor.temperature, celsius(20.0)).base();
    let factor = 1.0 + coefficient * warmer;
    let cold = lay * resistivity / metal_area(conductor.size).base();
    Ok(ConductorOhms {
        resistance: ResistancePerLength::from_base(cold * factor),
        at_20_celsius: ResistancePerLength::from_base(cold),
        factor: Ratio::from_base(factor),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Area;

    fn ohms(area: f64, metal: Metal, stranding: Stranding, degrees: f64) -> f64 {
        ConductorResistance {
            size: ConductorSize::Metric(Area::from_base(area)),
            metal,
            stranding,
            temperature: celsius(degrees),
        }
        .evaluate()
        .unwrap()
        .resistance
        .base()
    }

    proptest! {
        #[test]
        fn resistance_rises_with_heat_and_falls_with_metal(
            area in 1e-7..1e-4, degrees in -50.0..190.0, more in 0.1..10.0
        ) {
            for metal in Metal::ALL {
                let here = ohms(area, *metal, Stranding::Solid, degrees);
                prop_assert!(here > 0.0);
                prop_assert!(ohms(area, *metal, Stranding::Solid, degrees + more) > here);
                prop_assert!(ohms(area * (1.0 + more), *metal, Stranding::Solid, degrees) < here);
                prop_assert!(ohms(area, *metal, Stranding::Stranded, degrees) > here);
            }
            prop_assert!(
                ohms(area, Metal::Aluminum, Stranding::Solid, degrees)
                    > ohms(area, Metal::Copper, Stranding::Solid, degrees)
            );
        }
    }

    #[test]
    fn a_molten_conductor_is_refused() {
        let conductor = ConductorResistance {
            size: ConductorSize::Metric(Area::from_base(1e-6)),
            metal: Metal::Copper,
            stranding: Stranding::Solid,
            temperature: celsius(1100.0),
        };
        assert_eq!(conductor.evaluate().unwrap_err().input, "temperature");
    }
}
