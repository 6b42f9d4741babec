//! Safety distance of presence sensing on presses, by 29 CFR 1910.217.

use super::approach::stopping_seconds;
use crate::OutOfReach;
use quantity::{Length, Quantity as _, Time};

formula! {
    /// Safety distance of a presence-sensing field by the US rule for presses: the field stands farther away than this.
    ///
    /// The rule is about presses, not gates. It serves as a check of other distances: it counts a hand's speed of 63
    /// in/s and nothing for reaching in before being seen.
    pub struct Osha1910217Distance = "osha-1910-217-distance" in Protection {
        /// Whole time from actuation of the sensor until the danger has ended.
        stopping_time ("Ts"): Time,
    }
    gives
    /// Safety distance by the rule for presses.
    pub struct OshaDistance {
        /// Safety distance.
        distance ("Ds"): Length,
    }
    formula "Ds = 63 in/s · Ts"
    valid "Presence-sensing devices that find a hand at the edge of the field."
    source { work: "29 CFR 1910.217", clause: "(c)(3)(iii)(e)", evidence: Seen, seen: "OSHA Machine Guarding eTool, Presses, Safety Distance" }
    by distance
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn distance(field: &Osha1910217Distance) -> Result<OshaDistance, OutOfReach> {
    let time = stopping_seconds(field.stopping_time)?;
    Ok(OshaDistance {
        distance: Length::from_base(63.0 * 0.0254 * time),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::Iso138552010MinimumDistance;
    use proptest::prelude::*;

    proptest! {
        /// 63 in/s is 1600.2 mm/s: with nothing for reaching in, the rule never asks more than ISO 13855, to 0.2 mm/s.
        #[test]
        fn asks_no_more_than_iso(time in 0.0..2.0) {
            let stopping_time = Time::from_base(time);
            let osha = Osha1910217Distance { stopping_time }.evaluate().unwrap().distance;
            let iso = Iso138552010MinimumDistance {
                stopping_time,
                capability: Length::from_base(0.014),
            };
            prop_assert!(osha.base() <= iso.evaluate().unwrap().distance.base() + 0.0002 * time + 1e-12);
        }
    }
}
