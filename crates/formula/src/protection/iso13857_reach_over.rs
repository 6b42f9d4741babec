//! Reaching over a fence or a leaf, by the recalled table of ISO 13857.

use super::approach::{in_millimeters, millimeters};
use crate::table::{Stored, Table};
use crate::{Evidence, OutOfReach, Source};
use quantity::Length;
use std::sync::LazyLock;

/// The table for reaching over at high risk, recalled.
pub static ISO13857_REACH_OVER_RECALLED: Source = Source {
    work: "ISO 13857",
    clause: "table 2 (recalled)",
    evidence: Evidence::Memory,
    seen: "not seen; an unattributed page differs and is not followed",
};

static OVER: Stored = LazyLock::new(|| Table::read(include_str!("iso13857_reach_over.toml")));

/// Heights of protective structures that have a column, in mm.
const STRUCTURES: [f64; 10] = [
    1000.0, 1200.0, 1400.0, 1600.0, 1800.0, 2000.0, 2200.0, 2400.0, 2500.0, 2700.0,
];

/// Least level distance from a fence or leaf to a danger that could be reached over its top, at high risk. Between two
/// rows or columns the safer one is taken, never a value between. Recalled and not verified: it may warn, and never
/// passes a gate.
///
/// Source: [`ISO13857_REACH_OVER_RECALLED`]. A structure below 1000 mm is none and is refused.
pub fn iso13857_reach_over_recalled(
    danger_height: Length,
    structure_height: Length,
) -> Result<Length, OutOfReach> {
    let (danger, structure) = (
        in_millimeters(danger_height),
        in_millimeters(structure_height),
    );
    if danger < 0.0 {
        return Err(OutOfReach::new(
            "danger_height",
            "give the height of the danger above where people stand, such as 1.2 m",
        ));
    }
    let fits = |height: &&f64| **height <= structure + 1e-6;
    let Some(column) = STRUCTURES.iter().rev().find(fits) else {
        return Err(OutOfReach::new(
            "structure_height",
            "a structure below 1000 mm does not keep anybody from reaching over; it counts as none",
        ));
    };
    let table = Table::of(&OVER)?;
    let heights = table.numbers("danger");
    let distances = table.numbers(&format!("b{column:.0}"));
    let nearest_above = heights.iter().filter(|height| **height >= danger - 1e-6);
    let above = nearest_above.copied().fold(f64::INFINITY, f64::min);
    let below = heights.iter().filter(|height| **height <= danger + 1e-6);
    let below = below.copied().fold(f64::NEG_INFINITY, f64::max);
    let at = |row: f64| {
        let mut rows = heights.iter().zip(&distances);
        rows.find(|(height, _)| (**height - row).abs() < 1e-6)
            .map_or(0.0, |(_, distance)| *distance)
    };
    Ok(millimeters(at(above).max(at(below))))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn over(danger: f64, structure: f64) -> f64 {
        let (danger, structure) = (Length::from_base(danger), Length::from_base(structure));
        iso13857_reach_over_recalled(danger, structure)
            .unwrap()
            .base()
    }

    proptest! {
        #[test]
        fn a_higher_fence_never_asks_for_more_room(
            danger in 0.0..3.0, structure in 1.0..3.0, more in 0.0..1.0
        ) {
            prop_assert!(over(danger, structure + more) <= over(danger, structure));
        }
    }

    #[test]
    fn between_two_rows_the_safer_one_holds() {
        assert!((over(0.1, 1.0) - 1.2).abs() < 1e-9);
        assert!((over(2.8, 1.0)).abs() < 1e-9);
    }

    #[test]
    fn a_low_fence_is_refused() {
        let low = iso13857_reach_over_recalled(Length::from_base(1.0), Length::from_base(0.9));
        assert_eq!(low.unwrap_err().input, "structure_height");
    }
}
