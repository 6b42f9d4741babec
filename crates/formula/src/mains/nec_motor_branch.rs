//! Conductor and breaker of a motor's branch circuit by the National Electrical Code.

use super::nec_standard_rating::NecStandardRating;
use crate::check::positive;
use crate::{Formula as _, OutOfReach};
use quantity::{Current, Quantity as _, Ratio};

quantity::words! {
    /// What protects a motor circuit against short circuits and ground faults.
    pub enum MotorProtection {
        /// Inverse-time breaker: the usual molded-case one.
        InverseTimeBreaker = "inverse-time breaker",
        /// Dual-element time-delay fuse.
        TimeDelayFuse = "time-delay fuse",
    }
}

formula! {
    /// Least ampacity of the conductors of one motor and the largest device that may protect them.
    ///
    /// The conductors carry 125 % of the full-load current. The breaker may be far larger than the conductor, so that the
    /// motor can start; an overload device guards the motor. The next standard size up is allowed.
    pub struct NecMotorBranch = "nec-motor-branch" in Power {
        /// Full-load current, by table or by plate.
        full_load ("FLC"): Current,
        /// What protects the circuit.
        protection ("–"): MotorProtection,
    }
    gives
    /// Sizes of a motor's branch circuit.
    pub struct MotorBranch {
        /// Least ampacity of the conductors.
        conductor ("Iz"): Current,
        /// Share of the full-load current up to which the device may go.
        share ("p"): Ratio,
        /// That current.
        worked_out ("I"): Current,
        /// The next standard rating.
        largest ("Imax"): Current,
    }
    formula "Iz = 1.25 · FLC\nI = p · FLC\np = 250 % for an inverse-time breaker, 175 % for a time-delay fuse\nImax: the next standard rating at or above I"
    valid "One single-phase or three-phase motor in continuous duty; where the motor does not start on that device, the exceptions allow more."
    source { work: "NFPA 70 (NEC)", clause: "430.22 and table 430.52(C)(1)", evidence: Seen, seen: "electrakit.com/formulas/motor-circuit-formulas; code discussion forum, thread 15136 (host withheld: a personal name is in it)" }
    by nec_motor_branch
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_motor_branch(motor: &NecMotorBranch) -> Result<MotorBranch, OutOfReach> {
    positive("full_load", motor.full_load, "9.8 A")?;
    let share = match motor.protection {
        MotorProtection::InverseTimeBreaker => 2.5,
        MotorProtection::TimeDelayFuse => 1.75,
    };
    let worked_out = motor.full_load * share;
    // A small motor may have the smallest breaker there is.
    let current = Current::from_base(worked_out.base().max(15.0));
    let next = NecStandardRating { current }
        .evaluate()
        .map_err(|_| OutOfReach::new("full_load", "this is no motor of a gate: ask an engineer"))?;
    Ok(MotorBranch {
        conductor: motor.full_load * 1.25,
        share: Ratio::from_base(share),
        worked_out,
        largest: next.next_up,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    fn branch(amperes: f64, protection: MotorProtection) -> Result<MotorBranch, OutOfReach> {
        let full_load = Current::from_base(amperes);
        NecMotorBranch {
            full_load,
            protection,
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn the_device_is_never_below_the_conductor(amperes in 0.5..70.0) {
            for protection in MotorProtection::ALL {
                let found = branch(amperes, *protection).unwrap();
                prop_assert!(found.largest >= found.conductor);
                prop_assert!(found.largest >= found.worked_out || amperes < 10.0);
            }
        }
    }

    #[test]
    fn no_motor_and_a_huge_one_are_refused() {
        for amperes in [0.0, 300.0] {
            let refused = branch(amperes, MotorProtection::InverseTimeBreaker).unwrap_err();
            assert_eq!(refused.input, "full_load");
        }
    }
}
