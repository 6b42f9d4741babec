//! The bill of quantities: everything that a site is built of, and what fixes, ends, seals and labels it, each line with
//! where it is bought, when it is there, and what it costs.

mod ends;
mod find;
mod ground;
mod line;
mod need;
mod things;

pub use line::{Line, LineState};
pub(crate) use need::{Gap, micrometers};

use need::{Amount, Need, Wanted};
use serde::Serialize;
use site::{FurtherMaterial, Id, Item, PriceBook, Site};

/// The bill of one way to build a site.
#[derive(Debug, Clone, Serialize)]
pub struct Bill {
    /// What is needed, line by line, in the order of the site.
    pub lines: Vec<Line>,
}

/// A bill with the facts that it lacks, each at its place.
pub(crate) struct Billed<'s> {
    pub(crate) bill: Bill,
    /// What keeps a line from being bought: entry, supplier, lead time, size.
    pub(crate) to_buy: Vec<Gap<'s>>,
    /// What keeps a line from being priced.
    pub(crate) to_price: Vec<Gap<'s>>,
}

/// The bill of a site as it is drawn.
pub fn bill(site: &Site) -> Bill {
    billed(site, &[], &[]).bill
}

/// The price book of a site.
pub(crate) fn book(site: &Site) -> Option<&PriceBook> {
    site.site.price_book.as_ref()?.book.as_deref()
}

/// The bill without some things, and with more material.
pub(crate) fn billed<'s>(
    site: &'s Site,
    without: &[Id],
    more: &'s [FurtherMaterial],
) -> Billed<'s> {
    let items = book(site).map_or(&[][..], |book| &book.item[..]);
    let mut groups: Vec<(Option<&Item>, Vec<Need<'s>>)> = Vec::new();
    for need in needs(site, without, more) {
        let item = find::item(items, &need.wanted);
        let at = groups
            .iter()
            .position(|(other, needs)| match (item, other) {
                (Some(item), Some(other)) => item.id == other.id,
                (None, None) => needs
                    .first()
                    .is_some_and(|first| first.wanted == need.wanted),
                _ => false,
            });
        match at.and_then(|at| groups.get_mut(at)) {
            Some((_, needs)) => needs.push(need),
            None => groups.push((item, vec![need])),
        }
    }
    let mut billed = Billed {
        bill: Bill { lines: Vec::new() },
        to_buy: Vec::new(),
        to_price: Vec::new(),
    };
    for (item, needs) in groups {
        line::add(&mut billed, site, item, &needs);
    }
    billed
}

/// Everything that is needed, in the order of the site.
fn needs<'s>(site: &'s Site, without: &[Id], more: &'s [FurtherMaterial]) -> Vec<Need<'s>> {
    let there = site
        .offer
        .as_ref()
        .map_or(&[][..], |offer| &offer.there[..]);
    let out = |id: &Id| without.contains(id) || there.contains(id);
    let mut needs = Vec::with_capacity(256);
    things::add(site, &out, &mut needs);
    ground::add(site, &out, &mut needs);
    ends::add(site, &out, &mut needs);
    for material in site.material.iter().chain(more) {
        needs.push(of_material(site, material));
    }
    needs
}

fn of_material<'s>(site: &'s Site, material: &'s FurtherMaterial) -> Need<'s> {
    let amount = match (material.length, material.volume) {
        (Some(length), _) => Amount::Length(length.nominal()),
        (None, Some(volume)) => Amount::Volume(volume.nominal()),
        (None, None) => material
            .count
            .map_or(Amount::Unknown, |count| Amount::Pieces(u64::from(count))),
    };
    Need {
        wanted: Wanted::Entry(material.item.as_str()),
        amount,
        thing: material
            .why
            .as_ref()
            .map_or_else(|| "the job".to_owned(), ToString::to_string),
        what: material.item.to_string(),
        origin: &material.origin,
        by: site.site.installed,
        own: None,
    }
}
