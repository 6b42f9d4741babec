//! The cable schedule.

use super::cells::{count, length_cell, length_column, names, words};
use crate::view::{Cell, Column, Table};
use site::Site;

/// Every cable, by its number.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let rows = site
        .cable
        .iter()
        .map(|cable| {
            vec![
                Cell::text(cable.id.to_string()),
                Cell::text(cable.from.to_string()),
                Cell::text(cable.to.to_string()),
                words(cable.carries.as_ref()),
                count(cable.cores),
                words(cable.size.as_ref()),
                length_cell(cable.length.as_ref(), units),
                names(&cable.route),
                words(cable.part.as_ref()),
                words(cable.note.as_ref()),
            ]
        })
        .collect();
    Table {
        title: "Cable schedule".to_owned(),
        note: "Every cable keeps its number through every revision. Lengths are from end to end, slack included.".to_owned(),
        columns: vec![
            Column::words("Cable", 20),
            Column::words("From", 26),
            Column::words("To", 26),
            Column::words("Carries", 18),
            Column::numbers("Cores", "", 12),
            Column::words("Size", 18),
            length_column("Length", units, 15),
            Column::words("Through", 34),
            Column::words("Part", 30),
            Column::words("Remarks", 40),
        ],
        rows,
    }
}
