//! Current that a copper conductor may carry without end by the National Electrical Code.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{
    ConductorSize, Current, Quantity as _, Ratio, Temperature, Word as _, celsius, difference,
};

quantity::words! {
    /// Temperature that an insulation or a terminal is rated for.
    pub enum RatedTemperature {
        /// 60 °C.
        Sixty = "60 °C",
        /// 75 °C.
        SeventyFive = "75 °C",
        /// 90 °C.
        Ninety = "90 °C",
    }
}

formula! {
    /// Ampacity of a copper conductor, corrected for a warm place and for its neighbors in the conduit, and held to what
    /// the terminals at its ends are rated for.
    ///
    /// The factors are taken from the column of the insulation; the terminals' column is a limit of its own and is not
    /// corrected. Spare conductors and others that can carry current at the same time count; an equipment ground does
    /// not. Up to 100 A the terminals are rated for 60 °C unless they are marked. A licensed electrician signs for it.
    pub struct NecAmpacity = "nec-ampacity" in Power {
        /// Size of the conductor, 14 to 1 AWG.
        size ("n"): ConductorSize,
        /// Temperature that its insulation is rated for.
        insulation ("Tc"): RatedTemperature,
        /// Temperature that its terminals are rated for.
        terminals ("–"): RatedTemperature,
        /// Hottest air or ground around it.
        ambient ("Ta"): Temperature,
        /// Conductors in the same conduit or cable that carry current.
        conductors ("N"): u32,
    }
    gives
    /// Ampacity with its factors.
    pub struct NecAmpacities {
        /// Ampacity as printed for its insulation.
        printed ("It"): Current,
        /// Factor for the ambient temperature.
        ambient_factor ("ka"): Ratio,
        /// Factor for the neighbors.
        bundling_factor ("kb"): Ratio,
        /// Ampacity of the conductor, corrected.
        corrected ("Ic"): Current,
        /// Limit of the terminals.
        terminal_limit ("Iterm"): Current,
        /// The smaller of the two.
        ampacity ("Iz"): Current,
    }
    formula "Ic = It · ka · kb\nIz = smaller of Ic and Iterm\nIt, Iterm: table 310.16; ka: table 310.15(B)(1)(1); kb: table 310.15(C)(1)"
    valid "Copper, 14 to 1 AWG and 3/0 AWG, in a raceway, a cable or the earth, up to 2000 V; ambient up to 60 °C. Not on a roof in the sun, not for a nipple of 24 in or less."
    source { work: "NFPA 70 (NEC)", clause: "tables 310.16, 310.15(B)(1)(1) and 310.15(C)(1); 110.14(C)", evidence: Seen, seen: "reprints of the tables, named in their files" }
    by nec_ampacity
}

static AMPACITY: Stored = Stored::new(|| Table::read(include_str!("nec_310_16_copper.toml")));
static AMBIENT: Stored = Stored::new(|| Table::read(include_str!("nec_310_15_ambient.toml")));
static BUNDLING: Stored = Stored::new(|| Table::read(include_str!("nec_310_15_bundling.toml")));

fn nec_ampacity(conductor: &NecAmpacity) -> Result<NecAmpacities, OutOfReach> {
    let printed = printed(conductor.size, conductor.insulation)?;
    let terminal_limit = terminal_limit(conductor)?;
    let ambient_factor = ambient_factor(conductor.ambient, conductor.insulation)?;
    let bundling_factor = bundling_factor(conductor.conductors)?;
    let corrected = printed * ambient_factor * bundling_factor;
    Ok(NecAmpacities {
        printed: Current::from_base(printed),
        ambient_factor: Ratio::from_base(ambient_factor),
        bundling_factor: Ratio::from_base(bundling_factor),
        corrected: Current::from_base(corrected),
        terminal_limit: Current::from_base(terminal_limit),
        ampacity: Current::from_base(corrected.min(terminal_limit)),
    })
}

/// Name of the column of a temperature.
fn column(rated: RatedTemperature) -> &'static str {
    match rated {
        RatedTemperature::Sixty => "60",
        RatedTemperature::SeventyFive => "75",
        RatedTemperature::Ninety => "90",
    }
}

