//! Clear width and height of an open gate for fire apparatus.

use super::customary::feet;
use super::limit::is_at_least;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// How an open gate stands to what fire apparatus needs.
    pub enum FireWayVerdict {
        /// Wide and high enough.
        Kept = "kept",
        /// Too narrow.
        Narrow = "too narrow",
        /// Too low.
        Low = "too low",
    }
}

formula! {
    /// Whether an open gate leaves fire apparatus the clear width and height that the fire authority asks.
    ///
    /// What the authority has written prevails, be it more or less: figures of counties and cities differ from 10 ft to
    /// 22 ft. Without it the model codes hold. Measure between the open leaves, their hinges and operators, and under
    /// anything overhead; the turn into the gate is another question.
    pub struct FireClearWay = "fire-clear-way" in Protection {
        /// Clear width with the gate fully open.
        clear_width ("w"): Length,
        /// Clear height above the road.
        clear_height ("h"): Length,
        /// Width that the fire authority has written; 0 where it has written none.
        authority_width ("wa"): Length,
        /// Height that the fire authority has written; 0 where it has written none.
        authority_height ("ha"): Length,
    }
    gives
    /// How an open gate stands to what fire apparatus needs.
    pub struct FireWay {
        /// Least clear width.
        least_width ("wmin"): Length,
        /// Least clear height.
        least_height ("hmin"): Length,
        /// Width to spare; below zero where it is too narrow.
        width_spare ("w − wmin"): Length,
        /// Height to spare; below zero where it is too low.
        height_spare ("h − hmin"): Length,
        /// The verdict, or the first part that is not kept.
        verdict ("–"): FireWayVerdict,
    }
    formula "wmin = wa, or 20 ft\nhmin = ha, or 13 ft 6 in"
    valid "One gate across a road for fire apparatus, United States."
    source { work: "International Fire Code 503.2.1 and D103.5; NFPA 1 18.2.3", clause: "", evidence: Seen, seen: "public code pages and local ordinances that repeat them" }
    by fire_way
}

fn fire_way(gate: &FireClearWay) -> Result<FireWay, OutOfReach> {
    positive("clear_width", gate.clear_width, "20 ft")?;
    positive("clear_height", gate.clear_height, "14 ft")?;
    not_negative("authority_width", gate.authority_width, "20 ft")?;
    not_negative("authority_height", gate.authority_height, "14 ft")?;
    let least_width = written_or(gate.authority_width, 20.0);
    let least_height = written_or(gate.authority_height, 13.5);
    let verdict = if !is_at_least(gate.clear_width, least_width) {
        FireWayVerdict::Narrow
    } else if is_at_least(gate.clear_height, least_height) {
        FireWayVerdict::Kept
    } else {
        FireWayVerdict::Low
    };
    Ok(FireWay {
        least_width,
        least_height,
        width_spare: gate.clear_width - least_width,
        height_spare: gate.clear_height - least_height,
        verdict,
    })
}

/// What the authority has written, or else a number of feet.
fn written_or(written: Length, otherwise: f64) -> Length {
    if written.base() > 0.0 {
        written
    } else {
        feet(otherwise)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn gate(width: f64, height: f64, written: f64) -> FireClearWay {
        FireClearWay {
            clear_width: Length::from_base(width),
            clear_height: Length::from_base(height),
            authority_width: Length::from_base(written),
            authority_height: Length::from_base(0.0),
        }
    }

    proptest! {
        #[test]
        fn wider_and_higher_never_breaks_it(
            width in 2.0..10.0, height in 2.0..6.0, written in 0.0..8.0, more in 0.0..2.0
        ) {
            if gate(width, height, written).evaluate().unwrap().verdict == FireWayVerdict::Kept {
                let larger = gate(width + more, height + more, written).evaluate().unwrap();
                prop_assert_eq!(larger.verdict, FireWayVerdict::Kept);
            }
        }
    }

    #[test]
    fn a_shut_gate_is_refused() {
        assert_eq!(
            gate(0.0, 5.0, 0.0).evaluate().unwrap_err().input,
            "clear_width"
        );
    }
}
