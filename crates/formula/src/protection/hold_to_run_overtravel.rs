//! How far a leaf may run on after a held control is let go.

use super::limit::{LimitVerdict, is_at_most, verdict};
use crate::check::not_negative;
use crate::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _};

formula! {
    /// Whether a leaf with held control stops soon enough after the control is let go, by EN 12453 as read.
    ///
    /// Measured by running the leaf to a mark, letting go there, and taping how far it ran on; the worst of several
    /// tries counts, in both directions. `stopping-distance` foretells it. Near the end of travel the standard is
    /// recalled as stricter.
    pub struct HoldToRunOvertravel = "hold-to-run-overtravel" in Protection {
        /// How far the leading edge runs on after the control is let go.
        overtravel ("s"): Length,
    }
    gives
    /// How an overtravel stands to its limit.
    pub struct Overtravel {
        /// Greatest overtravel.
        limit ("smax"): Length,
        /// Overtravel to spare; below zero where it is too much.
        spare ("smax − s"): Length,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "s ≤ 100 mm"
    valid "Held control by trained people who see the whole gate; nothing automatic connected."
    source { work: "EN 12453:2001, hold-to-run", clause: "", evidence: Seen, seen: "a UK trade federation's safety warning notice 3; the standard itself was not at hand" }
    by overtravel
}

/// The stricter limit near the end of travel, recalled.
pub static HOLD_TO_RUN_OVERTRAVEL_RECALLED: Source = Source {
    work: "EN 12453:2000, hold-to-run",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen; the 100 mm agree with a trade federation's notice",
};

/// Greatest overtravel, in m.
const LIMIT: f64 = 0.1;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn overtravel(leaf: &HoldToRunOvertravel) -> Result<Overtravel, OutOfReach> {
    not_negative("overtravel", leaf.overtravel, "40 mm")?;
    let limit = Length::from_base(LIMIT);
    Ok(Overtravel {
        limit,
        spare: limit - leaf.overtravel,
        verdict: verdict(is_at_most(leaf.overtravel, limit)),
    })
}

/// Greatest overtravel by the gap that is left: 50 mm up to 500 mm, 100 mm beyond. Recalled: it may warn, and never
/// passes a gate.
///
/// Source: [`HOLD_TO_RUN_OVERTRAVEL_RECALLED`].
pub fn hold_to_run_overtravel_recalled(gap: Length) -> Length {
    let near = is_at_most(gap, Length::from_base(0.5));
    Length::from_base(if near { 0.05 } else { LIMIT })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_recalled_limit_never_asks_less(overtravel in 0.0..0.3, gap in 0.0..2.0) {
            let overtravel = Length::from_base(overtravel);
            let seen = HoldToRunOvertravel { overtravel }.evaluate().unwrap();
            prop_assert!(hold_to_run_overtravel_recalled(Length::from_base(gap)) <= seen.limit);
            prop_assert_eq!(seen.verdict == LimitVerdict::Kept, seen.spare.base() >= -1e-9);
        }
    }

    #[test]
    fn an_overtravel_below_zero_is_refused() {
        let leaf = HoldToRunOvertravel {
            overtravel: Length::from_base(-0.01),
        };
        assert_eq!(leaf.evaluate().unwrap_err().input, "overtravel");
    }
}
