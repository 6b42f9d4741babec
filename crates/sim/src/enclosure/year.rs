//! An enclosure followed through a year of weather, hour by hour.

use super::piece::{Hours, Piece, repeated};
use super::run::{BEFORE, QUARTER, Run};
use super::{DayInside, Enclosure};
use formula::OutOfReach;
use quantity::{Power, Quantity, Temperature, Time};

/// Air and sun of a year at each full hour, midnight of its first day first; straight lines between, and the first follows
/// the last.
#[derive(Debug, Clone)]
pub struct YearOutside {
    /// Air outside.
    pub outside: Vec<Temperature>,
    /// Dew point of that air.
    pub dew_point: Vec<Temperature>,
    /// Heat of the sun that the finish takes up.
    pub sun: Vec<Power>,
}

impl YearOutside {
    fn days(&self) -> Result<usize, OutOfReach> {
        let hours = self.outside.len();
        let whole = hours > 0 && hours.is_multiple_of(24);
        if whole && self.sun.len() == hours && self.dew_point.len() == hours {
            Ok(hours / 24)
        } else {
            Err(OutOfReach::new(
                "outside",
                "give whole days of air, dew point and sun, hour by hour",
            ))
        }
    }
}

/// The full hours of a day, both midnights included.
fn hours<Q: Quantity>(year: &[Q], day: usize) -> Hours {
    std::array::from_fn(|hour| {
        let at = (day * 24 + hour) % year.len().max(1);
        year.get(at).map_or(f64::NAN, |value| value.base())
    })
}

impl Enclosure {
    /// Follows it through a year, day by day; its first day is lived through a few times before.
    pub fn through_year(&self, year: &YearOutside) -> Result<Vec<DayInside>, OutOfReach> {
        self.check()?;
        let days = year.days()?;
        let outside = hours(&year.outside, 0);
        let sun = hours(&year.sun, 0);
        let first: [f64; 24] = std::array::from_fn(|hour| outside[hour]);
        let lit: [f64; 24] = std::array::from_fn(|hour| sun[hour]);
        let mut run = Run::new(self, repeated(&first), repeated(&lit));
        for _ in 0..BEFORE {
            run.day()?;
        }
        (0..days)
            .map(|day| {
                run.outside = hours(&year.outside, day);
                run.sun = hours(&year.sun, day);
                run.day()
            })
            .collect()
    }

    /// Time in a day of a year, counted from zero, in which the inner face of the walls is below the dew point of the air
    /// outside: the face lies between inside and outside as a resistance of 0.13 m²·K/W asks for.
    pub fn wet(&self, inside: &DayInside, year: &YearOutside, day: usize) -> Time {
        let share = (1.0 - self.walls.transfer.base() * 0.13).max(0.0);
        let (air, dew) = (hours(&year.outside, day), hours(&year.dew_point, day));
        let mut wet = 0.0;
        for (hour, inside) in inside.quarters.chunks(4).enumerate().take(24) {
            let (air, dew) = (Piece::of(&air, hour), Piece::of(&dew, hour));
            let mut time = 0.0;
            for inside in inside {
                let face = air.at(time) + (inside.base() - air.at(time)) * share;
                wet += if face < dew.at(time) { QUARTER } else { 0.0 };
                time += QUARTER;
            }
        }
        Time::from_base(wet)
    }
}

impl DayInside {
    /// Time of the day in which it is hotter inside than this, by quarters of an hour.
    pub fn above(&self, limit: Temperature) -> Time {
        self.counted(|inside| inside > limit)
    }

    /// Time of the day in which it is colder inside than this, by quarters of an hour.
    pub fn below(&self, limit: Temperature) -> Time {
        self.counted(|inside| inside < limit)
    }

    fn counted(&self, is: impl Fn(Temperature) -> bool) -> Time {
        let quarters = self.quarters.iter().take(96);
        let found = quarters.filter(|inside| is(**inside));
        found.fold(Time::from_base(0.0), |sum, _| {
            sum + Time::from_base(QUARTER)
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::{Day, Heater, Walls};
    use super::*;
    use quantity::{Area, Energy, HeatTransfer, celsius};

    fn enclosure(heater: Option<Heater>) -> Enclosure {
        Enclosure {
            walls: Walls {
                transfer: HeatTransfer::from_base(6.0),
                area: Area::from_base(1.5),
                stores: Energy::from_base(40_000.0),
            },
            inside: Power::from_base(30.0),
            heater,
            cut_out: None,
            vent: None,
        }
    }

    fn year(air: impl Fn(usize) -> f64, dew: f64) -> YearOutside {
        YearOutside {
            outside: (0..8760).map(|hour| celsius(air(hour))).collect(),
            dew_point: vec![celsius(dew); 8760],
            sun: vec![Power::from_base(0.0); 8760],
        }
    }

    #[test]
    fn a_year_of_the_same_day_is_that_day() {
        let day = Day::dark(celsius(-8.0), celsius(4.0));
        let same = year(|hour| day.outside[hour % 24].base() - 273.15, 0.0);
        let heater = Heater {
            power: Power::from_base(120.0),
            on_below: celsius(5.0),
            off_above: celsius(10.0),
            stuck: false,
        };
        let one = enclosure(Some(heater));
        let (followed, alone) = (one.through_year(&same).unwrap(), one.through(&day).unwrap());
        assert_eq!(followed.len(), 365);
        // Both go through the same cycle; its phase may differ from day to day.
        let given: f64 = followed.iter().map(|it| it.heater_gives.base()).sum();
        assert!((given / 365.0 / alone.heater_gives.base() - 1.0).abs() < 0.02);
    }

    #[test]
    fn what_is_given_leaves_through_the_walls() {
        let one = enclosure(None);
        let air =
            |hour: usize| 8.0 + 12.0 * (f64::from(u32::try_from(hour).unwrap()) / 1394.0).sin();
        let year = year(air, -30.0);
        let days = one.through_year(&year).unwrap();
        let inside: f64 = days.iter().map(|day| day.mean.base()).sum::<f64>() / 365.0;
        let outside: f64 = year.outside.iter().map(|air| air.base()).sum::<f64>() / 8760.0;
        assert!((9.0 * (inside - outside) - 30.0).abs() < 0.1);
    }

    #[test]
    fn hours_are_counted() {
        let one = enclosure(None);
        // Steady: 10 °C outside and 10 + 30 / 9 = 13.33 °C inside; the face at 10.73 °C.
        let steady = year(|_| 10.0, 11.0);
        let days = one.through_year(&steady).unwrap();
        assert!((days[100].above(celsius(13.0)).base() - 86_400.0).abs() < 1e-6);
        assert!(days[100].below(celsius(13.0)).base().abs() < 1e-9);
        assert!((one.wet(&days[100], &steady, 100).base() - 86_400.0).abs() < 1e-6);
        let dry = year(|_| 10.0, 10.5);
        assert!(one.wet(&days[100], &dry, 100).base().abs() < 1e-9);
    }

    #[test]
    fn half_a_day_is_refused() {
        let mut short = year(|_| 10.0, 0.0);
        short.outside.truncate(100);
        assert_eq!(
            enclosure(None).through_year(&short).unwrap_err().input,
            "outside"
        );
    }
}
