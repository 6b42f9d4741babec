//! The days of a job: which are worked, from when to when, and how long it is light.

use super::Wish;
use crate::asking::{Asking, End, Wants, need, pick};
use crate::outcome::Halt;
use quantity::{Angle, Quantity as _, Time};
use sim::job::{Calendar, DAY, JobDay, Minutes};
use sim::sun::{DayLight, SunPlace};
use site::{Date, Forecast, Site, Weekday, Work};

/// Days that a plan looks ahead.
const AHEAD: usize = 400;

/// How the days of a job are written.
const WORK: &str =
    "[work]\nbegins = 2026-05-04\nfirst_hour = 7\nhours_a_day = \"8 h\"\nclock = \"-4 h\"";

/// How a place is written.
const PLACE: &str = "[place]\nlatitude = \"43.7°\"\nlongitude = \"-70.2°\"";

/// A calendar and the dates of its days.
pub(super) struct Days {
    pub(super) dates: Vec<Date>,
    pub(super) calendar: Calendar,
}

/// The table of the work.
pub(super) fn work<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<&'s Work, Halt> {
    match &site.work {
        Some(work) => Ok(work),
        None => asking.lack(&site.origin, "work", Wants::Table(WORK)),
    }
}

/// The days from the first one on.
pub(super) fn days<'s>(asking: &mut Asking<'s>, site: &'s Site, wish: &Wish) -> Result<Days, Halt> {
    let sun = place(asking, site);
    let work = work(asking, site)?;
    let begins = match wish.from {
        Some(day) => Ok(day),
        None => need!(asking, work.begins, "2026-05-04").copied(),
    };
    let first_hour = pick!(asking, work.first_hour);
    let hours = asking.read_at(
        (&work.origin, "hours_a_day"),
        work.hours_a_day.as_ref(),
        End::Nominal,
    );
    let clock = asking.read_at((&work.origin, "clock"), work.clock.as_ref(), End::Nominal);
    let then = match work.clock_changes {
        Some(_) => asking
            .read_at(
                (&work.origin, "clock_then"),
                work.clock_then.as_ref(),
                End::Nominal,
            )
            .map(Some),
        None => Ok(None),
    };
    let (sun, begins, first_hour) = (sun?, begins?, first_hour?);
    let (hours, clock, then) = (minutes(hours?), clock?, then?);
    if first_hour > 23 {
        return asking.refuse("work begins at an hour from 0 to 23");
    }
    let mut dates = Vec::with_capacity(AHEAD);
    let mut day = Some(begins);
    while let Some(date) = day.filter(|_| dates.len() < AHEAD) {
        dates.push(date);
        day = date.next();
    }
    let since = Date::new(2026, 1, 1).map_or(0, |new_year| begins.days_after(new_year));
    let lights = asking.simulate(
        |known| &known.daylights,
        &(sun, since, dates.len()),
        || (since..).map(|day| sun.daylight(day)).take(AHEAD).collect(),
    );
    let open = Minutes::from(first_hour) * 60;
    let worked = |date: &Date| is_worked(work, *date) && !wish.lost.contains(date);
    let each = dates.iter().zip((since..).zip(lights.iter())).zip(0..);
    let days = each.map(
        |((date, (day, light)), index): ((&Date, (i32, &DayLight)), i64)| {
            let midnight = index * DAY;
            let close = if worked(date) { open + hours } else { open };
            let changed = work.clock_changes.is_some_and(|change| *date >= change);
            let clock = then.filter(|_| changed).unwrap_or(clock);
            let light = lit(light, day, clock, midnight);
            JobDay {
                open: midnight + open,
                close: midnight + close.min(DAY),
                ..light
            }
        },
    );
    let days = days.collect();
    Ok(Days {
        dates,
        calendar: Calendar { days },
    })
}

/// Whole minutes of a time.
pub(super) fn minutes(time: Time) -> Minutes {
    let whole = (time.base() / 60.0 - 1e-6).ceil();
    #[allow(
        clippy::cast_possible_truncation,
        reason = "held within ten years before it is cut"
    )]
    let whole = whole.clamp(0.0, 5_000_000.0) as Minutes;
    whole
}

/// The weather of a day, as forecast or noted.
pub(crate) fn forecast_on(work: &Work, date: Date) -> Option<&Forecast> {
    work.forecast
        .iter()
        .find(|forecast| forecast.on == Some(date))
}

fn place<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<SunPlace, Halt> {
    let Some(place) = &site.place else {
        return asking.lack(&site.origin, "place", Wants::Table(PLACE));
    };
    let mut read = |key, value: Option<&_>| -> Result<Angle, Halt> {
        asking.read_at((&place.origin, key), value, End::Nominal)
    };
    let latitude = read("latitude", place.latitude.as_ref());
    let longitude = read("longitude", place.longitude.as_ref());
    let found = SunPlace::new(latitude?, longitude?);
    asking.in_reach(found)
}

fn is_worked(work: &Work, date: Date) -> bool {
    let in_week = date.in_week();
    let weekday = if work.weekdays.is_empty() {
        in_week < Weekday::Saturday.in_week()
    } else {
        work.weekdays.iter().any(|day| day.in_week() == in_week)
    };
    weekday && !work.away.contains(&date) && !work.lost.contains(&date)
}

/// Sunrise, sunset and dusk by the clock of the place.
fn lit(light: &DayLight, since: i32, clock: Time, midnight: Minutes) -> JobDay {
    let by_clock = |time: Time| {
        let seconds = time.base() + clock.base() - f64::from(since) * 86_400.0;
        #[allow(
            clippy::cast_possible_truncation,
            reason = "a moment within two days of midnight"
        )]
        let minute = (seconds / 60.0).round() as Minutes;
        midnight + minute
    };
    JobDay {
        open: 0,
        close: 0,
        rise: by_clock(light.rise),
        set: by_clock(light.set),
        dusk: by_clock(light.dusk),
    }
}
