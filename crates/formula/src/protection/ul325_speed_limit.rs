//! Greatest speed of sliding and lifting gates, by UL 325.

use super::customary::pounds_force;
use super::limit::{LimitVerdict, is_at_least, is_at_most, verdict};
use super::{GateKind, UsageClass};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Force, Quantity as _, Velocity};

formula! {
    /// Whether a sliding or lifting gate runs slower than UL 325 lets its operator pull it.
    ///
    /// The limit holds for an operator that pulls 75 lbf or more. One that can pull less than that is not limited by
    /// this rule, and forces and stopping distances still are.
    pub struct Ul325SpeedLimit = "ul325-speed-limit" in Protection {
        /// Usage class of the gate.
        class ("–"): UsageClass,
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Pull of the operator.
        pull ("F"): Force,
        /// Speed of the leaf.
        speed ("v"): Velocity,
    }
    gives
    /// How a speed stands to its limit.
    pub struct SpeedRule {
        /// Greatest speed of an operator that pulls 75 lbf or more.
        limit ("vmax"): Velocity,
        /// Speed to spare; below zero where the leaf is faster.
        spare ("vmax − v"): Velocity,
        /// Whether the rule is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "v ≤ 1 ft/s where F ≥ 75 lbf"
    valid "Sliding gates of usage class I and II, and gates that are lifted; United States."
    source { work: "UL 325, in force 1 August 2018", clause: "", evidence: Seen, seen: "an installer's page that quotes DASMA Technical Data Sheet 353 (address withheld); the standard itself was not at hand" }
    by speed_rule
}

fn speed_rule(leaf: &Ul325SpeedLimit) -> Result<SpeedRule, OutOfReach> {
    not_negative("pull", leaf.pull, "150 lbf")?;
    not_negative("speed", leaf.speed, "1 ft/s")?;
    let class = [UsageClass::I, UsageClass::II].contains(&leaf.class);
    let limited = match leaf.gate {
        GateKind::TrackSlide | GateKind::CantileverSlide => class,
        GateKind::VerticalLift => true,
        _ => {
            return Err(OutOfReach::new(
                "gate",
                "the text read limits the speed of sliding and lifting gates only",
            ));
        }
    };
    if !limited {
        return Err(OutOfReach::new(
            "class",
            "the text read limits the speed of sliding gates of usage class I and II only",
        ));
    }
    let limit = Velocity::from_base(0.3048);
    let pulls = is_at_least(leaf.pull, pounds_force(75.0));
    Ok(SpeedRule {
        limit,
        spare: limit - leaf.speed,
        verdict: verdict(!pulls || is_at_most(leaf.speed, limit)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(gate: GateKind, pull: f64, speed: f64) -> Ul325SpeedLimit {
        Ul325SpeedLimit {
            class: UsageClass::II,
            gate,
            pull: Force::from_base(pull),
            speed: Velocity::from_base(speed),
        }
    }

    proptest! {
        #[test]
        fn slower_or_weaker_never_breaks_it(
            pull in 0.0..2000.0, speed in 0.0..1.0, share in 0.0..1.0
        ) {
            let verdict = |pull, speed| leaf(GateKind::TrackSlide, pull, speed).evaluate().unwrap().verdict;
            if verdict(pull, speed) == LimitVerdict::Kept {
                prop_assert_eq!(verdict(pull * share, speed), LimitVerdict::Kept);
                prop_assert_eq!(verdict(pull, speed * share), LimitVerdict::Kept);
            }
        }
    }

    #[test]
    fn a_swinging_gate_is_refused() {
        let swing = leaf(GateKind::SingleSwing, 500.0, 0.3);
        assert_eq!(swing.evaluate().unwrap_err().input, "gate");
    }
}
