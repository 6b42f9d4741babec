//! The clear gap between bollards: wide enough for people, narrow enough against cars.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Clear gap between two bollards beside the width that an accessible route needs and the one that keeps a car out.
    ///
    /// An accessible route is 36 in wide, and may narrow to 32 in for no more than 24 in of length, which a row of
    /// bollards is, if the next narrow place is 48 in away. A gap of 48 in is common against cars; give the width of
    /// the vehicle that has to stay out. Sleeves and reflectors count with their outside.
    pub struct BollardGap = "bollard-gap" in Standing {
        /// Distance of the bollards from center to center.
        spacing ("s"): Length,
        /// Outside diameter of the bollards with their sleeves.
        diameter ("D"): Length,
        /// Largest clear gap that keeps the vehicle out.
        vehicle_gap ("gv"): Length,
    }
    gives
    /// Clear gap and what it has to spare.
    pub struct Gap {
        /// Clear gap.
        clear ("g"): Length,
        /// Beyond the 36 in of an accessible route, below zero where it is too narrow.
        route_margin ("g − 36 in"): Length,
        /// Beyond the 32 in of a short narrow place, below zero where it is too narrow.
        short_margin ("g − 32 in"): Length,
        /// Short of the gap that keeps the vehicle out, below zero where it is too wide.
        vehicle_margin ("gv − g"): Length,
    }
    formula "g = s − D"
    valid "Round bollards in line, across the route."
    source { work: "2010 ADA Standards", clause: "403.5.1 with its exception", evidence: Seen, seen: "the section at https://corada.com/documents/aba-pg-v2/403-5-1" }
    by gap
}

/// Clear width of an accessible route, in meters: 36 in.
const ROUTE: f64 = 0.9144;
/// Clear width of a short narrow place, in meters: 32 in.
const SHORT: f64 = 0.8128;

fn gap(bollards: &BollardGap) -> Result<Gap, OutOfReach> {
    positive("spacing", bollards.spacing, "42 in")?;
    not_negative("diameter", bollards.diameter, "6 in")?;
    positive("vehicle_gap", bollards.vehicle_gap, "48 in")?;
    let clear = bollards.spacing.base() - bollards.diameter.base();
    if clear <= 0.0 {
        return Err(OutOfReach::new(
            "spacing",
            "the bollards touch; give the distance from center to center",
        ));
    }
    Ok(Gap {
        clear: Length::from_base(clear),
        route_margin: Length::from_base(clear - ROUTE),
        short_margin: Length::from_base(clear - SHORT),
        vehicle_margin: Length::from_base(bollards.vehicle_gap.base() - clear),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_people_gain_the_vehicle_gains(spacing in 0.5..2.0, more in 0.0..0.5) {
            let gap = |spacing: f64| {
                let bollards = BollardGap {
                    spacing: Length::from_base(spacing),
                    diameter: Length::from_base(0.15),
                    vehicle_gap: Length::from_base(1.2),
                };
                bollards.evaluate().unwrap()
            };
            let (near, far) = (gap(spacing), gap(spacing + more));
            let gained = (far.route_margin - near.route_margin).base();
            let lost = (near.vehicle_margin - far.vehicle_margin).base();
            prop_assert!((gained - lost).abs() < 1e-12);
        }
    }
}
