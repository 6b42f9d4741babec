//! Room under a vehicle on a break of the grade.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio};

formula! {
    /// Room under a vehicle that drives over a crest or into a dip where two slopes meet in a sharp break.
    ///
    /// On a crest the belly comes nearest half way between the axles; in a dip it is what hangs over before or behind. A
    /// break that is rounded leaves more than this. Loaded springs leave less: measure the undersides loaded.
    pub struct GradeBreakRoom = "grade-break-room" in Signal {
        /// From axle to axle.
        wheelbase ("L"): Length,
        /// Lowest underside between the axles above level ground.
        underside ("h"): Length,
        /// How far the front, or the tail, hangs out beyond its axle.
        overhang ("f"): Length,
        /// Lowest underside there above level ground.
        overhang_underside ("hf"): Length,
        /// Slope before the break, above zero uphill.
        before ("g1"): Ratio,
        /// Slope behind it.
        after ("g2"): Ratio,
    }
    gives
    /// Room on a break.
    pub struct RoomOnBreak {
        /// Room under the belly.
        belly ("cb"): Length,
        /// Room under what hangs out, as the axle comes to the break.
        overhang ("cf"): Length,
    }
    formula "cb = h − max(g1 − g2, 0) · L / 4\ncf = hf − max(g2 − g1, 0) · f"
    valid "Slopes up to 1 in 4; the break is sharp; both axles and what hangs out are on the two slopes only."
    source { work: "a straight beam on two slopes", clause: "", evidence: Physics, seen: "similar triangles; held against a drive in small steps" }
    by room
}

fn room(vehicle: &GradeBreakRoom) -> Result<RoomOnBreak, OutOfReach> {
    positive("wheelbase", vehicle.wheelbase, "17 ft")?;
    not_negative("underside", vehicle.underside, "9 in")?;
    not_negative("overhang", vehicle.overhang, "4 ft")?;
    not_negative("overhang_underside", vehicle.overhang_underside, "10 in")?;
    for (input, slope) in [("before", vehicle.before), ("after", vehicle.after)] {
        if slope.base().abs() > 0.25 {
            return Err(OutOfReach::new(
                input,
                "a drive is no steeper than 1 in 4; give a slope such as 0.06",
            ));
        }
    }
    let change = vehicle.after.base() - vehicle.before.base();
    Ok(RoomOnBreak {
        belly: vehicle.underside - vehicle.wheelbase * ((-change).max(0.0) / 4.0),
        overhang: vehicle.overhang_underside - vehicle.overhang * change.max(0.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn vehicle(wheelbase: f64, before: f64, after: f64) -> GradeBreakRoom {
        let [wheelbase, underside, overhang, overhang_underside] =
            [wheelbase, 0.3, 1.0, 0.3].map(Length::from_base);
        GradeBreakRoom {
            wheelbase,
            underside,
            overhang,
            overhang_underside,
            before: Ratio::from_base(before),
            after: Ratio::from_base(after),
        }
    }

    proptest! {
        #[test]
        fn only_the_change_of_the_slope_counts(wheelbase in 2.0..12.0, one in -0.1..0.1, change in -0.1..0.1) {
            let first = vehicle(wheelbase, 0.0, change).evaluate().unwrap();
            let second = vehicle(wheelbase, one, one + change).evaluate().unwrap();
            prop_assert!((first.belly - second.belly).base().abs() < 1e-12);
            prop_assert!((first.overhang - second.overhang).base().abs() < 1e-12);
        }
    }

    #[test]
    fn a_wall_is_refused() {
        assert_eq!(
            vehicle(3.0, 0.0, 1.0).evaluate().unwrap_err().input,
            "after"
        );
    }
}
