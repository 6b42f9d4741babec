//! How far clocks run apart.

use crate::OutOfReach;
use quantity::{Quantity as _, Ratio, Time};

formula! {
    /// How far a clock is off after a time without being set, and how far two such clocks can be apart.
    ///
    /// One clock may gain while the other loses: the two of them are apart by twice what one is off. A crystal drifts
    /// farther in the cold and in the heat than its figure at room temperature says.
    pub struct ClockDrift = "clock-drift" in Signal {
        /// Most that the clock gains or loses, as a share of the time: 20 ppm for a common crystal.
        drift ("d"): Ratio,
        /// Time since it was last set.
        since ("t"): Time,
    }
    gives
    /// How far clocks are off.
    pub struct ClockError {
        /// How far one clock is off.
        off ("e"): Time,
        /// How far two clocks that were set together can be apart.
        apart ("Δ"): Time,
    }
    formula "e = d · t\nΔ = 2 · e"
    valid "A drift that stays within its figure. Aging, and temperatures outside those of the figure, add to it."
    source { work: "share times time", clause: "", evidence: Physics, seen: "printed figures of crystals in the cases" }
    by clock_drift
}

fn clock_drift(clock: &ClockDrift) -> Result<ClockError, OutOfReach> {
    let negative = [("drift", clock.drift.base()), ("since", clock.since.base())];
    if let Some((input, _)) = negative.iter().find(|(_, value)| *value < 0.0) {
        return Err(OutOfReach::new(input, "this cannot be below zero"));
    }
    let off = clock.drift * clock.since;
    Ok(ClockError {
        off,
        apart: 2.0 * off,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn clock(drift: f64, since: f64) -> ClockDrift {
        ClockDrift {
            drift: Ratio::from_base(drift),
            since: Time::from_base(since),
        }
    }

    proptest! {
        #[test]
        fn twice_the_time_is_twice_off(drift in 0.0..1e-3, since in 0.0..1e8) {
            let once = clock(drift, since).evaluate().unwrap();
            let twice = clock(drift, 2.0 * since).evaluate().unwrap();
            prop_assert!((twice.off.base() - once.apart.base()).abs() <= 1e-9 * twice.off.base());
        }
    }

    #[test]
    fn no_time_backward() {
        assert_eq!(clock(1e-5, -1.0).evaluate().unwrap_err().input, "since");
        assert_eq!(clock(-1e-5, 1.0).evaluate().unwrap_err().input, "drift");
    }
}
