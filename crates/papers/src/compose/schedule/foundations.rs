//! Foundations and the anchors in them.

use super::cells::{count, length_cell, length_column};
use crate::view::{Cell, Column, Table};
use quantity::print_measured;
use site::Site;

/// One row for each foundation without anchors, and for each group of anchors.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let shown = |length: Option<&quantity::Measured<quantity::Length>>| {
        Cell::text(
            length
                .map(|length| print_measured(length, units))
                .unwrap_or_default(),
        )
    };
    let mut rows = Vec::new();
    for foundation in &site.foundation {
        let own = [
            Cell::text(foundation.id.to_string()),
            length_cell(
                foundation.length.as_ref().or(foundation.diameter.as_ref()),
                units,
            ),
            length_cell(
                foundation.width.as_ref().or(foundation.diameter.as_ref()),
                units,
            ),
            length_cell(foundation.depth.as_ref(), units),
            Cell::text(
                foundation
                    .strength
                    .as_ref()
                    .map(|strength| print_measured(strength, units))
                    .unwrap_or_default(),
            ),
        ];
        if foundation.anchor.is_empty() {
            rows.push(
                own.into_iter()
                    .chain((0..5).map(|_| Cell::text("")))
                    .collect(),
            );
            continue;
        }
        for anchor in &foundation.anchor {
            let anchored = [
                Cell::text(anchor.holds.to_string()),
                count(anchor.count),
                shown(anchor.diameter.as_ref()),
                shown(anchor.embedment.as_ref()),
                shown(anchor.edge_distance.as_ref()),
            ];
            rows.push(own.iter().cloned().chain(anchored).collect());
        }
    }
    Table {
        title: "Foundations and anchors".to_owned(),
        note: String::new(),
        columns: vec![
            Column::words("Foundation", 26),
            length_column("Length", units, 16),
            length_column("Width", units, 16),
            length_column("Depth", units, 16),
            Column::words("Concrete", 22),
            Column::words("Anchors hold", 34),
            Column::numbers("How many", "", 14),
            Column::words("Diameter", 20),
            Column::words("Embedment", 22),
            Column::words("To nearest edge", 24),
        ],
        rows,
    }
}
