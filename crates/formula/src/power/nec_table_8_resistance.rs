//! Resistance of a copper conductor by table 8 of the National Electrical Code.

use super::conductor_resistance::{Stranding, check_temperature};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{
    Awg, ConductorSize, Quantity as _, Ratio, ResistancePerLength, Temperature, Word as _, celsius,
    difference,
};

quantity::words! {
    /// Whether the copper is coated with tin or bare.
    pub enum Coating {
        /// Bare copper.
        Uncoated = "uncoated",
        /// Copper with a coat of tin.
        Coated = "coated",
    }
}

formula! {
    /// Direct-current resistance of one copper conductor by chapter 9, table 8, corrected to the temperature of its metal.
    ///
    /// The table holds at 75 °C, the temperature of a fully loaded conductor; a signal wire stays near the ground or the
    /// air around it, where it has about 82 % of that. From 6 AWG on the table has strands alone.
    pub struct NecTable8Resistance = "nec-table-8-resistance" in Power {
        /// Size of the conductor, 18 to 1 AWG.
        size ("n"): ConductorSize,
        /// Solid or stranded.
        stranding ("–"): Stranding,
        /// Bare copper, or copper with a coat of tin.
        coating ("–"): Coating,
        /// Temperature of the metal.
        temperature ("T₂"): Temperature,
    }
    gives
    /// Resistance by the table.
    pub struct NecTable8Ohms {
        /// Resistance for each unit of length at the temperature.
        resistance ("R₂"): ResistancePerLength,
        /// Resistance as printed, at 75 °C.
        at_75_celsius ("R₁"): ResistancePerLength,
        /// Ratio of the two.
        factor ("R₂/R₁"): Ratio,
    }
    formula "R₂ = R₁ · (1 + 0.00323 /K · (T₂ − 75 °C))\nR₁: table 8"
    valid "Copper, 18 to 1 AWG, direct current; coated copper from 18 to 12 AWG. Metal from −50 °C to 200 °C."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9, table 8 and its note 2", evidence: Seen, seen: "public reprints of the table, named in its file; the coefficient at table-ideas.netlify.app/nec-chapter-9-table-8" }
    by nec_table_8_resistance
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("nec_table_8_resistance.toml")));

/// Temperature coefficient of copper about 75 °C, in 1/K.
const COEFFICIENT: f64 = 0.00323;
/// A thousand feet in meters.
const THOUSAND_FEET: f64 = 304.8;

fn nec_table_8_resistance(conductor: &NecTable8Resistance) -> Result<NecTable8Ohms, OutOfReach> {
    check_temperature(conductor.temperature)?;
    let ConductorSize::Gauge(gauge) = conductor.size else {
        return Err(OutOfReach::new(
            "size",
            "this table has gauges, such as 18 AWG; for a metric size use `iec-60228-resistance`",
        ));
    };
    let printed = printed(gauge, conductor.stranding, conductor.coating)?;
    let warmer = difference(conductor.temperature, celsius(75.0)).base();
    let factor = 1.0 + COEFFICIENT * warmer;
    Ok(NecTable8Ohms {
        resistance: ResistancePerLength::from_base(printed / THOUSAND_FEET * factor),
        at_75_celsius: ResistancePerLength::from_base(printed / THOUSAND_FEET),
        factor: Ratio::from_base(factor),
    })
}

/// The printed resistance, in ohms for each thousand feet.
fn printed(gauge: Awg, stranding: Stranding, coating: Coating) -> Result<f64, OutOfReach> {
    let table = Table::of(&TABLE)?;
    let gauges = table.column("awg");
    let strandings = table.column("stranding");
    let values = table.column(coating.word());
    let row = gauges
        .zip(strandings)
        .zip(values)
        .find(|((row, strands), _)| {
            row.number() == Some(f64::from(gauge.number()))
                && strands.words() == Some(stranding.word())
        });
    let Some((_, value)) = row else {
        let why = format!(
            "the table has no {stranding} {gauge}; it has 18 to 8 AWG solid and 18 to 1 AWG stranded"
        );
        return Err(OutOfReach::new("size", why));
    };
    value.number().ok_or_else(|| {
        OutOfReach::new(
            "coating",
            "coated copper is known here from 18 to 12 AWG; take the data sheet's value, about 4 % above uncoated",
        )
    })
}

/// The cells of a column for one stranding, with their circular mils, for the laws of the table.
#[cfg(test)]
fn pairs(stranding: Stranding, column: &str) -> Vec<(f64, f64)> {
    let Ok(table) = Table::of(&TABLE) else {
        return Vec::new();
    };
    table
        .column("circular_mils")
        .zip(table.column("stranding"))
        .zip(table.column(column))
        .filter(|((_, strands), _)| strands.words() == Some(stranding.word()))
        .filter_map(|((mils, _), ohms)| Some((mils.number()?, ohms.number()?)))
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::power::{ConductorResistance, Metal};

    #[test]
    fn more_metal_is_less_resistance() {
        for stranding in Stranding::ALL {
            for column in ["uncoated", "coated"] {
                let pairs = pairs(*stranding, column);
                assert!(pairs.len() >= 4);
                for two in pairs.windows(2) {
                    assert!(two[0].0 < two[1].0 && two[0].1 > two[1].1, "{two:?}");
                }
            }
        }
    }

    #[test]
    fn strands_and_coats_add_resistance() {
        for gauge in [18, 16, 14, 12].map(|number| Awg::new(number).unwrap()) {
            let value = |stranding, coating| printed(gauge, stranding, coating).unwrap();
            let bare = value(Stranding::Solid, Coating::Uncoated);
            assert!(value(Stranding::Stranded, Coating::Uncoated) > bare);
            assert!(value(Stranding::Solid, Coating::Coated) > bare);
        }
    }

    #[test]
    fn the_table_agrees_with_nominal_copper() {
        for (stranding, gauges) in [
            (Stranding::Solid, &[18i8, 16, 14, 12, 10, 8][..]),
            (Stranding::Stranded, &[18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1]),
        ] {
            for gauge in gauges.iter().map(|number| Awg::new(*number).unwrap()) {
                let size = ConductorSize::Gauge(gauge);
                let temperature = celsius(75.0);
                let nominal = ConductorResistance {
                    size,
                    metal: Metal::Copper,
                    stranding,
                    temperature,
                };
                let nominal = nominal.evaluate().unwrap().resistance.base() * THOUSAND_FEET;
                let printed = printed(gauge, stranding, Coating::Uncoated).unwrap();
                assert!(
                    (printed / nominal - 1.0).abs() < 0.012,
                    "{gauge} {stranding}"
                );
            }
        }
    }

    #[test]
    fn what_the_table_lacks_is_refused() {
        let of = |size, stranding, coating| {
            NecTable8Resistance {
                size,
                stranding,
                coating,
                temperature: celsius(20.0),
            }
            .evaluate()
            .unwrap_err()
            .input
        };
        let gauge = |number| ConductorSize::Gauge(Awg::new(number).unwrap());
        assert_eq!(of(gauge(22), Stranding::Solid, Coating::Uncoated), "size");
        assert_eq!(of(gauge(6), Stranding::Solid, Coating::Uncoated), "size");
        assert_eq!(of(gauge(10), Stranding::Solid, Coating::Coated), "coating");
    }
}
