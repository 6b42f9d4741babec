//! What is cut from which bar or reel, and the proof that nothing costs less.

use super::{width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::cutting::{CutBar, CutSheet};
use quantity::{Length, Quantity as _, UnitSystem, print};

const FOOTER: &str = "Measure twice on site before anything is cut: lengths here are those of the site file. Wear eye and ear protection, \
clamp the bar, and let the saw stop before the piece is taken away.";

/// Every stock with its cuts.
pub(crate) fn cut_plan(sheets: &[CutSheet], units: UnitSystem) -> String {
    let mut lines = Vec::new();
    for sheet in sheets {
        lines.push(format!(
            "{}  {}",
            paint(&sheet.id, touchable()),
            paint(&sheet.what, strong())
        ));
        lines.extend(sheet.bars.iter().map(|bar| one(bar, units)));
        if !sheet.cost.is_empty() {
            lines.push(format!("  {}", paint(&sheet.cost, strong())));
        }
        lines.push(paint(wrapped(&sheet.proof, 2, width()), quiet()));
        if !sheet.worths.is_empty() {
            let one = |(what, worth): &(String, String)| format!("{what} {worth}");
            let worths: Vec<String> = sheet.worths.iter().map(one).collect();
            let worths = format!("Worths: {}.", worths.join("; "));
            lines.push(paint(wrapped(&worths, 2, width()), quiet()));
        }
        if !sheet.write.is_empty() {
            lines.push("  Write".to_owned());
            lines.extend(sheet.write.iter().map(|line| format!("    {line}")));
        }
        lines.push(String::new());
    }
    lines.push(paint(wrapped(FOOTER, 0, width()), quiet()));
    lines.join("\n")
}

fn one(bar: &CutBar, units: UnitSystem) -> String {
    let pieces: Vec<String> = counted(&bar.pieces)
        .into_iter()
        .map(|(count, what, length)| {
            let times = if count == 1 {
                String::new()
            } else {
                format!("{count} × ")
            };
            format!("{times}{} ({what})", print(length, units))
        })
        .collect();
    let left = match bar.kept {
        _ if bar.left.base() <= 0.0 => String::new(),
        Some(true) => format!("; {} left, keep", print(bar.left, units)),
        Some(false) => format!("; {} left, scrap", print(bar.left, units)),
        None => format!("; {} left", print(bar.left, units)),
    };
    let there = if bar.there { ", there already" } else { "" };
    let text = format!(
        "{} × {}{there}: {}{left}",
        bar.times,
        print(bar.length, units),
        pieces.join(", ")
    );
    wrapped(&text, 2, width())
}

/// Pieces alike that lie beside one another, counted.
fn counted(pieces: &[(String, Length)]) -> Vec<(u32, &str, Length)> {
    let mut runs: Vec<(u32, &str, Length)> = Vec::new();
    for (what, length) in pieces {
        match runs.last_mut() {
            Some((count, last, long)) if *last == what && long == length => *count += 1,
            _ => runs.push((1, what, *length)),
        }
    }
    runs
}
