//! The fuses and mains disconnects, and the cables that leave a source without a fuse.

use crate::view::{Cell, Column, Table};
use design::power::{
    PowerShown, ShownDisconnect, ShownFuse, ShownSource, SourceKind, Step, Twig, Unfused,
};
use quantity::units::electric_current::ampere;
use quantity::units::electric_potential::volt;
use quantity::{Current, UnitSystem, print};

/// Each mains circuit with its breaker, then each disconnect, then each fuse.
pub(super) fn table(power: &PowerShown) -> Table {
    let mains = power.sources.iter();
    let mains = mains.filter(|source| source.kind == SourceKind::Mains);
    let rows = mains
        .map(|source| mains_row(power, source))
        .chain(power.disconnects.iter().map(disconnect_row))
        .chain(power.fuses.iter().map(row));
    Table {
        title: "Fuses and disconnects".to_owned(),
        note: "Work on a mains circuit, its breaker and its disconnect is for a licensed electrician under local codes. A fuse is replaced by one of the same rating and kind.".to_owned(),
        columns: vec![
            Column::words("Mark", 22),
            Column::words("What", 34),
            Column::words("In", 24),
            Column::numbers("Rated", "A", 15),
            Column::numbers("Carries at most", "A", 16),
            Column::numbers("Breaks up to", "V", 16),
            Column::numbers("Breaks up to", "A", 16),
            Column::words("Behind", 22),
            Column::words("Feeds", 56),
            Column::words("Conductor", 24),
        ],
        rows: rows.collect(),
    }
}

/// Cables that leave a source without a fuse.
pub(super) fn unfused(power: &PowerShown, units: UnitSystem) -> Table {
    Table {
        title: "Cables without a fuse".to_owned(),
        note: "Each of these leaves a supply, a battery or a panel, and no fuse is written for it. Either what feeds it limits its current to what the conductor stands, or a fuse belongs at its beginning; a mains circuit has its breaker.".to_owned(),
        columns: vec![
            Column::words("Cable", 20),
            Column::words("From", 36),
            Column::words("To", 36),
            Column::words("Conductor", 24),
            Column::words("Length", 22),
        ],
        rows: power
            .unfused
            .iter()
            .filter(|unfused| !from_mains(power, unfused))
            .map(|unfused| unfused_row(unfused, units))
            .collect(),
    }
}

fn from_mains(power: &PowerShown, unfused: &Unfused) -> bool {
    let from = |source: &&ShownSource| source.id == unfused.from;
    let source = power.sources.iter().find(from);
    source.is_some_and(|source| source.kind == SourceKind::Mains)
}

fn unfused_row(unfused: &Unfused, units: UnitSystem) -> Vec<Cell> {
    let cable = &unfused.cable;
    vec![
        Cell::text(cable.id.as_str()),
        Cell::text(unfused.from.as_str()),
        Cell::text(unfused.to.as_str()),
        cable
            .size
            .as_ref()
            .map_or_else(|| Cell::unknown("size"), Cell::text),
        cable.length.map_or_else(
            || Cell::unknown("measure"),
            |length| Cell::text(print(length, units)),
        ),
    ]
}

/// A disconnect with what it cuts off.
fn disconnect_row(disconnect: &ShownDisconnect) -> Vec<Cell> {
    let what = match disconnect.lockable {
        Some(true) => Cell::text("disconnect, lockable"),
        Some(false) => Cell::text("disconnect, not lockable"),
        None => Cell::unknown("disconnect; lockable or not"),
    };
    let blank = || Cell::text("");
    let cuts = format!("cuts off {}", disconnect.of.join(", "));
    vec![
        Cell::text(disconnect.id.as_str()),
        what,
        blank(),
        blank(),
        blank(),
        blank(),
        blank(),
        blank(),
        Cell::text(cuts),
        blank(),
    ]
}

fn mains_row(power: &PowerShown, source: &ShownSource) -> Vec<Cell> {
    let cuts = |it: &&ShownDisconnect| it.of.contains(&source.id);
    let behind = power.disconnects.iter().find(cuts);
    let (mut feeds, mut sizes) = (Vec::new(), Vec::new());
    for twig in &source.branches {
        fed(twig, &mut feeds, &mut sizes);
    }
    vec![
        Cell::text(source.id.as_str()),
        Cell::text("breaker of the mains circuit"),
        behind.map_or_else(
            || Cell::unknown("where its disconnect is"),
            |it| Cell::text(format!("source panel; {} cuts it off", it.id)),
        ),
        amperes(source.rated),
        amperes(source.greatest()),
        Cell::text(""),
        Cell::text(""),
        Cell::text(""),
        Cell::text(feeds.join(", ")),
        Cell::text(sizes.join(", ")),
    ]
}

/// The cables of a mains circuit with their sizes.
fn fed(twig: &Twig, feeds: &mut Vec<String>, sizes: &mut Vec<String>) {
    if let Step::Cable(cable) = &twig.step {
        feeds.push(cable.id.clone());
        sizes.extend(cable.size.clone().filter(|size| !sizes.contains(size)));
        return;
    }
    for next in &twig.next {
        fed(next, feeds, sizes);
    }
}

fn row(fuse: &ShownFuse) -> Vec<Cell> {
    let known = |current: Option<Current>| {
        if fuse.described {
            amperes(current)
        } else {
            Cell::unknown("a [[fuse]] of its own")
        }
    };
    let conductors = fuse.conductors.join(", ");
    vec![
        Cell::text(fuse.id.as_str()),
        Cell::text(fuse.what.as_str()),
        Cell::text(fuse.enclosure.clone().unwrap_or_default()),
        known(fuse.rated),
        amperes(fuse.carries),
        fuse.voltage.map_or_else(
            || Cell::unknown("data sheet"),
            |voltage| Cell::number(voltage.get::<volt>(), 0),
        ),
        fuse.breaks.map_or_else(
            || Cell::unknown("data sheet"),
            |current| Cell::number(current.get::<ampere>(), 0),
        ),
        Cell::text(fuse.behind.clone().unwrap_or_else(|| fuse.source.clone())),
        if fuse.feeds.is_empty() {
            Cell::text("nothing")
        } else {
            Cell::text(fuse.feeds.join(", "))
        },
        match (conductors.is_empty(), fuse.size_missing) {
            (true, true) => Cell::unknown("size"),
            (false, true) => Cell::unknown(format!("{conductors}, and a size")),
            (_, false) => Cell::text(conductors),
        },
    ]
}

fn amperes(current: Option<Current>) -> Cell {
    current.map_or_else(
        || Cell::unknown("unknown"),
        |current| Cell::number(current.get::<ampere>(), 3),
    )
}
