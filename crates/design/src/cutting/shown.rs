//! Cutting plans as they are drawn, listed and told.

use super::job::{Job, Wanted, least};
use super::{bars, reels};
use crate::asking::{Asking, Lack};
use crate::figure::Print;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::cutting::{Cut, Effort, Plan, Proof, Uncuttable, cut};
use site::Site;

/// One bar or reel and all others that are cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct CutBar {
    /// Its whole length.
    pub length: Length,
    /// It is there already.
    pub there: bool,
    /// How many are cut like this.
    pub times: u32,
    /// What each end loses before the first piece.
    pub trim: Length,
    /// The pieces in order: what each is for, and its length.
    pub pieces: Vec<(String, Length)>,
    /// What is left of it.
    pub left: Length,
    /// What is left is long enough to be kept; nothing where the site does not say from where on.
    pub kept: Option<bool>,
}

/// How one kind of bar or reel is cut.
#[derive(Debug, Clone, PartialEq)]
pub struct CutSheet {
    /// Name of the bars or reels on the site.
    pub id: String,
    /// What they are.
    pub what: String,
    /// Width of the saw.
    pub kerf: Length,
    /// Each cut; empty where there is no plan.
    pub bars: Vec<CutBar>,
    /// What it costs, or the length drawn; empty where there is no plan.
    pub cost: String,
    /// How it is known that nothing costs less, or why there is no plan.
    pub proof: String,
    /// Nothing costs less, proved.
    pub least: bool,
    /// What each piece is worth in the proof, where worths alone prove it: what it is for, and its worth.
    pub worths: Vec<(String, String)>,
    /// Lines that the site file lacks.
    pub write: Vec<String>,
}

/// The plans of all bars of a site.
pub fn bar_sheets(site: &Site) -> Vec<CutSheet> {
    let one = |stock| {
        let stock: &site::BarStock = stock;
        let mut asking = Asking::new(site.site.unit_system());
        let job = bars(&mut asking, site, stock);
        let sheet = sheet(&asking, &stock.id, stock.what.to_string(), job);
        let least_kept = stock.least_kept.as_ref().map(quantity::Measured::nominal);
        keeping(sheet, least_kept)
    };
    site.bar_stock.iter().map(one).collect()
}

/// The plans of all reels of a site.
pub fn reel_sheets(site: &Site) -> Vec<CutSheet> {
    let one = |stock| {
        let stock: &site::CableReels = stock;
        let mut asking = Asking::new(site.site.unit_system());
        let job = reels(&mut asking, site, stock);
        sheet(&asking, &stock.id, stock.of.to_string(), job)
    };
    site.cable_reels.iter().map(one).collect()
}

fn keeping(mut sheet: CutSheet, least_kept: Option<Length>) -> CutSheet {
    for bar in &mut sheet.bars {
        bar.kept = least_kept.map(|least| bar.left >= least);
    }
    sheet
}

fn sheet(asking: &Asking<'_>, id: &site::Id, what: String, job: Result<Job, Halt>) -> CutSheet {
    let print = asking.print();
    let mut sheet = CutSheet {
        id: id.to_string(),
        what,
        kerf: Length::from_base(0.0),
        bars: Vec::new(),
        cost: String::new(),
        proof: String::new(),
        least: false,
        worths: Vec::new(),
        write: Vec::new(),
    };
    let Ok(job) = job else {
        sheet.write = asking.lacks.iter().map(Lack::line).collect();
        let beyond = asking
            .beyond
            .as_ref()
            .map(|beyond| beyond.reach.why.clone());
        sheet.proof = beyond.map_or_else(
            || "Some facts are missing.".to_owned(),
            |why| format!("{}.", crate::plain::capitalized(&why)),
        );
        return sheet;
    };
    sheet.kerf = job.cutting.kerf;
    match cut(&job.cutting, Effort::THOROUGH) {
        Ok(plan) => planned(&mut sheet, &job, &plan, print),
        Err(why) => sheet.proof = refused(&job, why, print),
    }
    sheet
}

fn planned(sheet: &mut CutSheet, job: &Job, plan: &Plan, print: Print) {
    for shown in plan.cuts.iter().map(|cut| bar(job, cut)) {
        // Pieces that are written twice, as for two leaves, are cut alike.
        let alike = |known: &&mut CutBar| {
            CutBar {
                times: shown.times,
                ..(**known).clone()
            } == shown
        };
        match sheet.bars.iter_mut().find(alike) {
            Some(known) => known.times += shown.times,
            None => sheet.bars.push(shown),
        }
    }
    sheet.cost = least(job, plan.cost, print);
    sheet.least = plan.is_least();
    sheet.proof = proof(job, plan, print);
    if plan.proof == Proof::Worths {
        sheet.worths = worths(job, plan);
    }
}

fn bar(job: &Job, cut: &Cut) -> CutBar {
    let bar = job.cutting.bars[cut.bar];
    let piece = |piece: &usize| {
        let wanted = &job.wanted[*piece];
        (wanted.what.clone(), wanted.length)
    };
    CutBar {
        length: bar.length,
        there: bar.price == 0,
        times: cut.times,
        trim: Length::from_base(bar.trim.base() / 2.0),
        pieces: cut.pieces.iter().map(piece).collect(),
        left: cut.left,
        kept: None,
    }
}

fn proof(job: &Job, plan: &Plan, print: Print) -> String {
    let bound = least(job, plan.bound, print);
    match plan.proof {
        Proof::Worths if plan.worths.iter().any(|worth| *worth > 0) => format!(
            "Proved the least: with the worth given to each piece no bar holds more worth than it costs, and all pieces together \
             are worth more than any cost under {bound}."
        ),
        Proof::Worths => format!(
            "Proved the least: worked from below, with every bar taken as often as it can be had, nothing comes under {bound}."
        ),
        Proof::Search(cases) => {
            format!(
                "Proved the least by a search through {cases} cases: nothing comes below {bound}."
            )
        }
        Proof::Open => format!(
            "Not proved the least: nothing comes below {bound}, and what lies between was not found or ruled out."
        ),
    }
}

/// What each piece is worth in the proof.
fn worths(job: &Job, plan: &Plan) -> Vec<(String, String)> {
    let Some(price) = job
        .currency
        .filter(|_| plan.worths.iter().any(|worth| *worth > 0))
    else {
        return Vec::new();
    };
    let pairs = job.wanted.iter().zip(&plan.worths);
    let one = |(wanted, worth): (&Wanted, &u64)| {
        let worth = price.of_hundredths(worth / 100);
        (wanted.what.clone(), worth.to_string())
    };
    pairs.map(one).collect()
}

fn refused(job: &Job, why: Uncuttable, print: Print) -> String {
    match why {
        Uncuttable::TooLong { piece } => format!(
            "{} is {} long, and no length leaves more than {} for a piece: get a longer one, or allow a joint.",
            job.wanted[piece].what,
            print.q(job.wanted[piece].length),
            print.q(job.longest_room())
        ),
        Uncuttable::TooFew => "What is there and can be had does not give all pieces: get more, and write how many can be had.".to_owned(),
        Uncuttable::NotFound => "No way to cut them was found, and none was ruled out: write more of what can be had.".to_owned(),
        Uncuttable::Refused(why) => format!("{}.", crate::plain::capitalized(why)),
    }
}
