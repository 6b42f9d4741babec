//! The cheapest conductors with which everything gets its voltage, among the entries of the parts files.
//!
//! Each part of the low-voltage circuits is searched for itself, every value at its bad end, in every hour that decides.
//! What is found is then put into the site, the whole of it is worked again, batteries and converters with it, and every
//! question that hangs on cables is asked again; an entry that makes a cable fail one of those is left out and the search
//! begins anew.

mod again;
mod bound;
mod cost;
mod ladder;
mod offer;
mod part;
mod plan;
mod search;
mod settle;
mod shown;
mod walk;
mod written;

pub(crate) use cost::Costs;
pub(crate) use offer::Spot;
pub(crate) use plan::{Plan, Reached, at_low_voltage, reached, ready};
pub(crate) use settle::{Settled, settled};
pub use shown::{Change, ConductorChoice, ConductorRun, ConductorVoltage};
pub use written::ConductorLine;

use crate::circuit::Circuits;
use site::{Site, SourceFile, load};

/// Times that the search begins anew without what made a cable fail something else.
const ANEW: usize = 6;

/// Finds conductors for the low-voltage circuits of a site; nothing when the site cannot be read.
pub fn conductor_choice(main: &SourceFile, parts: &[SourceFile]) -> Option<ConductorChoice> {
    let site = load(main.clone(), parts.to_vec()).site?;
    let spots = spots(&site, parts);
    let costs = Costs::of(&spots);
    let mut plan = Plan {
        site: &site,
        spots,
        costs,
        banned: Vec::new(),
    };
    let before = again::failing(&site);
    let mut left_out = Vec::new();
    let mut found = settled(&plan);
    let mut newly = again::newly(&before, &found.site);
    for _ in 0..ANEW {
        let blamed = again::blamed(&plan, &found.decided.chosen, &newly);
        if blamed.is_empty() {
            break;
        }
        for (spot, offer, finding) in blamed {
            plan.banned.push((spot, offer));
            left_out.push(again::told(&plan, (spot, offer), &finding));
        }
        found = settled(&plan);
        newly = again::newly(&before, &found.site);
    }
    Some(shown::shown(&plan, &found, parts, left_out, newly))
}

fn spots(site: &Site, parts: &[SourceFile]) -> Vec<Spot> {
    let circuits = Circuits::of(site);
    let entries = offer::entries(parts);
    plan::cables(site, &circuits)
        .into_iter()
        .map(|cable| Spot::among(site, cable, &entries))
        .collect()
}
