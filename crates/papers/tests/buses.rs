//! The tables of reader buses: every place in order along its line, and what is missing shown as not known.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, example};
use papers::compose::schedules;
use papers::view::{Cell, Table};
use site::Site;

fn table(site: &Site, title: &str) -> Option<Table> {
    schedules(site)
        .into_iter()
        .find(|table| table.title.starts_with(title))
}

#[test]
fn each_place_stands_in_order_with_its_resistors() {
    let places = table(&example("boatyard"), "Reader bus, along the line").unwrap();
    let devices: Vec<String> = places.rows.iter().map(|row| row[1].printed()).collect();
    assert_eq!(
        devices,
        ["controller-access", "keypad-entry", "reader-entry"]
    );
    let across: Vec<String> = places.rows.iter().map(|row| row[8].printed()).collect();
    assert_eq!(across, ["120", "", "120"]);
    assert_eq!(places.rows[0][9].printed(), "470");
    assert!(
        places
            .rows
            .iter()
            .all(|row| row.len() == places.columns.len())
    );
}

#[test]
fn the_line_tells_its_idle_voltage_and_its_times() {
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let lines = table(&example(name), "Reader bus, line and times").unwrap();
        let known = |cell: &Cell| !matches!(cell, Cell::Unknown(_));
        assert!(lines.rows[0].iter().all(known), "{name}: {:?}", lines.rows);
    }
}

#[test]
fn what_nobody_measured_is_not_known_and_no_bus_has_no_table() {
    let site = changed("clinic", |text| text.replacen("stub = \"0 m\"\n", "", 1));
    let places = table(&site, "Reader bus, along the line").unwrap();
    assert!(matches!(places.rows[0][6], Cell::Unknown(_)));
    let bare = changed("clinic", |text| {
        let Some(start) = text.find("[[bus]]") else {
            return text.clone();
        };
        let tables = text[start..].match_indices("\n[[");
        let mut after = tables.filter(|(at, _)| !text[start + at..].starts_with("\n[[bus"));
        let end = start + after.next().unwrap().0;
        format!("{}{}", &text[..start], &text[end..])
    });
    assert!(table(&bare, "Reader bus").is_none());
}
