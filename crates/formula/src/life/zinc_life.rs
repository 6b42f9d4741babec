//! How long zinc keeps steel from rust.

use crate::OutOfReach;
use crate::check::positive;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Quantity as _, Time, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// How hard the air is on metal.
    pub enum CorrosivityClass {
        /// Very low: heated rooms.
        C1 = "C1",
        /// Low: dry country air.
        C2 = "C2",
        /// Medium: towns, coasts with little salt.
        C3 = "C3",
        /// High: industry, coasts with salt.
        C4 = "C4",
        /// Very high: open coast, harsh industry.
        C5 = "C5",
    }
}

formula! {
    /// Years until the zinc of a part is used up and it must be painted.
    ///
    /// Zinc wears away evenly, so the life goes with its thickness. The upper end of the class is taken. The first year
    /// is the worst in most places, so a steady rate of that year is on the safe side. Where water stands, soil touches
    /// or de-icing salt reaches, it goes much faster than the air's class says.
    pub struct ZincLife = "zinc-life" in Life {
        /// Thickness of the zinc where it is thinnest.
        thickness ("t"): Length,
        /// How hard the air is on metal.
        corrosivity ("–"): CorrosivityClass,
    }
    gives
    /// Life of zinc.
    pub struct ZincYears {
        /// Zinc lost in a year at the upper end of the class.
        yearly_loss ("r"): Length,
        /// Time until it is used up at that rate.
        life ("T"): Time,
    }
    formula "T = t / r, r at the upper end of the class"
    valid "Zinc from the bath in open air, classes C1 to C5. In the extreme class, offshore, ask the galvanizer."
    source { work: "ISO 9223:2012 and ISO 14713-1:2009", clause: "table 2; thickness over rate", evidence: Seen, seen: "http://what-when-how.com/Tutorial/topic-6238rk/Offshore-Structures-Design-Construction-and-Maintenance-422.html (zinc and steel, C1 to C5)" }
    by zinc_life
}

static CLASSES: Stored = LazyLock::new(|| Table::read(include_str!("zinc_life.toml")));

/// One micrometer in meters.
const MICROMETER: f64 = 1e-6;
/// One year in seconds.
const YEAR: f64 = 365.25 * 86_400.0;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn zinc_life(zinc: &ZincLife) -> Result<ZincYears, OutOfReach> {
    positive("thickness", zinc.thickness, "85 µm")?;
    if zinc.thickness.base() > 1e-3 {
        return Err(OutOfReach::new(
            "thickness",
            "a coat of zinc is some 45 to 200 µm thick; give the coat, not the steel",
        ));
    }
    let table = Table::of(&CLASSES)?;
    let class = zinc.corrosivity.word();
    let loss = table
        .column("class")
        .zip(table.column("zinc to"))
        .find(|(name, _)| name.words() == Some(class))
        .and_then(|(_, loss)| Cell::number(loss))
        .ok_or_else(|| OutOfReach::new("corrosivity", "the table has no such class"))?;
    let yearly_loss = loss * MICROMETER;
    Ok(ZincYears {
        yearly_loss: Length::from_base(yearly_loss),
        life: Time::from_base(zinc.thickness.base() / yearly_loss * YEAR),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn life(micrometers: f64, corrosivity: CorrosivityClass) -> Result<ZincYears, OutOfReach> {
        ZincLife {
            thickness: Length::from_base(micrometers * MICROMETER),
            corrosivity,
        }
        .evaluate()
    }

    #[test]
    fn each_class_begins_where_the_one_before_ends() {
        let table = Table::read(include_str!("zinc_life.toml")).unwrap();
        for metal in ["zinc", "steel"] {
            let from = table.numbers(&format!("{metal} from"));
            let to = table.numbers(&format!("{metal} to"));
            assert!(from.iter().zip(&to).all(|(from, to)| from < to));
            assert!(
                from[1..]
                    .iter()
                    .zip(&to)
                    .all(|(from, to)| (from - to).abs() < 1e-12)
            );
        }
    }

    proptest! {
        #[test]
        fn thicker_zinc_lasts_longer_and_worse_air_shorter(micrometers in 1.0..500.0) {
            for pair in CorrosivityClass::ALL.windows(2) {
                let (mild, harsh) = (life(micrometers, pair[0]).unwrap(), life(micrometers, pair[1]).unwrap());
                prop_assert!(harsh.life < mild.life);
                prop_assert!(mild.life < life(micrometers * 1.1, pair[0]).unwrap().life);
            }
        }
    }

    #[test]
    fn the_thickness_of_the_steel_is_noticed() {
        assert_eq!(
            life(3000.0, CorrosivityClass::C3).unwrap_err().input,
            "thickness"
        );
        assert_eq!(
            life(0.0, CorrosivityClass::C3).unwrap_err().input,
            "thickness"
        );
    }
}
