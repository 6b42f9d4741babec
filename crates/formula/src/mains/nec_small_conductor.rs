//! Largest breaker that may stand before a small copper conductor.

use crate::OutOfReach;
use quantity::{ConductorSize, Current, Quantity as _};

formula! {
    /// Largest overcurrent device for a small copper conductor, whatever the table of ampacities says.
    ///
    /// A 10 AWG conductor has an ampacity of 30 to 40 A and still has a breaker of no more than 30 A. From 8 AWG on its
    /// ampacity alone decides. Motor circuits have rules of their own.
    pub struct NecSmallConductor = "nec-small-conductor" in Power {
        /// Size of the conductor: 14, 12 or 10 AWG.
        size ("n"): ConductorSize,
    }
    gives
    /// Limit of a small conductor.
    pub struct SmallConductorLimit {
        /// Largest overcurrent device.
        largest ("Imax"): Current,
    }
    formula "14 AWG: 15 A\n12 AWG: 20 A\n10 AWG: 30 A"
    valid "Copper of 14, 12 and 10 AWG; motor circuits and taps are exempt by 240.4(E) and (G)."
    source { work: "NFPA 70 (NEC)", clause: "240.4(D)", evidence: Seen, seen: "a continuing-education page: www.electricallicenserenewal.com; again www.tradehub.tools/resources/electrical/nec-240-4-d-small-conductor" }
    by nec_small_conductor
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_small_conductor(conductor: &NecSmallConductor) -> Result<SmallConductorLimit, OutOfReach> {
    let ConductorSize::Gauge(gauge) = conductor.size else {
        return Err(OutOfReach::new(
            "size",
            "the rule is about gauges, such as 12 AWG",
        ));
    };
    let amperes = match gauge.number() {
        14 => 15.0,
        12 => 20.0,
        10 => 30.0,
        _ => {
            return Err(OutOfReach::new(
                "size",
                "the rule is known here for copper of 14, 12 and 10 AWG; larger conductors go by their ampacity",
            ));
        }
    };
    Ok(SmallConductorLimit {
        largest: Current::from_base(amperes),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use quantity::{Area, Awg};

    #[test]
    fn thicker_wire_has_the_larger_breaker_and_others_are_refused() {
        let of = |number| {
            let size = ConductorSize::Gauge(Awg::new(number).unwrap());
            NecSmallConductor { size }
                .evaluate()
                .map(|found| found.largest)
        };
        assert!(of(14).unwrap() < of(12).unwrap() && of(12).unwrap() < of(10).unwrap());
        assert_eq!(of(8).unwrap_err().input, "size");
        let size = ConductorSize::Metric(Area::from_base(2.5e-6));
        assert_eq!(
            NecSmallConductor { size }.evaluate().unwrap_err().input,
            "size"
        );
    }
}
