//! Separation distance of a field that lies along the approach, by ISO 13855:2024.

use super::approach::{WALK, in_millimeters, millimeters, stopping_seconds};
use crate::OutOfReach;
use quantity::{Length, Time};

formula! {
    /// Separation distance of a level field that people walk through, by ISO 13855:2024 as reported.
    ///
    /// This edition no longer counts the height of the field: the allowance is always 1200 mm. The field or its lowest
    /// beam lies at most 200 mm above the ground, where the 2010 edition had 300 mm. Ask which edition applies.
    pub struct Iso138552024ParallelDistance = "iso13855-2024-parallel-distance" in Protection {
        /// Whole time from actuation of the sensor until the danger has ended.
        stopping_time ("T"): Time,
        /// Supplement of the device or its place, from its manual; 0 where none is asked.
        supplement ("Z"): Length,
    }
    gives
    /// Separation distance of a level field.
    pub struct Iso138552024Parallel {
        /// Allowance for reaching in.
        reaching ("D_DS"): Length,
        /// Separation distance.
        distance ("S"): Length,
    }
    formula "D_DS = 1200 mm\nS = 1600 mm/s · T + D_DS + Z"
    valid "Level fields of scanners; machinery in workplaces."
    source { work: "ISO 13855:2024", clause: "5", evidence: Seen, seen: "pages of an engineering consultancy and of a machine-safety firm on the 2024 edition (addresses withheld); the standard itself was not at hand" }
    by parallel_distance
}

fn parallel_distance(
    field: &Iso138552024ParallelDistance,
) -> Result<Iso138552024Parallel, OutOfReach> {
    let time = stopping_seconds(field.stopping_time)?;
    let supplement = in_millimeters(field.supplement);
    if supplement < 0.0 {
        return Err(OutOfReach::new(
            "supplement",
            "a supplement is not below zero; give 0 where none is asked",
        ));
    }
    let reaching = 1200.0;
    Ok(Iso138552024Parallel {
        reaching: millimeters(reaching),
        distance: millimeters(WALK * time + reaching + supplement),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::Iso138552010ParallelDistance;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    proptest! {
        #[test]
        fn never_nearer_than_the_edition_before(time in 0.0..2.0, height in 0.0..1000.0) {
            let new = Iso138552024ParallelDistance {
                stopping_time: Time::from_base(time),
                supplement: millimeters(0.0),
            };
            let old = Iso138552010ParallelDistance {
                stopping_time: Time::from_base(time),
                field_height: millimeters(height),
                capability: millimeters(40.0),
            };
            prop_assert!(new.evaluate().unwrap().distance >= old.evaluate().unwrap().distance);
        }
    }
}
