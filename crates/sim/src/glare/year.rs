//! A year of low sun for everything that looks.

use super::look::{DISC, Look, Sight};
use super::path::{Direction, STEP, STEPS_IN_DAY, SunPath, elevation, lifted, number};
use crate::sun::{Skyline, SunAt};
use formula::OutOfReach;
use quantity::{Angle, Quantity as _, Time};

/// The sun in something that looks, through a year.
#[derive(Debug, Clone, PartialEq)]
pub struct GlareYear {
    /// Time in a year that the sun stands in it above the skyline.
    pub total: Time,
    /// The stretches of the year in which it does.
    pub seasons: Vec<Season>,
    /// When it stands nearest to the middle of it.
    pub worst: Option<Worst>,
}

/// Days on end on which the sun stands in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Season {
    /// First day, from 0 for New Year's Day.
    pub first_day: u32,
    /// Last day.
    pub last_day: u32,
    /// Earliest time of day.
    pub from: Time,
    /// Latest time of day.
    pub to: Time,
}

/// The worst minute.
#[derive(Debug, Clone, Copy)]
pub struct Worst {
    /// Day, from 0 for New Year's Day.
    pub day: u32,
    /// Time of day.
    pub time: Time,
    /// Where the sun is then, lifted by the air.
    pub sun: SunAt,
    /// How far it is from the middle of what looks.
    pub off: Angle,
}

impl PartialEq for Worst {
    fn eq(&self, other: &Self) -> bool {
        self.day == other.day && self.time == other.time && self.off == other.off
    }
}

/// What is found of one look.
#[derive(Clone, Default)]
struct Found {
    steps: u32,
    /// Day, first and last step of the day.
    days: Vec<(u32, usize, usize)>,
    worst: Option<(usize, f64)>,
}

/// The year of each look: the sun above a skyline and in what it takes in.
pub fn glare_year(
    path: &SunPath,
    looks: &[Look],
    skyline: &Skyline,
) -> Result<Vec<GlareYear>, OutOfReach> {
    let sights = looks
        .iter()
        .map(Look::sight)
        .collect::<Result<Vec<_>, _>>()?;
    let mut found = vec![Found::default(); sights.len()];
    for (step, sun) in path.daylight() {
        look_at(&sights, &mut found, *step, sun, skyline);
    }
    let years = found.iter().map(|found| found.year(path));
    Ok(years.collect())
}

/// Days with so few days between them belong to one stretch: at the rim of a skyline the sun comes and goes.
const SAME: u32 = 4;

fn look_at(sights: &[Sight], found: &mut [Found], step: usize, sun: &Direction, skyline: &Skyline) {
    let mut above = None;
    for (sight, found) in sights.iter().zip(found) {
        let Some(off) = sight.off(sun) else { continue };
        let above = *above.get_or_insert_with(|| !skyline.hides(upper_rim(sun)));
        if above {
            found.note(step, off);
        }
    }
}

/// Where the upper rim of the sun is.
fn upper_rim(sun: &Direction) -> SunAt {
    SunAt {
        azimuth: Angle::from_base(sun[0].atan2(sun[1])),
        elevation: elevation(*sun) + Angle::from_base(DISC),
    }
}

impl Found {
    fn note(&mut self, whole: usize, off: f64) {
        self.steps += 1;
        let day = u32::try_from(whole / STEPS_IN_DAY).unwrap_or(u32::MAX);
        let step = whole % STEPS_IN_DAY;
        match self.days.last_mut() {
            Some(last) if last.0 == day => last.2 = step,
            _ => self.days.push((day, step, step)),
        }
        if self.worst.is_none_or(|(_, worst)| off < worst) {
            self.worst = Some((whole, off));
        }
    }

