//! How long a battery takes to get full again.

use crate::OutOfReach;
use quantity::{Charge, Current, Quantity as _, Ratio, Time};

formula! {
    /// Time until a battery is full again while its charger also carries the standing load.
    ///
    /// What the charger can give, less the standing load, charges the battery, up to the current that the battery is
    /// charged with. A lead battery takes less and less near the end: its last fifth adds hours that this does not count.
    pub struct BatteryRecharge = "battery-recharge" in Power {
        /// Charge that was drawn.
        drawn ("Q"): Charge,
        /// Charge that comes out over charge that goes in: about 85 % for lead-acid, 95 % and more for lithium.
        efficiency ("η"): Ratio,
        /// Current that the charger can give without end.
        charger ("I₁"): Current,
        /// Current of everything that runs all the time.
        standing ("I₂"): Current,
        /// Current with which the battery is charged at most.
        accepted ("I₃"): Current,
    }
    gives
    /// A recharge.
    pub struct Recharge {
        /// Current that is left for the battery.
        surplus ("I"): Current,
        /// Time until it is full.
        time ("t"): Time,
    }
    formula "I = min(I₁ − I₂, I₃)\nt = Q / (η · I)"
    valid "A charger that can give more than the standing load."
    source { work: "balance of charge", clause: "", evidence: Physics, seen: "again at https://battery-calculator.com/battery-charger-capacity-calculator.php" }
    by battery_recharge
}

fn battery_recharge(battery: &BatteryRecharge) -> Result<Recharge, OutOfReach> {
    let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
    if battery.drawn.base() < 0.0 {
        return refuse("drawn", "the charge that was drawn cannot be below zero");
    }
    if !(battery.efficiency.base() > 0.0 && battery.efficiency.base() <= 1.0) {
        return refuse(
            "efficiency",
            "give a share above 0 and at most 1, such as 85 %",
        );
    }
    if battery.accepted.base() <= 0.0 {
        return refuse(
            "accepted",
            "give the current with which the battery is charged, above zero",
        );
    }
    if battery.standing.base() < 0.0 {
        return refuse("standing", "the standing current cannot be below zero");
    }
    let spare = battery.charger.base() - battery.standing.base();
    if spare <= 0.0 {
        return refuse(
            "charger",
            "the standing load takes all that the charger gives: the battery is never full again",
        );
    }
    let surplus = spare.min(battery.accepted.base());
    Ok(Recharge {
        surplus: Current::from_base(surplus),
        time: Time::from_base(battery.drawn.base() / (battery.efficiency.base() * surplus)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn recharge(charger: f64, standing: f64, accepted: f64) -> BatteryRecharge {
        BatteryRecharge {
            drawn: Charge::from_base(36_000.0),
            efficiency: Ratio::from_base(0.9),
            charger: Current::from_base(charger),
            standing: Current::from_base(standing),
            accepted: Current::from_base(accepted),
        }
    }

    proptest! {
        #[test]
        fn a_larger_charger_is_never_slower(charger in 2.0..40.0, standing in 0.0..1.9, accepted in 0.5..40.0) {
            let small = recharge(charger, standing, accepted).evaluate().unwrap();
            let large = recharge(charger + 1.0, standing, accepted).evaluate().unwrap();
            prop_assert!(large.time <= small.time);
            let put_in = small.surplus.base() * small.time.base() * 0.9;
            prop_assert!((put_in - 36_000.0).abs() < 1e-6);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(
            recharge(2.0, 3.0, 5.0).evaluate().unwrap_err().input,
            "charger"
        );
        assert_eq!(
            recharge(2.0, -1.0, 5.0).evaluate().unwrap_err().input,
            "standing"
        );
        assert_eq!(
            recharge(2.0, 1.0, 0.0).evaluate().unwrap_err().input,
            "accepted"
        );
    }
}
