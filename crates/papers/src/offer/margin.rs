//! The margin sheet: everything behind the prices, for the owner of the business alone.

use super::money::cell;
use crate::view::{Cell, Column, Table};
use design::bill::{Line, LineState};
use design::offer::{Costs, LaborLine, Offered, ROUNDING, Speed, Way};
use site::Price;

/// The tables of the margin sheet: sums, bill and hours of each way, and the record of hours.
pub fn tables(offered: &Offered) -> Vec<Table> {
    let mut tables = vec![sums(offered)];
    for way in &offered.ways {
        tables.push(bill(way));
    }
    tables.extend(offered.ways.first().map(|way| hours(&way.labor)));
    tables.push(record(&offered.speeds));
    tables.retain(|table| !table.rows.is_empty());
    tables
}

/// What one row of the sums shows.
type Sum = (&'static str, fn(&Way) -> Option<Price>);

fn of_costs(way: &Way, of: fn(&Costs) -> Price) -> Option<Price> {
    way.costs.as_ref().map(of)
}

const SUMS: [Sum; 19] = [
    ("Material", |way| of_costs(way, |it| it.material)),
    ("Own hours", |way| of_costs(way, |it| it.labor)),
    ("Helper", |way| of_costs(way, |it| it.helper)),
    ("Hours on the road", |way| of_costs(way, |it| it.road)),
    ("Driving", |way| of_costs(way, |it| it.driving)),
    ("Hire", |way| of_costs(way, |it| it.hire)),
    ("Paid to others", |way| of_costs(way, |it| it.fees)),
    ("Tax on what is bought", |way| {
        of_costs(way, |it| it.tax_on_bought)
    }),
    ("Direct cost", |way| of_costs(way, |it| it.direct)),
    ("Risk", |way| of_costs(way, |it| it.risk)),
    ("Overhead", |way| of_costs(way, |it| it.overhead)),
    ("All cost", |way| of_costs(way, |it| it.cost)),
    ("Profit wanted", |way| of_costs(way, |it| it.profit)),
    ("Least price", |way| of_costs(way, |it| it.least)),
    ("Price", |way| way.price),
    ("Price over the least", |way| way.spare),
    ("Price below the least", |way| way.short),
    ("Tax on the price", |way| way.tax),
    ("Customer pays", |way| way.total),
];

fn sums(offered: &Offered) -> Table {
    let currency = offered.ways.iter().find_map(|way| way.price);
    let currency = currency
        .map(|price| price.currency().to_owned())
        .unwrap_or_default();
    let mut columns = vec![Column::words("Sum", 50)];
    columns.extend(
        offered
            .ways
            .iter()
            .map(|way| Column::numbers(&way.name, &currency, 30)),
    );
    let row = |(label, of): &Sum| {
        let mut row = vec![Cell::text(*label)];
        row.extend(offered.ways.iter().map(|way| match of(way) {
            None if label.starts_with("Price ") => Cell::text(""),
            price => cell(price),
        }));
        row
    };
    Table {
        title: "Margin".to_owned(),
        note: format!("For the owner of the business only. {ROUNDING}"),
        columns,
        rows: SUMS.iter().map(row).collect(),
    }
}

fn bill(way: &Way) -> Table {
    Table {
        title: format!("Bill, {}", way.name),
        note: "Pieces with waste and spares; the cost is that of the pieces that the job takes, also where whole packs are bought.".to_owned(),
        columns: vec![
            Column::words("Entry", 28),
            Column::words("What", 60),
            Column::numbers("Pieces", "", 16),
            Column::numbers("Pack", "", 14),
            Column::numbers("Pack price", "", 20),
            Column::numbers("Cost", "", 22),
            Column::numbers("On the van", "", 16),
            Column::numbers("Packs to buy", "", 18),
            Column::words("Supplier", 36),
            Column::numbers("Lead time", "days", 16),
            Column::words("Needed", 22),
            Column::words("How it stands", 24),
            Column::words("For", 80),
        ],
        rows: way.bill.lines.iter().map(row).collect(),
    }
}

fn row(line: &Line) -> Vec<Cell> {
    vec![
        line.item
            .as_ref()
            .map_or_else(|| Cell::unknown("no entry"), Cell::text),
        Cell::text(line.what.as_str()),
        whole(line.pieces),
        Cell::number(f64::from(line.pack), 0),
        line.pack_price
            .map_or_else(|| Cell::text(""), |price| cell(Some(price))),
        cell(line.cost),
        Cell::number(f64::from(line.on_van), 0),
        whole(line.to_buy),
        line.supplier
            .as_ref()
            .map_or_else(|| Cell::unknown("from whom"), Cell::text),
        line.lead_days.map_or_else(
            || Cell::unknown("ask"),
            |days| Cell::number(f64::from(days), 0),
        ),
        Cell::text(line.needed.clone().unwrap_or_default()),
        Cell::text(stands(line)),
        Cell::text(line.things.join(", ")),
    ]
}

/// How a line of the bill stands, in words.
pub(crate) fn stands(line: &Line) -> String {
    match line.state {
        LineState::OnVan => "on the van".to_owned(),
        LineState::Ordered => line
            .due
            .as_ref()
            .map_or_else(|| "ordered".to_owned(), |due| format!("comes {due}")),
        LineState::ToOrder => "to be ordered".to_owned(),
        LineState::Late => line
            .due
            .as_ref()
            .map_or_else(|| "too late".to_owned(), |due| format!("too late: {due}")),
        LineState::Short => "too few ordered".to_owned(),
        LineState::Unknown => "not known".to_owned(),
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "counts of pieces are far below what a double holds"
)]
fn whole(count: Option<u64>) -> Cell {
    count.map_or_else(
        || Cell::unknown("measure"),
        |count| Cell::number(count as f64, 0),
    )
}

#[allow(
    clippy::cast_precision_loss,
    reason = "minutes of a job are far below what a double holds"
)]
fn in_hours(minutes: u64) -> Cell {
    Cell::number(minutes as f64 / 60.0, 2)
}

