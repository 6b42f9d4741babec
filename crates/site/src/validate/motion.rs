//! How leaves move and what drives them.

use super::report::{Report, above};
use crate::model::{Operator, Site};
use crate::problem::Code;

/// Creeping is slower than cruising.
pub(super) fn creep_above_cruise(site: &Site, report: &mut Report<'_>) {
    for motion in site.gate.iter().filter_map(|gate| gate.motion.as_ref()) {
        if above(motion.creep_speed, motion.cruise_speed) {
            let what = "`creep_speed` is above `cruise_speed`";
            report.wrong(
                Code::CreepAboveCruise,
                &motion.origin,
                "creep_speed",
                what,
                "at most the cruise speed",
            );
        }
    }
}

/// The leaf creeps over a part of its travel.
pub(super) fn creep_beyond_travel(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        let Some(motion) = &gate.motion else { continue };
        if above(motion.creep_distance, gate.travel) {
            let what = "the leaf creeps farther than it travels";
            report.wrong(
                Code::CreepBeyondTravel,
                &motion.origin,
                "creep_distance",
                what,
                "less than `travel`",
            );
        }
    }
}

/// The points of a force-speed curve rise in speed.
pub(super) fn curve_out_of_order(site: &Site, report: &mut Report<'_>) {
    for operator in site.operator.iter().filter(|operator| !rises(operator)) {
        let what = "the speeds of the curve do not rise from point to point";
        let expected = "points from stall (speed zero) to no load, each faster than the one before";
        report.wrong(
            Code::CurveOutOfOrder,
            &operator.origin,
            "curve",
            what,
            expected,
        );
    }
}

/// Each point is faster than the one before.
fn rises(operator: &Operator) -> bool {
    operator
        .curve
        .is_sorted_by(|slower, faster| slower.speed.nominal() < faster.speed.nominal())
}
