//! Steady torque that heats a motor as much as one that changes.

use super::rms::{Cycle, Part, rms};
use crate::OutOfReach;
use quantity::{Ratio, Time, Torque};

formula! {
    /// Steady torque that heats a motor as much as a torque that changes over a cycle.
    ///
    /// The cycle has a start, a run, a slow-down, and rest. Driving and braking both heat, so no value is
    /// below zero. Heat goes with the square of the torque. A motor that its own
    /// fan cools loses less heat at rest; the rest then counts for a third of its time (common practice).
    pub struct RmsTorque = "rms-torque" in Motion {
        /// Torque while starting.
        start_torque ("T1"): Torque,
        /// Time of starting.
        start_time ("t1"): Time,
        /// Torque while running.
        run_torque ("T2"): Torque,
        /// Time of running.
        run_time ("t2"): Time,
        /// Torque while slowing down, creep included.
        slow_torque ("T3"): Torque,
        /// Time of slowing down, creep included.
        slow_time ("t3"): Time,
        /// Time of rest.
        rest_time ("t4"): Time,
        /// How well the motor cools at rest: 1 as well as running, 1/3 with a fan of its own.
        rest_cooling ("c"): Ratio,
    }
    gives
    /// Steady torque that heats as much.
    pub struct TorqueThatHeats {
        /// Root of the mean square of the torque.
        rms_torque ("T"): Torque,
    }
    formula "T = √((T1² · t1 + T2² · t2 + T3² · t3) / (t1 + t2 + t3 + c · t4))"
    valid "Cycles that are short beside the time in which the motor warms up (a few minutes); current that goes with the torque."
    source { work: "heat of a winding goes with the square of its current", clause: "", evidence: Physics, seen: "formula at http://www.numberfactory.com/Torque%20Root%20Mean%20Square%20RMS.htm" }
    by rms_torque
}

fn rms_torque(cycle: &RmsTorque) -> Result<TorqueThatHeats, OutOfReach> {
    let parts = [
        Part {
            load: ("start_torque", cycle.start_torque),
            time: ("start_time", cycle.start_time),
        },
        Part {
            load: ("run_torque", cycle.run_torque),
            time: ("run_time", cycle.run_time),
        },
        Part {
            load: ("slow_torque", cycle.slow_torque),
            time: ("slow_time", cycle.slow_time),
        },
    ];
    let rms_torque = rms(&Cycle {
        parts,
        rest_time: cycle.rest_time,
        rest_cooling: cycle.rest_cooling,
    })?;
    Ok(TorqueThatHeats { rms_torque })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn cycle(run: f64, rest: f64) -> RmsTorque {
        RmsTorque {
            start_torque: Torque::from_base(60.0),
            start_time: Time::from_base(2.0),
            run_torque: Torque::from_base(run),
            run_time: Time::from_base(15.0),
            slow_torque: Torque::from_base(5.0),
            slow_time: Time::from_base(3.0),
            rest_time: Time::from_base(rest),
            rest_cooling: Ratio::from_base(1.0),
        }
    }

    proptest! {
        #[test]
        fn between_the_least_and_the_greatest(run in 5.0..60.0, rest in 0.0..100.0) {
            let gives = cycle(run, rest).evaluate().unwrap().rms_torque;
            prop_assert!(gives.base() > 0.0 && gives.base() <= 60.0);
        }

        #[test]
        fn more_load_heats_more_and_more_rest_less(run in 5.0..60.0, rest in 0.0..100.0) {
            let base = cycle(run, rest).evaluate().unwrap().rms_torque;
            prop_assert!(base < cycle(run + 1.0, rest).evaluate().unwrap().rms_torque);
            prop_assert!(base > cycle(run, rest + 1.0).evaluate().unwrap().rms_torque);
        }
    }

    #[test]
    fn a_cycle_without_time_is_refused() {
        let none = RmsTorque {
            start_time: Time::from_base(0.0),
            run_time: Time::from_base(0.0),
            slow_time: Time::from_base(0.0),
            ..cycle(10.0, 0.0)
        };
        assert_eq!(none.evaluate().unwrap_err().input, "run_time");
    }
}