fn hours(labor: &[LaborLine]) -> Table {
    let row = |line: &LaborLine| {
        vec![
            Cell::text(line.task.as_str()),
            Cell::text(line.what.as_str()),
            Cell::text(line.kind.clone().unwrap_or_default()),
            in_hours(line.planned),
            in_hours(line.minutes),
            in_hours(line.helper),
            whole(u64::try_from(line.jobs).ok()),
        ]
    };
    Table {
        title: "Hours by task".to_owned(),
        note: "Planned hours times what such work took over what was planned for it, over all jobs on record.".to_owned(),
        columns: vec![
            Column::words("Task", 30),
            Column::words("What", 60),
            Column::words("Sort of work", 30),
            Column::numbers("Planned", "h", 18),
            Column::numbers("At real speed", "h", 20),
            Column::numbers("Helper", "h", 18),
            Column::numbers("Jobs on record", "", 20),
        ],
        rows: labor.iter().map(row).collect(),
    }
}

fn record(speeds: &[Speed]) -> Table {
    let row = |speed: &Speed| {
        vec![
            Cell::text(speed.kind.as_str()),
            whole(u64::try_from(speed.jobs).ok()),
            in_hours(speed.planned),
            in_hours(speed.took),
        ]
    };
    Table {
        title: "Record of hours".to_owned(),
        note:
            "Write down what each task took when the job is closed: the next offer reckons with it."
                .to_owned(),
        columns: vec![
            Column::words("Sort of work", 40),
            Column::numbers("Jobs", "", 16),
            Column::numbers("Planned", "h", 20),
            Column::numbers("Took", "h", 20),
        ],
        rows: speeds.iter().map(row).collect(),
    }
}
