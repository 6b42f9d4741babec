//! How much faster a part ages when it is hotter, by its activation energy.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio, Temperature, Voltage};

formula! {
    /// How many times faster a part ages at one temperature than at another, by Arrhenius.
    ///
    /// The activation energy is that of the process that ends the part: about 0.5 eV for lead-acid batteries and 0.7 eV for
    /// electronics are often taken; the data sheet decides. The rule of ten degrees is this law near one place only.
    pub struct ArrheniusFactor = "arrhenius-factor" in Life {
        /// Activation energy, as the voltage through which one electron gains it: 0.7 V for 0.7 eV.
        energy ("Ea/e"): Voltage,
        /// The one temperature.
        from ("T1"): Temperature,
        /// The other temperature.
        to ("T2"): Temperature,
    }
    gives
    /// Aging at one temperature over that at another.
    pub struct AgingRate {
        /// How many times faster it ages at the other temperature; below 1 where that is the colder one.
        factor ("k"): Ratio,
    }
    formula "k = exp(Ea / kB · (1 / T1 − 1 / T2)), kB = 8.617333·10⁻⁵ eV/K"
    valid "One process, energies up to 2 eV, temperatures from 200 K to 600 K."
    source { work: "Arrhenius' law; Boltzmann constant of the SI brochure, 9th edition", clause: "", evidence: Physics, seen: "definition" }
    by aging_rate
}

/// Boltzmann constant over the charge of an electron, both by definition, in V/K.
const BOLTZMANN: f64 = 1.380_649e-23 / 1.602_176_634e-19;

fn aging_rate(part: &ArrheniusFactor) -> Result<AgingRate, OutOfReach> {
    positive("energy", part.energy, "0.7 V")?;
    if part.energy.base() > 2.0 {
        return Err(OutOfReach::new(
            "energy",
            "an activation energy lies near 1 eV; give 0.7 eV as 0.7 V",
        ));
    }
    for (input, temperature) in [("from", part.from), ("to", part.to)] {
        if !(200.0..=600.0).contains(&temperature.base()) {
            return Err(OutOfReach::new(
                input,
                "give a temperature from −73 °C to 327 °C, such as 40 °C",
            ));
        }
    }
    let inverse = 1.0 / part.from.base() - 1.0 / part.to.base();
    Ok(AgingRate {
        factor: Ratio::from_base((part.energy.base() / BOLTZMANN * inverse).exp()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn factor(volts: f64, from: f64, to: f64) -> Result<AgingRate, OutOfReach> {
        ArrheniusFactor {
            energy: Voltage::from_base(volts),
            from: Temperature::from_base(from),
            to: Temperature::from_base(to),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn the_way_back_undoes_it(volts in 0.1..2.0, from in 220.0..400.0, to in 220.0..400.0) {
            let (there, back) = (factor(volts, from, to).unwrap(), factor(volts, to, from).unwrap());
            prop_assert!((there.factor.base() * back.factor.base() - 1.0).abs() < 1e-9);
        }

        #[test]
        fn hotter_ages_faster(volts in 0.1..2.0, from in 220.0..400.0) {
            prop_assert!(factor(volts, from, from + 10.0).unwrap().factor.base() > 1.0);
        }
    }

    #[test]
    fn ten_electronvolts_are_refused() {
        assert_eq!(factor(10.0, 300.0, 310.0).unwrap_err().input, "energy");
        assert_eq!(factor(0.7, 300.0, 700.0).unwrap_err().input, "to");
    }
}
