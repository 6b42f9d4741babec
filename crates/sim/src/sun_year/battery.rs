//! A battery through a year of sun.

use super::hours::count;
use super::{HOURS, PanelHours};
use formula::OutOfReach;
use quantity::{Energy, Power, Quantity as _, Ratio, Time};

/// What a battery carries in each hour of every day, mean power, the hour before dawn first: from midnight by the sun.
pub type DayLoad = [Power; 24];

/// A battery on panels.
#[derive(Debug, Clone, Copy)]
pub struct Bank {
    /// Energy that may be drawn from it, old and cold.
    pub usable: Energy,
    /// Charge that comes out over charge that went in.
    pub efficiency: Ratio,
    /// Most that the charge controller passes on.
    pub greatest_charge: Power,
}

/// How a battery came through a year.
#[derive(Debug, Clone, Copy)]
pub struct Through {
    /// Least that was left, over what may be drawn.
    pub least: Ratio,
    /// Hour of the year at which that was.
    pub least_at: Time,
    /// Hours in which it was empty.
    pub hours_without: u32,
    /// Days on which it was empty at some hour.
    pub days_without: u32,
    /// How long a full battery carries the load without any sun.
    pub autonomy: Time,
    /// Longest time from full to full again.
    pub longest_below_full: Time,
}

/// So near to full counts as full.
const FULL: f64 = 0.999;

impl Bank {
    /// Carries the battery through the year, twice; what is told is the second time.
    pub fn through(&self, sun: &PanelHours, load: &DayLoad) -> Result<Through, OutOfReach> {
        let mut found = Walked::new(self.usable.base());
        let mut last_dark = None;
        self.follow(sun, load, |hour, left, empty| {
            found.note(hour, left, empty);
            if empty && last_dark != Some(hour / 24) {
                last_dark = Some(hour / 24);
                found.days_without += 1;
            }
        })?;
        Ok(found.told(self.usable.base(), load))
    }

    /// The least and the most that is left on each day of the year, over what may be drawn; of the second time, as in
    /// [`Bank::through`].
    pub fn days(
        &self,
        sun: &PanelHours,
        load: &DayLoad,
    ) -> Result<Vec<(Ratio, Ratio)>, OutOfReach> {
        let usable = self.usable.base();
        let mut days: Vec<(Ratio, Ratio)> = Vec::new();
        self.follow(sun, load, |hour, left, _| {
            let left = Ratio::from_base(left / usable);
            match days.get_mut(hour / 24) {
                Some((least, _)) if left < *least => *least = left,
                Some((_, most)) if left > *most => *most = left,
                Some(_) => {}
                None => days.push((left, left)),
            }
        })?;
        Ok(days)
    }

    /// Carries the battery through the year, twice; tells of each hour of the second time what is left, and whether it is
    /// empty.
    fn follow(
        &self,
        sun: &PanelHours,
        load: &DayLoad,
        mut note: impl FnMut(usize, f64, bool),
    ) -> Result<(), OutOfReach> {
        self.check()?;
        let usable = self.usable.base();
        let limit = self.greatest_charge.base();
        let efficiency = self.efficiency.base();
        let mut left = usable;
        for pass in 0..2 {
            for (day, hours) in sun.0.chunks_exact(24).enumerate() {
                for (hour, (given, taken)) in hours.iter().zip(load).enumerate() {
                    let flow = given.min(limit) - taken.base();
                    let stored = if flow > 0.0 { flow * efficiency } else { flow };
                    left = (left + stored * 3600.0).min(usable);
                    let empty = left <= 0.0;
                    left = left.max(0.0);
                    if pass == 1 {
                        note(day * 24 + hour, left, empty);
                    }
                }
            }
        }
        Ok(())
    }

    fn check(&self) -> Result<(), OutOfReach> {
        let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
        if !(self.usable.base() > 0.0 && self.usable.base().is_finite()) {
            return refuse("usable", "give a battery of which something may be drawn");
        }
        if !(self.efficiency.base() > 0.0 && self.efficiency.base() <= 1.0) {
            return refuse(
                "efficiency",
                "give a share above 0 and at most 1, such as 95 %",
            );
        }
        if self.greatest_charge.base().is_nan() || self.greatest_charge.base() < 0.0 {
            return refuse(
                "greatest_charge",
                "give what the charge controller passes on",
            );
        }
        Ok(())
    }
}

/// What is noted on the way.
struct Walked {
    usable: f64,
    least: f64,
    least_at: usize,
    hours_without: u32,
    days_without: u32,
    below_full: u32,
    longest: u32,
}

