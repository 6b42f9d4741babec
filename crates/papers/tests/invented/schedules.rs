//! A device schedule upright, a cable schedule too wide for that, and an empty one.

use papers::view::{Align, Cell, Column, Table};

pub(crate) fn all() -> Vec<Table> {
    vec![devices(), cables(), conduits()]
}

fn devices() -> Table {
    Table {
        title: "Device schedule".to_owned(),
        note: "Heights are above the finished surface at the gate line.".to_owned(),
        columns: vec![
            Column {
                align: Align::Center,
                ..Column::words("No.", 12)
            },
            Column::words("Device", 46),
            Column::words("Guards", 40),
            Column::numbers("Height", "in", 16),
            Column::numbers("Supply", "V", 16),
            Column::numbers("Current", "A", 18),
            Column::words("Cable", 16),
        ],
        rows: (1..=28).map(device).collect(),
    }
}

fn device(number: u32) -> Vec<Cell> {
    let current = if number % 9 == 4 {
        Cell::unknown("read nameplate")
    } else {
        Cell::number(0.035 * f64::from(number), 3)
    };
    vec![
        Cell::text(format!("D{number}")),
        Cell::text(
            [
                "Through-beam photo-eye, monitored",
                "Contact edge",
                "Reader on pedestal",
                "Camera",
            ][number as usize % 4],
        ),
        Cell::text(
            [
                "Closing, leading edge",
                "Opening, trailing edge",
                "–",
                "Lane in",
            ][number as usize % 4],
        ),
        Cell::number(21.5 + f64::from(number % 3), 1),
        Cell::number(24.0, 0),
        current,
        Cell::text(format!("W{number}")),
    ]
}

fn cables() -> Table {
    Table {
        title: "Cable schedule".to_owned(),
        note: "Lengths are cut lengths: run, slack at both ends, and the vertical parts."
            .to_owned(),
        columns: vec![
            Column {
                align: Align::Center,
                ..Column::words("Cable", 14)
            },
            Column::words("From", 34),
            Column::words("To", 34),
            Column::words("Type", 40),
            Column::numbers("Cores", "", 13),
            Column::words("Size", 18),
            Column::words("Route", 28),
            Column::numbers("Run", "ft", 16),
            Column::numbers("Cut length", "ft", 18),
            Column::numbers("Lost", "V", 14),
            Column::words("Remark", 34),
        ],
        rows: (1..=41).map(cable).collect(),
    }
}

fn cable(number: u32) -> Vec<Cell> {
    let run = 18.0 + 7.25 * f64::from(number % 17);
    let lost = if number % 11 == 3 {
        Cell::unknown("current?")
    } else {
        Cell::number(run * 0.006, 2)
    };
    vec![
        Cell::text(format!("W{number}")),
        Cell::text("Enclosure N1, terminal strip X2"),
        Cell::text(
            [
                "Reader R1",
                "Photo-eye E1, receiver",
                "Camera C1",
                "Operator, input 4",
            ][number as usize % 4],
        ),
        Cell::text(
            [
                "Shielded, twisted pairs, wet location",
                "Data, category 6, gel-filled, for burial",
            ][number as usize % 2],
        ),
        Cell::number(f64::from(2 + number % 7), 0),
        Cell::text(["18 AWG", "22 AWG", "23 AWG"][number as usize % 3]),
        Cell::text(["Conduit 2, handhole H1", "Conduit 4"][number as usize % 2]),
        Cell::number(run, 1),
        Cell::number((run * 1.05 + 6.0).ceil(), 0),
        lost,
        Cell::text(if number.is_multiple_of(6) {
            "Pull with W3; end-of-line resistor at the far end"
        } else {
            ""
        }),
    ]
}

fn conduits() -> Table {
    Table {
        title: "Spare conduits".to_owned(),
        note: String::new(),
        columns: vec![
            Column::words("Conduit", 20),
            Column::numbers("Length", "ft", 20),
        ],
        rows: Vec::new(),
    }
}
