//! How long, and how much, fault current a conductor stands before its insulation suffers.

use super::conductor_diameter::metal_area;
use super::conductor_resistance::Metal;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{
    Area, ConductorSize, Current, Quantity as _, Temperature, Time, celsius, difference,
};

formula! {
    /// What a conductor stands of a short fault current before its insulation is damaged.
    ///
    /// All heat stays in the metal, which is so for up to five seconds and errs on the safe side. The device that cuts
    /// off must have done so within the time, or must let less energy through than the conductor stands. PVC starts at
    /// 70 °C and may reach 160 °C (k = 115 for copper), cross-linked polyethylene starts at 90 °C and may reach 250 °C
    /// (k = 143); a protective conductor that does not lie in the cable starts cooler.
    pub struct AdiabaticWithstand = "adiabatic-withstand" in Power {
        /// Size of the conductor.
        size ("S"): ConductorSize,
        /// Metal of the conductor.
        metal ("–"): Metal,
        /// Temperature of the metal when the fault begins.
        initial ("θi"): Temperature,
        /// Temperature that the insulation stands for a moment.
        limit ("θf"): Temperature,
        /// Fault current.
        current ("I"): Current,
        /// Time in which the device cuts it off.
        time ("t"): Time,
    }
    gives
    /// What a conductor stands of a fault.
    pub struct FaultWithstand {
        /// Time for which it stands the current.
        longest ("tmax"): Time,
        /// Current that it stands for the time.
        greatest ("Imax"): Current,
        /// Least cross-section that stands the current for the time.
        least_area ("Smin"): Area,
    }
    formula "k = K · √ln((β + θf) / (β + θi))\ncopper: K = 226 A·√s/mm², β = 234.5 °C\naluminum: K = 148 A·√s/mm², β = 228 °C\ntmax = (k · S / I)²\nImax = k · S / √t\nSmin = I · √t / k"
    valid "Faults of 0.1 s to 5 s; below 0.1 s hold the let-through energy of the device against k² · S² instead. Metal from −50 °C to 350 °C."
    source { work: "IEC 60364-5-54", clause: "543.1.2 and annex A (the same in IEC 60364-4-43, 434.5.2)", evidence: Seen, seen: "worked examples: zdroje.elektrika.cz/book/basic-electrical-installation-work/page/262; table of k² · S²: www.electrical-installation.org/enwiki/Verification_of_the_withstand_capabilities_of_cables_under_short-circuit_conditions; constant of copper: studylib.net/doc/25320408/" }
    by adiabatic_withstand
}

/// K in A·√s/m², and β in °C.
fn constants(metal: Metal) -> (f64, f64) {
    match metal {
        Metal::Copper => (226e6, 234.5),
        Metal::Aluminum => (148e6, 228.0),
    }
}

fn adiabatic_withstand(conductor: &AdiabaticWithstand) -> Result<FaultWithstand, OutOfReach> {
    positive("current", conductor.current, "200 A")?;
    positive("time", conductor.time, "0.4 s")?;
    let range = celsius(-50.0)..=celsius(350.0);
    if !range.contains(&conductor.initial) {
        return Err(OutOfReach::new(
            "initial",
            "give the temperature of the metal, such as 70 °C for a loaded conductor",
        ));
    }
    if !range.contains(&conductor.limit) || conductor.limit <= conductor.initial {
        return Err(OutOfReach::new(
            "limit",
            "the insulation stands more than the metal has at the start, such as 160 °C for PVC",
        ));
    }
    let (constant, beta) = constants(conductor.metal);
    let above = |temperature| beta + difference(temperature, celsius(0.0)).base();
    let k = constant
        * (above(conductor.limit) / above(conductor.initial))
            .ln()
            .sqrt();
    let area = metal_area(conductor.size).base();
    let (current, time) = (conductor.current.base(), conductor.time.base());
    Ok(FaultWithstand {
        longest: Time::from_base((k * area / current).powi(2)),
        greatest: Current::from_base(k * area / time.sqrt()),
        least_area: Area::from_base(current * time.sqrt() / k),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn fault(square_millimeters: f64, current: f64, time: f64) -> AdiabaticWithstand {
        AdiabaticWithstand {
            size: ConductorSize::Metric(Area::from_base(square_millimeters * 1e-6)),
            metal: Metal::Copper,
            initial: celsius(70.0),
            limit: celsius(160.0),
            current: Current::from_base(current),
            time: Time::from_base(time),
        }
    }

    proptest! {
        #[test]
        fn the_three_answers_agree(area in 0.5..50.0, current in 5.0..5000.0, time in 0.1..5.0) {
            let found = fault(area, current, time).evaluate().unwrap();
            let holds = found.longest.base() >= time;
            prop_assert_eq!(holds, found.greatest.base() >= current);
            prop_assert_eq!(holds, found.least_area.base() <= area * 1e-6);
        }

        #[test]
        fn a_thicker_conductor_stands_it_longer(area in 0.5..50.0, current in 5.0..5000.0) {
            let thin = fault(area, current, 0.4).evaluate().unwrap();
            let thick = fault(area * 2.0, current, 0.4).evaluate().unwrap();
            prop_assert!((thick.longest.base() / thin.longest.base() - 4.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_current_no_time_and_a_limit_below_the_start_are_refused() {
        assert_eq!(
            fault(1.0, 0.0, 0.4).evaluate().unwrap_err().input,
            "current"
        );
        assert_eq!(fault(1.0, 10.0, 0.0).evaluate().unwrap_err().input, "time");
        let cold = AdiabaticWithstand {
            limit: celsius(60.0),
            ..fault(1.0, 10.0, 0.4)
        };
        assert_eq!(cold.evaluate().unwrap_err().input, "limit");
    }
}
