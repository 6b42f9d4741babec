//! An enclosure through the typical year of the weather file.

use super::facts::Facts;
use super::limits::{Limit, highest_cold, lowest_hot};
use crate::weather::{outside, year};
use quantity::{Energy, Quantity as _, Temperature, Time};

/// An enclosure through a typical year.
#[derive(Debug, Clone, Copy)]
pub struct YearInside {
    /// Hottest inside.
    pub hottest: Temperature,
    /// Coldest inside, the heater as it works.
    pub coldest: Temperature,
    /// Time above the lowest of the limits against heat.
    pub too_hot: Option<Time>,
    /// Time below the highest of the limits against cold.
    pub too_cold: Option<Time>,
    /// Time in which the inner face of the walls is below the dew point of the air outside.
    pub wet: Time,
    /// Energy that its heater takes.
    pub heater_takes: Energy,
}

impl Facts<'_> {
    /// The typical year; nothing where the site names no weather file that could be read.
    pub(super) fn year(&mut self, limits: &[Limit]) -> Option<YearInside> {
        let weather = year(self.site)?;
        let lit = self.lit();
        let one = self.boxed(false, true)?;
        let (lit, absorptance) = lit?;
        let outside = outside(weather, &lit, absorptance).ok()?;
        let days = one.through_year(&outside).ok()?;
        let (hot, cold) = (lowest_hot(limits), highest_cold(limits));
        let none = Time::from_base(0.0);
        let mut found = YearInside {
            hottest: days.first()?.hottest.1,
            coldest: days.first()?.coldest.1,
            too_hot: hot.map(|_| none),
            too_cold: cold.map(|_| none),
            wet: none,
            heater_takes: Energy::from_base(0.0),
        };
        for (at, day) in days.iter().enumerate() {
            if day.hottest.1 > found.hottest {
                found.hottest = day.hottest.1;
            }
            if day.coldest.1 < found.coldest {
                found.coldest = day.coldest.1;
            }
            found.too_hot = found
                .too_hot
                .zip(hot)
                .map(|(sum, hot)| sum + day.above(hot));
            found.too_cold = found
                .too_cold
                .zip(cold)
                .map(|(sum, cold)| sum + day.below(cold));
            found.wet += one.wet(day, &outside, at);
            found.heater_takes += day.heater_gives;
        }
        Some(found)
    }
}
