//! Walking speed of schoolchildren.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Quantity as _, Velocity};
use std::sync::LazyLock;

formula! {
    /// Walking speed of a schoolchild, with the slow and the fast end of the range.
    ///
    /// The ends lie two standard deviations from the mean: about one child in forty beyond each. Children run, and then
    /// they are far faster: 3 to 5 m/s are recalled, and no measured figure could be read.
    pub struct ChildWalkingSpeed = "child-walking-speed" in Protection {
        /// Age in whole years.
        age ("n"): u32,
    }
    gives
    /// Walking speed of a child.
    pub struct ChildSpeed {
        /// Mean.
        mean ("v"): Velocity,
        /// Slow end.
        slow ("v − 2σ"): Velocity,
        /// Fast end.
        fast ("v + 2σ"): Velocity,
    }
    formula "v and σ from the table"
    valid "Pupils of 7 to 12 years who walk ten level meters at their own pace."
    source { work: "Normal Walking Speed According to Age and Gender, 2022", clause: "", evidence: Seen, seen: "the article in a university journal" }
    by walking_speed
}

static SPEEDS: Stored = LazyLock::new(|| Table::read(include_str!("child_walking_speed.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn walking_speed(child: &ChildWalkingSpeed) -> Result<ChildSpeed, OutOfReach> {
    let table = Table::of(&SPEEDS)?;
    let ages = table.numbers("age").into_iter();
    let mut rows = ages
        .zip(table.numbers("mean"))
        .zip(table.numbers("deviation"));
    rows.find(|((age, _), _)| (age - f64::from(child.age)).abs() < 1e-9)
        .map(|((_, mean), deviation)| ChildSpeed {
            mean: Velocity::from_base(mean),
            slow: Velocity::from_base(mean - 2.0 * deviation),
            fast: Velocity::from_base(mean + 2.0 * deviation),
        })
        .ok_or_else(|| OutOfReach::new("age", "the table has children of 7 to 12 years"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn slow_mean_and_fast_rise() {
        for age in 7..=12 {
            let speed = ChildWalkingSpeed { age }.evaluate().unwrap();
            assert!(speed.slow.base() > 0.5 && speed.slow < speed.mean && speed.mean < speed.fast);
        }
    }

    #[test]
    fn small_children_are_refused() {
        assert_eq!(
            ChildWalkingSpeed { age: 3 }.evaluate().unwrap_err().input,
            "age"
        );
    }
}
