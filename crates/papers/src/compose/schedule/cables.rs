//! The cable schedule.

use super::cells::{count, length_cell, length_column, names, words};
use crate::view::{Cell, Column, Table};
use design::power::PowerShown;
use design::wiring::landed;
use quantity::units::electric_potential::volt;
use site::{Cable, Site};

/// Every cable, by its number.
pub(super) fn table(site: &Site, power: &PowerShown) -> Table {
    let units = site.site.unit_system();
    let landed = landed(site);
    let used = |cable: &Cable| {
        let of_it = landed.iter().filter(|core| core.cable.id == cable.id);
        let cores: Vec<_> = of_it.collect();
        if cores.is_empty() {
            return Cell::text("");
        }
        let used = cores.iter().filter(|core| !core.spare).count();
        count(u32::try_from(used).ok())
    };
    let lowest = |cable: &Cable| {
        let mut loads = power.loads.iter();
        let load = loads.find(|load| load.cable.as_deref() == Some(cable.id.as_str()));
        load.and_then(|load| load.lowest).map_or_else(
            || Cell::text(""),
            |voltage| Cell::number(voltage.get::<volt>(), 1),
        )
    };
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
                used(cable),
                words(cable.size.as_ref()),
                length_cell(cable.length.as_ref(), units),
                names(&cable.route),
                lowest(cable),
                words(cable.part.as_ref()),
                words(cable.note.as_ref()),
            ]
        })
        .collect();
    Table {
        title: "Cable schedule".to_owned(),
        note: "Every cable keeps its number through every revision. Lengths are from end to end, slack included; the lowest voltage is that at the load, with every value at the bad end of its tolerance.".to_owned(),
        columns: vec![
            Column::words("Cable", 20),
            Column::words("From", 26),
            Column::words("To", 26),
            Column::words("Carries", 18),
            Column::numbers("Cores", "", 12),
            Column::numbers("Used", "", 11),
            Column::words("Size", 18),
            length_column("Length", units, 15),
            Column::words("Through", 34),
            Column::numbers("Lowest at its end", "V", 15),
            Column::words("Part", 30),
            Column::words("Remarks", 40),
        ],
        rows,
    }
}
