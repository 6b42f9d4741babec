//! Documents beside the pack: tables that are too long for it, with the drawings that belong to them.

use super::{changes, revision, schedule};
use crate::sheets::{Imprint, NamedDrawing, Planned, on_its_sheets};
use crate::view::{CAUTION_LINE, DrawingView, Table};
use crate::{cutting, pulling, terminals};
use site::Site;

/// A document beside the pack.
#[derive(Debug, Clone)]
pub struct Beside {
    /// Name of its file, without the ending.
    pub name: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What one finds in it.
    pub what: &'static str,
    /// The tables.
    pub tables: Vec<Table>,
    /// Its drawings as they stand in it.
    pub sheets: Vec<DrawingView>,
    /// The same, also for SVG and DXF files of their own.
    pub drawings: Vec<NamedDrawing>,
}

/// What each document holds, before anything is drawn.
struct Contents {
    name: &'static str,
    title: &'static str,
    what: &'static str,
    tables: fn(&Site) -> Vec<Table>,
    planned: fn(&Site) -> Vec<Planned>,
}

const ALL: [Contents; 5] = [
    Contents {
        name: "bill",
        title: "Bill of quantities",
        what: "everything that is built in and used up, without prices",
        tables: schedule::bill,
        planned: |_| Vec::new(),
    },
    Contents {
        name: "wiring",
        title: "Wiring",
        what: "every core with both its terminals, and the plan of the terminals, drawn",
        tables: schedule::wiring::tables,
        planned: terminals::planned,
    },
    Contents {
        name: "signs",
        title: "Signs",
        what: "where each sign hangs, what it has to tell, and in which letters",
        tables: schedule::signs::tables,
        planned: |_| Vec::new(),
    },
    Contents {
        name: "cutting",
        title: "Cut list",
        what: "what is cut from which bar and reel, letter by letter, drawn",
        tables: cutting::tables,
        planned: cutting::planned,
    },
    Contents {
        name: "pulls",
        title: "Pulls",
        what: "where each cable is fed and pulled, with how much, plotted",
        tables: pulling::tables,
        planned: pulling::planned,
    },
];

impl Contents {
    /// Its tables; what has changed since an earlier issue is marked.
    fn tables(&self, site: &Site, since: Option<&Site>) -> Vec<Table> {
        let tables = (self.tables)(site);
        match since {
            None => tables,
            Some(before) => changes::marked(tables, &(self.tables)(before), &revision(before)),
        }
    }
}

/// The tables of every document.
pub(super) fn tables(site: &Site, since: Option<&Site>) -> Vec<Table> {
    let all = ALL.iter();
    all.flat_map(|contents| contents.tables(site, since))
        .collect()
}

/// Every document that has a table. Fails only where a drawing cannot be laid out.
pub(super) fn all(
    site: &Site,
    since: Option<&Site>,
    imprint: &impl Fn(&str) -> Imprint,
) -> Result<Vec<Beside>, draw::DrawError> {
    let mut all = Vec::new();
    for contents in &ALL {
        let tables = contents.tables(site, since);
        if tables.is_empty() {
            continue;
        }
        let planned = (contents.planned)(site);
        let sheets = on_its_sheets(site, &imprint(""), &planned)?;
        all.push(Beside {
            name: contents.name,
            title: contents.title,
            what: contents.what,
            tables,
            sheets: sheets
                .iter()
                .map(|sheet| super::sheet_view(&sheet.drawing))
                .collect(),
            drawings: on_its_sheets(site, &imprint(CAUTION_LINE), &planned)?,
        });
    }
    Ok(all)
}
