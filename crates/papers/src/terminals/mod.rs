//! The plan of the terminals, drawn: every strip as a column of its terminals, at the left what comes from outside, at the
//! right what stays in the enclosure.

mod blocks;
mod drawn;

use crate::sheets::Planned;
use blocks::{Column, columns};
use draw::{North, ScaleChoice};
use quantity::{Quantity as _, Ratio};
use site::Site;

/// Width of all columns of a sheet, and clear paper between two (mm).
const SHEET: f64 = 390.0;
const BETWEEN: f64 = 8.0;

/// The plan on as many sheets as it takes; none where no terminals are described.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let sheets = sheets(columns(site));
    let count = sheets.len();
    let planned = sheets.into_iter().enumerate().map(|(at, columns)| Planned {
        name: if count == 1 {
            "terminals".to_owned()
        } else {
            format!("terminals-{}", at + 1)
        },
        scene: drawn::scene(&columns, site.site.unit_system(), (at + 1, count)),
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: false,
    });
    planned.collect()
}

/// Columns beside each other while the paper lasts, each with where its left edge stands (mm).
fn sheets(columns: Vec<Column>) -> Vec<Vec<(f64, Column)>> {
    let mut sheets: Vec<Vec<(f64, Column)>> = Vec::new();
    let mut used = SHEET;
    for column in columns {
        let wide = column.width();
        if used + wide > SHEET {
            sheets.push(Vec::new());
            used = 0.0;
        }
        if let Some(sheet) = sheets.last_mut() {
            sheet.push((used, column));
        }
        used += wide + BETWEEN;
    }
    sheets
}
