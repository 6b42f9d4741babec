//! What people call a wind, by its speed.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Quantity as _, Velocity, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Name of a wind on the Beaufort scale.
    pub enum BeaufortName {
        /// Force 0.
        Calm = "calm",
        /// Force 1.
        LightAir = "light air",
        /// Force 2.
        LightBreeze = "light breeze",
        /// Force 3.
        GentleBreeze = "gentle breeze",
        /// Force 4.
        ModerateBreeze = "moderate breeze",
        /// Force 5.
        FreshBreeze = "fresh breeze",
        /// Force 6.
        StrongBreeze = "strong breeze",
        /// Force 7.
        NearGale = "near gale",
        /// Force 8.
        Gale = "gale",
        /// Force 9.
        StrongGale = "strong gale",
        /// Force 10.
        Storm = "storm",
        /// Force 11.
        ViolentStorm = "violent storm",
        /// Force 12.
        HurricaneForce = "hurricane force",
    }
}

formula! {
    /// Force and name of a wind on the Beaufort scale, for the owner's sheet.
    ///
    /// The scale counts the mean of ten minutes at 10 m above open ground, as forecasts for the public mostly do. Gusts
    /// are half as strong again and more: a gust of 35 mph comes with a mean of some 23 mph.
    pub struct BeaufortForce = "beaufort-force" in Wind {
        /// Speed of the wind, mean of ten minutes.
        speed ("v"): Velocity,
    }
    gives
    /// A wind on the Beaufort scale.
    pub struct Beaufort {
        /// Number on the scale, 0 to 12.
        force ("B"): u32,
        /// Its name.
        name ("–"): BeaufortName,
        /// Speed at which this force begins.
        from ("v0"): Velocity,
    }
    formula "the last row of the table whose speed is reached"
    valid "Winds up to 150 m/s; everything from 32.7 m/s is force 12."
    source { work: "Beaufort scale as the weather services print it", clause: "", evidence: Seen, seen: "pages of two weather services" }
    by beaufort
}

static SCALE: Stored = LazyLock::new(|| Table::read(include_str!("beaufort_force.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn beaufort(wind: &BeaufortForce) -> Result<Beaufort, OutOfReach> {
    if !(0.0..=150.0).contains(&wind.speed.base()) {
        return Err(OutOfReach::new(
            "speed",
            "give a wind from 0 to 150 m/s, such as 25 mph",
        ));
    }
    let table = Table::of(&SCALE)?;
    let starts = table.numbers("from");
    let names = table.column("name").filter_map(Cell::words);
    let reached = (0..).zip(starts.into_iter().zip(names));
    reached
        .take_while(|(_, (from, _))| *from <= wind.speed.base())
        .last()
        .and_then(|(force, (from, name))| {
            Some(Beaufort {
                force,
                name: BeaufortName::from_word(name)?,
                from: Velocity::from_base(from),
            })
        })
        .ok_or_else(|| OutOfReach::new("table", "the scale has no row for this wind"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(speed: f64) -> Result<Beaufort, OutOfReach> {
        BeaufortForce {
            speed: Velocity::from_base(speed),
        }
        .evaluate()
    }

    #[test]
    fn the_columns_of_the_scale_agree() {
        let table = Table::read(include_str!("beaufort_force.toml")).unwrap();
        let (metric, knots) = (table.numbers("from"), table.numbers("from in knots"));
        assert_eq!(metric.len(), BeaufortName::ALL.len());
        let pairs = metric.iter().zip(&knots);
        for (force, (metric, knots)) in pairs.enumerate().skip(1) {
            // The columns are rounded apart, each to its own steps: they agree within a knot, and the metric one is lower.
            let knot = 1852.0 / 3600.0;
            assert!(knots * knot >= *metric, "{force}: {knots} {metric}");
            assert!(
                (knots - 1.0) * knot < metric + 0.25,
                "{force}: {knots} {metric}"
            );
            let force = f64::from(u32::try_from(force).unwrap());
            let law = 0.836 * (force - 0.5).powf(1.5);
            assert!((law - metric).abs() < 0.15, "{force}: {law} {metric}");
        }
    }

    proptest! {
        #[test]
        fn more_wind_is_never_a_lower_force(speed in 0.0..149.0, more in 0.0..1.0) {
            prop_assert!(at(speed).unwrap().force <= at(speed + more).unwrap().force);
            prop_assert!(at(speed).unwrap().from.base() <= speed);
        }
    }

    #[test]
    fn a_speed_below_zero_is_refused() {
        assert_eq!(at(-0.1).unwrap_err().input, "speed");
    }
}
