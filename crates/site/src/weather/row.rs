//! One line of a weather file: its columns as values, and its place in the year.

use super::{HOURS, WeatherHour, Wrong};
use quantity::{Angle, HeatFlux, Quantity as _, Time, celsius};

/// Months with their days, in a common year.
pub(super) fn days() -> impl Iterator<Item = (u32, u32)> {
    (1..).zip([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
}

/// A line with its number.
pub(super) struct Row<'t> {
    pub(super) line: usize,
    pub(super) cells: Vec<&'t str>,
}

/// Where the values of an hour stand in a line, and how a missing one is written.
pub(super) struct Columns {
    pub(super) air: usize,
    pub(super) dew_point: usize,
    pub(super) level: usize,
    pub(super) direct: usize,
    pub(super) diffuse: usize,
    pub(super) is_missing: fn(&str, f64) -> bool,
}

impl<'t> Row<'t> {
    pub(super) fn new(line: usize, text: &'t str) -> Self {
        let cells = text.trim_end_matches('\r').split(',').map(str::trim);
        Self {
            line,
            cells: cells.collect(),
        }
    }

    /// A number of the line between two bounds.
    pub(super) fn number(
        &self,
        column: usize,
        what: &str,
        (least, greatest): (f64, f64),
    ) -> Result<f64, Wrong> {
        let line = self.line;
        let Some(text) = self.cells.get(column) else {
            return Err(format!("line {line}: it ends before {what}"));
        };
        let number: f64 = text
            .parse()
            .map_err(|_| format!("line {line}: {what} is `{text}`, which is no number"))?;
        if (least..=greatest).contains(&number) {
            Ok(number)
        } else {
            Err(format!(
                "line {line}: {what} is {number}, beyond anything seen on Earth"
            ))
        }
    }

    /// A number, unless it is written that it is missing.
    fn known(
        &self,
        column: usize,
        what: &str,
        bounds: (f64, f64),
        columns: &Columns,
    ) -> Result<f64, Wrong> {
        let text = self.cells.get(column).copied().unwrap_or_default();
        let number: Option<f64> = text.parse().ok();
        if text.is_empty() && column < self.cells.len()
            || number.is_some_and(|number| (columns.is_missing)(what, number))
        {
            let line = self.line;
            let written = if text.is_empty() { "empty" } else { text };
            return Err(format!("line {line}: {what} is missing there ({written})"));
        }
        self.number(column, what, bounds)
    }

    pub(super) fn hour(&self, columns: &Columns) -> Result<WeatherHour, Wrong> {
        let air = (-90.0, 60.0);
        let sun = (0.0, 1500.0);
        let celsius_at = |column, what| self.known(column, what, air, columns).map(celsius);
        let flux = |column, what| {
            let value = self.known(column, what, sun, columns)?;
            Ok::<_, Wrong>(HeatFlux::from_base(value))
        };
        Ok(WeatherHour {
            air: celsius_at(columns.air, AIR)?,
            dew_point: celsius_at(columns.dew_point, DEW_POINT)?,
            level: flux(columns.level, "the sunshine on the level")?,
            direct: flux(columns.direct, "the direct sunshine")?,
            diffuse: flux(columns.diffuse, "the sunshine of the sky")?,
        })
    }
}

/// Names of the two temperatures.
pub(super) const AIR: &str = "the air temperature";
pub(super) const DEW_POINT: &str = "the dew point";

/// Refuses a line that is not the next hour of the year.
pub(super) struct Order {
    next: usize,
    /// Values of the first hour's line.
    cells: usize,
}

impl Order {
    pub(super) fn new() -> Self {
        Self { next: 0, cells: 0 }
    }

    pub(super) fn follow(
        &mut self,
        row: &Row<'_>,
        (month, day, hour): (u32, u32, u32),
    ) -> Result<(), Wrong> {
        let (line, cells) = (row.line, row.cells.len());
        if self.next == 0 {
            self.cells = cells;
        }
        if cells != self.cells {
            return Err(format!(
                "line {line}: it has {cells} values, and the first hour has {}",
                self.cells
            ));
        }
        if self.next >= HOURS {
            return Err(format!(
                "line {line}: it goes on after 8760 hours; a leap day must be cut out"
            ));
        }
        let (want_month, want_day, want_hour) = date(self.next);
        if (month, day, hour) != (want_month, want_day, want_hour) {
            return Err(format!(
                "line {line}: the hour there is {hour} on {month}/{day} (month/day), and {want_hour} on {want_month}/{want_day} should follow"
            ));
        }
        self.next += 1;
        Ok(())
    }

    pub(super) fn end(&self) -> Result<(), Wrong> {
        if self.next == HOURS {
            Ok(())
        } else {
            Err(format!(
                "it has {} hours, and a whole year has {HOURS}",
                self.next
            ))
        }
    }
}

/// Month, day and hour from 1 to 24 of an hour of the year.
fn date(hour: usize) -> (u32, u32, u32) {
    let mut day = u32::try_from(hour / 24).unwrap_or(u32::MAX);
    let of_day = u32::try_from(hour % 24).unwrap_or(0) + 1;
    for (month, days) in days() {
        if day < days {
            return (month, day + 1, of_day);
        }
        day -= days;
    }
    (12, 31, 24)
}

/// Where the station is and how far its time is ahead of universal time.
pub(super) fn station(
    row: &Row<'_>,
    (latitude, longitude, ahead): (usize, usize, usize),
) -> Result<(Angle, Angle, Time), Wrong> {
    let latitude = row.number(latitude, "the latitude", (-90.0, 90.0))?;
    let longitude = row.number(longitude, "the longitude", (-180.0, 180.0))?;
    let ahead = row.number(ahead, "the time zone", (-12.0, 14.0))?;
    Ok((
        Angle::from_base(latitude.to_radians()),
        Angle::from_base(longitude.to_radians()),
        Time::from_base(ahead * 3600.0),
    ))
}
