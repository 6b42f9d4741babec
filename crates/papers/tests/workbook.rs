//! The workbook comes out the same twice, and is a package of sheets.
#![allow(clippy::expect_used, reason = "a test that cannot go on says so")]

use crate::invented;
use crate::invented::keep;
use papers::workbook::workbook;

#[test]
fn the_same_tables_give_the_same_bytes() {
    let view = invented::pack();
    let first = workbook(&view.document, &view.schedules).expect("the workbook is written");
    let second = workbook(&view.document, &view.schedules).expect("the workbook is written");
    keep(&first, "schedules.xlsx");
    assert!(first == second, "two runs differ");
}

#[test]
fn the_workbook_has_a_sheet_for_each_table_and_one_more() {
    let view = invented::pack();
    let bytes = workbook(&view.document, &view.schedules).expect("the workbook is written");
    assert!(bytes.starts_with(b"PK"));
    for number in 1..=view.schedules.len() + 1 {
        let name = format!("xl/worksheets/sheet{number}.xml");
        assert!(
            bytes
                .windows(name.len())
                .any(|window| window == name.as_bytes()),
            "{name} is missing"
        );
    }
}

#[test]
fn another_day_gives_other_bytes() {
    let view = invented::pack();
    let mut later = view.document.clone();
    later.day = papers::view::Day::new(2026, 11, 26).expect("a day that exists");
    let first = workbook(&view.document, &view.schedules).expect("the workbook is written");
    let second = workbook(&later, &view.schedules).expect("the workbook is written");
    assert!(first != second, "the day is in the file");
}
