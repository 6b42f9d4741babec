//! Standing height of children.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Boy or girl.
    pub enum Child {
        /// A boy.
        Boy = "boy",
        /// A girl.
        Girl = "girl",
    }
}

quantity::words! {
    /// Where in the range of children a height stands.
    pub enum ChildPercentile {
        /// Only one in ten is smaller.
        P10 = "10th percentile",
        /// Half are smaller.
        P50 = "50th percentile",
        /// Only one in ten is taller.
        P90 = "90th percentile",
    }
}

formula! {
    /// Standing height of a child from one to six years, for judging what beams and openings do with children.
    ///
    /// Breadths and depths of children could not be read anywhere. A child also crawls, squats and lies: a beam that a
    /// standing child breaks is no proof.
    pub struct ChildHeight = "child-height" in Protection {
        /// Boy or girl.
        child ("–"): Child,
        /// Age in whole years.
        age ("n"): u32,
        /// Where in the range of children.
        percentile ("–"): ChildPercentile,
    }
    gives
    /// Standing height of a child.
    pub struct ChildStature {
        /// Standing height.
        height ("h"): Length,
    }
    formula "h from the table"
    valid "Children of 1 to 6 years in the United States."
    source { work: "percentiles of height of children in the United States, textbook appendix", clause: "", evidence: Seen, seen: "the public web page of the appendix" }
    by height
}

static HEIGHTS: Stored = LazyLock::new(|| Table::read(include_str!("child_height.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn height(child: &ChildHeight) -> Result<ChildStature, OutOfReach> {
    let table = Table::of(&HEIGHTS)?;
    let age = f64::from(child.age);
    table
        .column("child")
        .zip(table.column("age"))
        .zip(table.column(child.percentile.word()))
        .find(|((kind, years), _)| {
            let same_age = years
                .number()
                .is_some_and(|years| (years - age).abs() < 1e-9);
            same_age && kind.words() == Some(child.child.word())
        })
        .and_then(|(_, height)| height.number())
        .map(|centimeters| ChildStature {
            height: Length::from_base(centimeters / 100.0),
        })
        .ok_or_else(|| OutOfReach::new("age", "the table has children of 1 to 6 years"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn height_of(
        child: Child,
        age: u32,
        percentile: ChildPercentile,
    ) -> Result<Length, OutOfReach> {
        let child = ChildHeight {
            child,
            age,
            percentile,
        };
        child.evaluate().map(|stature| stature.height)
    }

    #[test]
    fn heights_rise_with_age_and_percentile() {
        for child in Child::ALL {
            for percentile in ChildPercentile::ALL {
                let ages = (1..=6).map(|age| height_of(*child, age, *percentile).unwrap().base());
                assert!(ages.is_sorted_by(|low, high| low < high));
            }
            for age in 1..=6 {
                let of = |percentile: &ChildPercentile| {
                    height_of(*child, age, *percentile).unwrap().base()
                };
                let heights = ChildPercentile::ALL.iter().map(of);
                assert!(heights.is_sorted_by(|low, high| low < high));
            }
        }
    }

    #[test]
    fn older_children_are_refused() {
        let older = height_of(Child::Girl, 7, ChildPercentile::P50);
        assert_eq!(older.unwrap_err().input, "age");
    }
}
