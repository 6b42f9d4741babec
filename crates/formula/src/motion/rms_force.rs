//! Steady pull that heats a motor as much as one that changes.

use super::rms::{Cycle, Part, rms};
use crate::OutOfReach;
use quantity::{Force, Ratio, Time};

formula! {
    /// Steady force that heats a motor as much as a force that changes over a cycle.
    ///
    /// The cycle has a start, a run, a slow-down, and rest. Driving and braking both heat, so no value is
    /// below zero. Heat goes with the square of the force. A motor that its own
    /// fan cools loses less heat at rest; the rest then counts for a third of its time (common practice).
    pub struct RmsForce = "rms-force" in Motion {
        /// Force while starting.
        start_force ("F1"): Force,
        /// Time of starting.
        start_time ("t1"): Time,
        /// Force while running.
        run_force ("F2"): Force,
        /// Time of running.
        run_time ("t2"): Time,
        /// Force while slowing down, creep included.
        slow_force ("F3"): Force,
        /// Time of slowing down, creep included.
        slow_time ("t3"): Time,
        /// Time of rest.
        rest_time ("t4"): Time,
        /// How well the motor cools at rest: 1 as well as running, 1/3 with a fan of its own.
        rest_cooling ("c"): Ratio,
    }
    gives
    /// Steady force that heats as much.
    pub struct ForceThatHeats {
        /// Root of the mean square of the force.
        rms_force ("F"): Force,
    }
    formula "F = √((F1² · t1 + F2² · t2 + F3² · t3) / (t1 + t2 + t3 + c · t4))"
    valid "Cycles that are short beside the time in which the motor warms up (a few minutes); current that goes with the force."
    source { work: "heat of a winding goes with the square of its current", clause: "", evidence: Physics, seen: "formula at http://www.numberfactory.com/Torque%20Root%20Mean%20Square%20RMS.htm" }
    by rms_force
}

fn rms_force(cycle: &RmsForce) -> Result<ForceThatHeats, OutOfReach> {
    let parts = [
        Part {
            load: ("start_force", cycle.start_force),
            time: ("start_time", cycle.start_time),
        },
        Part {
            load: ("run_force", cycle.run_force),
            time: ("run_time", cycle.run_time),
        },
        Part {
            load: ("slow_force", cycle.slow_force),
            time: ("slow_time", cycle.slow_time),
        },
    ];
    let rms_force = rms(&Cycle {
        parts,
        rest_time: cycle.rest_time,
        rest_cooling: cycle.rest_cooling,
    })?;
    Ok(ForceThatHeats { rms_force })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn cycle(run: f64, rest: f64) -> RmsForce {
        RmsForce {
            start_force: Force::from_base(60.0),
            start_time: Time::from_base(2.0),
            run_force: Force::from_base(run),
            run_time: Time::from_base(15.0),
            slow_force: Force::from_base(5.0),
            slow_time: Time::from_base(3.0),
            rest_time: Time::from_base(rest),
            rest_cooling: Ratio::from_base(1.0),
        }
    }

    proptest! {
        #[test]
        fn between_the_least_and_the_greatest(run in 5.0..60.0, rest in 0.0..100.0) {
            let gives = cycle(run, rest).evaluate().unwrap().rms_force;
            prop_assert!(gives.base() > 0.0 && gives.base() <= 60.0);
        }

        #[test]
        fn more_load_heats_more_and_more_rest_less(run in 5.0..60.0, rest in 0.0..100.0) {
            let base = cycle(run, rest).evaluate().unwrap().rms_force;
            prop_assert!(base < cycle(run + 1.0, rest).evaluate().unwrap().rms_force);
            prop_assert!(base > cycle(run, rest + 1.0).evaluate().unwrap().rms_force);
        }
    }

    #[test]
    fn a_cycle_without_time_is_refused() {
        let none = RmsForce {
            start_time: Time::from_base(0.0),
            run_time: Time::from_base(0.0),
            slow_time: Time::from_base(0.0),
            ..cycle(10.0, 0.0)
        };
        assert_eq!(none.evaluate().unwrap_err().input, "run_time");
    }
}
