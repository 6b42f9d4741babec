//! Minimum distance of a field that lies along the approach, by ISO 13855:2010.

use super::approach::{WALK, in_millimeters, millimeters, stopping_seconds};
use crate::OutOfReach;
use quantity::{Length, Time};

formula! {
    /// Least distance from the far edge of a level field to the danger, by ISO 13855:2010.
    ///
    /// The field lies along the ground and people walk through it toward the danger. Above 300 mm (200 mm where
    /// children come) somebody might crawl under it, which has to be thought of as well.
    pub struct Iso138552010ParallelDistance = "iso13855-2010-parallel-distance" in Protection {
        /// Whole time from actuation of the sensor until the danger has ended.
        stopping_time ("T"): Time,
        /// Height of the field above the ground.
        field_height ("H"): Length,
        /// Detection capability: the thinnest thing that is seen everywhere in the field.
        capability ("d"): Length,
    }
    gives
    /// Least distance of a level field.
    pub struct Iso138552010Parallel {
        /// Lowest height at which a field of this capability may lie.
        least_height ("Hmin"): Length,
        /// Allowance for reaching in.
        intrusion ("C"): Length,
        /// Minimum distance.
        distance ("S"): Length,
    }
    formula "Hmin = 15 · (d − 50 mm), not below 0\nC = 1200 mm − 0.4 · H, not below 850 mm\nS = 1600 mm/s · T + C"
    valid "Fields up to 1000 mm above the ground and not lower than their capability allows; machinery in workplaces."
    source { work: "ISO 13855:2010", clause: "6.3", evidence: Seen, seen: "operating manuals of light curtains and scanners that reprint the rule (addresses withheld); the standard itself was not at hand" }
    by parallel_distance
}

fn parallel_distance(
    field: &Iso138552010ParallelDistance,
) -> Result<Iso138552010Parallel, OutOfReach> {
    let time = stopping_seconds(field.stopping_time)?;
    let height = in_millimeters(field.field_height);
    let capability = in_millimeters(field.capability);
    if capability <= 0.0 {
        return Err(OutOfReach::new(
            "capability",
            "give the detection capability, such as 70 mm",
        ));
    }
    let least_height = (15.0 * (capability - 50.0)).max(0.0);
    if !(0.0..=1000.0 + 1e-9).contains(&height) {
        return Err(OutOfReach::new(
            "field_height",
            "give a height from 0 to 1000 mm above the ground, such as 300 mm",
        ));
    }
    if height < least_height - 1e-9 {
        return Err(OutOfReach::new(
            "field_height",
            format!(
                "a field of this capability lies at least {least_height:.0} mm above the ground, or legs are missed"
            ),
        ));
    }
    let intrusion = (1200.0 - 0.4 * height).max(850.0);
    Ok(Iso138552010Parallel {
        least_height: millimeters(least_height),
        intrusion: millimeters(intrusion),
        distance: millimeters(WALK * time + intrusion),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    proptest! {
        #[test]
        fn never_nearer_than_an_arm_and_farther_for_longer_stops(
            time in 0.0..2.0, more in 0.001..0.5, height in 0.0..1000.0
        ) {
            let field = |time| Iso138552010ParallelDistance {
                stopping_time: Time::from_base(time),
                field_height: millimeters(height),
                capability: millimeters(40.0),
            };
            let (soon, late) = (field(time).evaluate().unwrap(), field(time + more).evaluate().unwrap());
            prop_assert!(soon.distance < late.distance);
            prop_assert!(soon.distance.base() >= 0.85);
        }
    }
}
