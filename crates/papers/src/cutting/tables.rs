//! The cut list: what is cut from what, where the saw is set, and what is left.

use super::letters::{letter_of, lettered};
use crate::view::{Cell, Column, Table};
use design::cutting::{CutBar, CutSheet, bar_sheets, reel_sheets};
use quantity::{Length, Quantity as _, UnitSystem, print};
use site::Site;

/// The lists of a site, those that have a row.
pub(crate) fn tables(site: &Site) -> Vec<Table> {
    let units = site.site.unit_system();
    let (bars, reels) = (bar_sheets(site), reel_sheets(site));
    let tables = [
        stock(&bars, "Bars to cut"),
        cuts(&bars, units),
        pieces(&bars, units),
        stock(&reels, "Reels to cut"),
        runs(&reels, units),
    ];
    tables
        .into_iter()
        .filter(|table| !table.rows.is_empty())
        .collect()
}

/// What is cut, what it costs, and how it is known that nothing costs less.
fn stock(sheets: &[CutSheet], title: &str) -> Table {
    let row = |sheet: &CutSheet| {
        let bars: u32 = sheet.bars.iter().map(|bar| bar.times).sum();
        let open = sheet.bars.is_empty();
        vec![
            Cell::text(sheet.id.clone()),
            Cell::text(sheet.what.clone()),
            if open {
                Cell::unknown(sheet.write.first().map_or("no plan", String::as_str))
            } else {
                Cell::number(f64::from(bars), 0)
            },
            Cell::text(sheet.cost.clone()),
            Cell::text(sheet.proof.clone()),
        ]
    };
    Table {
        title: title.to_owned(),
        note: "The least cost at which every piece can be cut. Where it is proved, no other way to cut them costs less.".to_owned(),
        columns: vec![
            Column::words("Stock", 32),
            Column::words("What it is", 44),
            Column::numbers("Cut", "", 12),
            Column::words("Cost", 24),
            Column::words("How that is known", 96),
        ],
        rows: sheets.iter().map(row).collect(),
    }
}

/// Every cut with the places of the saw.
fn cuts(sheets: &[CutSheet], units: UnitSystem) -> Table {
    let mut rows = Vec::new();
    for sheet in sheets {
        let letters = lettered(sheet);
        for (at, bar) in sheet.bars.iter().enumerate() {
            let pieces = bar.pieces.iter().map(|(what, length)| {
                let letter = letter_of(&letters, what, *length).unwrap_or_default();
                format!("{letter} {}", print(*length, units))
            });
            rows.push(vec![
                Cell::text(sheet.id.clone()),
                Cell::text(format!("{}", at + 1)),
                Cell::number(f64::from(bar.times), 0),
                Cell::text(print(bar.length, units)),
                Cell::text(repeated(&pieces.collect::<Vec<_>>())),
                Cell::text(repeated(&steps(sheet, bar, units))),
                Cell::text(print(bar.left, units)),
                Cell::text(left(bar)),
            ]);
        }
    }
    Table {
        title: "Cuts".to_owned(),
        note: "Square and trim the first end, then cut piece by piece and measure each from the fresh end. Where a tape stays hooked at the end before it was trimmed, the far edge of each piece lies at the mark given: trimmed end and saw cuts are in it. The saw's width goes into the waste, never into the piece.".to_owned(),
        columns: vec![
            Column::words("Stock", 32),
            Column::words("Cut", 10),
            Column::numbers("Times", "", 12),
            Column::words("From", 20),
            Column::words("Pieces in order", 64),
            Column::words("Far edge of each, on the tape", 62),
            Column::words("Left", 22),
            Column::words("What is left", 24),
        ],
        rows,
    }
}

