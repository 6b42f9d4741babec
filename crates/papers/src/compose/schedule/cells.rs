//! Cells of the schedules: numbers in the site's units, or what to measure.

use crate::view::{Cell, Column};
use quantity::units::{electric_current, electric_potential, length, power};
use quantity::{Current, Length, Measured, Power, UnitSystem, Voltage};
use site::{Id, Position};

/// A column of long lengths: feet or meters.
pub(super) fn length_column(heading: &str, units: UnitSystem, width: u16) -> Column {
    Column::numbers(
        heading,
        match units {
            UnitSystem::UsCustomary => "ft",
            UnitSystem::Si => "m",
        },
        width,
    )
}

/// A length in feet or meters with one or two decimals.
pub(super) fn length_cell(value: Option<&Measured<Length>>, units: UnitSystem) -> Cell {
    measured(value, |value| length_number(value, units))
}

/// A length that was summed rather than read.
pub(super) fn length_number(value: Length, units: UnitSystem) -> Cell {
    match units {
        UnitSystem::UsCustomary => Cell::number(value.get::<length::foot>(), 1),
        UnitSystem::Si => Cell::number(value.get::<length::meter>(), 2),
    }
}

/// A voltage in volts.
pub(super) fn volts(value: Option<&Measured<Voltage>>) -> Cell {
    known(value, |value| {
        Cell::number(value.get::<electric_potential::volt>(), 1)
    })
}

/// A current in amperes.
pub(super) fn amperes(value: Option<&Measured<Current>>) -> Cell {
    known(value, |value| {
        Cell::number(value.get::<electric_current::ampere>(), 3)
    })
}

/// A power in watts.
pub(super) fn watts(value: Option<&Measured<Power>>) -> Cell {
    known(value, |value| Cell::number(value.get::<power::watt>(), 1))
}

/// A value that must be measured when it is missing.
pub(super) fn measured<Q: quantity::Quantity>(
    value: Option<&Measured<Q>>,
    cell: impl Fn(Q) -> Cell,
) -> Cell {
    value.map_or_else(|| Cell::unknown("measure"), |value| cell(value.nominal()))
}

/// A value that stays blank when it is missing, since not everything has one.
pub(super) fn known<Q: quantity::Quantity>(
    value: Option<&Measured<Q>>,
    cell: impl Fn(Q) -> Cell,
) -> Cell {
    value.map_or_else(|| Cell::text(""), |value| cell(value.nominal()))
}

/// Words, or a blank cell.
pub(super) fn words<T: std::fmt::Display>(value: Option<&T>) -> Cell {
    Cell::text(value.map(ToString::to_string).unwrap_or_default())
}

/// Names one after another.
pub(super) fn names(ids: &[Id]) -> Cell {
    Cell::text(
        ids.iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join(", "),
    )
}

/// Missing facts that a cell names.
const NAMED: usize = 2;

/// Facts that are missing, the first of them by name; blank where none is.
pub(super) fn facts(missing: &[String]) -> Cell {
    let named = missing.iter().take(NAMED).cloned().collect::<Vec<_>>();
    match missing.len().saturating_sub(NAMED) {
        _ if named.is_empty() => Cell::text(""),
        0 => Cell::unknown(named.join("; ")),
        more => Cell::unknown(format!("{}; {more} more", named.join("; "))),
    }
}

/// A position in the site's units: along, into, up.
pub(super) fn position(at: Option<&Position>, units: UnitSystem) -> Cell {
    match at {
        None => Cell::text(""),
        Some(at) => {
            let print = |value: &Measured<Length>| quantity::print(value.nominal(), units);
            Cell::text(format!(
                "{}; {}; {}",
                print(&at.x),
                print(&at.y),
                print(&at.z)
            ))
        }
    }
}

/// A whole number of things, or a blank cell.
pub(super) fn count(value: Option<u32>) -> Cell {
    value.map_or_else(|| Cell::text(""), |value| Cell::number(f64::from(value), 0))
}