/// Ampacity as printed, in amperes.
fn printed(size: ConductorSize, rated: RatedTemperature) -> Result<f64, OutOfReach> {
    let ConductorSize::Gauge(gauge) = size else {
        return Err(OutOfReach::new(
            "size",
            "this table has gauges, such as 10 AWG; for metric sizes take the tables of IEC 60364-5-52",
        ));
    };
    let table = Table::of(&AMPACITY)?;
    table
        .column("awg")
        .zip(table.column(column(rated)))
        .find(|(row, _)| row.number() == Some(f64::from(gauge.number())))
        .and_then(|(_, amperes)| amperes.number())
        .ok_or_else(|| {
            let why = format!(
                "no ampacity of {gauge} at {} is known here; the table has copper of 14, 12, 10, 8, 6, 4, 3, 2 and 1 AWG",
                rated.word()
            );
            OutOfReach::new("size", why)
        })
}

/// Limit of the terminals; where the table has no entry for a larger size, that of its insulation.
fn terminal_limit(conductor: &NecAmpacity) -> Result<f64, OutOfReach> {
    printed(conductor.size, conductor.terminals)
}

fn ambient_factor(ambient: Temperature, rated: RatedTemperature) -> Result<f64, OutOfReach> {
    let degrees = difference(ambient, celsius(0.0)).base();
    let table = Table::of(&AMBIENT)?;
    table
        .numbers("up_to")
        .into_iter()
        .zip(table.column(column(rated)))
        .find(|(up_to, _)| degrees <= up_to + 1e-6)
        .and_then(|(_, factor)| factor.number())
        .ok_or_else(|| {
            OutOfReach::new(
                "ambient",
                "the table goes up to 60 °C, and to 55 °C for insulation of 60 °C; find the conductor a cooler place",
            )
        })
}

fn bundling_factor(conductors: u32) -> Result<f64, OutOfReach> {
    if conductors == 0 {
        return Err(OutOfReach::new(
            "conductors",
            "count the conductors that carry current: 2 for a circuit of 120 V or 240 V",
        ));
    }
    let table = Table::of(&BUNDLING)?;
    table
        .numbers("up_to")
        .into_iter()
        .zip(table.column("factor").filter_map(Cell::number))
        .find(|(up_to, _)| f64::from(conductors) <= *up_to)
        .map(|(_, factor)| factor)
        .ok_or_else(|| OutOfReach::new("conductors", "so many are not bundled in one conduit"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Awg;

    fn conductor(number: i8, degrees: f64, conductors: u32) -> NecAmpacity {
        NecAmpacity {
            size: ConductorSize::Gauge(Awg::new(number).unwrap()),
            insulation: RatedTemperature::Ninety,
            terminals: RatedTemperature::SeventyFive,
            ambient: celsius(degrees),
            conductors,
        }
    }

    #[test]
    fn the_tables_rise_and_fall_as_they_must() {
        let table = Table::of(&AMPACITY).unwrap();
        for name in ["60", "75", "90"] {
            assert!(table.numbers(name).is_sorted_by(|one, next| one < next));
        }
        let table = Table::of(&AMBIENT).unwrap();
        for (name, rated) in [("60", 60.0_f64), ("75", 75.0), ("90", 90.0)] {
            let rows = table.numbers("up_to").into_iter().zip(table.numbers(name));
            for (up_to, factor) in rows {
                let by_formula = ((rated - up_to) / (rated - 30.0)).sqrt();
                assert!((factor - by_formula).abs() < 0.0051, "{rated} {up_to}");
            }
        }
    }

    proptest! {
        #[test]
        fn warmer_and_closer_never_carries_more(degrees in 0.0..59.0, warmer in 0.0..1.0, count in 1u32..60) {
            let here = conductor(10, degrees, count).evaluate().unwrap().ampacity;
            prop_assert!(conductor(10, degrees + warmer, count).evaluate().unwrap().ampacity <= here);
            prop_assert!(conductor(10, degrees, count + 1).evaluate().unwrap().ampacity <= here);
        }
    }

    #[test]
    fn what_the_tables_lack_is_refused() {
        assert_eq!(conductor(18, 30.0, 2).evaluate().unwrap_err().input, "size");
        assert_eq!(
            conductor(10, 61.0, 2).evaluate().unwrap_err().input,
            "ambient"
        );
        assert_eq!(
            conductor(10, 30.0, 0).evaluate().unwrap_err().input,
            "conductors"
        );
    }
}
