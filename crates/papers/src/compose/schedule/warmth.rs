//! How warm and how cold it gets in each enclosure, against what each thing in it stands.

use crate::view::{Cell, Column, Table};
use design::heat::{Followed, Limit, Warmth};
use quantity::units::{power, time};
use quantity::{Power, Quantity as _, Temperature, Time, UnitSystem};

fn unit(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::UsCustomary => "°F",
        UnitSystem::Si => "°C",
    }
}

fn degrees(value: Option<Temperature>, units: UnitSystem) -> Cell {
    value.map_or_else(
        || Cell::text(""),
        |value| {
            let celsius = value.base() - 273.15;
            let shown = match units {
                UnitSystem::UsCustomary => celsius * 1.8 + 32.0,
                UnitSystem::Si => celsius,
            };
            Cell::number(shown, 0)
        },
    )
}

/// Cases of each enclosure: cold night, hottest day, stuck heater, damp morning.
pub(super) fn cases(all: &[Warmth], units: UnitSystem) -> Table {
    Table {
        title: "Enclosure heat".to_owned(),
        note: "Nominal values. In the cold night the wind doubles the loss; on the hottest day the air is still. Heat within is what everything but the heater gives off.".to_owned(),
        columns: vec![
            Column::words("Enclosure", 24),
            Column::words("Case", 58),
            Column::numbers("Heat within", "W", 16),
            Column::numbers("Heater", "W", 14),
            Column::numbers("Coldest inside", unit(units), 18),
            Column::numbers("Hottest inside", unit(units), 18),
            Column::numbers("at", "h", 12),
            Column::numbers("Heater on", "%", 14),
            Column::numbers("Heater takes", "kWh", 16),
        ],
        rows: all.iter().flat_map(|one| rows(one, units)).collect(),
    }
}

fn rows(one: &Warmth, units: UnitSystem) -> Vec<Vec<Cell>> {
    let followed = [
        ("coldest night", one.night.as_ref()),
        ("hottest day, heater off", one.day.as_ref()),
        (
            "hottest day, thermostat stuck closed, cut-out works",
            one.stuck.as_ref(),
        ),
        (
            "hottest day, thermostat stuck closed, no cut-out",
            one.unchecked.as_ref(),
        ),
    ];
    let mut rows: Vec<Vec<Cell>> = followed
        .into_iter()
        .filter_map(|(case, followed)| Some(row(one, case, followed?, units)))
        .collect();
    if let Some(damp) = one.damp {
        let case = format!(
            "dampest morning: dew falls at {}, inner face of the walls at {}",
            quantity::print(damp.dew_point, units),
            quantity::print(damp.wall, units)
        );
        rows.push(
            [
                vec![Cell::text(one.id.as_str()), Cell::text(case)],
                powers(one),
                vec![
                    degrees(Some(damp.inside), units),
                    degrees(Some(damp.inside), units),
                ],
                vec![Cell::text(""), Cell::text(""), Cell::text("")],
            ]
            .concat(),
        );
    }
    if !one.missing.is_empty() {
        let mut row = vec![
            Cell::text(one.id.as_str()),
            Cell::unknown(format!("not written: {}", one.missing.join("; "))),
        ];
        row.extend((0..7).map(|_| Cell::text("")));
        rows.push(row);
    }
    rows
}

fn powers(one: &Warmth) -> Vec<Cell> {
    let cell = |value: Option<Power>| {
        value.map_or_else(
            || Cell::text(""),
            |value| Cell::number(value.get::<power::watt>(), 1),
        )
    };
    vec![cell(one.inside), cell(one.heater)]
}

fn row(one: &Warmth, case: &str, followed: &Followed, units: UnitSystem) -> Vec<Cell> {
    let inside = &followed.inside;
    [
        vec![Cell::text(one.id.as_str()), Cell::text(case)],
        powers(one),
        vec![
            degrees(Some(inside.coldest.1), units),
            degrees(Some(inside.hottest.1), units),
            Cell::number(inside.hottest.0.get::<time::hour>(), 1),
            Cell::number(inside.heater_on.base() * 100.0, 0),
            Cell::number(inside.heater_gives.base() / 3.6e6, 2),
        ],
    ]
    .concat()
}

/// What each thing stands beside what it meets.
pub(super) fn limits(all: &[Warmth], units: UnitSystem) -> Table {
    let unit = unit(units);
    Table {
        title: "Limits in enclosures".to_owned(),
        note: "What each thing stands by its data sheet, beside the air that it meets there."
            .to_owned(),
        columns: vec![
            Column::words("Enclosure", 24),
            Column::words("Name", 50),
            Column::numbers("Stands down to", unit, 22),
            Column::numbers("Coldest night", unit, 22),
            Column::numbers("Stands up to", unit, 22),
            Column::numbers("Hottest day", unit, 22),
            Column::numbers("Heater stuck", unit, 22),
        ],
        rows: all
            .iter()
            .flat_map(|one| one.limits.iter().map(|limit| limit_row(one, limit, units)))
            .collect(),
    }
}

fn limit_row(one: &Warmth, limit: &Limit, units: UnitSystem) -> Vec<Cell> {
    let hottest = |followed: Option<&Followed>| followed.map(|it| it.inside.hottest.1);
    let stuck = one.stuck.as_ref().or(one.unchecked.as_ref());
    vec![
        Cell::text(one.id.as_str()),
        Cell::text(limit.name.as_str()),
        degrees(limit.coldest, units),
        degrees(one.night.as_ref().map(|it| it.inside.coldest.1), units),
        degrees(limit.hottest, units),
        degrees(hottest(one.day.as_ref()), units),
        degrees(hottest(stuck), units),
    ]
}

/// The typical year of the weather file.
pub(super) fn year(all: &[Warmth], units: UnitSystem) -> Table {
    let unit = unit(units);
    let hours = |value: Option<Time>| {
        value.map_or_else(
            || Cell::unknown("limits"),
            |value| Cell::number(value.get::<time::hour>(), 0),
        )
    };
    let row = |one: &Warmth| {
        let year = one.year?;
        Some(vec![
            Cell::text(one.id.as_str()),
            degrees(Some(year.hottest), units),
            degrees(Some(year.coldest), units),
            hours(year.too_hot),
            hours(year.too_cold),
            hours(Some(year.wet)),
            Cell::number(year.heater_takes.base() / 3.6e6, 0),
        ])
    };
    Table {
        title: "Enclosures through the typical year".to_owned(),
        note: "By the weather file, hour by hour, in still air; walls wet where their inner face is below the dew point of the air outside.".to_owned(),
        columns: vec![
            Column::words("Enclosure", 30),
            Column::numbers("Hottest inside", unit, 24),
            Column::numbers("Coldest inside", unit, 24),
            Column::numbers("Above the lowest limit", "h", 28),
            Column::numbers("Below the highest limit", "h", 28),
            Column::numbers("Walls wet", "h", 22),
            Column::numbers("Heater takes", "kWh", 22),
        ],
        rows: all.iter().filter_map(row).collect(),
    }
}
