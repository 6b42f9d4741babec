//! Largest resistance that IEC 60228 allows a copper conductor.

use super::conductor_resistance::check_temperature;
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{
    ConductorSize, Quantity as _, Ratio, ResistancePerLength, Temperature, Word as _, celsius,
    difference,
};

quantity::words! {
    /// Class of a copper conductor by IEC 60228, and whether its wires are plain or tinned.
    pub enum ConductorClass {
        /// Solid (class 1) or stranded (class 2), plain.
        FixedPlain = "class 1 or 2 plain",
        /// Solid (class 1) or stranded (class 2), tinned.
        FixedTinned = "class 1 or 2 tinned",
        /// Flexible (class 5), plain.
        FlexiblePlain = "class 5 plain",
        /// Flexible (class 5), tinned.
        FlexibleTinned = "class 5 tinned",
    }
}

formula! {
    /// Largest direct-current resistance that IEC 60228 allows one copper conductor of a metric size.
    ///
    /// These are limits that every drum must keep, not nominal values: a design that holds with them holds with what
    /// is delivered. The limits stand at 20 °C and are carried to the temperature of the metal by the standard's factor.
    pub struct Iec60228Resistance = "iec-60228-resistance" in Power {
        /// Nominal cross-section, 0.5 to 25 mm².
        size ("A"): ConductorSize,
        /// Class of the conductor, and plain or tinned wires.
        class ("–"): ConductorClass,
        /// Temperature of the metal.
        temperature ("T"): Temperature,
    }
    gives
    /// Largest resistance by the standard.
    pub struct Iec60228Ohms {
        /// Largest resistance for each unit of length at the temperature.
        resistance ("R′"): ResistancePerLength,
        /// Largest resistance as printed, at 20 °C.
        at_20_celsius ("R′20"): ResistancePerLength,
        /// Factor of the standard from the temperature to 20 °C.
        factor ("k"): Ratio,
    }
    formula "R′ = R′20 / k\nk = 1 / (1 + 0.004 /K · (T − 20 °C))\nR′20: tables 1 to 3"
    valid "Copper of 0.5 to 25 mm², classes 1, 2 and 5, direct current. Metal from −50 °C to 200 °C; the standard prints its factor from 5 °C to 90 °C."
    source { work: "IEC 60228", clause: "tables 1 to 3 and annex B", evidence: Seen, seen: "technical pages that extract the tables, named in their files" }
    by iec_60228_resistance
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("iec_60228_resistance.toml")));

/// Temperature coefficient of annex B about 20 °C, in 1/K.
const COEFFICIENT: f64 = 0.004;

fn iec_60228_resistance(conductor: &Iec60228Resistance) -> Result<Iec60228Ohms, OutOfReach> {
    check_temperature(conductor.temperature)?;
    let printed = printed(conductor.size, conductor.class)?;
    let warmer = difference(conductor.temperature, celsius(20.0)).base();
    let factor = 1.0 / (1.0 + COEFFICIENT * warmer);
    Ok(Iec60228Ohms {
        resistance: ResistancePerLength::from_base(printed / 1000.0 / factor),
        at_20_celsius: ResistancePerLength::from_base(printed / 1000.0),
        factor: Ratio::from_base(factor),
    })
}

/// The printed limit at 20 °C, in ohms for each kilometer.
fn printed(size: ConductorSize, class: ConductorClass) -> Result<f64, OutOfReach> {
    let ConductorSize::Metric(area) = size else {
        return Err(OutOfReach::new(
            "size",
            "this table has metric sizes, such as 1.5 mm²; for a gauge use `nec-table-8-resistance`",
        ));
    };
    let table = Table::of(&TABLE)?;
    let sizes = table.numbers("size");
    let same = |size: &f64| (size * 1e-6 / area.base() - 1.0).abs() < 1e-6;
    let value = sizes
        .iter()
        .position(same)
        .and_then(|row| table.numbers(class.word()).get(row).copied());
    value.ok_or_else(|| {
        let all: Vec<String> = sizes.iter().map(ToString::to_string).collect();
        OutOfReach::new("size", format!("the table has {} mm²", all.join(", ")))
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::power::{ConductorResistance, Metal, Stranding};
    use quantity::{Area, Awg};

    #[test]
    fn limits_fall_down_the_table_and_rise_across_it() {
        let table = Table::of(&TABLE).unwrap();
        assert!(table.numbers("size").is_sorted_by(|one, next| one < next));
        for class in ConductorClass::ALL {
            let limits = table.numbers(class.word());
            assert_eq!(limits.len(), 10);
            assert!(limits.is_sorted_by(|one, next| one > next));
        }
        for pair in ConductorClass::ALL.windows(2) {
            let (left, right) = (table.numbers(pair[0].word()), table.numbers(pair[1].word()));
            assert!(left.iter().zip(&right).all(|(left, right)| left < right));
        }
    }

    #[test]
    fn every_limit_is_above_nominal_copper() {
        for size in Table::of(&TABLE).unwrap().numbers("size") {
            let size = ConductorSize::Metric(Area::from_base(size * 1e-6));
            let nominal = ConductorResistance {
                size,
                metal: Metal::Copper,
                stranding: Stranding::Solid,
                temperature: celsius(20.0),
            };
            let nominal = nominal.evaluate().unwrap().resistance.base() * 1000.0;
            let limit = printed(size, ConductorClass::FixedPlain).unwrap();
            assert!(limit > nominal && limit < 1.09 * nominal, "{size}");
        }
    }

    #[test]
    fn the_factor_is_the_printed_one() {
        let table = Table::read(include_str!("iec_60228_temperature_factor.toml")).unwrap();
        let rows = table
            .numbers("temperature")
            .into_iter()
            .zip(table.numbers("factor"));
        for (degrees, printed) in rows {
            let conductor = Iec60228Resistance {
                size: ConductorSize::Metric(Area::from_base(1.5e-6)),
                class: ConductorClass::FixedPlain,
                temperature: celsius(degrees),
            };
            let factor = conductor.evaluate().unwrap().factor.base();
            assert!((factor - printed).abs() < 0.0008, "{degrees} °C");
        }
    }

    #[test]
    fn what_the_table_lacks_is_refused() {
        for size in [
            ConductorSize::Gauge(Awg::new(18).unwrap()),
            ConductorSize::Metric(Area::from_base(2e-6)),
        ] {
            assert_eq!(
                printed(size, ConductorClass::FixedPlain).unwrap_err().input,
                "size"
            );
        }
    }
}
