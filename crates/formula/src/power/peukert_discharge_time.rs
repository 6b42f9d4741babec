//! How long a battery carries a current, by Peukert's law.

use crate::OutOfReach;
use quantity::{Charge, Current, Quantity as _, Ratio, Time};

formula! {
    /// How long a lead-acid battery carries a steady current, by Peukert's law.
    ///
    /// A battery drained faster than its rating gives less than its nameplate. The nameplate holds at its rated time,
    /// 20 h for most small batteries: name both. Retellings that take the nameplate as the capacity at 1 A have a
    /// rated time of as many hours as the nameplate has ampere-hours.
    pub struct PeukertDischargeTime = "peukert-discharge-time" in Power {
        /// Nameplate capacity.
        capacity ("C"): Charge,
        /// Time of discharge at which the nameplate holds: 20 h for most small batteries.
        rated_time ("H"): Time,
        /// Peukert's exponent: 1.05 to 1.15 for valve-regulated, 1.2 to 1.3 for flooded lead-acid (common practice).
        exponent ("k"): Ratio,
        /// Current drawn.
        current ("I"): Current,
    }
    gives
    /// What the battery gives at that current.
    pub struct PeukertDischarge {
        /// Time until it is empty.
        time ("t"): Time,
        /// Charge drawn until then.
        charge ("Q"): Charge,
    }
    formula "t = H · (C / (I · H))^k\nQ = I · t"
    valid "A full battery at its rated temperature, a steady current from about a tenth to ten times the rated one. Far below the rated current the law promises more than the battery holds."
    source { work: "Peukert's law (1897)", clause: "", evidence: Seen, seen: "www.electrotechnik.net/2010/01/peukert-law-and-discharge-of-lead-acid_9.html" }
    by peukert_discharge_time
}

fn peukert_discharge_time(battery: &PeukertDischargeTime) -> Result<PeukertDischarge, OutOfReach> {
    let above_zero = [
        ("capacity", battery.capacity.base()),
        ("rated_time", battery.rated_time.base()),
        ("current", battery.current.base()),
    ];
    if let Some((input, _)) = above_zero.iter().find(|(_, value)| *value <= 0.0) {
        return Err(OutOfReach::new(input, "give a value above zero"));
    }
    if !(1.0..=2.0).contains(&battery.exponent.base()) {
        return Err(OutOfReach::new(
            "exponent",
            "give an exponent from 1 to 2, such as 1.1 for a valve-regulated battery",
        ));
    }
    let hours = battery.rated_time.base();
    let slower = battery.capacity.base() / (battery.current.base() * hours);
    let time = hours * slower.powf(battery.exponent.base());
    Ok(PeukertDischarge {
        time: Time::from_base(time),
        charge: Charge::from_base(battery.current.base() * time),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn battery(exponent: f64, current: f64) -> PeukertDischargeTime {
        PeukertDischargeTime {
            capacity: Charge::from_base(100.0 * 3600.0),
            rated_time: Time::from_base(20.0 * 3600.0),
            exponent: Ratio::from_base(exponent),
            current: Current::from_base(current),
        }
    }

    proptest! {
        #[test]
        fn a_larger_current_takes_less_out(exponent in 1.0..1.5, current in 0.5..40.0, more in 0.1..5.0) {
            let slow = battery(exponent, current).evaluate().unwrap();
            let fast = battery(exponent, current + more).evaluate().unwrap();
            prop_assert!(fast.time < slow.time);
            prop_assert!(fast.charge.base() <= slow.charge.base() * (1.0 + 1e-12));
        }

        #[test]
        fn the_nameplate_holds_at_its_rate(exponent in 1.0..1.5) {
            let rated = battery(exponent, 5.0).evaluate().unwrap();
            prop_assert!((rated.charge.base() / 360_000.0 - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(battery(0.9, 5.0).evaluate().unwrap_err().input, "exponent");
        assert_eq!(battery(1.2, 0.0).evaluate().unwrap_err().input, "current");
    }
}
