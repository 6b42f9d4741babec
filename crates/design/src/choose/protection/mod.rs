//! The fewest protective devices with which nobody is hit: entries of the parts files at sensible places, tried on walks
//! past the leaf.
//!
//! Walks that end badly without any device are collected. Each candidate by itself mends some of them; the smallest sets
//! that together mend all are walked in full, and what still ends badly is added to the collection, until a set is left
//! with which nothing does. It is put into the site and every question is asked again.

mod cover;
mod place;
mod proposed;
mod raised;
mod search;
mod turned;

use crate::Finding;
use search::Search;
use serde::Serialize;
use site::{Site, SourceFile, load};

/// The devices for one gate.
#[derive(Debug, Clone, Serialize)]
pub struct ProtectionChoice {
    /// The gate: `gate "main"`.
    pub gate: String,
    /// Places that were tried, each entry of the parts files counted by itself.
    pub candidates: usize,
    /// Sets that were walked in full.
    pub walked: usize,
    /// No device that sees people is there yet: both sets are one.
    pub nothing_there: bool,
    /// The fewest devices by themselves.
    pub from_nothing: Option<ProtectionSet>,
    /// The fewest devices in addition to those that are there.
    pub added: Option<ProtectionSet>,
    /// What the walks rest on.
    pub assumed: Vec<String>,
    /// What the site lacks, or why no walk reaches this gate.
    pub write: Vec<String>,
}

/// A set of devices.
#[derive(Debug, Clone, Serialize)]
pub struct ProtectionSet {
    /// What each is and where.
    pub devices: Vec<String>,
    /// Walks that were worked with it.
    pub walks: u64,
    /// Walks among those tried that end badly whatever was added; none where nobody is hit.
    pub left: usize,
    /// One of those in words.
    pub left_worst: Option<String>,
    /// Who is hit in them, and which way the leaf moves: `cyclist, leaf opening`.
    pub left_for: Vec<String>,
    /// Tables for the site file.
    pub write: Vec<String>,
    /// What fails with it when the whole site is asked.
    pub failing: Vec<Finding>,
    /// Findings that wait for more of these devices: feed, wiring, monitoring.
    pub open: usize,
}

/// Finds devices for every gate; nothing when the site cannot be read.
pub fn protection_choices(
    main: &SourceFile,
    parts: &[SourceFile],
) -> Option<Vec<ProtectionChoice>> {
    let site = load(main.clone(), parts.to_vec()).site?;
    let gates = 0..site.gate.len();
    Some(gates.map(|at| choice(main, parts, &site, at)).collect())
}

fn choice(main: &SourceFile, parts: &[SourceFile], site: &Site, at: usize) -> ProtectionChoice {
    let gate = &site.gate[at];
    let mut found = ProtectionChoice {
        gate: gate.origin.path.clone(),
        candidates: 0,
        walked: 0,
        nothing_there: false,
        from_nothing: None,
        added: None,
        assumed: Vec::new(),
        write: Vec::new(),
    };
    match Search::new((main, parts), site, at) {
        Ok(mut search) => {
            found.candidates = search.candidates.len();
            found.assumed.clone_from(&search.assumed);
            found.from_nothing = search.fewest(false);
            found.added = if search.nothing_is_there() {
                found.from_nothing.clone()
            } else {
                search.fewest(true)
            };
            found.nothing_there = search.nothing_is_there();
            found.walked = search.walked;
        }
        Err(write) => found.write = write,
    }
    found
}
