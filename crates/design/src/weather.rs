//! A year of weather that the site names, as the simulations take it.

use formula::OutOfReach;
use quantity::{Angle, Area, Power, Quantity as _, Ratio, Time};
use sim::enclosure::{SunlitFace, YearOutside};
use sim::sun::{Sky, SunAt, SunPlace};
use sim::sun_year::SunHour;
use site::{Site, WeatherHour, WeatherYear};

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

/// The year of weather that a site names, where it could be read.
pub(crate) fn year(site: &Site) -> Option<&WeatherYear> {
    site.climate
        .as_ref()?
        .weather_file
        .as_ref()?
        .year
        .as_deref()
}

/// The sun in the middle of each hour, as seen from the station, with the sunshine of the hour that ends then.
pub(crate) fn sun_hours(year: &WeatherYear) -> Result<Vec<SunHour>, OutOfReach> {
    let place = SunPlace::new(year.latitude, year.longitude)?;
    let mut middle = 0.5 * HOUR - year.ahead.base();
    let hours = year.hours.iter().map(|hour| {
        let sun = place.sun_nearly(Time::from_base(middle));
        middle += HOUR;
        SunHour {
            sun: sun.unwrap_or_else(below),
            sky: Sky {
                global: hour.level,
                diffuse: hour.diffuse,
                beam: hour.direct,
            },
            air: hour.air,
        }
    });
    Ok(hours.collect())
}

/// A sun below the ground.
fn below() -> SunAt {
    SunAt {
        azimuth: Angle::from_base(0.0),
        elevation: Angle::from_base(-1.0),
    }
}

/// What of a box the sun strikes.
#[derive(Debug, Clone)]
pub(crate) enum Lit {
    /// These faces.
    Faces(Vec<SunlitFace>),
    /// This area, which looks at the sun all day: on the safe side.
    Facing(Area),
}

impl Lit {
    /// Heat of the sun that the finish takes up in an hour.
    fn takes_up(&self, hour: &SunHour, absorptance: Ratio) -> Power {
        let sum: f64 = match self {
            Self::Faces(faces) => faces
                .iter()
                .map(|one| one.face.sunshine(hour.sun, &hour.sky).base() * one.area.base())
                .sum(),
            Self::Facing(area) => (hour.sky.beam.base() + hour.sky.diffuse.base()) * area.base(),
        };
        Power::from_base(absorptance.base() * sum)
    }
}

/// Air, dew point and sun at each full hour of the year, midnight of 1 January first. Sunshine at a full hour is the mean of
/// the hours before and after it, so that none is lost.
pub(crate) fn outside(
    year: &WeatherYear,
    lit: &Lit,
    absorptance: Ratio,
) -> Result<YearOutside, OutOfReach> {
    let taken: Vec<f64> = sun_hours(year)?
        .iter()
        .map(|hour| lit.takes_up(hour, absorptance).base())
        .collect();
    let shifted = |of: fn(&WeatherHour) -> quantity::Temperature| {
        let last = year.hours.last().into_iter();
        let mut all: Vec<_> = last.chain(&year.hours).map(of).collect();
        all.truncate(year.hours.len());
        all
    };
    let before = taken.last().into_iter().chain(&taken);
    let sun = before
        .zip(&taken)
        .map(|(before, after)| Power::from_base(f64::midpoint(*before, *after)))
        .collect();
    Ok(YearOutside {
        outside: shifted(|hour| hour.air),
        dew_point: shifted(|hour| hour.dew_point),
        sun,
    })
}
