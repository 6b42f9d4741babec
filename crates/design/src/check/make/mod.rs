//! What is bought, cut and made, with which tools, and whether the price covers it.

pub(super) mod bill_complete;
pub(crate) mod cut_list;
pub(crate) mod joint_places;
pub(super) mod price_covers_it;
pub(super) mod tools_and_machines;
mod way_in;

use crate::asking::{Asking, Wants};
use crate::bill::Gap;
use formula::{Evidence, Source};
use site::{PriceBook, Site};

/// The price book and the stock list, as the business keeps them.
static PRICE_BOOK: Source = Source {
    work: "price book of the business: prices, suppliers, lead times, stock, tools and hours worked",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the file beside the site gives it",
};

/// How a price book is named.
const NAMED: &str = "[site]\nprice_book = \"price-book.toml\"   # a file with [rates], [[item]], [[tool]] and [[worked]]";

/// The price book; noted as missing where there is none.
fn book<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Option<&'s PriceBook> {
    asking.rest_on(&PRICE_BOOK);
    let book = crate::bill::book(site);
    if book.is_none() {
        let _: Result<(), _> = asking.lack(&site.site.origin, "price_book", Wants::Table(NAMED));
    }
    book
}

/// Notes each gap as a fact that is missing, with its name in the working.
fn note<'s>(asking: &mut Asking<'s>, gaps: &[Gap<'s>]) {
    for gap in gaps {
        let _: Result<(), _> = asking.lack(gap.origin, gap.key, Wants::Table(gap.write));
        asking.note(|_| format!("{}.", crate::plain::capitalized(&gap.what)));
    }
}
