//! When a barrier arm needs no means of entrapment protection, recalled from UL 325.

use super::customary::feet;
use super::limit::is_at_least;
use crate::check::not_negative;
use crate::{Evidence, OutOfReach, Source};
use quantity::Length;

/// The note on barrier arms to the table of least numbers of means, recalled.
pub static BARRIER_ARM_RECALLED: Source = Source {
    work: "UL 325, in force 2016 and 2018",
    clause: "note to table 32.1 (recalled)",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

/// Whether a barrier arm moves no nearer than 2 ft to anything rigid, in which case it is recalled as needing no means
/// of entrapment protection. Recalled and not verified: it may warn, and never passes a gate.
///
/// Source: [`BARRIER_ARM_RECALLED`].
pub fn barrier_arm_stays_clear_recalled(nearest_rigid_thing: Length) -> Result<bool, OutOfReach> {
    not_negative("nearest_rigid_thing", nearest_rigid_thing, "30 in")?;
    Ok(is_at_least(nearest_rigid_thing, feet(2.0)))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    proptest! {
        #[test]
        fn more_room_never_asks_for_more(room in 0.0..2.0, more in 0.0..1.0) {
            let clear = |room| barrier_arm_stays_clear_recalled(Length::from_base(room)).unwrap();
            prop_assert!(!clear(room) || clear(room + more));
        }
    }

    #[test]
    fn a_distance_below_zero_is_refused() {
        let inside = barrier_arm_stays_clear_recalled(Length::from_base(-0.1));
        assert_eq!(inside.unwrap_err().input, "nearest_rigid_thing");
    }
}
