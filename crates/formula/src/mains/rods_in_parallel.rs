//! Resistance of several equal rods in parallel.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Stored, Table, interpolated};
use quantity::{Quantity as _, Ratio, Resistance};

formula! {
    /// Resistance of equal rods in a line, a triangle, a circle or a square, one rod length apart and tied together.
    ///
    /// Rods disturb each other: two have not half the resistance of one but 58 % of it. Closer together they help still
    /// less; at a tenth of their length they are one thick rod. Counts between the printed ones are interpolated.
    pub struct RodsInParallel = "rods-in-parallel" in Power {
        /// Resistance of one rod by itself.
        one ("R1"): Resistance,
        /// How many there are, from 1 to 24.
        rods ("N"): u32,
    }
    gives
    /// Resistance of rods together.
    pub struct RodsTogether {
        /// Factor for their mutual disturbance.
        factor ("F"): Ratio,
        /// Resistance of all together.
        resistance ("RN"): Resistance,
    }
    formula "RN = R1 / N · F\nF: table 14"
    valid "Equal rods at least one rod length apart, in soil of one kind."
    source { work: "IEEE 142", clause: "table 14", evidence: Seen, seen: "mailing-list post that quotes the table: lists.contesting.com/pipermail/towertalk/2016-January/149184.html" }
    by rods_in_parallel
}

static FACTORS: Stored = Stored::new(|| Table::read(include_str!("rods_factor.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn rods_in_parallel(set: &RodsInParallel) -> Result<RodsTogether, OutOfReach> {
    positive("one", set.one, "40 Ω")?;
    if !(1..=24).contains(&set.rods) {
        return Err(OutOfReach::new(
            "rods",
            "the table goes from one rod to 24; more is a grid for an engineer",
        ));
    }
    let table = Table::of(&FACTORS)?;
    let printed = table
        .numbers("rods")
        .into_iter()
        .zip(table.numbers("factor"));
    let points = std::iter::once((1.0, 1.0)).chain(printed);
    let count = f64::from(set.rods);
    let factor = interpolated(count, points);
    Ok(RodsTogether {
        factor: Ratio::from_base(factor),
        resistance: set.one * (factor / count),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn together(rods: u32) -> Result<f64, OutOfReach> {
        let one = Resistance::from_base(40.0);
        RodsInParallel { one, rods }
            .evaluate()
            .map(|found| found.resistance.base())
    }

    #[test]
    fn each_further_rod_helps_and_never_by_its_full_share() {
        for rods in 1..24 {
            let (few, more) = (together(rods).unwrap(), together(rods + 1).unwrap());
            assert!(more < few, "{rods}");
            assert!(more > 40.0 / f64::from(rods + 1) - 1e-9, "{rods}");
        }
        assert!((together(1).unwrap() - 40.0).abs() < 1e-12);
    }

    #[test]
    fn none_and_too_many_are_refused() {
        for rods in [0, 25] {
            assert_eq!(together(rods).unwrap_err().input, "rods");
        }
    }
}