/// Every reel with the runs that come off it, each in one piece.
fn runs(sheets: &[CutSheet], units: UnitSystem) -> Table {
    let mut rows = Vec::new();
    for sheet in sheets {
        for bar in &sheet.bars {
            let run =
                |(what, length): &(String, Length)| format!("{what} {}", print(*length, units));
            let worth = |(what, _): &(String, Length)| {
                let known = sheet.worths.iter().find(|(other, _)| other == what);
                known.map(|(what, worth)| format!("{what} {worth}"))
            };
            let worths: Vec<String> = bar.pieces.iter().filter_map(worth).collect();
            rows.push(vec![
                Cell::text(sheet.id.clone()),
                Cell::number(f64::from(bar.times), 0),
                Cell::text(print(bar.length, units)),
                Cell::text(if bar.there { "on the van" } else { "bought" }),
                Cell::text(bar.pieces.iter().map(run).collect::<Vec<_>>().join(", ")),
                Cell::text(print(bar.left, units)),
                Cell::text(worths.join(", ")),
            ]);
        }
    }
    Table {
        title: "Runs off each reel".to_owned(),
        note: "Each run in one piece, its spare at both ends in its length. Cut a run only after it is pulled, unless it is fed from a loose coil.".to_owned(),
        columns: vec![
            Column::words("Reel", 36),
            Column::numbers("Times", "", 12),
            Column::words("From", 22),
            Column::words("Where from", 24),
            Column::words("Runs in order", 110),
            Column::words("Left on it", 24),
            Column::words("Worths in the proof", 60),
        ],
        rows,
    }
}

/// Each piece with its letter.
fn pieces(sheets: &[CutSheet], units: UnitSystem) -> Table {
    let mut rows = Vec::new();
    for sheet in sheets {
        for piece in lettered(sheet) {
            let worth = sheet.worths.iter().find(|(what, _)| *what == piece.what);
            rows.push(vec![
                Cell::text(sheet.id.clone()),
                Cell::text(piece.letter),
                Cell::text(piece.what),
                Cell::text(print(piece.length, units)),
                Cell::number(f64::from(piece.count), 0),
                Cell::text(worth.map_or("", |(_, worth)| worth)),
            ]);
        }
    }
    Table {
        title: "Pieces".to_owned(),
        note: "Mark each piece with its letter as it is cut. Worths are the proof: no bar holds pieces worth more than it costs.".to_owned(),
        columns: vec![
            Column::words("Stock", 32),
            Column::words("Letter", 14),
            Column::words("For", 90),
            Column::words("Length", 24),
            Column::numbers("Pieces", "", 14),
            Column::words("Worth in the proof", 28),
        ],
        rows,
    }
}

/// Where the far edge of each piece lies from the end of the bar before it was trimmed.
fn steps(sheet: &CutSheet, bar: &CutBar, units: UnitSystem) -> Vec<String> {
    let mut at = bar.trim.base();
    let mut edge = |(_, length): &(String, Length)| {
        at += length.base();
        let shown = print(Length::from_base(at), units);
        at += sheet.kerf.base();
        shown
    };
    bar.pieces.iter().map(&mut edge).collect()
}

/// Three of the same as `3 × A 4 ft`.
fn repeated(words: &[String]) -> String {
    let mut runs: Vec<(usize, &String)> = Vec::new();
    for word in words {
        match runs.last_mut() {
            Some((count, last)) if *last == word => *count += 1,
            _ => runs.push((1, word)),
        }
    }
    let one = |(count, word): &(usize, &String)| match count {
        1 => (*word).clone(),
        count => format!("{count} × {word}"),
    };
    runs.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// What becomes of the rest.
fn left(bar: &CutBar) -> &'static str {
    match bar.kept {
        _ if bar.left.base() <= 0.0 => "",
        Some(true) => "keep it",
        Some(false) => "scrap",
        None => "",
    }
}

#[cfg(test)]
mod tests {
    use super::repeated;

    #[test]
    fn pieces_alike_are_counted() {
        let words = ["A 4 ft", "A 4 ft", "B 2 ft"].map(str::to_owned);
        assert_eq!(repeated(&words), "2 × A 4 ft, B 2 ft");
    }
}
