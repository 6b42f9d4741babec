//! Where everything is in each enclosure, numbered as on its sheet, and the holes to drill.

use crate::shelter::content::{Content, Place, contents};
use crate::view::{Cell, Column, Table};
use quantity::units::length;
use quantity::{Length, Quantity as _, UnitSystem};
use site::{Enclosure, EnclosureEntry, Site};

fn unit(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::UsCustomary => "in",
        UnitSystem::Si => "mm",
    }
}

fn short(meters: Option<f64>, units: UnitSystem) -> Cell {
    let Some(meters) = meters else {
        return Cell::unknown("measure");
    };
    let value = Length::from_base(meters);
    match units {
        UnitSystem::UsCustomary => Cell::number(value.get::<length::inch>(), 2),
        UnitSystem::Si => Cell::number(value.get::<length::millimeter>(), 0),
    }
}

/// What is where on the panel of each enclosure.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let of = |enclosure: &Enclosure| {
        let things = contents(site, enclosure).things;
        let rows = things
            .iter()
            .zip(1_u32..)
            .map(|(thing, number)| row(enclosure, number, thing, units));
        rows.collect::<Vec<_>>()
    };
    let unit = unit(units);
    Table {
        title: "Enclosure layout".to_owned(),
        note: "Numbered as on the sheet of the enclosure; places are those of the lower left corner, from the left and the lower edge of the panel.".to_owned(),
        columns: vec![
            Column::words("Enclosure", 24),
            Column::numbers("Number", "", 14),
            Column::words("Name", 60),
            Column::numbers("How many", "", 16),
            Column::numbers("Width of one", unit, 20),
            Column::numbers("Height", unit, 20),
            Column::numbers("From the left", unit, 20),
            Column::numbers("From below", unit, 20),
        ],
        rows: site.enclosure.iter().flat_map(of).collect(),
    }
}

fn row(enclosure: &Enclosure, number: u32, thing: &Content, units: UnitSystem) -> Vec<Cell> {
    let (left, up) = match thing.place {
        Place::At(left, up) => (Some(left), Some(up)),
        Place::Along(_, left) => (Some(left), None),
        Place::Behind(_) | Place::Unwritten => (None, None),
    };
    vec![
        Cell::text(enclosure.id.to_string()),
        Cell::number(f64::from(number), 0),
        Cell::text(thing.name.as_str()),
        Cell::number(f64::from(thing.count), 0),
        short(thing.width, units),
        short(thing.height, units),
        short(left, units),
        short(up, units),
    ]
}

/// The holes of each enclosure.
pub(super) fn holes(site: &Site) -> Table {
    let units = site.site.unit_system();
    let unit = unit(units);
    let of = |enclosure: &Enclosure| {
        let entries = enclosure.entry.iter();
        let rows = entries.flat_map(|entry| entry_rows(enclosure, entry, units));
        rows.collect::<Vec<_>>()
    };
    Table {
        title: "Cable entries".to_owned(),
        note: "Middles from the left, seen from the door, and from the back of the box. Drill no hole before the fitting is in hand.".to_owned(),
        columns: vec![
            Column::words("Enclosure", 24),
            Column::words("Side", 18),
            Column::words("What closes it", 56),
            Column::words("For", 24),
            Column::numbers("Drill", unit, 18),
            Column::numbers("From the left", unit, 20),
            Column::numbers("From the back", unit, 20),
        ],
        rows: site.enclosure.iter().flat_map(of).collect(),
    }
}

fn entry_rows(enclosure: &Enclosure, entry: &EnclosureEntry, units: UnitSystem) -> Vec<Vec<Cell>> {
    let side = entry.side.map_or_else(
        || Cell::unknown("side"),
        |side| Cell::text(side.to_string()),
    );
    let holes = entry.holes.as_ref();
    let meters = |value: &quantity::Measured<Length>| value.nominal().base();
    let back = holes.and_then(|holes| holes.from_back.as_ref()).map(meters);
    let row = |(at, name): (usize, &site::Id)| {
        let drill = holes.and_then(|holes| match &holes.drill[..] {
            [all] => Some(all),
            each => each.get(at),
        });
        let left = holes.and_then(|holes| holes.from_left.get(at));
        vec![
            Cell::text(enclosure.id.to_string()),
            side.clone(),
            Cell::text(entry.what.to_string()),
            Cell::text(name.to_string()),
            short(drill.map(meters), units),
            short(left.map(meters), units),
            short(back, units),
        ]
    };
    let names = entry.conduits.iter().chain(&entry.cables);
    names.enumerate().map(row).collect()
}
