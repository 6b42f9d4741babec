//! How thick the zinc from the bath must be, by ASTM A123.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Kind of steel part.
    pub enum SteelCategory {
        /// Beams, channels, angles, plate.
        Shapes = "structural shapes and plate",
        /// Strip and bar.
        Bar = "strip and bar",
        /// Pipe and tubing.
        Tubing = "pipe and tubing",
        /// Wire.
        Wire = "wire",
    }
}

formula! {
    /// Least average thickness of the zinc on steel dipped after making, by ASTM A123.
    ///
    /// Single spots may be one grade thinner, and a forecast begins with those. Where two rows of the table meet, the
    /// thinner coat is taken: tubing with a wall of 1/8 in, 3.175 mm, stands in the lower one.
    pub struct AstmA123ZincThickness = "astm-a123-zinc-thickness" in Life {
        /// Kind of steel part.
        category ("–"): SteelCategory,
        /// Thickness of the steel: of a tube its wall.
        steel ("s"): Length,
    }
    gives
    /// Least zinc by ASTM A123.
    pub struct AstmA123Zinc {
        /// Least average thickness, also the number of the coating grade in micrometers.
        average ("t"): Length,
    }
    formula "t from the table: below 1.6 mm, 1.6 to 3.2, 3.2 to 4.8, 4.8 to 6.4, from 6.4 mm on"
    valid "Steel parts dipped after making."
    source { work: "ASTM A123/A123M-17", clause: "table 1", evidence: Seen, seen: "https://chienyouvn.com/en/cac-tieu-chuan-do-day-2/" }
    by zinc
}

static ROWS: Stored = LazyLock::new(|| Table::read(include_str!("astm_a123_zinc_thickness.toml")));

fn zinc(part: &AstmA123ZincThickness) -> Result<AstmA123Zinc, OutOfReach> {
    positive("steel", part.steel, "3 mm")?;
    let millimeters = part.steel.base() * 1000.0;
    let column = match millimeters {
        _ if millimeters < 1.6 => 1,
        _ if millimeters <= 3.2 => 2,
        _ if millimeters <= 4.8 => 3,
        _ if millimeters < 6.4 => 4,
        _ => 5,
    };
    let table = Table::of(&ROWS)?;
    let category = part.category.word();
    table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(category))
        .and_then(|row| row.get(column).and_then(Cell::number))
        .map(|micrometers| AstmA123Zinc {
            average: Length::from_base(micrometers * 1e-6),
        })
        .ok_or_else(|| OutOfReach::new("category", "the table has no such kind of part"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(category: SteelCategory, millimeters: f64) -> Result<AstmA123Zinc, OutOfReach> {
        AstmA123ZincThickness {
            category,
            steel: Length::from_base(millimeters / 1000.0),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn thicker_steel_gets_no_less(millimeters in 0.1..20.0) {
            for category in SteelCategory::ALL {
                prop_assert!(
                    at(*category, millimeters).unwrap().average <= at(*category, millimeters + 0.3).unwrap().average
                );
            }
        }
    }

    #[test]
    fn an_eighth_of_an_inch_stands_in_the_lower_row_and_no_steel_is_refused() {
        let eighth = at(SteelCategory::Tubing, 3.175).unwrap().average;
        assert!((eighth.base() - 45e-6).abs() < 1e-12);
        assert_eq!(at(SteelCategory::Wire, 0.0).unwrap_err().input, "steel");
    }
}
