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
