//! Whether values that can be read can also be so.

mod concrete;
mod current;
mod leaf;
mod motion;
mod order;
mod range;
mod report;
mod zero;

use crate::model::Site;
use crate::problem::Problems;
use crate::source::Source;
use report::Report;

/// A rule looks at the whole site and reports what breaks it.
type Rule = fn(&Site, &mut Report<'_>);

/// Every rule about values that can be read.
const RULES: &[Rule] = &[
    zero::zero,
    range::share_above_one,
    range::angle_out_of_range,
    range::steep_slope,
    range::beyond_weather,
    order::cold_above_hot,
    order::voltage_out_of_order,
    order::peak_below_lasting,
    order::made_after_installed,
    order::opening_above_top,
    leaf::shorter_than_opening,
    leaf::count,
    leaf::tail_too_long,
    leaf::axle_too_thick,
    leaf::of_another_gate,
    motion::creep_above_cruise,
    motion::creep_beyond_travel,
    motion::curve_out_of_order,
    current::feeding_circle,
    current::cable_to_itself,
    current::too_few_cores,
    current::power_pairs,
    concrete::anchor_too_deep,
    concrete::anchors_in_rows,
];

/// Every value that cannot be so, or hardly is.
pub(crate) fn validate(site: &Site, sources: &[Source]) -> Problems {
    let mut report = Report::new(sources);
    for rule in RULES {
        rule(site, &mut report);
    }
    report.finish()
}
