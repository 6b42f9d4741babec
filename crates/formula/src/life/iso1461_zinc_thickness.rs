//! How thick the zinc from the bath must be, by ISO 1461.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Stored, Table};
use quantity::{Length, MassPerArea, Quantity as _};
use std::sync::LazyLock;

formula! {
    /// Least thickness of the zinc on steel dipped after welding, by ISO 1461.
    ///
    /// For a forecast use the local thickness: rust begins where the coat is thinnest. Bolts and small parts that are
    /// spun after the bath have less.
    pub struct Iso1461ZincThickness = "iso1461-zinc-thickness" in Life {
        /// Thickness of the steel.
        steel ("s"): Length,
    }
    gives
    /// Least zinc by ISO 1461.
    pub struct Iso1461Zinc {
        /// Least thickness at any spot.
        local ("t"): Length,
        /// Least mean thickness.
        mean ("tm"): Length,
        /// Least mean mass.
        mean_mass ("m"): MassPerArea,
    }
    formula "the row of the steel's thickness: below 1.5 mm, 1.5 to 3 mm, above 3 to 6 mm, above 6 mm"
    valid "Steel parts dipped after making, not spun."
    source { work: "EN ISO 1461:2009", clause: "table 3", evidence: Seen, seen: "https://chienyouvn.com/en/cac-tieu-chuan-do-day-2/" }
    by zinc
}

static ROWS: Stored = LazyLock::new(|| Table::read(include_str!("iso1461_zinc_thickness.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn zinc(part: &Iso1461ZincThickness) -> Result<Iso1461Zinc, OutOfReach> {
    positive("steel", part.steel, "4 mm")?;
    let millimeters = part.steel.base() * 1000.0;
    let row = match millimeters {
        _ if millimeters < 1.5 => 0,
        _ if millimeters <= 3.0 => 1,
        _ if millimeters <= 6.0 => 2,
        _ => 3,
    };
    let table = Table::of(&ROWS)?;
    let cell = |column: &str| {
        let cells = table.numbers(column);
        let cell = cells.get(row).copied();
        cell.ok_or_else(|| OutOfReach::new("table", "the table has no row for this steel"))
    };
    Ok(Iso1461Zinc {
        local: Length::from_base(cell("local")? * 1e-6),
        mean: Length::from_base(cell("mean")? * 1e-6),
        mean_mass: MassPerArea::from_base(cell("mean mass")? * 1e-3),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    #[test]
    fn mass_over_thickness_is_that_of_zinc() {
        let table = Table::read(include_str!("iso1461_zinc_thickness.toml")).unwrap();
        for (thickness, mass) in [("local", "local mass"), ("mean", "mean mass")] {
            let pairs = table
                .numbers(thickness)
                .into_iter()
                .zip(table.numbers(mass));
            assert!(
                pairs
                    .map(|(thickness, mass)| mass / thickness)
                    .all(|density| (7.0..7.3).contains(&density))
            );
        }
    }

    proptest! {
        #[test]
        fn thicker_steel_gets_no_less(millimeters in 0.1..20.0) {
            let at = |millimeters: f64| {
                Iso1461ZincThickness { steel: Length::from_base(millimeters / 1000.0) }.evaluate().unwrap()
            };
            prop_assert!(at(millimeters).local <= at(millimeters + 0.5).local);
            prop_assert!(at(millimeters).local < at(millimeters).mean);
        }
    }

    #[test]
    fn no_steel_is_refused() {
        let none = Iso1461ZincThickness {
            steel: Length::from_base(0.0),
        };
        assert_eq!(none.evaluate().unwrap_err().input, "steel");
    }
}
