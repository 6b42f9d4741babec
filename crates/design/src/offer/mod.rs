//! What is offered: each way to do the job with its cost in exact money, the price that covers it, and what the customer pays.
//!
//! Every product is rounded once, to the nearest hundredth, a half up. What is paid in parts is shared out so that the parts
//! add up to the whole; the hundredths left over go to the largest remainders.

mod costs;
mod labor;
mod priced;

pub use costs::Costs;
pub use labor::{LaborLine, Speed};
pub use priced::{Paid, Way};

use crate::bill::Gap;
use serde::Serialize;
use site::Site;

/// How money is rounded, in a sentence for the margin sheet.
pub const ROUNDING: &str = "Each product is rounded once, to the nearest hundredth, a half up. Payments add up to the total: each is rounded down, and the hundredths left over go to the largest remainders.";

/// The offer of a site with all its figures, for the owner of the business.
#[derive(Debug, Clone, Serialize)]
pub struct Offered {
    /// Each way to do the job.
    pub ways: Vec<Way>,
    /// Hours planned and hours that it took, by sort of work.
    pub speeds: Vec<Speed>,
    /// What stops the offer, each with its place and what to write; empty when everything has its price.
    pub stopped_by: Vec<Stop>,
}

/// Something that stops the offer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Stop {
    /// What is missing, in words.
    pub what: String,
    /// File in which the thing stands that it is missing of.
    pub file: String,
    /// Its line.
    pub line: usize,
    /// What to write.
    pub write: String,
}

impl Stop {
    fn of(gap: &Gap<'_>) -> Self {
        Self {
            what: gap.what.clone(),
            file: gap.origin.file.to_string(),
            line: gap.origin.line,
            write: gap.write.to_owned(),
        }
    }
}

/// Prices every way to do the job; nothing where the site offers none.
pub fn offered(site: &Site) -> Option<Offered> {
    let offer = site.offer.as_ref()?;
    let mut stopped_by: Vec<Stop> = Vec::new();
    let mut ways = Vec::with_capacity(offer.option.len());
    for option in &offer.option {
        let (way, gaps) = priced::way(site, offer, option);
        for stop in gaps.iter().map(Stop::of) {
            if !stopped_by.contains(&stop) {
                stopped_by.push(stop);
            }
        }
        ways.push(way);
    }
    Some(Offered {
        ways,
        speeds: crate::bill::book(site)
            .map(labor::speeds)
            .unwrap_or_default(),
        stopped_by,
    })
}

pub(crate) use priced::{make_the_whole, way};
