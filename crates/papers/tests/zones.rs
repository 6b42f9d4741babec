//! The schedule of hazard zones: one row for each zone and direction, with what protects there and what is missing.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, example, read};
use papers::compose::schedules;
use papers::view::Cell;
use site::Site;
use std::fmt::Write as _;

fn table(site: &Site) -> String {
    let all = schedules(site);
    let Some(table) = all.iter().find(|table| table.title == "Hazard zones") else {
        return String::new();
    };
    let heads: Vec<&str> = table.columns.iter().map(|it| it.heading.as_str()).collect();
    let mut shown = heads.join(" | ");
    for row in &table.rows {
        let cells: Vec<String> = row.iter().map(Cell::printed).collect();
        write!(shown, "\n{}", cells.join(" | ")).unwrap();
    }
    shown
}

#[test]
fn every_zone_of_the_good_sites_is_protected_as_asked() {
    let mut shown = String::new();
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let table = table(&example(name));
        let rows = table.lines().skip(1);
        for row in rows.clone() {
            assert!(row.ends_with("as asked"), "{name}: {row}");
        }
        write!(shown, "── {name}\n{table}\n\n").unwrap();
    }
    insta::assert_snapshot!(shown);
}

#[test]
fn what_is_missing_stands_in_the_row() {
    let bare = changed("boatyard-faulty", |text| {
        text.replace("inherent_sensing = true", "inherent_sensing = false")
    });
    assert!(table(&bare).contains("nothing | "), "{}", table(&bare));
    assert!(table(&bare).contains("means of different types"));
}

#[test]
fn a_site_without_zones_has_no_such_schedule() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
    assert_eq!(table(&read(text)), "");
}
