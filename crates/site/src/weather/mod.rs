//! A whole typical year of weather, hour by hour, read from an open weather file that stands beside the site file.
//!
//! Two formats are read, told apart by the ending of the name: EPW (`.epw`) and TMY3 (`.csv`). Both stamp an hour by its
//! end, in local standard time without daylight saving. Air and dew point are those of that moment; sunshine is the mean of
//! the hour that ends then, so that the sun of an hour stands where it stands in its middle.
//!
//! Sources: EnergyPlus, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data Dictionary"; Wilcox and Marion, Users Manual
//! for TMY3 Data Sets, NREL/TP-581-43156, tables 1-1 and 1-2.

mod epw;
mod file;
mod row;
mod tmy3;

pub use file::WeatherFile;
pub(crate) use file::{KnownWeather, attach, is_weather};

use quantity::{Angle, HeatFlux, Temperature, Time};

/// Hours of a common year.
pub(crate) const HOURS: usize = 8_760;

/// A whole typical year of weather.
#[derive(Debug, Clone, PartialEq)]
pub struct WeatherYear {
    /// Latitude of the station, north positive.
    pub latitude: Angle,
    /// Longitude of the station, east positive.
    pub longitude: Angle,
    /// Local standard time ahead of universal time.
    pub ahead: Time,
    /// Its 8,760 hours; the first ends at one o'clock on 1 January.
    pub hours: Vec<WeatherHour>,
}

/// An hour of weather.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeatherHour {
    /// Air at its end.
    pub air: Temperature,
    /// Dew point of the air at its end.
    pub dew_point: Temperature,
    /// Mean sunshine on the level, sun and sky.
    pub level: HeatFlux,
    /// Mean sunshine of the sun itself on a plane that faces it.
    pub direct: HeatFlux,
    /// Mean sunshine of the sky on the level.
    pub diffuse: HeatFlux,
}

/// What is wrong with a weather file, in a sentence without its end.
type Wrong = String;

/// Reads a weather file by the ending of its name.
fn read(name: &str, text: &str) -> Result<WeatherYear, Wrong> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if ending(name) == Some("epw") {
        epw::read(text)
    } else {
        tmy3::read(text)
    }
}

/// A file of this name is read as a weather file.
pub fn is_weather_file(name: &str) -> bool {
    ending(name).is_some()
}

/// The ending of a weather file's name, when it has one of those that are read.
fn ending(name: &str) -> Option<&'static str> {
    let ending = name.rsplit_once('.')?.1;
    ["epw", "csv"]
        .into_iter()
        .find(|known| ending.eq_ignore_ascii_case(known))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::row::days;
    use super::*;
    use quantity::{Quantity as _, celsius};
    use std::fmt::Write as _;

    /// An invented year: air by the hour of the day, sun at noon.
    fn each(mut line: impl FnMut(u32, u32, u32)) {
        for (month, days) in days() {
            for day in 1..=days {
                for hour in 1..=24 {
                    line(month, day, hour);
                }
            }
        }
    }

    fn epw_text() -> String {
        let mut text =
            String::from("LOCATION,Invented,XX,XXX,made up,000000,41.5,-71.25,-5.0,3.0\n");
        for head in 2..=8 {
            writeln!(text, "HEAD {head}").unwrap();
        }
        each(|month, day, hour| {
            let sun = if hour == 12 { 600 } else { 0 };
            writeln!(text, "2001,{month},{day},{hour},0,?9,{hour}.5,-1.5,50,101300,0,0,300,{sun},700,100,0,0,0,0,0,3.1,0").unwrap();
        });
        text
    }

    fn tmy3_text() -> String {
        let mut text = String::from(
            "000000,\"INVENTED, PLACE\",XX,-5.0,41.5,-71.25,3\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Dew-point (C)\n",
        );
        each(|month, day, hour| {
            let sun = if hour == 12 { 600 } else { 0 };
            writeln!(
                text,
                "{month:02}/{day:02}/1988,{hour:02}:00,{sun},700,100,{hour}.5,-1.5"
            )
            .unwrap();
        });
        text
    }

    #[test]
    fn both_formats_say_the_same() {
        let year = read("typical.EPW", &epw_text()).unwrap();
        assert_eq!(year.hours.len(), HOURS);
        assert_eq!(year.hours[0].air, celsius(1.5));
        assert_eq!(year.hours[11].level, HeatFlux::from_base(600.0));
        assert_eq!(year.hours[11].dew_point, celsius(-1.5));
        assert!((year.ahead.base() + 5.0 * 3600.0).abs() < 1e-9);
        assert!((year.latitude.base().to_degrees() - 41.5).abs() < 1e-9);
        assert_eq!(read("typical.csv", &tmy3_text()).unwrap(), year);
    }

    #[test]
    fn what_is_wrong_is_told_with_its_line() {
        let wrong =
            |change: &dyn Fn(String) -> String| read("a.epw", &change(epw_text())).unwrap_err();
        let missing = wrong(&|text| text.replacen("?9,1.5,", "?9,99.9,", 1));
        assert_eq!(
            missing,
            "line 9: the air temperature is missing there (99.9)"
        );
        let word = wrong(&|text| text.replacen("?9,2.5,", "?9,cold,", 1));
        assert_eq!(
            word,
            "line 10: the air temperature is `cold`, which is no number"
        );
        let absurd = wrong(&|text| text.replacen("?9,2.5,", "?9,75,", 1));
        assert_eq!(
            absurd,
            "line 10: the air temperature is 75, beyond anything seen on Earth"
        );
        let order = wrong(&|text| text.replacen("2001,1,1,3,", "2001,1,1,4,", 1));
        assert_eq!(
            order,
            "line 11: the hour there is 4 on 1/1 (month/day), and 3 on 1/1 should follow"
        );
        let short = wrong(&|text| {
            text.lines()
                .take(100)
                .fold(String::new(), |all, line| all + line + "\n")
        });
        assert_eq!(short, "it has 92 hours, and a whole year has 8760");
        assert!(read("a.epw", "").unwrap_err().contains("LOCATION"));
        let column = read("a.csv", &tmy3_text().replacen("DNI", "XXX", 1)).unwrap_err();
        assert_eq!(column, "line 2: it has no column `DNI (W/m^2)`");
        let few = wrong(&|text| text.replacen("?9,2.5,-1.5,", "?9,2.5,", 1));
        assert_eq!(few, "line 10: it has 22 values, and the first hour has 23");
    }
}
