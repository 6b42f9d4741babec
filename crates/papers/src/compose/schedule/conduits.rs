//! The conduit schedule: what to buy, bend and bury, and what goes through it.

use super::cells::{length_cell, length_column, length_number, words};
use crate::view::{Cell, Column, Table};
use quantity::units::angle::degree;
use quantity::{Angle, Length};
use site::{Conduit, Site};

/// Every conduit.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let rows = site
        .conduit
        .iter()
        .map(|conduit| {
            let through: Vec<String> = site
                .cable
                .iter()
                .filter(|cable| cable.route.contains(&conduit.id))
                .map(|cable| cable.id.to_string())
                .collect();
            vec![
                Cell::text(conduit.id.to_string()),
                words(conduit.kind.as_ref()),
                words(conduit.trade_size.as_ref()),
                words(conduit.from.as_ref()),
                words(conduit.to.as_ref()),
                straight(conduit).map_or_else(
                    || Cell::unknown("measure"),
                    |length| length_number(length, units),
                ),
                Cell::number(bends(conduit).get::<degree>(), 0),
                length_cell(conduit.burial_depth.as_ref(), units),
                Cell::text(through.join(", ")),
            ]
        })
        .collect();
    Table {
        title: "Conduit schedule".to_owned(),
        note: "Straight pieces and bends between pull points; cover is from the top of the conduit to the finished surface.".to_owned(),
        columns: vec![
            Column::words("Conduit", 22),
            Column::words("Kind", 16),
            Column::words("Trade size", 14),
            Column::words("From", 32),
            Column::words("To", 32),
            length_column("Straight", units, 16),
            Column::numbers("Bends", "°", 12),
            length_column("Cover", units, 14),
            Column::words("Cables", 50),
        ],
        rows,
    }
}

/// Length of all straight pieces; nothing when one is not known.
fn straight(conduit: &Conduit) -> Option<Length> {
    if conduit.segment.is_empty() {
        return None;
    }
    conduit
        .segment
        .iter()
        .map(|segment| segment.straight.as_ref().map(quantity::Measured::nominal))
        .sum()
}

/// Degrees of all bends.
fn bends(conduit: &Conduit) -> Angle {
    conduit
        .segment
        .iter()
        .filter_map(|segment| segment.bend.as_ref().map(quantity::Measured::nominal))
        .sum()
}
