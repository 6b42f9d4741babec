//! How high and low a control may be for somebody in a wheelchair, by the 2010 ADA Standards.

use super::customary::inches;
use super::limit::{LimitVerdict, is_at_least, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Length;

quantity::words! {
    /// From where a control is reached.
    pub enum ReachApproach {
        /// Alongside.
        Side = "side",
        /// Head-on.
        Front = "front",
    }
}

formula! {
    /// Whether a control lies within reach of somebody in a wheelchair, by the 2010 ADA Standards.
    ///
    /// An obstruction is whatever has to be reached over: a curb, a planter, a pedestal's base. It may be no higher than
    /// 34 in where the reach from the side goes over more than 10 in; its own height is not asked here. The control is
    /// worked with one hand, without tight grasp, pinch or twist.
    pub struct AdaReach = "ada-reach" in Protection {
        /// From where it is reached.
        approach ("–"): ReachApproach,
        /// Depth of what has to be reached over; 0 where there is nothing.
        obstruction_depth ("d"): Length,
        /// Height of the control above the ground.
        control_height ("z"): Length,
    }
    gives
    /// How a height stands to the reach.
    pub struct AdaReachRange {
        /// Lowest height.
        low ("zmin"): Length,
        /// Highest height.
        high ("zmax"): Length,
        /// Whether the control lies between.
        verdict ("–"): LimitVerdict,
    }
    formula "side: 15 in to 48 in where d ≤ 10 in; to 46 in where d ≤ 24 in\nfront: 15 in to 48 in where d ≤ 20 in; to 44 in where d ≤ 25 in"
    valid "Controls that fall under the 2010 ADA Standards, United States; clear ground of 30 in by 48 in before them."
    source { work: "2010 ADA Standards", clause: "308.2, 308.3", evidence: Seen, seen: "public pages of the standards" }
    by reach
}

/// Reach in inches: deepest obstruction and highest control.
fn range(approach: ReachApproach) -> [(f64, f64); 2] {
    match approach {
        ReachApproach::Side => [(10.0, 48.0), (24.0, 46.0)],
        ReachApproach::Front => [(20.0, 48.0), (25.0, 44.0)],
    }
}

fn reach(control: &AdaReach) -> Result<AdaReachRange, OutOfReach> {
    not_negative("obstruction_depth", control.obstruction_depth, "6 in")?;
    not_negative("control_height", control.control_height, "42 in")?;
    let deep = |depth: f64| is_at_most(control.obstruction_depth, inches(depth));
    let high = range(control.approach)
        .into_iter()
        .find_map(|(depth, high)| deep(depth).then_some(inches(high)))
        .ok_or_else(|| {
            OutOfReach::new(
                "obstruction_depth",
                "nobody in a wheelchair reaches over this: 24 in from the side and 25 in from the front are the most",
            )
        })?;
    let low = inches(15.0);
    let height = control.control_height;
    Ok(AdaReachRange {
        low,
        high,
        verdict: verdict(is_at_least(height, low) && is_at_most(height, high)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(approach: ReachApproach, depth: f64, height: f64) -> Result<AdaReachRange, OutOfReach> {
        let control = AdaReach {
            approach,
            obstruction_depth: inches(depth),
            control_height: inches(height),
        };
        control.evaluate()
    }

    proptest! {
        #[test]
        fn a_deeper_obstruction_never_lets_it_stand_higher(depth in 0.0..24.0, share in 0.0..1.0) {
            for approach in ReachApproach::ALL {
                let (near, far) = (at(*approach, depth * share, 40.0), at(*approach, depth, 40.0));
                prop_assert!(far.unwrap().high <= near.unwrap().high);
            }
        }
    }

    #[test]
    fn out_of_anybodys_reach_is_refused() {
        let deep = at(ReachApproach::Side, 30.0, 40.0);
        assert_eq!(deep.unwrap_err().input, "obstruction_depth");
    }
}
