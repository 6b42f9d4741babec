//! Foundations and their anchors.

use super::report::{Report, above};
use crate::model::Site;
use crate::problem::Code;

/// An anchor ends inside the concrete.
pub(super) fn anchor_too_deep(site: &Site, report: &mut Report<'_>) {
    for foundation in &site.foundation {
        for anchor in &foundation.anchor {
            if above(anchor.embedment, foundation.depth) {
                let what = "the anchor reaches through the foundation";
                report.wrong(
                    Code::AnchorTooDeep,
                    &anchor.origin,
                    "embedment",
                    what,
                    "less than the `depth` of the foundation",
                );
            }
        }
    }
}

/// Anchors stand in even rows.
pub(super) fn anchors_in_rows(site: &Site, report: &mut Report<'_>) {
    for anchor in site.foundation.iter().flat_map(|one| &one.anchor) {
        let (Some(count), Some(rows)) = (anchor.count, anchor.rows) else {
            continue;
        };
        if rows > 0 && !count.is_multiple_of(rows) {
            report.wrong(
                Code::UnevenRows,
                &anchor.origin,
                "count",
                "the anchors do not share out evenly over their rows",
                "as many in each of the `rows`, such as 4 in 2 rows",
            );
        }
    }
}
