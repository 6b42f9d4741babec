//! A day outside: air and sun by the hour.

use crate::sun::{Face, SunPlace, clear_sky, split};
use quantity::{Area, Power, Quantity as _, Ratio, Temperature, Time};
use std::f64::consts::TAU;

/// Air and sun at each full hour, by the hours of the sun; straight lines between, and the first follows the last.
#[derive(Debug, Clone, Copy)]
pub struct Day {
    /// Air outside.
    pub outside: [Temperature; 24],
    /// Heat of the sun that the finish takes up.
    pub sun: [Power; 24],
}

/// A face of the box.
#[derive(Debug, Clone)]
pub struct SunlitFace {
    /// How it stands, and what shades it.
    pub face: Face,
    /// Its area.
    pub area: Area,
}

/// Hour of the day at which the air is hottest.
const HOTTEST: f64 = 15.0;

impl Day {
    /// A day without sun whose air swings between two temperatures, hottest at three in the afternoon.
    pub fn dark(coldest: Temperature, hottest: Temperature) -> Self {
        let middle = f64::midpoint(coldest.base(), hottest.base());
        let half = (hottest.base() - coldest.base()) / 2.0;
        let air = |hour: f64| {
            Temperature::from_base(middle + half * (TAU * (hour - HOTTEST) / 24.0).cos())
        };
        Self {
            outside: HOURS.map(air),
            sun: [Power::from_base(0.0); 24],
        }
    }

    /// The same day with a clear sky and the sun on the faces of the box, on a day of the year counted from zero.
    #[must_use]
    pub fn sunny(
        self,
        place: &SunPlace,
        day: u16,
        faces: &[SunlitFace],
        absorptance: Ratio,
    ) -> Self {
        let midnight = f64::from(day) * 24.0 + place.mean_noon() - 12.0;
        let taken_up = |hour: f64| {
            let Some(sun) = place.sun(Time::from_base((midnight + hour) * 3600.0)) else {
                return Power::from_base(0.0);
            };
            let sky = split(clear_sky(sun.elevation), sun.elevation);
            let sum: f64 = faces
                .iter()
                .map(|one| one.face.sunshine(sun, &sky).base() * one.area.base())
                .sum();
            Power::from_base(absorptance.base() * sum)
        };
        Self {
            sun: HOURS.map(taken_up),
            ..self
        }
    }
}

/// The full hours of a day.
const HOURS: [f64; 24] = [
    0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0,
    17.0, 18.0, 19.0, 20.0, 21.0, 22.0, 23.0,
];

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::{Angle, celsius};

    #[test]
    fn a_west_wall_is_lit_in_the_afternoon_and_a_north_wall_hardly() {
        let place = SunPlace::new(Angle::from_base(0.72), Angle::from_base(-1.24)).unwrap();
        let wall = |azimuth: f64| SunlitFace {
            face: Face::open(
                Angle::from_base(std::f64::consts::FRAC_PI_2),
                Angle::from_base(azimuth.to_radians()),
            ),
            area: Area::from_base(1.0),
        };
        let lit = |azimuth: f64| {
            let day = Day::dark(celsius(20.0), celsius(35.0));
            day.sunny(&place, 190, &[wall(azimuth)], Ratio::from_base(1.0))
                .sun
        };
        let (west, north) = (lit(270.0), lit(0.0));
        assert!(west[16] > 2.0 * west[8], "{west:?}");
        assert!(west[16].base() > 500.0 && west[0].base().abs() < 1e-9);
        assert!(north[12] < 0.4 * west[16], "{north:?}");
        let air = Day::dark(celsius(20.0), celsius(35.0)).outside;
        assert!((air[15].base() - 308.15).abs() < 1e-9 && (air[3].base() - 293.15).abs() < 1e-9);
    }
}
