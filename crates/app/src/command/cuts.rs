//! `gatewright choose cuts` and `gatewright choose reels`: what is cut from what for the least cost.

use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::cut_plan;
use design::cutting::{CutBar, CutSheet, bar_sheets, reel_sheets};
use quantity::{Length, Quantity as _, UnitSystem, print};
use serde_json::{Value, json};
use site::{Loaded, Site};
use std::path::Path;

/// What is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stock {
    /// Bars, rods, tube, track and rack.
    Bars,
    /// Cable on reels.
    Reels,
}

impl Stock {
    fn sheets(self, site: &Site) -> Vec<CutSheet> {
        match self {
            Self::Bars => bar_sheets(site),
            Self::Reels => reel_sheets(site),
        }
    }

    fn none(self) -> &'static str {
        match self {
            Self::Bars => {
                "This site cuts nothing from bars. Write each kind as [[bar_stock]] with its lengths, and what is cut from it."
            }
            Self::Reels => {
                "This site cuts nothing from reels. Write each kind as [[cable_reels]] with the reels that can be had."
            }
        }
    }
}

/// Cuts every stock of a site for the least cost.
pub(super) fn run(stock: Stock, site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let Loaded { site, problems } = Folder::read(site)?.load();
    let Some(site) = site else {
        complain(&problems);
        return Ok(Outcome::BadInput);
    };
    let sheets = stock.sheets(&site);
    if sheets.is_empty() {
        return Err(Complaint(stock.none().to_owned()));
    }
    let units = site.site.unit_system();
    if as_json {
        let all: Vec<Value> = sheets.iter().map(|sheet| told(sheet, units)).collect();
        say(&format_args!("{:#}", json!(all)));
    } else {
        say(&cut_plan(&sheets, units));
    }
    let least = |sheet: &CutSheet| sheet.least && !sheet.bars.is_empty();
    Ok(if sheets.iter().all(least) {
        Outcome::Holds
    } else {
        Outcome::Open
    })
}

fn told(sheet: &CutSheet, units: UnitSystem) -> Value {
    let length = |length: Length| json!({ "text": print(length, units), "si": length.base() });
    let bar = |bar: &CutBar| {
        let piece =
            |(what, long): &(String, Length)| json!({ "for": what, "length": length(*long) });
        json!({
            "times": bar.times,
            "length": length(bar.length),
            "there": bar.there,
            "trim": length(bar.trim),
            "pieces": bar.pieces.iter().map(piece).collect::<Vec<_>>(),
            "left": length(bar.left),
            "kept": bar.kept,
        })
    };
    json!({
        "stock": sheet.id,
        "what": sheet.what,
        "kerf": length(sheet.kerf),
        "cuts": sheet.bars.iter().map(bar).collect::<Vec<_>>(),
        "cost": sheet.cost,
        "least": sheet.least,
        "proof": sheet.proof,
        "worths": sheet.worths,
        "write": sheet.write,
    })
}
