//! What a panel gives in each hour of a year.

use super::HOURS;
use crate::sun::{Face, Sky, SunAt, SunPlace, clear_sky, split};
use formula::OutOfReach;
use quantity::{Angle, HeatFlux, Power, Quantity as _, Ratio, Temperature, Time};
use std::f64::consts::TAU;

/// The plane for which sunshine is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Plane {
    /// On the level.
    Level,
    /// In the plane of the panel, with nothing before it.
    Panel,
}

/// Mean sunshine of each month, January first.
pub type Monthly = [HeatFlux; 12];

/// What is given of the sun and the air of a year.
#[derive(Debug, Clone, Copy)]
pub struct Given {
    /// Where it is.
    pub place: SunPlace,
    /// Mean sunshine of each month.
    pub monthly: Monthly,
    /// The plane for which that counts.
    pub plane: Plane,
    /// Days of a month, in a run, that are dark; whole days.
    pub dark_run: Time,
    /// Hottest and coldest air of the year.
    pub air: (Temperature, Temperature),
}

/// A panel and how it stands.
#[derive(Debug, Clone)]
pub struct Panel {
    /// Power at standard test conditions.
    pub power: Power,
    /// How it stands, and what shades it.
    pub face: Face,
    /// Share of the sun that dirt takes.
    pub dirt: Ratio,
    /// Share of the power that is lost for each degree Celsius warmer than 25 °C.
    pub per_celsius: Ratio,
}

/// What panels give in each hour of a year, mean power.
#[derive(Debug, Clone)]
pub struct PanelHours(pub(super) Vec<f64>);

impl PanelHours {
    /// The same with other panels beside.
    #[must_use]
    pub fn and(mut self, other: &Self) -> Self {
        for (sum, more) in self.0.iter_mut().zip(&other.0) {
            *sum += more;
        }
        self
    }

    /// The mean power of each month.
    pub fn monthly(&self) -> [Power; 12] {
        let mut first = 0;
        DAYS.map(|days| {
            let hours = 24 * days;
            let sum: f64 = self.0.iter().skip(first).take(hours).sum();
            first += hours;
            Power::from_base(sum / count(hours))
        })
    }

    /// The mean power of one hour of the year; none behind its end.
    pub fn at(&self, hour: usize) -> Power {
        Power::from_base(self.0.get(hour).copied().unwrap_or(0.0))
    }
}

