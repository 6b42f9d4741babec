//! How cold the inside of an enclosure and its walls get before sunrise.

use crate::OutOfReach;
use quantity::{
    Area, HeatFlux, HeatTransfer, Power, Quantity as _, Temperature, TemperatureDifference, warmed,
};

formula! {
    /// Air inside a closed enclosure, and the inner face of its walls, under a clear sky before sunrise.
    ///
    /// What is inside warms it, and the faces that see the sky lose heat to it: about 70 W/m² from a level face under a
    /// clear dry sky by common practice, nothing under a roof or in a wood. The inner face lies between the air inside and
    /// the air outside as the resistance of the inner surface asks for: 0.13 m²·K/W. Where it is wet and the air inside is
    /// not, the walls run and the boards stay dry.
    pub struct EnclosureDawn = "enclosure-dawn" in Power {
        /// Heat that everything inside gives off.
        heat ("P"): Power,
        /// Heat lost to the sky from each unit of the faces that see it.
        sky ("q"): HeatFlux,
        /// Area of the faces that see the sky.
        sky_area ("Aₛ"): Area,
        /// Surface that gives off heat.
        area ("A"): Area,
        /// Heat transfer coefficient of the walls, air on both sides included.
        transfer ("U"): HeatTransfer,
        /// Temperature of the air outside.
        outside ("Tₒ"): Temperature,
    }
    gives
    /// An enclosure before sunrise.
    pub struct DawnInside {
        /// How much warmer than outside the air inside is; below zero where the sky takes more than is given off.
        rise ("ΔT"): TemperatureDifference,
        /// Air inside.
        inside ("Tᵢ"): Temperature,
        /// Inner face of the walls.
        wall ("T𝓌"): Temperature,
    }
    formula "ΔT = (P − q · Aₛ) / (U · A)\nTᵢ = Tₒ + ΔT\nT𝓌 = Tₒ + ΔT · (1 − U · 0.13 m²·K/W)"
    valid "Steady heat in a closed enclosure with mixed air; walls of at most 7.69 W/(m²·K)."
    source { work: "heat balance; ISO 6946 for the resistance of the inner surface", clause: "table of surface resistances, horizontal flow", evidence: Seen, seen: "https://www.htflux.com/en/documentation/boundary-conditions/surface-resistance-heat-transfer-coefficient/" }
    by enclosure_dawn
}

/// Resistance of the inner surface, in m²·K/W.
const INNER: f64 = 0.13;

fn enclosure_dawn(dawn: &EnclosureDawn) -> Result<DawnInside, OutOfReach> {
    check(dawn)?;
    let transfer = dawn.transfer.base();
    let lost = dawn.sky.base() * dawn.sky_area.base();
    let rise = (dawn.heat.base() - lost) / (transfer * dawn.area.base());
    let above = |kelvin: f64| warmed(dawn.outside, TemperatureDifference::from_base(kelvin));
    Ok(DawnInside {
        rise: TemperatureDifference::from_base(rise),
        inside: above(rise),
        wall: above(rise * (1.0 - transfer * INNER)),
    })
}

fn check(dawn: &EnclosureDawn) -> Result<(), OutOfReach> {
    let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
    if dawn.area.base() <= 0.0 {
        return refuse(
            "area",
            "give the surface that gives off heat, above zero, such as 8 ft²",
        );
    }
    if !(dawn.transfer.base() > 0.0 && dawn.transfer.base() * INNER <= 1.0) {
        return refuse(
            "transfer",
            "give a coefficient above zero and at most 7.69 W/(m²·K); above that the inner surface alone would let less through",
        );
    }
    if dawn.heat.base() < 0.0 {
        return refuse("heat", "heat given off inside cannot be below zero");
    }
    if dawn.sky.base() < 0.0 {
        return refuse("sky", "give the heat lost to the sky, 0 W/m² under a roof");
    }
    if !(0.0..=dawn.area.base()).contains(&dawn.sky_area.base()) {
        return refuse(
            "sky_area",
            "the faces that see the sky are part of the surface",
        );
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::celsius;

    fn dawn(heat: f64, sky: f64, transfer: f64) -> EnclosureDawn {
        EnclosureDawn {
            heat: Power::from_base(heat),
            sky: HeatFlux::from_base(sky),
            sky_area: Area::from_base(0.3),
            area: Area::from_base(1.5),
            transfer: HeatTransfer::from_base(transfer),
            outside: celsius(10.0),
        }
    }

    proptest! {
        #[test]
        fn the_wall_lies_between_inside_and_outside(heat in 0.0..200.0, sky in 0.0..100.0, transfer in 0.5..7.6) {
            let found = dawn(heat, sky, transfer).evaluate().unwrap();
            let (inside, wall, outside) = (found.inside.base(), found.wall.base(), 283.15);
            prop_assert!(wall <= inside.max(outside) + 1e-9 && wall >= inside.min(outside) - 1e-9);
            let through = transfer * 1.5 * (inside - outside);
            prop_assert!((through - heat + 0.3 * sky).abs() < 1e-6);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(dawn(-1.0, 0.0, 5.0).evaluate().unwrap_err().input, "heat");
        assert_eq!(dawn(1.0, -1.0, 5.0).evaluate().unwrap_err().input, "sky");
        assert_eq!(
            dawn(1.0, 0.0, 12.0).evaluate().unwrap_err().input,
            "transfer"
        );
    }
}
