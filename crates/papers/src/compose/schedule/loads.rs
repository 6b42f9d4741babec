//! The load tables: current and voltage of everything that takes power, in every case, supply by supply.

use super::cells::facts;
use crate::view::{Cell, Column, Table};
use design::power::{LoadStanding, Lost, Moment, PowerShown, ShownLoad, ShownSource, Worked};
use quantity::units::electric_current::ampere;
use quantity::units::electric_potential::volt;
use quantity::{Current, Voltage};

/// What both tables rest on.
const RESTS: &str = "Every value at the bad end of its tolerance. An empty field: the case does not concern the supply, which has no battery of its own.";

/// Currents, with the sum at each supply and its rating.
pub(super) fn currents(power: &PowerShown) -> Table {
    let mut rows = Vec::new();
    for source in feeding(power) {
        rows.push(sum(source));
        rows.extend(fed_by(power, source).map(|load| current_row(source, load)));
    }
    rows.extend(unfed(power));
    let mut columns = first_columns();
    columns.extend(
        power
            .cases
            .iter()
            .map(|case| Column::numbers(case, "A", 15)),
    );
    columns.push(Column::numbers("At its greatest", "A", 16));
    columns.push(Column::numbers("Rated", "A", 14));
    columns.push(Column::numbers("For a moment", "A", 15));
    columns.push(Column::words("What is missing", 44));
    Table {
        title: "Load table, currents".to_owned(),
        note: format!(
            "{RESTS} The sum at a supply counts a load once that several cables bring power, takes the supplies behind it by what they draw, and leaves charging out."
        ),
        columns,
        rows,
    }
}

/// Voltages, with the least that each load needs.
pub(super) fn voltages(power: &PowerShown) -> Table {
    let mut rows = Vec::new();
    for source in feeding(power) {
        rows.extend(fed_by(power, source).map(|load| voltage_row(source, load)));
    }
    let mut columns = first_columns();
    columns.extend(
        power
            .cases
            .iter()
            .map(|case| Column::numbers(case, "V", 15)),
    );
    columns.push(Column::numbers("Lowest, at its greatest current", "V", 18));
    columns.push(Column::numbers("It needs", "V", 14));
    columns.push(Column::words("It stands", 18));
    columns.push(Column::words("What is missing", 44));
    Table {
        title: "Load table, voltages".to_owned(),
        note: format!(
            "{RESTS} In each case all loads draw together; at its lowest, a load draws its own greatest current besides."
        ),
        columns,
        rows,
    }
}

/// In which order things are lost as a battery falls.
pub(super) fn losses(lost: &[Lost]) -> Table {
    let row = |lost: &Lost| {
        let with = lost
            .with
            .as_ref()
            .map_or_else(String::new, |with| format!("with {with}"));
        vec![
            Cell::text(lost.battery.as_str()),
            Cell::text(lost.id.as_str()),
            Cell::text(lost.what.as_str()),
            lost.at.map_or_else(|| Cell::unknown("facts"), volts),
            lost.cut_off.map_or_else(|| Cell::unknown("facts"), volts),
            Cell::text(match lost.lives_to_the_end() {
                None => "",
                Some(true) => "until the cut-off",
                Some(false) => "not until the cut-off",
            }),
            Cell::text(with),
        ]
    };
    Table {
        title: "Order of loss on the battery".to_owned(),
        note: "Voltage of the battery at which each load falls below its least voltage as the gate starts, with the drop in its conductors as at the end of the discharge; first lost first. Below the cut-off everything is off.".to_owned(),
        columns: vec![
            Column::words("Battery", 24),
            Column::words("Load", 34),
            Column::words("What", 40),
            Column::numbers("Lost at", "V", 16),
            Column::numbers("Cut-off", "V", 16),
            Column::words("It lives", 28),
            Column::words("Goes", 30),
        ],
        rows: lost.iter().map(row).collect(),
    }
}

fn first_columns() -> Vec<Column> {
    vec![
        Column::words("Supply", 24),
        Column::words("Load", 34),
        Column::words("Cable", 15),
    ]
}