    fn year(&self, path: &SunPath) -> GlareYear {
        let time = |step: usize| Time::from_base(number(step) * STEP);
        let mut seasons: Vec<Season> = Vec::new();
        for (day, first, last) in &self.days {
            let (from, to) = (time(*first), time(*last) + Time::from_base(STEP));
            match seasons.last_mut() {
                Some(season) if *day <= season.last_day + SAME => {
                    season.last_day = *day;
                    season.from = if from < season.from {
                        from
                    } else {
                        season.from
                    };
                    season.to = if to > season.to { to } else { season.to };
                }
                _ => seasons.push(Season {
                    first_day: *day,
                    last_day: *day,
                    from,
                    to,
                }),
            }
        }
        GlareYear {
            total: Time::from_base(f64::from(self.steps) * STEP),
            seasons,
            worst: self.worst.and_then(|(step, off)| {
                let sun = lifted(path.at(step)?)?;
                Some(Worst {
                    day: u32::try_from(step / STEPS_IN_DAY).ok()?,
                    time: time(step % STEPS_IN_DAY),
                    sun: SunAt {
                        azimuth: Angle::from_base(
                            sun[0].atan2(sun[1]).rem_euclid(std::f64::consts::TAU),
                        ),
                        elevation: elevation(sun),
                    },
                    off: Angle::from_base(off),
                })
            }),
        }
    }
}

/// Month and day of the month of a day of the common year, from 0 for New Year's Day.
pub fn month_and_day(day: u32) -> (u32, u32) {
    let lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let mut rest = day % 365;
    for (month, length) in (1..).zip(lengths) {
        if rest < length {
            return (month, rest + 1);
        }
        rest -= length;
    }
    (12, 31)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::Opening;
    use super::*;
    use crate::sun::SunPlace;

    fn degrees(value: f64) -> Angle {
        Angle::from_base(value.to_radians())
    }

    fn year(looks: &[Look], skyline: &Skyline) -> Vec<GlareYear> {
        let place = SunPlace::new(degrees(47.0), degrees(9.0)).unwrap();
        glare_year(&SunPath::of(&place).unwrap(), looks, skyline).unwrap()
    }

    fn beam(azimuth: f64) -> Look {
        Look {
            azimuth: degrees(azimuth),
            elevation: degrees(0.0),
            opening: Opening::Cone { half: degrees(5.0) },
            hood: None,
        }
    }

    #[test]
    fn a_beam_to_the_north_never_sees_it_and_one_to_the_east_does_at_the_equinoxes() {
        let found = year(&[beam(0.0), beam(90.0)], &Skyline::default());
        assert!(found[0].total.base().abs() < 1e-9 && found[0].worst.is_none());
        assert_eq!(found[1].seasons.len(), 2, "{:?}", found[1].seasons);
        let spring = found[1].seasons[0];
        // Around 20 March, day 78; sunrise there is at about half past six.
        assert!(spring.first_day < 78 && spring.last_day > 74, "{spring:?}");
        assert!(
            (5.0..8.0).contains(&(spring.from.base() / 3600.0)),
            "{spring:?}"
        );
    }

    #[test]
    fn a_hill_before_it_keeps_the_sun_off() {
        let hill = Skyline::new([(degrees(0.0), degrees(8.0))]).unwrap();
        assert!(year(&[beam(90.0)], &hill)[0].total.base().abs() < 1e-9);
    }

    #[test]
    fn the_whole_sky_counts_every_hour_of_daylight() {
        let all = Look {
            opening: Opening::Cone {
                half: degrees(180.0),
            },
            ..beam(0.0)
        };
        // Daylight of a year, disc and refraction counted, is a little more than half of it.
        let hours = year(&[all], &Skyline::default())[0].total.base() / 3600.0;
        assert!((4380.0..4500.0).contains(&hours), "{hours}");
    }

    #[test]
    fn days_have_dates() {
        assert_eq!(month_and_day(0), (1, 1));
        assert_eq!(month_and_day(59), (3, 1));
        assert_eq!(month_and_day(364), (12, 31));
    }
}
