//! Anchors for each set of a site: every entry of the parts files in every pattern and depth, the cheapest that holds first.
//!
//! The search works each way to fail at the nominal values. What it finds is then put into the site, and every question
//! is asked again with all tolerances.

mod cost;
mod depth;
mod loaded;
mod pattern;
mod search;

use super::ruled_out::RuledOut;
use super::tried::{Candidate, Tried};
use crate::Finding;
use crate::answers::findings;
use crate::figure::Print;
pub(super) use loaded::sound_in;
use quantity::{Length, Quantity as _, Ratio};
use search::{Place, Search, Way};
use serde::Serialize;
use site::{Exchange, Site, SourceFile, load, load_exchanged, part_names};

/// How many ways are shown.
const SHOWN: usize = 5;
/// How many ways are put into the site before the search gives up.
const ASKED: usize = 40;
/// How many depths and spacings of like anchors are, before others come.
const ASKED_ALIKE: usize = 4;

/// The anchors for one set.
#[derive(Debug, Clone, Serialize)]
pub struct AnchorChoice {
    /// The set: `foundation "pad" · anchor 1`.
    pub set: String,
    /// What it holds, in the words of the site.
    pub holds: String,
    /// How many ways were tried.
    pub tried: usize,
    /// How many of them hold and keep every distance.
    pub holding: usize,
    /// The pattern stays as the site has it: the plate is in hand, or the site does not say enough to move anchors.
    pub pattern_stays: bool,
    /// What ruled the others out, the most frequent first.
    pub ruled_out: Vec<RuledOut>,
    /// The first of them in order.
    pub best: Vec<AnchorWay>,
    /// Lines that the site or a parts file lacks, or why no calculation reaches.
    pub write: Vec<String>,
}

/// One way to hold the plate.
#[derive(Debug, Clone, Serialize)]
pub struct AnchorWay {
    /// How the anchors stand, in words.
    pub pattern: String,
    /// How deep they go.
    pub embedment: String,
    /// How much of the strength is used that is used most.
    pub used: String,
    /// Which strength that is.
    pub used_of: &'static str,
    /// Lines for the set in the site file.
    pub write: Vec<String>,
    /// How it does when the whole site is asked.
    pub asked: Candidate,
}

/// Finds anchors for every set; nothing when the site cannot be read.
pub fn anchor_choices(main: &SourceFile, parts: &[SourceFile]) -> Option<Vec<AnchorChoice>> {
    let site = load(main.clone(), parts.to_vec()).site?;
    let names = part_names(parts, "anchor");
    let mut choices = Vec::new();
    for (foundation, one) in site.foundation.iter().enumerate() {
        for (anchor, set) in one.anchor.iter().enumerate() {
            let question = Question {
                main,
                parts,
                names: &names,
                path: &set.origin.path,
                place: Place { foundation, anchor },
                print: Print::new(site.site.unit_system()),
            };
            choices.push(question.choice(set.holds.as_str().to_owned()));
        }
    }
    Some(choices)
}

/// One set that asks for anchors.
struct Question<'a> {
    main: &'a SourceFile,
    parts: &'a [SourceFile],
    names: &'a [String],
    path: &'a str,
    place: Place,
    print: Print,
}

