//! The hazard zones of every gate, numbered as on its drawings, with what protects there and what is missing.

use crate::hazard::words::{means, missing};
use crate::view::{Cell, Column, Table};
use design::zone::{Guarded, Live, ShownZone, shown};
use quantity::UnitSystem;
use site::{Direction, Gate, Site};

/// One row for each zone and each direction in which it is live.
pub(super) fn table(site: &Site) -> Table {
    let units = site.site.unit_system();
    let rows = site.gate.iter().flat_map(|gate| {
        let zones = shown(site, gate);
        let numbered = zones.iter().enumerate();
        numbered
            .flat_map(|(index, zone)| rows(gate, (index + 1, zone), units))
            .collect::<Vec<_>>()
    });
    Table {
        title: "Hazard zones".to_owned(),
        note: "Places where the moving leaf can catch somebody, as far as the site file holds what stands there, at the values as written. The numbers are those of the drawings. A place that is not listed is not a safe one: the gate is looked over on site before it moves.".to_owned(),
        columns: vec![
            Column::words("Gate", 16),
            Column::words("Zone", 10),
            Column::words("Where", 46),
            Column::words("Least gap", 18),
            Column::words("It can crush", 40),
            Column::words("While", 16),
            Column::words("Seen or felt by", 44),
            Column::words("Protection", 40),
        ],
        rows: rows.collect(),
    }
}

fn rows(gate: &Gate, (number, zone): (usize, &ShownZone), units: UnitSystem) -> Vec<Vec<Cell>> {
    let row = |live: &Live| {
        vec![
            Cell::text(gate.id.to_string()),
            Cell::text(number.to_string()),
            Cell::text(zone.place.as_str()),
            Cell::text(quantity::print(zone.least_gap, units)),
            Cell::text(zone.parts.as_str()),
            Cell::text(match live.direction {
                Direction::Opening => "opening",
                Direction::Closing => "closing",
            }),
            Cell::text(means(live)),
            match live.guarded {
                Guarded::AsAsked => Cell::text("as asked"),
                Guarded::Lacks(_) => Cell::text(missing(live)),
                Guarded::NotKnown => Cell::unknown("facts are missing"),
            },
        ]
    };
    zone.live.iter().map(row).collect()
}
