//! Where the sun is.

use formula::OutOfReach;
use quantity::{Angle, Quantity as _, Time};
use solar_positioning::{Location, SolarPositions, time::JulianDate};

/// A place on Earth.
#[derive(Debug, Clone, Copy)]
pub struct SunPlace {
    location: Location,
}

/// Where the sun is.
#[derive(Debug, Clone, Copy)]
pub struct SunAt {
    /// Clockwise from true north.
    pub azimuth: Angle,
    /// Above level, without refraction; below zero by night.
    pub elevation: Angle,
}

/// Julian date of 1 January 2026, 0 h universal time.
const YEAR: f64 = 2_461_041.5;

/// Earth's clock behind the even one, in seconds.
const DELTA_T: f64 = 69.0;

impl SunPlace {
    /// A place by its latitude, north positive, and its longitude, east positive.
    pub fn new(latitude: Angle, longitude: Angle) -> Result<Self, OutOfReach> {
        let (latitude, longitude) = (latitude.base().to_degrees(), longitude.base().to_degrees());
        if !(-90.0..=90.0).contains(&latitude) {
            return Err(OutOfReach::new(
                "latitude",
                "give a latitude from −90° to 90°",
            ));
        }
        if !(-180.0..=180.0).contains(&longitude) {
            return Err(OutOfReach::new(
                "longitude",
                "give a longitude from −180° to 180°",
            ));
        }
        Ok(Self {
            location: Location {
                latitude,
                longitude,
            },
        })
    }

    /// The sun so long after the beginning of the year, universal time; nothing where that is no time.
    pub fn sun(&self, since_new_year: Time) -> Option<SunAt> {
        self.by(SolarPositions::new(), since_new_year)
    }

    fn by(&self, positions: SolarPositions, since_new_year: Time) -> Option<SunAt> {
        let date = JulianDate::new(YEAR + since_new_year.base() / 86_400.0, DELTA_T).ok()?;
        let found = positions
            .at_from_julian(date, self.location, 0.0, None)
            .ok()?;
        Some(SunAt {
            azimuth: Angle::from_base(found.azimuth().to_radians()),
            elevation: Angle::from_base(found.elevation_angle().to_radians()),
        })
    }

    /// The same within a hundredth of a degree, some ten times as fast (Grena 2012, third algorithm): for whole years of hours.
    pub fn sun_nearly(&self, since_new_year: Time) -> Option<SunAt> {
        self.by(SolarPositions::grena3(), since_new_year)
    }

    /// Latitude, north positive.
    pub(crate) fn latitude(&self) -> Angle {
        Angle::from_base(self.location.latitude.to_radians())
    }

    /// Hours by which the clock of the zone whose meridian is nearest is ahead of universal time.
    pub(crate) fn zone(&self) -> i32 {
        let hours = (self.location.longitude / 15.0).round();
        (-12..=12)
            .find(|zone| f64::from(*zone) >= hours)
            .unwrap_or(12)
    }

    /// It lies south of the equator.
    pub fn is_south(&self) -> bool {
        self.location.latitude < 0.0
    }

    /// Universal time of noon by the sun on a mean day, after midnight.
    pub fn mean_noon(&self) -> f64 {
        12.0 - self.location.longitude / 15.0
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    /// NREL/TP-560-34302, appendix: 17 October 2003, 19:30:30 universal time. Zenith 50.11162°, azimuth 194.34024°, with
    /// refraction of 820 mbar and 11 °C at 1830.14 m; without refraction and at sea level within 0.02°.
    #[test]
    fn the_printed_example_of_the_algorithm() {
        let place = SunPlace::new(
            Angle::from_base(39.742_476_f64.to_radians()),
            Angle::from_base((-105.178_6_f64).to_radians()),
        )
        .unwrap();
        // Julian day 2452930.312847, as printed.
        let since = Time::from_base((2_452_930.312_847 - YEAR) * 86_400.0);
        let sun = place.sun(since).unwrap();
        assert!((sun.azimuth.base().to_degrees() - 194.340_24).abs() < 0.001);
        assert!((90.0 - sun.elevation.base().to_degrees() - 50.111_62).abs() < 0.02);
    }

    #[test]
    fn the_fast_way_is_within_a_hundredth_of_a_degree() {
        let place = SunPlace::new(Angle::from_base(0.82), Angle::from_base(0.157)).unwrap();
        for hour in (0..8760_u32).step_by(37) {
            let since = Time::from_base(f64::from(hour) * 3600.0);
            let (exact, near) = (place.sun(since).unwrap(), place.sun_nearly(since).unwrap());
            let off = (exact.elevation - near.elevation).base().to_degrees().abs();
            assert!(off < 0.01, "{hour} {off}");
        }
    }

    #[test]
    fn no_place_is_refused_and_no_time_gives_nothing() {
        let angle = Angle::from_base;
        assert_eq!(
            SunPlace::new(angle(2.0), angle(0.0)).unwrap_err().input,
            "latitude"
        );
        assert_eq!(
            SunPlace::new(angle(0.0), angle(4.0)).unwrap_err().input,
            "longitude"
        );
        let place = SunPlace::new(angle(0.5), angle(0.1)).unwrap();
        assert!(place.sun(Time::from_base(f64::NAN)).is_none());
    }
}
