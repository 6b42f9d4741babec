//! When a day is light.

use super::SunPlace;
use quantity::{Quantity as _, Time};

/// The light of one day, since the beginning of the year 2026 in universal time. Under the midnight sun it lasts the whole
/// day; in the polar night sunrise and sunset meet at noon.
#[derive(Debug, Clone, Copy)]
pub struct DayLight {
    /// The upper edge of the sun comes up.
    pub rise: Time,
    /// It goes down.
    pub set: Time,
    /// Civil dusk ends.
    pub dusk: Time,
}

/// Height of the middle of the sun when its upper edge is seen at a level horizon: refraction and half its width (NREL's
/// algorithm). In degrees.
const HORIZON: f64 = -0.833;

/// Height of it at the end of civil dusk, in degrees.
const CIVIL: f64 = -6.0;

const HOUR: f64 = 3600.0;

impl SunPlace {
    /// The light of the day that begins so many days after 1 January 2026.
    pub fn daylight(&self, day: i32) -> DayLight {
        let noon = (f64::from(day) * 24.0 + self.mean_noon()) * HOUR;
        let (before, after) = (noon - 12.0 * HOUR, noon + 12.0 * HOUR);
        DayLight {
            rise: self.passes(noon, before, HORIZON),
            set: self.passes(noon, after, HORIZON),
            dusk: self.passes(noon, after, CIVIL),
        }
    }

    /// When the sun passes a height between noon and midnight: halved until it is known within a second.
    fn passes(&self, noon: f64, midnight: f64, degrees: f64) -> Time {
        let is_up = |seconds: f64| {
            let since = Time::from_base(seconds);
            self.sun_nearly(since)
                .or_else(|| self.sun(since))
                .is_some_and(|sun| sun.elevation.base().to_degrees() > degrees)
        };
        if !is_up(noon) {
            return Time::from_base(noon);
        }
        if is_up(midnight) {
            return Time::from_base(midnight);
        }
        let (mut up, mut down) = (noon, midnight);
        for _ in 0..17 {
            let middle = f64::midpoint(up, down);
            if is_up(middle) {
                up = middle;
            } else {
                down = middle;
            }
        }
        Time::from_base(f64::midpoint(up, down))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::Angle;

    fn place(latitude: f64, longitude: f64) -> SunPlace {
        SunPlace::new(
            Angle::from_base(latitude.to_radians()),
            Angle::from_base(longitude.to_radians()),
        )
        .unwrap()
    }

    fn hours(time: Time, day: i32) -> f64 {
        time.base() / HOUR - f64::from(day) * 24.0
    }

    /// NREL/TP-560-34302, appendix: 17 October 2003, sunrise 6:12:43, sunset 17:20:19, seven hours behind universal time. The
    /// algorithm takes the day by universal time, in which the sun of 16 October sets on the 17th there.
    /// Days from 17 October 2003 to 1 January 2026: 8112.
    #[test]
    fn the_printed_sunrise_and_sunset() {
        let at = place(39.742_476, -105.178_6);
        let (light, evening) = (at.daylight(-8112), at.daylight(-8113));
        let rise = hours(light.rise, -8112) - 7.0;
        let set = hours(evening.set, -8113) - 7.0;
        assert!((rise - (6.0 + 12.72 / 60.0)).abs() < 0.25 / 60.0, "{rise}");
        assert!((set - (17.0 + 20.32 / 60.0)).abs() < 0.25 / 60.0, "{set}");
        let dusk = hours(evening.dusk, -8113) - 7.0;
        assert!(dusk > set + 0.3 && dusk < set + 0.6, "{dusk}");
    }

    #[test]
    fn midnight_sun_and_polar_night() {
        let north = place(75.0, 20.0);
        let june = north.daylight(171);
        assert!((june.set - june.rise).base() > 23.9 * HOUR);
        let december = north.daylight(354);
        assert!((december.set - december.rise).base().abs() < 1.0);
    }
}