impl Walked {
    fn new(usable: f64) -> Self {
        Self {
            usable,
            least: f64::INFINITY,
            least_at: 0,
            hours_without: 0,
            days_without: 0,
            below_full: 0,
            longest: 0,
        }
    }

    fn note(&mut self, hour: usize, left: f64, empty: bool) {
        if left < self.least {
            self.least = left;
            self.least_at = hour;
        }
        self.hours_without += u32::from(empty);
        self.below_full = if left >= FULL * self.usable {
            0
        } else {
            self.below_full + 1
        };
        self.longest = self.longest.max(self.below_full);
    }

    fn told(&self, usable: f64, load: &DayLoad) -> Through {
        let mean = load.iter().map(|hour| hour.base()).sum::<f64>() / 24.0;
        let autonomy = if mean > 0.0 {
            usable / mean
        } else {
            count(HOURS) * 3600.0
        };
        Through {
            least: Ratio::from_base((self.least / usable).min(1.0)),
            least_at: Time::from_base(count(self.least_at) * 3600.0),
            hours_without: self.hours_without,
            days_without: self.days_without,
            autonomy: Time::from_base(autonomy),
            longest_below_full: Time::from_base(f64::from(self.longest) * 3600.0),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    fn steady(watts: f64) -> DayLoad {
        [Power::from_base(watts); 24]
    }

    fn bank(watt_hours: f64) -> Bank {
        Bank {
            usable: Energy::from_base(watt_hours * 3600.0),
            efficiency: Ratio::from_base(0.8),
            greatest_charge: Power::from_base(1e6),
        }
    }

    /// Twelve hours of 100 W, twelve of none: 100 W × 12 h at 80 % over a load of 40 W.
    fn days(watts: f64) -> PanelHours {
        let hour = |hour: usize| {
            if (6..18).contains(&(hour % 24)) {
                watts
            } else {
                0.0
            }
        };
        PanelHours((0..HOURS).map(hour).collect())
    }

    #[test]
    fn a_night_takes_what_it_takes() {
        let found = bank(1000.0).through(&days(200.0), &steady(40.0)).unwrap();
        // Twelve hours at 40 W from a full battery: 480 Wh.
        assert!((found.least.base() - 0.52).abs() < 1e-9, "{found:?}");
        assert!((found.autonomy.base() / 3600.0 - 25.0).abs() < 1e-9);
        assert_eq!((found.hours_without, found.days_without), (0, 0));
    }

    #[test]
    fn too_little_sun_empties_it_every_day() {
        // By day 20 W over the load are 16 W stored: 192 Wh against 480 Wh of the night.
        let found = bank(1000.0).through(&days(60.0), &steady(40.0)).unwrap();
        assert_eq!(found.days_without, 365);
        assert!(found.least.base().abs() < 1e-12);
        // 192 Wh last 4.8 h of the night: from the fifth hour on it is empty, eight hours of the night.
        assert_eq!(found.hours_without, 365 * 8);
    }

    #[test]
    fn the_days_of_a_year_agree_with_what_is_told_of_it() {
        for watts in [60.0, 90.0, 200.0] {
            let (sun, load) = (days(watts), steady(40.0));
            let told = bank(1000.0).through(&sun, &load).unwrap();
            let days = bank(1000.0).days(&sun, &load).unwrap();
            assert_eq!(days.len(), 365);
            let least = days.iter().map(|(least, _)| least.base());
            let least = least.fold(f64::INFINITY, f64::min);
            assert!((least - told.least.base()).abs() < 1e-12, "{watts}");
            let empty = days.iter().filter(|(least, _)| least.base() <= 0.0);
            assert_eq!(empty.count(), usize::try_from(told.days_without).unwrap());
            assert!(days.iter().all(|(least, most)| least <= most));
        }
    }

    #[test]
    fn a_larger_battery_is_never_emptier() {
        let mut before = 0.0;
        for watt_hours in [100.0, 300.0, 500.0, 900.0] {
            let found = bank(watt_hours)
                .through(&days(90.0), &steady(40.0))
                .unwrap();
            let left = f64::from(found.hours_without);
            assert!(before <= 0.0 || left <= before);
            before = left;
        }
    }

    #[test]
    fn nothing_to_draw_is_refused() {
        assert_eq!(
            bank(0.0)
                .through(&days(90.0), &steady(40.0))
                .unwrap_err()
                .input,
            "usable"
        );
    }
}
