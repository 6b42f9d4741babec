//! How a measured value stands to a limit.

use quantity::Quantity;

quantity::words! {
    /// How a value stands to its limit.
    pub enum LimitVerdict {
        /// On the right side of the limit, or on it.
        Kept = "kept",
        /// On the wrong side of it.
        Broken = "not kept",
    }
}

/// Share of a limit by which a value may differ from it through conversion of units alone.
const ROUNDING: f64 = 1e-9;

/// The verdict on a limit that is kept or not.
pub(super) fn verdict(kept: bool) -> LimitVerdict {
    if kept {
        LimitVerdict::Kept
    } else {
        LimitVerdict::Broken
    }
}

/// Whether a value is at most its limit.
pub(super) fn is_at_most<Q: Quantity>(value: Q, limit: Q) -> bool {
    value.base() <= limit.base() + ROUNDING * limit.base().abs()
}

/// Whether a value is at least its limit.
pub(super) fn is_at_least<Q: Quantity>(value: Q, limit: Q) -> bool {
    value.base() >= limit.base() - ROUNDING * limit.base().abs()
}
