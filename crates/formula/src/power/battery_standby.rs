//! Capacity that a battery needs to carry a site through an outage.

use crate::OutOfReach;
use quantity::{Charge, Current, Quantity as _, Ratio, Time};

formula! {
    /// Capacity of a battery that carries a standing load through an outage and drives the gate a number of times in it.
    ///
    /// The charge drawn is enlarged for the cold, for the battery's age at replacement and for the designer's margin, and
    /// divided by the share that may be drawn. The result is a nameplate capacity at about the rate of the outage;
    /// a battery drained in an hour gives much less than its nameplate, see `peukert-discharge-time`.
    pub struct BatteryStandby = "battery-standby" in Power {
        /// Current of everything that runs all the time.
        standing_current ("I₁"): Current,
        /// How long the outage lasts.
        standby_time ("t₁"): Time,
        /// Current in one cycle of the gate, beyond the standing one.
        cycle_current ("I₂"): Current,
        /// How long one cycle lasts.
        cycle_time ("t₂"): Time,
        /// How many cycles the outage sees.
        cycles ("n"): u32,
        /// Factor for the cold: 1 at 25 °C; see `ieee-485-temperature-factor`.
        temperature_factor ("kT"): Ratio,
        /// Factor for age: 1.25 where the battery is replaced at 80 % of its capacity, 1 where age is covered elsewhere.
        aging_factor ("kA"): Ratio,
        /// Designer's margin: 1 for none; fire-alarm practice has 1.2, from 2022 on 1.25.
        design_margin ("kD"): Ratio,
        /// Share of the capacity that may be drawn: 1 to the end of discharge, 50 % for a battery that cycles daily.
        allowed_discharge ("D"): Ratio,
    }
    gives
    /// The battery that is needed.
    pub struct BatteryNeeded {
        /// Charge drawn in the outage.
        drawn ("Q"): Charge,
        /// Nameplate capacity that is needed.
        capacity ("C"): Charge,
    }
    formula "Q = I₁ · t₁ + n · I₂ · t₂\nC = Q · kT · kA · kD / D"
    valid "Loads that draw steady currents; the outage lasts hours, not minutes. Factors of 1 or more; the share above 0 and at most 1."
    source { work: "NFPA 72, method of 10.6.7; IEEE 485 for the factors", clause: "", evidence: Seen, seen: "a public guide to fire-alarm battery calculation (host withheld: a software product); a simplified IEEE method at batteries-solar.blogspot.com" }
    by battery_standby
}

fn battery_standby(battery: &BatteryStandby) -> Result<BatteryNeeded, OutOfReach> {
    check(battery)?;
    let standing = battery.standing_current.base() * battery.standby_time.base();
    let cycling = battery.cycle_current.base() * battery.cycle_time.base();
    let drawn = Charge::from_base(standing + f64::from(battery.cycles) * cycling);
    let enlarged =
        drawn * battery.temperature_factor * battery.aging_factor * battery.design_margin;
    Ok(BatteryNeeded {
        drawn,
        capacity: enlarged / battery.allowed_discharge,
    })
}

fn check(battery: &BatteryStandby) -> Result<(), OutOfReach> {
    let loads = [
        ("standing_current", battery.standing_current.base()),
        ("standby_time", battery.standby_time.base()),
        ("cycle_current", battery.cycle_current.base()),
        ("cycle_time", battery.cycle_time.base()),
    ];
    if let Some((input, _)) = loads.iter().find(|(_, value)| *value < 0.0) {
        return Err(OutOfReach::new(
            input,
            "this cannot be below zero; give 0 where there is none",
        ));
    }
    let factors = [
        ("aging_factor", battery.aging_factor),
        ("design_margin", battery.design_margin),
    ];
    let outside = |factor: &Ratio| !(1.0..=5.0).contains(&factor.base());
    if let Some((input, _)) = factors.iter().find(|(_, factor)| outside(factor)) {
        return Err(OutOfReach::new(
            input,
            "give a factor from 1 to 5; 1 adds nothing",
        ));
    }
    if !(0.8..=5.0).contains(&battery.temperature_factor.base()) {
        return Err(OutOfReach::new(
            "temperature_factor",
            "give a factor from 0.8 to 5; 1 at 25 °C, more in the cold",
        ));
    }
    if battery.allowed_discharge.base() > 0.0 && battery.allowed_discharge.base() <= 1.0 {
        return Ok(());
    }
    Err(OutOfReach::new(
        "allowed_discharge",
        "give the share that may be drawn, above 0 and at most 100 %, such as 50 %",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn battery(current: f64, hours: f64, cycles: u32, share: f64) -> BatteryStandby {
        let one = Ratio::from_base(1.0);
        BatteryStandby {
            standing_current: Current::from_base(current),
            standby_time: Time::from_base(hours * 3600.0),
            cycle_current: Current::from_base(6.0),
            cycle_time: Time::from_base(20.0),
            cycles,
            temperature_factor: one,
            aging_factor: one,
            design_margin: one,
            allowed_discharge: Ratio::from_base(share),
        }
    }

    proptest! {
        #[test]
        fn what_is_drawn_is_the_share_of_what_is_needed(
            current in 0.0..5.0, hours in 0.0..100.0, cycles in 0..500u32, share in 0.1..1.0
        ) {
            let needed = battery(current, hours, cycles, share).evaluate().unwrap();
            let drawn = needed.capacity.base() * share;
            prop_assert!((drawn - needed.drawn.base()).abs() <= 1e-9 * drawn);
            let more = battery(current, hours, cycles + 1, share).evaluate().unwrap();
            prop_assert!((more.drawn.base() - needed.drawn.base() - 120.0).abs() < 1e-6);
        }
    }

    #[test]
    fn factors_that_flatter_are_refused() {
        let fair = battery(0.5, 24.0, 10, 0.5);
        for (bad, input) in [
            (
                BatteryStandby {
                    aging_factor: Ratio::from_base(0.9),
                    ..fair
                },
                "aging_factor",
            ),
            (
                BatteryStandby {
                    design_margin: Ratio::from_base(0.5),
                    ..fair
                },
                "design_margin",
            ),
            (
                BatteryStandby {
                    temperature_factor: Ratio::from_base(0.1),
                    ..fair
                },
                "temperature_factor",
            ),
            (
                BatteryStandby {
                    allowed_discharge: Ratio::from_base(1.2),
                    ..fair
                },
                "allowed_discharge",
            ),
            (
                BatteryStandby {
                    standby_time: Time::from_base(-1.0),
                    ..fair
                },
                "standby_time",
            ),
        ] {
            assert_eq!(bad.evaluate().unwrap_err().input, input);
        }
    }
}
