//! An invented day sheet.

use papers::view::{DaySheetView, HangingRow, HangingView, LiftRow};

/// The sheet.
pub(crate) fn part() -> DaySheetView {
    DaySheetView {
        lifts: vec![LiftRow {
            what: "operator, out of the van onto its pad".to_owned(),
            mass: "71 lb".to_owned(),
            limit: "28 lb".to_owned(),
            index: "2.5".to_owned(),
            how: "with lifting table".to_owned(),
        }],
        hangings: vec![HangingView {
            title: "hang-leaf: leaf panel, 640 lb".to_owned(),
            wind: "Above a wind of 15 mph the work stops.".to_owned(),
            steps: vec![
                HangingRow {
                    what: "roll it onto the track".to_owned(),
                    holds: vec!["hoist: carries 1000 lbf".to_owned(), "strap".to_owned()],
                },
                HangingRow {
                    what: "set the guides".to_owned(),
                    holds: Vec::new(),
                },
            ],
            found: Vec::new(),
        }],
    }
}
