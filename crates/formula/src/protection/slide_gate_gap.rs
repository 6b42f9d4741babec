//! Gap between a sliding leaf and what it passes.

use super::customary::inches;
use super::limit::{LimitVerdict, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Length;

formula! {
    /// Whether the gap between a sliding leaf and the posts and fence that it passes is too wide, by the list that the
    /// US safety commission gives installers.
    ///
    /// Through a wide gap an arm, a coat or a child is drawn in by ribs and bars that pass. Try the whole travel at
    /// three heights. ASTM F2200 limits the same gap; its number is recalled as the same.
    pub struct SlideGateGap = "slide-gate-gap" in Protection {
        /// Widest gap anywhere along the travel.
        gap ("e"): Length,
    }
    gives
    /// How a gap stands to the limit.
    pub struct SlideGapRule {
        /// Widest gap allowed.
        limit ("emax"): Length,
        /// Room to spare; below zero where the gap is too wide.
        spare ("emax − e"): Length,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "e ≤ 2.25 in"
    valid "Sliding gates, United States; fingers fit into much less."
    source { work: "CPSC, Operation Safe Gate, 6 August 2018", clause: "", evidence: Seen, seen: "the press release, which lists no gaps over 2.25 in" }
    by gap_rule
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn gap_rule(leaf: &SlideGateGap) -> Result<SlideGapRule, OutOfReach> {
    not_negative("gap", leaf.gap, "1 1/2 in")?;
    let limit = inches(2.25);
    Ok(SlideGapRule {
        limit,
        spare: limit - leaf.gap,
        verdict: verdict(is_at_most(leaf.gap, limit)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn kept(gap: f64) -> bool {
        let gap = Length::from_base(gap);
        SlideGateGap { gap }.evaluate().unwrap().verdict == LimitVerdict::Kept
    }

    proptest! {
        #[test]
        fn a_narrower_gap_never_breaks_it(gap in 0.0..0.2, share in 0.0..1.0) {
            prop_assert!(!kept(gap) || kept(gap * share));
        }
    }

    #[test]
    fn a_gap_below_zero_is_refused() {
        let leaf = SlideGateGap {
            gap: Length::from_base(-0.01),
        };
        assert_eq!(leaf.evaluate().unwrap_err().input, "gap");
    }
}
