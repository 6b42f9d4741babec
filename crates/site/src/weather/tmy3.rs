//! TMY3: a line for the station, a line of names of columns, then a line for each hour.

use super::row::{Columns, Order, Row, station};
use super::{HOURS, WeatherYear, Wrong};

/// A value of -9900 is missing.
fn is_missing(_: &str, value: f64) -> bool {
    value <= -9900.0
}

pub(super) fn read(text: &str) -> Result<WeatherYear, Wrong> {
    let mut lines = text.lines().zip(1..);
    let Some((first, _)) = lines.next() else {
        return Err("it is empty".to_owned());
    };
    let unquoted = unquoted(first);
    let (latitude, longitude, ahead) = station(&Row::new(1, &unquoted), (4, 5, 3))?;
    let heading = Row::new(2, lines.next().map_or("", |(text, _)| text));
    let columns = columns(&heading)?;
    let mut hours = Vec::with_capacity(HOURS);
    let mut order = Order::new();
    for (text, line) in lines {
        let row = Row::new(line, text);
        if row.cells == [""] {
            continue;
        }
        order.follow(&row, stamp(&row)?)?;
        hours.push(row.hour(&columns)?);
    }
    order.end()?;
    Ok(WeatherYear {
        latitude,
        longitude,
        ahead,
        hours,
    })
}

/// The name of the station may hold commas between quotes: they are taken out.
fn unquoted(line: &str) -> String {
    let parts = line.split('"').enumerate();
    parts
        .map(|(at, part)| {
            if at.is_multiple_of(2) {
                part.to_owned()
            } else {
                part.replace(',', " ")
            }
        })
        .collect()
}

fn columns(heading: &Row<'_>) -> Result<Columns, Wrong> {
    let column = |name: &str| {
        heading
            .cells
            .iter()
            .position(|cell| *cell == name)
            .ok_or_else(|| format!("line 2: it has no column `{name}`"))
    };
    Ok(Columns {
        air: column("Dry-bulb (C)")?,
        dew_point: column("Dew-point (C)")?,
        level: column("GHI (W/m^2)")?,
        direct: column("DNI (W/m^2)")?,
        diffuse: column("DHI (W/m^2)")?,
        is_missing,
    })
}

/// Month, day and hour of a line: `01/31/1988,24:00`.
fn stamp(row: &Row<'_>) -> Result<(u32, u32, u32), Wrong> {
    let read = || {
        let mut date = row.cells.first()?.split('/');
        let month = date.next()?.parse().ok()?;
        let day = date.next()?.parse().ok()?;
        let (hour, minute) = row.cells.get(1)?.split_once(':')?;
        (minute == "00").then_some((month, day, hour.parse().ok()?))
    };
    read().ok_or_else(|| {
        format!(
            "line {}: it does not begin with a day and a full hour, such as 01/31/1988,24:00",
            row.line
        )
    })
}
