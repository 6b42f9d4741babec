//! EPW: eight lines of heading, then a line for each hour.

use super::row::{AIR, Columns, DEW_POINT, Order, Row, station};
use super::{HOURS, WeatherYear, Wrong};

/// Lines of the heading.
const HEADING: usize = 8;

/// Columns of month, day and hour.
const MONTH: usize = 1;

/// As the data dictionary counts them, from zero: A1 and N1 to N5 are dates, flags are column 5.
const COLUMNS: Columns = Columns {
    air: 6,
    dew_point: 7,
    level: 13,
    direct: 14,
    diffuse: 15,
    is_missing,
};

/// Temperatures of 99.9 and sunshine of 9999 are missing.
fn is_missing(what: &str, value: f64) -> bool {
    if what == AIR || what == DEW_POINT {
        value >= 99.9
    } else {
        value >= 9999.0
    }
}

pub(super) fn read(text: &str) -> Result<WeatherYear, Wrong> {
    let mut lines = text
        .lines()
        .zip(1..)
        .map(|(text, line)| Row::new(line, text));
    let first = lines
        .next()
        .filter(|row| row.cells.first() == Some(&"LOCATION"));
    let Some(first) = first else {
        return Err("line 1: an EPW file begins with LOCATION".to_owned());
    };
    let (latitude, longitude, ahead) = station(&first, (6, 7, 8))?;
    let mut hours = Vec::with_capacity(HOURS);
    let mut order = Order::new();
    for row in lines.skip(HEADING - 1) {
        if row.cells == [""] {
            continue;
        }
        let part = |column: usize, what: &str| -> Result<u32, Wrong> {
            let text = row.cells.get(column).copied().unwrap_or_default();
            text.parse()
                .map_err(|_| format!("line {}: {what} is `{text}`, which is no count", row.line))
        };
        let stamp = (
            part(MONTH, "the month")?,
            part(MONTH + 1, "the day")?,
            part(MONTH + 2, "the hour")?,
        );
        order.follow(&row, stamp)?;
        hours.push(row.hour(&COLUMNS)?);
    }
    order.end()?;
    Ok(WeatherYear {
        latitude,
        longitude,
        ahead,
        hours,
    })
}