/// The sources that feed something.
fn feeding(power: &PowerShown) -> impl Iterator<Item = &ShownSource> {
    let sources = power.sources.iter();
    sources.filter(|source| fed_by(power, source).next().is_some())
}

fn fed_by<'p>(
    power: &'p PowerShown,
    source: &'p ShownSource,
) -> impl Iterator<Item = &'p ShownLoad> {
    power
        .loads
        .iter()
        .filter(move |load| load.source == source.id)
}

/// All that a supply gives in each case, and what it is rated for.
fn sum(source: &ShownSource) -> Vec<Cell> {
    let mut row = vec![
        Cell::text(source.id.as_str()),
        Cell::text("all together"),
        Cell::text(""),
    ];
    row.extend(source.given.iter().map(|given| worked(*given, amperes)));
    row.push(known(source.greatest(), amperes));
    row.push(known(source.rated, amperes));
    row.push(source.peak.map_or_else(|| Cell::text(""), amperes));
    row.push(facts(&source.missing));
    row
}

fn current_row(source: &ShownSource, load: &ShownLoad) -> Vec<Cell> {
    let mut row = names(source, load);
    row.extend(load.moments.iter().map(|moment| {
        worked(*moment, |moment| match moment {
            Moment::Stands { current, .. } => amperes(current),
            Moment::Collapses => Cell::text("collapses"),
        })
    }));
    row.push(known(load.greatest, amperes));
    row.extend([Cell::text(""), Cell::text("")]);
    row.push(facts(&load.missing));
    row
}

fn voltage_row(source: &ShownSource, load: &ShownLoad) -> Vec<Cell> {
    let mut row = names(source, load);
    row.extend(load.moments.iter().map(|moment| {
        worked(*moment, |moment| match moment {
            Moment::Stands { voltage, .. } => volts(voltage),
            Moment::Collapses => Cell::text("collapses"),
        })
    }));
    row.push(known(load.lowest, volts));
    row.push(match load.standing {
        LoadStanding::NoLeast => Cell::text(""),
        _ => known(load.least, volts),
    });
    row.push(match load.standing {
        LoadStanding::Holds => Cell::text("holds"),
        LoadStanding::NotSure => Cell::text("not sure"),
        LoadStanding::TooLow => Cell::text("× too low"),
        LoadStanding::NoLeast => Cell::text(""),
        LoadStanding::Unknown => Cell::unknown("unknown"),
    });
    row.push(facts(&load.missing));
    row
}

fn names(source: &ShownSource, load: &ShownLoad) -> Vec<Cell> {
    let cable = match (&load.cable, load.without_cable) {
        (Some(cable), _) => Cell::text(cable.as_str()),
        (None, true) => Cell::unknown("none"),
        (None, false) => Cell::text("in one box"),
    };
    vec![
        Cell::text(source.id.as_str()),
        Cell::text(load.id.as_str()),
        cable,
    ]
}

/// What draws a current and is fed by nothing.
fn unfed(power: &PowerShown) -> impl Iterator<Item = Vec<Cell>> {
    let columns = power.cases.len() + 3;
    power.unfed.iter().map(move |name| {
        let mut row = vec![
            Cell::unknown("none"),
            Cell::text(name.as_str()),
            Cell::text(""),
        ];
        row.extend(std::iter::repeat_n(Cell::text(""), columns));
        row.push(Cell::unknown("what feeds it"));
        row
    })
}

fn worked<Q>(value: Worked<Q>, cell: impl Fn(Q) -> Cell) -> Cell {
    match value {
        Worked::Known(value) => cell(value),
        Worked::Unknown => Cell::unknown("unknown"),
        Worked::Apart => Cell::text(""),
    }
}

fn known<Q>(value: Option<Q>, cell: impl Fn(Q) -> Cell) -> Cell {
    value.map_or_else(|| Cell::unknown("unknown"), cell)
}

fn amperes(current: Current) -> Cell {
    Cell::number(current.get::<ampere>(), 3)
}

fn volts(voltage: Voltage) -> Cell {
    Cell::number(voltage.get::<volt>(), 2)
}