/// Days of each month of a common year.
const DAYS: [usize; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/// What a dark day has of the sunshine of a clear one.
const DARK: f64 = 0.12;

/// Most that a day has of the sunshine of a clear one: clouds that throw light in, and skies clearer than the model's.
const BRIGHT: f64 = 1.1;

/// Cells are so much warmer than the air for each W/m²: 25 °C at 800 W/m², as data sheets state it.
const WARMED: f64 = 25.0 / 800.0;

/// Sunshine at standard test conditions, in W/m².
const STANDARD: f64 = 1000.0;

/// What a panel gives in each hour of a year.
pub fn hourly(given: &Given, panel: &Panel) -> Result<PanelHours, OutOfReach> {
    let suns = suns(&given.place);
    let mut hours = Vec::with_capacity(HOURS);
    let mut first = 0;
    for (month, days) in DAYS.into_iter().enumerate() {
        let suns = suns.get(first..first + 24 * days).unwrap_or_default();
        let mean = given.monthly.get(month).map_or(0.0, |flux| flux.base());
        let clearness = clearness(given, panel, suns, mean)?;
        for (hour, sun) in suns.iter().enumerate() {
            let dimmed = if dark(given, hour) { DARK } else { clearness };
            let shine = on_panel(&panel.face, *sun, dimmed);
            let air = air(given, first + hour);
            hours.push(power(panel, shine, air));
        }
        first += 24 * days;
    }
    Ok(PanelHours(hours))
}

/// The sun in the middle of each hour, by the hours of the sun there: the day begins at its midnight.
fn suns(place: &SunPlace) -> Vec<Option<SunAt>> {
    let midnight = place.mean_noon() - 12.0;
    (0..HOURS)
        .map(|hour| {
            let since = Time::from_base((count(hour) + 0.5 + midnight) * 3600.0);
            place
                .sun_nearly(since)
                .filter(|sun| sun.elevation.base() > 0.0)
        })
        .collect()
}

/// The day of this hour of the month is one of the dark run.
fn dark(given: &Given, hour: usize) -> bool {
    count(hour / 24) < (given.dark_run.base() / 86_400.0).round()
}

/// Share of a clear sky that the days beside the dark run have, so that the month has its mean.
fn clearness(
    given: &Given,
    panel: &Panel,
    suns: &[Option<SunAt>],
    mean: f64,
) -> Result<f64, OutOfReach> {
    let open = Face::open(panel.face.tilt, panel.face.azimuth);
    let month = |clearness: f64| {
        let shine = |(hour, sun): (usize, &Option<SunAt>)| {
            let dimmed = if dark(given, hour) { DARK } else { clearness };
            match given.plane {
                Plane::Level => on_level(*sun, dimmed).base(),
                Plane::Panel => on_panel(&open, *sun, dimmed),
            }
        };
        suns.iter().enumerate().map(shine).sum::<f64>() / count(suns.len().max(1))
    };
    if !(mean >= 0.0 && mean <= month(BRIGHT) + 1e-9) {
        return Err(OutOfReach::new(
            "monthly",
            "a month has more sunshine than its days, some of them dark, can have there: check the unit, the plane and the length of the dark run",
        ));
    }
    if month(0.0) >= mean {
        return Ok(0.0);
    }
    if given.plane == Plane::Level {
        let (dark, bright) = (month(0.0), month(BRIGHT));
        return Ok(BRIGHT * (mean - dark) / (bright - dark));
    }
    let (mut low, mut high) = (0.0, BRIGHT);
    for _ in 0..20 {
        let middle = f64::midpoint(low, high);
        if month(middle) < mean {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(f64::midpoint(low, high))
}

fn on_level(sun: Option<SunAt>, clearness: f64) -> HeatFlux {
    sun.map_or(HeatFlux::from_base(0.0), |sun| {
        clear_sky(sun.elevation) * clearness
    })
}

fn on_panel(face: &Face, sun: Option<SunAt>, clearness: f64) -> f64 {
    let Some(sun) = sun else { return 0.0 };
    let sky: Sky = split(clear_sky(sun.elevation) * clearness, sun.elevation);
    face.sunshine(sun, &sky).base()
}

/// Air of the hour: a wave over the year, coldest in the middle of January, hottest in the middle of July in the north.
fn air(given: &Given, hour: usize) -> f64 {
    let (hottest, coldest) = (given.air.0.base(), given.air.1.base());
    let wave = -(TAU * (count(hour) / count(HOURS) - 15.0 / 365.0)).cos();
    let south = given.place.is_south();
    f64::midpoint(hottest, coldest) + (hottest - coldest) / 2.0 * if south { -wave } else { wave }
}

pub(super) fn power(panel: &Panel, shine: f64, air: f64) -> f64 {
    let cells = air + WARMED * shine;
    let warmth = 1.0 - panel.per_celsius.base() * (cells - 298.15);
    let clean = 1.0 - panel.dirt.base();
    (panel.power.base() * shine / STANDARD * warmth * clean).max(0.0)
}

/// A count as a number to reckon with.
#[expect(
    clippy::cast_precision_loss,
    reason = "a year has less than ten thousand hours"
)]
pub(super) fn count(number: usize) -> f64 {
    number as f64
}

/// A face as a panel stands.
impl Panel {
    /// A clean panel with nothing before it.
    pub fn open(power: Power, tilt: Angle, azimuth: Angle) -> Self {
        Self {
            power,
            face: Face::open(tilt, azimuth),
            dirt: Ratio::from_base(0.0),
            per_celsius: Ratio::from_base(0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::celsius;

    fn given(plane: Plane) -> Given {
        let monthly = [1.0, 1.8, 3.0, 4.2, 5.1, 5.6, 5.7, 4.9, 3.6, 2.1, 1.2, 0.8];
        Given {
            place: SunPlace::new(Angle::from_base(0.82), Angle::from_base(0.157)).unwrap(),
            monthly: monthly.map(|value| HeatFlux::from_base(value * 1e3 / 24.0)),
            plane,
            dark_run: Time::from_base(4.0 * 86_400.0),
            air: (celsius(25.0), celsius(25.0)),
        }
    }

    fn level() -> Panel {
        Panel::open(
            Power::from_base(1000.0),
            Angle::from_base(0.0),
            Angle::from_base(0.0),
        )
    }

    #[test]
    fn each_month_has_its_mean() {
        for plane in [Plane::Level, Plane::Panel] {
            let given = given(plane);
            let found = hourly(&given, &level()).unwrap().monthly();
            for (power, flux) in found.iter().zip(given.monthly) {
                assert!(
                    (power.base() - flux.base()).abs() < 1e-3 * flux.base(),
                    "{plane:?} {power:?} {flux:?}"
                );
            }
        }
    }

    #[test]
    fn a_steep_panel_has_more_of_december_and_less_of_june() {
        let steep = Panel::open(
            Power::from_base(1000.0),
            Angle::from_base(1.05),
            Angle::from_base(3.1),
        );
        let given = given(Plane::Level);
        let (flat, steep) = (
            hourly(&given, &level()).unwrap().monthly(),
            hourly(&given, &steep).unwrap().monthly(),
        );
        assert!(
            steep[11] > flat[11] && steep[5] < flat[5],
            "{flat:?} {steep:?}"
        );
    }

    #[test]
    fn dirt_warmth_and_a_wood_take_their_share() {
        let given = given(Plane::Level);
        let bare = hourly(&given, &level()).unwrap().monthly()[6];
        let dirty = Panel {
            dirt: Ratio::from_base(0.1),
            ..level()
        };
        assert!((hourly(&given, &dirty).unwrap().monthly()[6] / bare).base() < 0.901);
        let warm = Panel {
            per_celsius: Ratio::from_base(0.004),
            ..level()
        };
        assert!(hourly(&given, &warm).unwrap().monthly()[6] < bare);
        let line =
            crate::sun::Skyline::new([(Angle::from_base(3.1), Angle::from_base(1.5))]).unwrap();
        let wood = Panel {
            face: Face {
                skyline: line,
                ..level().face
            },
            ..level()
        };
        assert!(hourly(&given, &wood).unwrap().monthly()[6] < 0.8 * bare);
    }

    #[test]
    fn more_sun_than_there_is_is_refused() {
        let mut much = given(Plane::Level);
        much.monthly[11] = HeatFlux::from_base(400.0);
        assert_eq!(hourly(&much, &level()).unwrap_err().input, "monthly");
    }
}
