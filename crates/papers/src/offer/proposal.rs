//! The paper for the customer.

use super::money::printed;
use crate::engine::{Shelf, TypesetError, TypesetOptions, typeset};
use crate::view::{DocumentView, Fact};
use design::offer::{Offered, Way};
use serde::Serialize;
use site::{Offer, Price, Site, Text};

const MAIN: &str = "offer.typ";

/// A row of the table in which the ways stand side by side.
#[derive(Serialize)]
struct Row {
    label: String,
    cells: Vec<String>,
    figures: bool,
    strong: bool,
}

/// What the customer reads.
#[derive(Serialize)]
struct OfferView<'a> {
    document: &'a DocumentView,
    title: String,
    about: String,
    facts: Vec<Fact>,
    includes: Vec<String>,
    ways: usize,
    rows: Vec<Row>,
    excludes: Vec<String>,
    terms: Vec<String>,
    cautions: Vec<String>,
}

/// Sets the offer. Only prices, taxes, totals and payments of it are printed: no cost, no rate, no hour, no margin.
///
/// Fails only by a fault of the template; no text in the offer can make it fail.
pub fn proposal(
    site: &Site,
    offer: &Offer,
    offered: &Offered,
    document: &DocumentView,
) -> Result<Vec<u8>, TypesetError> {
    let view = view(site, offer, offered, document);
    let mut shelf = Shelf::new()
        .with_template("theme.typ", include_str!("../../templates/theme.typ"))
        .with_template(MAIN, include_str!("../../templates/offer.typ"));
    shelf.add_data("view.json", &view)?;
    let options = TypesetOptions {
        main: MAIN.to_owned(),
        identity: format!(
            "{} {} {} {}",
            document.title, document.site_name, document.revision, document.fingerprint
        ),
        maker: document.maker.clone(),
    };
    typeset(&shelf, &options)
}

fn view<'a>(
    site: &Site,
    offer: &Offer,
    offered: &Offered,
    document: &'a DocumentView,
) -> OfferView<'a> {
    let number = offer
        .number
        .as_ref()
        .map_or_else(String::new, |number| format!(" {number}"));
    OfferView {
        document,
        title: format!("Offer{number}"),
        about: document.installation.clone(),
        facts: facts(site, offer, document),
        includes: sentences(&offer.includes),
        ways: offered.ways.len(),
        rows: rows(offered),
        excludes: sentences(&offer.excludes),
        terms: sentences(&offer.terms),
        cautions: vec![
            "Structural, mains and life-safety work is done or signed for by whoever is licensed for it here; the authority having jurisdiction has the last word.".to_owned(),
            "An automatic gate can crush. It goes into service only after the tests of its forces and of its protection, and stays in service only with its visits.".to_owned(),
        ],
    }
}

fn sentences(texts: &[Text]) -> Vec<String> {
    texts.iter().map(ToString::to_string).collect()
}

fn facts(site: &Site, offer: &Offer, document: &DocumentView) -> Vec<Fact> {
    let mut facts = Vec::new();
    if let Some(to) = &offer.to {
        facts.push(Fact::new("For", to.as_str()));
    }
    facts.push(Fact::new("Site", site.site.name.as_str()));
    facts.push(Fact::new("Day", &document.date));
    if let Some(valid) = offer.valid {
        let days = quantity::print(valid.nominal(), site.site.unit_system());
        facts.push(Fact::new("Stands for", &days));
    }
    if let Some(revision) = &site.site.revision {
        facts.push(Fact::new("Drawings", &format!("revision {revision}")));
    }
    facts
}

/// The ways side by side: what each is, what it leaves out, price, tax, total, and what is paid when.
fn rows(offered: &Offered) -> Vec<Row> {
    let ways = &offered.ways;
    let words = |label: &str, of: &dyn Fn(&Way) -> String| Row {
        label: label.to_owned(),
        cells: ways.iter().map(of).collect(),
        figures: false,
        strong: false,
    };
    let figures = |label: &str, strong: bool, of: &dyn Fn(&Way) -> Option<Price>| Row {
        label: label.to_owned(),
        cells: ways
            .iter()
            .map(|way| of(way).map(printed).unwrap_or_default())
            .collect(),
        figures: true,
        strong,
    };
    let mut rows = vec![Row {
        strong: true,
        ..words("", &|way| way.name.clone())
    }];
    rows.push(words("What it is", &|way| {
        way.what.clone().unwrap_or_default()
    }));
    if ways
        .iter()
        .any(|way| way.what.is_none() && !way.without.is_empty())
    {
        rows.push(words("Left out", &|way| way.without.join(", ")));
    }
    let taxed = |way: &Way| way.tax.is_some_and(|tax| tax.hundredths() > 0);
    if ways.iter().any(taxed) {
        rows.push(figures("Price", false, &|way| way.price));
        rows.push(figures("Tax", false, &|way| way.tax));
        rows.push(figures("In all", true, &|way| way.total));
    } else {
        rows.push(figures("Price", true, &|way| way.total));
    }
    let most = ways.iter().map(|way| way.payments.len()).max().unwrap_or(0);
    for at in 0..most {
        let paid = ways.iter().find_map(|way| way.payments.get(at));
        let label = paid.map_or_else(String::new, |paid| format!("{}, {}", paid.share, paid.when));
        rows.push(figures(&label, false, &|way| {
            way.payments.get(at).map(|paid| paid.sum)
        }));
    }
    rows
}
