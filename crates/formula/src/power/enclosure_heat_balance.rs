//! How warm a closed enclosure gets inside.

use crate::OutOfReach;
use quantity::{
    Area, HeatFlux, HeatTransfer, Power, Quantity as _, Ratio, Temperature, TemperatureDifference,
    warmed,
};

formula! {
    /// Steady temperature inside a closed enclosure that is warmed by what is in it and by the sun.
    ///
    /// All heat leaves through the walls: no fan, no vent. The coefficient covers air and radiation on both sides; for
    /// painted steel 5.5 W/(m²·K), stainless steel 3.7, aluminum 12 and plastic 3.5 are common practice, and makers'
    /// pages differ. Charts of makers show up to a fifth more rise than this straight line. Backward, with a rise, it
    /// gives the heater for the cold; outdoors, in wind, double that.
    ///
    /// All the sunshine that the finish takes up is counted as if it came inside. In truth part of it leaves from the outer
    /// face again, so a box in full sun stays cooler than this: the answer is on the safe side, and a shade or a white
    /// finish helps less than it says.
    pub struct EnclosureHeatBalance = "enclosure-heat-balance" in Power {
        /// Heat that everything inside gives off.
        heat ("P"): Power,
        /// Sunshine arriving on the sunlit faces; 0 in the shade, about 750 W/m² on a telecom cabinet by common practice.
        sunshine ("E"): HeatFlux,
        /// Area of the sunlit faces.
        sunlit_area ("Aₛ"): Area,
        /// Share of the sunshine that the finish takes up: from about 0.3 for white to 0.95 for black.
        absorptance ("α"): Ratio,
        /// Surface that gives off heat.
        area ("A"): Area,
        /// Heat transfer coefficient of the walls.
        transfer ("U"): HeatTransfer,
        /// Temperature of the air outside.
        outside ("Tₒ"): Temperature,
    }
    gives
    /// The heat balance of an enclosure.
    pub struct EnclosureWarmth {
        /// Heat taken up from the sun.
        solar ("Pₛ"): Power,
        /// How much warmer the inside gets.
        rise ("ΔT"): TemperatureDifference,
        /// Temperature inside.
        inside ("Tᵢ"): Temperature,
    }
    formula "Pₛ = α · E · Aₛ\nΔT = (P + Pₛ) / (U · A)\nTᵢ = Tₒ + ΔT"
    valid "Steady heat in a closed enclosure with mixed air; the sunlit faces are part of the surface."
    source { work: "heat balance: what enters leaves through the walls", clause: "", evidence: Physics, seen: "industrialmonitordirect.com/blogs/knowledgebase/electrical-enclosure-natural-cooling-heat-dissipation-calculation" }
    by enclosure_heat_balance
}

fn enclosure_heat_balance(enclosure: &EnclosureHeatBalance) -> Result<EnclosureWarmth, OutOfReach> {
    check(enclosure)?;
    let sunshine = enclosure.sunshine.base() * enclosure.sunlit_area.base();
    let solar = Power::from_base(enclosure.absorptance.base() * sunshine);
    let leaving = enclosure.transfer.base() * enclosure.area.base();
    let rise = TemperatureDifference::from_base((enclosure.heat.base() + solar.base()) / leaving);
    Ok(EnclosureWarmth {
        solar,
        rise,
        inside: warmed(enclosure.outside, rise),
    })
}

fn check(enclosure: &EnclosureHeatBalance) -> Result<(), OutOfReach> {
    let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
    if enclosure.area.base() <= 0.0 {
        return refuse(
            "area",
            "give the surface that gives off heat, above zero, such as 8 ft²",
        );
    }
    if enclosure.transfer.base() <= 0.0 {
        return refuse(
            "transfer",
            "give a coefficient above zero, such as 5.5 W/(m²·K) for painted steel",
        );
    }
    if enclosure.heat.base() < 0.0 {
        return refuse("heat", "heat given off inside cannot be below zero");
    }
    if enclosure.sunshine.base() < 0.0 {
        return refuse(
            "sunshine",
            "sunshine cannot be below zero; give 0 W/m² in the shade",
        );
    }
    if !(0.0..=enclosure.area.base()).contains(&enclosure.sunlit_area.base()) {
        return refuse(
            "sunlit_area",
            "the sunlit faces are part of the surface; give 0 to all of it",
        );
    }
    if !(0.0..=1.0).contains(&enclosure.absorptance.base()) {
        return refuse(
            "absorptance",
            "give a share from 0 to 1, such as 0.4 for a light finish",
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

    fn enclosure(heat: f64, sunshine: f64, area: f64) -> EnclosureHeatBalance {
        EnclosureHeatBalance {
            heat: Power::from_base(heat),
            sunshine: HeatFlux::from_base(sunshine),
            sunlit_area: Area::from_base(0.3 * area),
            absorptance: Ratio::from_base(0.4),
            area: Area::from_base(area),
            transfer: HeatTransfer::from_base(5.5),
            outside: celsius(35.0),
        }
    }

    proptest! {
        #[test]
        fn what_enters_leaves(heat in 0.0..500.0, sunshine in 0.0..1100.0, area in 0.1..5.0) {
            let warmth = enclosure(heat, sunshine, area).evaluate().unwrap();
            let leaving = 5.5 * area * warmth.rise.base();
            prop_assert!((leaving - heat - warmth.solar.base()).abs() < 1e-9 * (1.0 + leaving));
            let larger = enclosure(heat, sunshine, area).evaluate().unwrap();
            prop_assert!(enclosure(heat + 1.0, sunshine, area).evaluate().unwrap().rise > larger.rise);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(
            enclosure(10.0, 0.0, 0.0).evaluate().unwrap_err().input,
            "area"
        );
        assert_eq!(
            enclosure(-1.0, 0.0, 1.0).evaluate().unwrap_err().input,
            "heat"
        );
        let dark = EnclosureHeatBalance {
            absorptance: Ratio::from_base(1.5),
            ..enclosure(10.0, 100.0, 1.0)
        };
        assert_eq!(dark.evaluate().unwrap_err().input, "absorptance");
        let lit = EnclosureHeatBalance {
            sunlit_area: Area::from_base(2.0),
            ..enclosure(10.0, 100.0, 1.0)
        };
        assert_eq!(lit.evaluate().unwrap_err().input, "sunlit_area");
    }
}
