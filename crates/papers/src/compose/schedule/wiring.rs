//! Where every core lands: the core-by-core schedule and the plan of the terminals.

use super::cells::words;
use crate::view::{Cell, Column, Table};
use design::wiring::{ClampAt, Landed, Landing, clamps, landed, marks};
use quantity::print_measured;
use site::{Id, Site, Terminals};

/// The schedules of wiring that have a row.
pub(crate) fn tables(site: &Site) -> Vec<Table> {
    let landed = landed(site);
    let tables = [cores(&landed), plan(site, &landed), kinds(site)];
    tables
        .into_iter()
        .filter(|table| !table.rows.is_empty())
        .collect()
}

/// Every core with both its ends.
fn cores(landed: &[Landed<'_>]) -> Table {
    let row = |core: &Landed<'_>| {
        let [from, to] = &core.ends;
        vec![
            Cell::text(core.cable.id.to_string()),
            Cell::text(core.number.to_string()),
            core.color
                .map_or_else(|| Cell::unknown("color"), Cell::text),
            number(core),
            core.carries.map_or_else(
                || Cell::text(if core.spare { "spare" } else { "" }),
                Cell::text,
            ),
            Cell::text(from.on.to_string()),
            terminal(core, from),
            Cell::text(to.on.to_string()),
            terminal(core, to),
            words(core.cable.size.as_ref()),
            words(core.wiring.ends.as_ref()),
        ]
    };
    Table {
        title: "Core schedule".to_owned(),
        note: "Every core of every cable with the terminal at each end. A wire number is given once and stays with its core. Spare cores are folded back and capped at both ends.".to_owned(),
        columns: vec![
            Column::words("Cable", 16),
            Column::words("Core", 11),
            Column::words("Color", 24),
            Column::words("Wire", 13),
            Column::words("Carries", 34),
            Column::words("First end in", 30),
            Column::words("Terminal", 34),
            Column::words("Second end in", 30),
            Column::words("Terminal", 34),
            Column::words("Size", 18),
            Column::words("Made up", 18),
        ],
        rows: landed.iter().map(row).collect(),
    }
}

fn number(core: &Landed<'_>) -> Cell {
    match core.wire {
        Some(wire) => Cell::text(wire.to_string()),
        None if core.spare || core.core.is_none() => Cell::text(""),
        None => Cell::unknown("number"),
    }
}

fn terminal(core: &Landed<'_>, landing: &Landing<'_>) -> Cell {
    match landing.printed() {
        Some(printed) => Cell::text(printed),
        None if core.spare => Cell::text("capped"),
        None => Cell::unknown("terminal"),
    }
}

/// Every terminal of every strip in an enclosure, and of everything else those that are used.
fn plan(site: &Site, landed: &[Landed<'_>]) -> Table {
    let clamps = clamps(landed);
    let mut rows = Vec::new();
    for strip in &site.terminals {
        for on in &strip.on {
            for mark in marks(strip) {
                rows.extend(under(&clamps, strip, on, &mark));
            }
        }
    }
    Table {
        title: "Terminal plan".to_owned(),
        note: "Terminal by terminal what lies under it, and where its other end is.".to_owned(),
        columns: vec![
            Column::words("On", 30),
            Column::words("Strip", 30),
            Column::words("Terminal", 18),
            Column::words("Wire", 14),
            Column::words("Cable", 16),
            Column::words("Color", 22),
            Column::words("Carries", 34),
            Column::words("Other end", 44),
        ],
        rows,
    }
}

/// The rows of one terminal: one for each core under it, or one that says it is free.
fn under(clamps: &[ClampAt<'_>], strip: &Terminals, on: &Id, mark: &str) -> Vec<Vec<Cell>> {
    let first = [
        Cell::text(on.to_string()),
        Cell::text(strip.id.to_string()),
        Cell::text(mark.to_owned()),
    ];
    let is = |clamp: &&ClampAt<'_>| {
        let of_strip = clamp.strip.is_some_and(|own| own.id == strip.id);
        of_strip && *clamp.on == *on && clamp.mark == mark
    };
    let Some(clamp) = clamps.iter().find(is) else {
        let mut free = first.to_vec();
        free.extend([
            Cell::text(""),
            Cell::text(""),
            Cell::text(""),
            Cell::text("free"),
            Cell::text(""),
        ]);
        return vec![free];
    };
    let row = |(core, end): &(Landed<'_>, usize)| {
        let other = core.ends[1 - (*end).min(1)];
        let mut row = first.to_vec();
        row.extend([
            number(core),
            Cell::text(core.cable.id.to_string()),
            Cell::text(core.color.unwrap_or_default()),
            Cell::text(core.carries.unwrap_or_default()),
            other
                .printed()
                .map_or_else(|| Cell::unknown("terminal"), Cell::text),
        ]);
        row
    };
    clamp.ends.iter().map(row).collect()
}

/// What each make of terminals takes, and how tight it has to be.
fn kinds(site: &Site) -> Table {
    let units = site.site.unit_system();
    let list = |items: Vec<String>| Cell::text(items.join(", "));
    let row = |strip: &Terminals| {
        vec![
            Cell::text(strip.id.to_string()),
            list(strip.on.iter().map(ToString::to_string).collect()),
            words(strip.clamp.as_ref()),
            list(strip.takes.iter().map(ToString::to_string).collect()),
            words(strip.smallest.as_ref()),
            words(strip.largest.as_ref()),
            words(strip.wires.as_ref()),
            Cell::text(
                strip
                    .strip
                    .as_ref()
                    .map_or_else(String::new, |strip| print_measured(strip, units)),
            ),
            Cell::text(
                strip
                    .tightening
                    .as_ref()
                    .map_or_else(String::new, |torque| print_measured(torque, units)),
            ),
            words(strip.note.as_ref()),
        ]
    };
    Table {
        title: "Terminals".to_owned(),
        note: "What each takes, how far to strip, and the torque as printed. Use a torque tool, then tug every conductor.".to_owned(),
        columns: vec![
            Column::words("Strip", 32),
            Column::words("On", 50),
            Column::words("Clamp", 16),
            Column::words("Takes", 28),
            Column::words("From", 18),
            Column::words("To", 18),
            Column::words("Wires", 12),
            Column::words("Strip off", 18),
            Column::words("Torque", 26),
            Column::words("Remarks", 44),
        ],
        rows: site.terminals.iter().map(row).collect(),
    }
}
