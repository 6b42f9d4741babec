//! The loops in the ground: how each is wound, what it should measure at the cabinet, and what was read there.

use super::cells::{length_column, length_number};
use crate::view::{Cell, Column, Table};
use design::loops::{ShownLoop, shown};
use quantity::{Inductance, Quantity, UnitSystem};
use site::Site;

/// One row for each loop.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    Table {
        title: "Loops in the ground".to_owned(),
        note: "Inductance by the wire and its turns, with the lead-in in series, at the values as written; the guide's figure is P (N² + N) / 4. Read inductance, resistance and insulation at the cabinet before the slot is sealed and after, and keep the figures: a reading that has moved finds a damp or broken loop. The worst vehicle is the one whose frame takes least; it is driven over the loop all the same. No loop protects people.".to_owned(),
        columns: columns(units),
        rows: shown(site).iter().map(|it| row(it, units)).collect(),
    }
}

fn columns(units: UnitSystem) -> Vec<Column> {
    vec![
        Column::words("Loop", 16),
        Column::numbers("Turns", "", 7),
        Column::words("Sides, along the gate first", 22),
        length_column("Perimeter", units, 14),
        length_column("Wire to cut, lead-in too", units, 13),
        length_column("Lead-in", units, 10),
        Column::numbers("Loop, by the guide", "µH", 11),
        Column::numbers("Loop, by its wire", "µH", 11),
        Column::numbers("Lead-in", "µH", 9),
        Column::words("To be read at the cabinet", 26),
        Column::words("Was read", 26),
        Column::numbers("Frequency expected", "kHz", 12),
        Column::words(
            "Worst vehicle takes at least, and the output comes on at",
            44,
        ),
    ]
}

fn row(it: &ShownLoop, units: UnitSystem) -> Vec<Cell> {
    let length = |value: Option<_>| {
        value.map_or_else(
            || Cell::unknown("measure"),
            |value| length_number(value, units),
        )
    };
    vec![
        Cell::text(it.id.as_str()),
        it.turns.map_or_else(
            || Cell::unknown("count"),
            |turns| Cell::number(f64::from(turns), 0),
        ),
        it.sides.map_or_else(
            || Cell::unknown("measure"),
            |(along, into)| {
                Cell::text(format!(
                    "{} by {}",
                    quantity::print(along, units),
                    quantity::print(into, units)
                ))
            },
        ),
        length(it.perimeter),
        length(it.wire),
        length(it.lead_length),
        microhenries(it.guide),
        microhenries(it.own),
        microhenries(it.lead_in),
        to_be_read(it, units),
        was_read(it, units),
        it.frequency.map_or_else(
            || Cell::text(""),
            |frequency| Cell::number(frequency.base() / 1e3, 1),
        ),
        share(it, units),
    ]
}

fn microhenries(value: Option<Inductance>) -> Cell {
    value.map_or_else(
        || Cell::unknown("facts are missing"),
        |value| Cell::number(value.base() * 1e6, 0),
    )
}

/// Inductance, or its span where steel lies below, and resistance.
fn to_be_read(it: &ShownLoop, units: UnitSystem) -> Cell {
    let (Some((least, most)), Some(resistance)) = (it.total, it.resistance) else {
        return Cell::unknown("facts are missing");
    };
    let print = |value| quantity::print(value, units);
    let inductance = if least < most {
        format!("{} to {}, by the steel below", print(least), print(most))
    } else {
        print(most)
    };
    Cell::text(format!(
        "{inductance}; {}",
        quantity::print(resistance, units)
    ))
}

fn was_read(it: &ShownLoop, units: UnitSystem) -> Cell {
    let read: Vec<String> = [
        printed(it.read_inductance, units),
        printed(it.read_resistance, units),
        printed(it.read_frequency, units),
    ]
    .into_iter()
    .flatten()
    .collect();
    if read.is_empty() {
        Cell::unknown("read at the cabinet")
    } else {
        Cell::text(read.join("; "))
    }
}

fn printed<Q: Quantity>(value: Option<Q>, units: UnitSystem) -> Option<String> {
    value.map(|value| quantity::print(value, units))
}

fn share(it: &ShownLoop, units: UnitSystem) -> Cell {
    let (Some(worst), Some(share)) = (&it.worst, it.share) else {
        return Cell::unknown("facts are missing");
    };
    let set = it.sensitivity.map_or_else(
        || "not written".to_owned(),
        |set| quantity::print(set, units),
    );
    Cell::text(format!(
        "{worst}: {}; on at {set}",
        quantity::print(share, units)
    ))
}
