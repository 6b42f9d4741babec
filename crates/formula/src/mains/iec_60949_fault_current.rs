//! Fault current that a cable of copper under cross-linked polyethylene stands, with the heat that leaves the metal.

use crate::OutOfReach;
use crate::check::positive;
use crate::power::metal_area;
use quantity::{
    ConductorSize, Current, Quantity as _, Ratio, Temperature, Time, celsius, difference,
};

formula! {
    /// Fault current that a copper conductor in cross-linked polyethylene stands for a time, with and without the heat that
    /// leaves the metal meanwhile.
    ///
    /// The adiabatic value is on the safe side. For small conductors and long times some of the heat goes into the
    /// insulation, and a little more current may flow.
    pub struct Iec60949FaultCurrent = "iec-60949-fault-current" in Power {
        /// Size of the conductor.
        size ("S"): ConductorSize,
        /// Temperature of the metal when the fault begins.
        initial ("θi"): Temperature,
        /// Temperature that the insulation stands for a moment.
        limit ("θf"): Temperature,
        /// How long the fault lasts.
        time ("t"): Time,
    }
    gives
    /// Permissible fault current.
    pub struct Iec60949Current {
        /// With all heat staying in the metal.
        adiabatic ("IAD"): Current,
        /// Factor for the heat that leaves it.
        factor ("ε"): Ratio,
        /// With that factor.
        permissible ("I"): Current,
    }
    formula "IAD = K · S · √(ln((θf + β) / (θi + β)) / t)\nK = 225.669 A·√s/mm², β = 234.5 °C\nε = √(1 + X · √(t / S) + Y · t / S), X = 0.41 √(mm²/s), Y = 0.12 mm²/s\nI = ε · IAD"
    valid "Copper under cross-linked polyethylene up to 3 kV, faults up to 5 s."
    source { work: "IEC 60949", clause: "3 and 5", evidence: Seen, seen: "calculation of the thermally permissible short-circuit current: studylib.net/doc/25320408/" }
    by iec_60949_fault_current
}

/// K of copper in A·√s/m².
const K: f64 = 225.669e6;
const BETA: f64 = 234.5;
const X: f64 = 0.41;
const Y: f64 = 0.12;

fn iec_60949_fault_current(
    conductor: &Iec60949FaultCurrent,
) -> Result<Iec60949Current, OutOfReach> {
    positive("time", conductor.time, "1 s")?;
    let above = |temperature| BETA + difference(temperature, celsius(0.0)).base();
    let (start, end) = (above(conductor.initial), above(conductor.limit));
    if start <= 0.0 || end <= start {
        return Err(OutOfReach::new(
            "limit",
            "the insulation stands more than the metal has at the start, such as 250 °C after 90 °C",
        ));
    }
    let area = metal_area(conductor.size).base();
    if area <= 0.0 {
        return Err(OutOfReach::new(
            "size",
            "a conductor has some metal; give a size such as 95 mm²",
        ));
    }
    let seconds = conductor.time.base();
    let adiabatic = K * area * ((end / start).ln() / seconds).sqrt();
    let per_area = seconds / (area * 1e6);
    let factor = (1.0 + X * per_area.sqrt() + Y * per_area).sqrt();
    Ok(Iec60949Current {
        adiabatic: Current::from_base(adiabatic),
        factor: Ratio::from_base(factor),
        permissible: Current::from_base(factor * adiabatic),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Area;

    fn fault(square_millimeters: f64, seconds: f64) -> Iec60949FaultCurrent {
        Iec60949FaultCurrent {
            size: ConductorSize::Metric(Area::from_base(square_millimeters * 1e-6)),
            initial: celsius(90.0),
            limit: celsius(250.0),
            time: Time::from_base(seconds),
        }
    }

    proptest! {
        #[test]
        fn heat_that_leaves_helps_and_time_hurts(area in 1.0..300.0, seconds in 0.1..5.0) {
            let found = fault(area, seconds).evaluate().unwrap();
            prop_assert!(found.permissible > found.adiabatic);
            let longer = fault(area, seconds * 1.1).evaluate().unwrap();
            prop_assert!(longer.adiabatic < found.adiabatic && longer.factor > found.factor);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(fault(95.0, 0.0).evaluate().unwrap_err().input, "time");
        assert_eq!(fault(0.0, 1.0).evaluate().unwrap_err().input, "size");
        let cold = Iec60949FaultCurrent {
            limit: celsius(20.0),
            ..fault(95.0, 1.0)
        };
        assert_eq!(cold.evaluate().unwrap_err().input, "limit");
    }
}