impl Question<'_> {
    fn choice(&self, holds: String) -> AnchorChoice {
        let bare = self.site_with(None);
        let mut search = self.search(bare.as_ref());
        search.holding.sort_by(Way::in_order);
        let bare = bare.map(|site| findings(&site)).unwrap_or_default();
        AnchorChoice {
            set: self.path.to_owned(),
            holds,
            tried: search.tried,
            holding: search.holding.len(),
            pattern_stays: search.pattern_stays,
            best: self.best(&search.holding, &bare),
            ruled_out: search.ruled_out.by_frequency(),
            write: search.write,
        }
    }

    /// Every way of every part.
    fn search(&self, bare: Option<&Site>) -> Search {
        let mut search = Search::default();
        let has_depth = |site: &Site| {
            let set = self.place.of(site);
            set.is_some_and(|(_, anchor)| anchor.embedment.is_some())
        };
        let own_depth = bare.is_some_and(has_depth);
        for (part, name) in self.names.iter().enumerate() {
            if let Some(mut site) = self.site_with(Some(name)) {
                let from_part = !own_depth && has_depth(&site);
                search.part(&mut site, self.place, (part, from_part));
            }
        }
        search
    }

    /// The first ways of each kind that hold when the whole site is asked; those that come nearest where none does.
    fn best(&self, holding: &[Way], bare: &[Finding]) -> Vec<AnchorWay> {
        let mut found: Vec<(Way, Tried)> = Vec::new();
        let mut all: Vec<&Way> = Vec::new();
        for way in holding {
            let sound = |tried: &Tried| tried.candidate.failing.is_empty();
            let like = found.iter().position(|(one, _)| is_like(one, way));
            if like.is_some_and(|at| sound(&found[at].1)) {
                continue;
            }
            let sounds = found.iter().filter(|(_, tried)| sound(tried)).count();
            if all.len() == ASKED || sounds == SHOWN {
                break;
            }
            if all.iter().filter(|one| is_like(one, way)).count() == ASKED_ALIKE {
                continue;
            }
            all.push(way);
            let Some(tried) = self.asked(way, bare) else {
                continue;
            };
            match like {
                Some(at) if sound(&tried) => found[at] = (*way, tried),
                Some(_) => {}
                None => found.push((*way, tried)),
            }
        }
        found.sort_by(|(_, a), (_, b)| Tried::in_order(a, b));
        found.truncate(SHOWN);
        found
            .into_iter()
            .map(|(way, tried)| self.shown(&way, tried.candidate))
            .collect()
    }

    /// The whole site asked with the way in it.
    fn asked(&self, way: &Way, bare: &[Finding]) -> Option<Tried> {
        let name = self.names.get(way.part)?;
        let mut site = self.site_with(Some(name))?;
        way.put(&mut site, self.place);
        Some(Tried::new(name, way.price, findings(&site), bare))
    }

    fn site_with(&self, part: Option<&String>) -> Option<Site> {
        let exchange = Exchange {
            path: self.path.to_owned(),
            part: part.cloned(),
        };
        load_exchanged(self.main.clone(), self.parts.to_vec(), &exchange).site
    }

    fn shown(&self, way: &Way, asked: Candidate) -> AnchorWay {
        AnchorWay {
            pattern: self.pattern(way),
            embedment: self.print.q(way.embedment),
            used: self.print.percent(Ratio::from_base(way.share)),
            used_of: way.mode,
            write: self.lines(way, &asked.part),
            asked,
        }
    }

    fn pattern(&self, way: &Way) -> String {
        let Some(rows) = &way.pattern else {
            return format!("{} as they stand", way.count);
        };
        let (apart, rows_apart) = (self.print.q(rows.spacing), self.print.q(rows.row_spacing));
        match (rows.in_row, rows.rows) {
            (1, 1) => "1".to_owned(),
            (count, 1) => format!("{count} in a row, {apart} apart"),
            (1, count) => format!("{count} one behind another, {rows_apart} apart"),
            (in_row, count) => {
                let all = in_row * count;
                format!("{all} in {count} rows, {apart} apart in the row, rows {rows_apart} apart")
            }
        }
    }

    /// What to write into the set.
    fn lines(&self, way: &Way, part: &str) -> Vec<String> {
        let mut lines = vec![format!("part = \"{part}\"")];
        if let Some(rows) = &way.pattern {
            lines.push(format!("count = {}", rows.count()));
            lines.push(format!("rows = {}", rows.rows));
            let mut spaced = |key: &str, count: u32, spacing: Length| {
                if count > 1 {
                    lines.push(format!("{key} = \"{}\"", self.print.q(spacing)));
                }
            };
            spaced("spacing", rows.in_row, rows.spacing);
            spaced("row_spacing", rows.rows, rows.row_spacing);
        }
        lines.push(format!("embedment = \"{}\"", self.print.q(way.embedment)));
        lines
    }
}

/// The same anchors in the same rows, however far apart and deep.
fn is_like(a: &Way, b: &Way) -> bool {
    let pattern = |way: &Way| way.pattern.map(|pattern| (pattern.in_row, pattern.rows));
    a.part == b.part && pattern(a) == pattern(b)
}
