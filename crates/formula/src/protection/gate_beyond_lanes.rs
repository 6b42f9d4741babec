//! Local rule for the width and setback of a gate by the lanes that it serves.

use super::customary::feet;
use super::limit::is_at_least;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::Length;

quantity::words! {
    /// How a gate stands to the local rule.
    pub enum LaneGateVerdict {
        /// Wide enough and far enough back.
        Kept = "kept",
        /// Too narrow for its lanes.
        Narrow = "too narrow",
        /// Too near the road.
        Near = "too near the road",
    }
}

formula! {
    /// Whether a gate is wider than the lanes that it serves and stands back from the road, as several counties ask.
    ///
    /// It is local law: ask the authority whether it holds at the site. The setback is there so that a waiting vehicle
    /// does not stand in the road; longer vehicles need more.
    pub struct GateBeyondLanes = "gate-beyond-lanes" in Protection {
        /// Clear width with the gate fully open.
        clear_width ("w"): Length,
        /// Width of all lanes that the gate serves.
        lanes_width ("b"): Length,
        /// Distance from the edge of the road to the gate.
        setback ("l"): Length,
    }
    gives
    /// How a gate stands to the local rule.
    pub struct LaneGate {
        /// Least clear width.
        least_width ("wmin"): Length,
        /// Least setback.
        least_setback ("lmin"): Length,
        /// The verdict, or the first part that is not kept.
        verdict ("–"): LaneGateVerdict,
    }
    formula "wmin = b + 2 ft\nlmin = 30 ft"
    valid "Counties of the United States that have the rule."
    source { work: "local fire-safe regulations of several counties", clause: "19.08.110 in one of them", evidence: Seen, seen: "two county codes and a city's planning document on the web" }
    by lane_gate
}

fn lane_gate(gate: &GateBeyondLanes) -> Result<LaneGate, OutOfReach> {
    positive("clear_width", gate.clear_width, "22 ft")?;
    positive("lanes_width", gate.lanes_width, "20 ft")?;
    not_negative("setback", gate.setback, "30 ft")?;
    let least_width = gate.lanes_width + feet(2.0);
    let least_setback = feet(30.0);
    let verdict = if !is_at_least(gate.clear_width, least_width) {
        LaneGateVerdict::Narrow
    } else if is_at_least(gate.setback, least_setback) {
        LaneGateVerdict::Kept
    } else {
        LaneGateVerdict::Near
    };
    Ok(LaneGate {
        least_width,
        least_setback,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn gate(width: f64, lanes: f64, setback: f64) -> GateBeyondLanes {
        GateBeyondLanes {
            clear_width: Length::from_base(width),
            lanes_width: Length::from_base(lanes),
            setback: Length::from_base(setback),
        }
    }

    proptest! {
        #[test]
        fn a_gate_no_wider_than_its_lanes_never_keeps_it(lanes in 1.0..10.0, share in 0.1..1.0) {
            let found = gate(lanes * share, lanes, 50.0).evaluate().unwrap();
            prop_assert_eq!(found.verdict, LaneGateVerdict::Narrow);
        }
    }

    #[test]
    fn a_gate_without_lanes_is_refused() {
        assert_eq!(
            gate(5.0, 0.0, 10.0).evaluate().unwrap_err().input,
            "lanes_width"
        );
    }
}
