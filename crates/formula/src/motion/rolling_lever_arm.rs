//! How far ahead of its axle a rolling wheel is pushed back.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Material of a wheel and of what it rolls on.
    pub enum RollingPair {
        /// Steel wheel on a steel track.
        SteelOnSteel = "steel on steel",
        /// Wooden wheel on a steel track.
        WoodOnSteel = "wood on steel",
        /// Plastic wheel on a steel track.
        PolymerOnSteel = "polymer on steel",
        /// Plastic wheel on concrete.
        PolymerOnConcrete = "polymer on concrete",
        /// Hard rubber wheel on a steel track.
        HardRubberOnSteel = "hard rubber on steel",
        /// Hard rubber wheel on concrete.
        HardRubberOnConcrete = "hard rubber on concrete",
        /// Medium hard rubber wheel on concrete.
        MediumRubberOnConcrete = "medium rubber on concrete",
    }
}

formula! {
    /// Lever arm of rolling friction for a wheel and what it rolls on.
    ///
    /// The ground pushes back a little ahead of the axle, by this arm; arm over wheel radius is the share of the load
    /// that rolling costs. The track is clean and whole: dirt, a worn wheel or a dent cost several times as much, so
    /// take the high value and add a force for debris.
    pub struct RollingLeverArm = "rolling-lever-arm" in Motion {
        /// Material of the wheel and of what it rolls on.
        pair ("–"): RollingPair,
    }
    gives
    /// Lever arm of rolling friction.
    pub struct LeverArm {
        /// Lowest lever arm in print.
        low ("f"): Length,
        /// Highest lever arm in print; the same as the lowest where one number is printed.
        high ("f"): Length,
    }
    formula "f from the table"
    valid "Clean, whole wheels and tracks at walking speed."
    source { work: "drive-sizing reference of a gear maker", clause: "rolling resistance, lever arms", evidence: Seen, seen: "the maker's page; name and address withheld, they carry a company's name" }
    by lever_arm
}

static LEVER_ARMS: Stored = LazyLock::new(|| Table::read(include_str!("rolling_lever_arm.toml")));

/// One inch in meters.
const INCH: f64 = 0.0254;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn lever_arm(wheel: &RollingLeverArm) -> Result<LeverArm, OutOfReach> {
    let table = Table::of(&LEVER_ARMS)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(wheel.pair.word()));
    let length = |place: usize| {
        let inches = row.and_then(|row| row.get(place)).and_then(Cell::number);
        inches.map(|inches| Length::from_base(inches * INCH))
    };
    match (length(1), length(2)) {
        (Some(low), Some(high)) => Ok(LeverArm { low, high }),
        _ => Err(OutOfReach::new(
            "pair",
            "the table has no lever arm for this pair",
        )),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_pair_has_an_arm_and_softer_pairs_never_a_shorter_one() {
        let arms: Vec<LeverArm> = RollingPair::ALL
            .iter()
            .map(|pair| RollingLeverArm { pair: *pair }.evaluate().unwrap())
            .collect();
        assert!(
            arms.iter()
                .all(|arm| arm.low.base() > 0.0 && arm.low <= arm.high)
        );
        assert!(arms.windows(2).all(|pair| pair[0].low < pair[1].low));
    }
}
