//! Gaps at secondary edges that are safe for fingers, recalled from the European standards.

use super::limit::{is_at_least, is_at_most};
use crate::check::not_negative;
use crate::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _};

/// The rule for gaps at secondary edges, recalled.
pub static FINGER_GAP_RECALLED: Source = Source {
    work: "EN 12604 / EN 12453, gaps at secondary edges",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen; the 25 mm agree with ISO 13854, table 1",
};

/// Whether a gap is safe for fingers through the whole travel: at most 8 mm all along, or at least 25 mm all along.
/// Recalled and not verified: it may warn, and never passes a gate.
///
/// Source: [`FINGER_GAP_RECALLED`].
pub fn finger_gap_recalled(narrowest: Length, widest: Length) -> Result<bool, OutOfReach> {
    not_negative("narrowest", narrowest, "6 mm")?;
    if widest < narrowest {
        return Err(OutOfReach::new(
            "widest",
            "the widest gap is not below the narrowest; read the two again",
        ));
    }
    let (small, large) = (Length::from_base(0.008), Length::from_base(0.025));
    Ok(is_at_most(widest, small) || is_at_least(narrowest, large))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::{BodyPart, Iso13854Gap};
    use proptest::prelude::*;

    proptest! {
        /// A wide gap that is safe here does not crush a finger by ISO 13854 either.
        #[test]
        fn a_wide_gap_agrees_with_iso13854(narrowest in 0.009..0.1, more in 0.0..0.1) {
            let safe = finger_gap_recalled(Length::from_base(narrowest), Length::from_base(narrowest + more));
            let finger = Iso13854Gap { part: BodyPart::Finger }.evaluate().unwrap().gap.base();
            prop_assert_eq!(safe.unwrap(), narrowest >= finger);
        }
    }

    #[test]
    fn a_gap_that_changes_from_small_to_large_is_not_safe() {
        assert!(!finger_gap_recalled(Length::from_base(0.005), Length::from_base(0.03)).unwrap());
        let swapped = finger_gap_recalled(Length::from_base(0.03), Length::from_base(0.005));
        assert_eq!(swapped.unwrap_err().input, "widest");
    }
}
