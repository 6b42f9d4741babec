//! The bill of quantities, without prices: what is bought, from whom, and how it stands.

use crate::offer::stands;
use crate::view::{Cell, Column, Table};
use design::bill::{Line, bill};
use site::Site;

/// The bill of a site that names a price book.
pub(super) fn table(site: &Site) -> Table {
    let named = site.site.price_book.is_some();
    let lines = if named { bill(site).lines } else { Vec::new() };
    Table {
        title: "Bill of quantities".to_owned(),
        note: "Waste and spares are counted. What is left over, and what was short, is written back into the price book after the job.".to_owned(),
        columns: vec![
            Column::words("What", 62),
            Column::numbers("Pieces", "", 15),
            Column::numbers("On the van", "", 15),
            Column::numbers("Packs to buy", "", 17),
            Column::words("Supplier", 32),
            Column::words("Needed", 21),
            Column::words("How it stands", 28),
            Column::words("For", 72),
        ],
        rows: lines.iter().map(row).collect(),
    }
}

fn row(line: &Line) -> Vec<Cell> {
    let whole = |count: Option<u64>| {
        let count = count.and_then(|count| u32::try_from(count).ok());
        count.map_or_else(
            || Cell::unknown("measure"),
            |count| Cell::number(f64::from(count), 0),
        )
    };
    vec![
        Cell::text(line.what.as_str()),
        whole(line.pieces),
        Cell::number(f64::from(line.on_van), 0),
        whole(line.to_buy),
        line.supplier
            .as_ref()
            .map_or_else(|| Cell::unknown("from whom"), Cell::text),
        Cell::text(line.needed.clone().unwrap_or_default()),
        Cell::text(stands(line)),
        Cell::text(line.things.join(", ")),
    ]
}
