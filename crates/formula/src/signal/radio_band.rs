//! What a radio may send without a license of its own, by band.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Frequency, Power, Quantity as _, Ratio};

quantity::words! {
    /// At what the power of a band is counted.
    pub enum CountedAt {
        /// At the transmitter's socket, with an antenna of at most 6 dB.
        Socket = "socket",
        /// Radiated, over an antenna that sends evenly (EIRP).
        Even = "even",
        /// Radiated, over a half-wave dipole (ERP).
        Dipole = "dipole",
    }
}

/// What may be sent in one band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RadioBand {
    /// Lower end.
    pub low: Frequency,
    /// Upper end.
    pub high: Frequency,
    /// At what its power is counted.
    pub counted: CountedAt,
    /// Most power.
    pub power: Power,
    /// Largest share of any hour in which it sends.
    pub duty: Ratio,
    /// For alarms only.
    pub alarms_only: bool,
    /// Inside buildings only.
    pub indoors_only: bool,
    /// The row was seen, and is not from memory.
    pub seen: bool,
    /// The rule that says so.
    pub rule: &'static str,
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("radio_band.toml")));

/// The bands of a code (`us` or `eu`) around a frequency, for links or for hand remotes, as `radio_band.toml` has them.
pub fn radio_bands(
    code: &str,
    use_: &str,
    frequency: Frequency,
) -> Result<Vec<RadioBand>, OutOfReach> {
    let table = Table::of(&TABLE)?;
    let megahertz = frequency.base() / 1e6;
    let rows = table.rows.iter();
    let found = rows.filter_map(|row| {
        let [of, low, high, counted, power, duty, only, known, rule] = row.as_slice() else {
            return None;
        };
        let (low, high) = (low.number()?, high.number()?);
        let only = only.words()?;
        let suits = of.words()? == code && (only == use_ || !matches!(only, "link" | "remote"));
        let around = (low..=high).contains(&megahertz);
        (suits && around).then_some(())?;
        Some(RadioBand {
            low: Frequency::from_base(low * 1e6),
            high: Frequency::from_base(high * 1e6),
            counted: counted_at(counted)?,
            power: Power::from_base(power.number()? * 1e-3),
            duty: Ratio::from_base(duty.number()?),
            alarms_only: only == "alarm",
            indoors_only: only == "indoors",
            seen: known.words()? == "seen",
            rule: rule.words()?,
        })
    });
    Ok(found.collect())
}

fn counted_at(cell: &Cell) -> Option<CountedAt> {
    use quantity::Word as _;
    CountedAt::from_word(cell.words()?)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::EirpOfFieldStrength;
    use quantity::{FieldStrength, Length};

    fn at(code: &str, use_: &str, megahertz: f64) -> Vec<RadioBand> {
        radio_bands(code, use_, Frequency::from_base(megahertz * 1e6)).unwrap()
    }

    #[test]
    fn every_row_is_read_and_bands_are_whole() {
        let table = Table::of(&TABLE).unwrap();
        let mut read = 0;
        for row in &table.rows {
            let (low, high) = (row[1].number().unwrap(), row[2].number().unwrap());
            let use_ = row[6].words().unwrap();
            let bands = at(row[0].words().unwrap(), use_, f64::midpoint(low, high));
            read += usize::from(!bands.is_empty());
            for band in bands {
                assert!(band.low < band.high && band.power.base() > 0.0);
                assert!(band.duty.base() > 0.0 && band.duty.base() <= 1.0);
            }
        }
        assert_eq!(read, table.rows.len());
    }

    #[test]
    fn the_remote_of_the_united_states_is_its_field_at_three_meters() {
        let band = at("us", "remote", 915.0)[0];
        let field = EirpOfFieldStrength {
            field: FieldStrength::from_base(0.05),
            distance: Length::from_base(3.0),
        };
        let power = field.evaluate().unwrap().power;
        assert!((band.power / power).base() - 1.0 < 1e-3);
    }

    #[test]
    fn between_the_bands_there_is_none() {
        assert!(at("eu", "link", 5400.0).is_empty());
        assert!(at("us", "link", 868.3).is_empty());
        assert!(at("eu", "remote", 5200.0)[0].indoors_only);
    }
}
