//! One way to do the job with its costs, its price and what is paid when.

use super::costs::{self, Costs};
use super::labor::{self, LaborLine};
use crate::bill::{Bill, Gap, billed, book};
use serde::Serialize;
use site::{Offer, OfferOption, Percent, Price, Site, Taxed};

/// One way to do the job.
#[derive(Debug, Clone, Serialize)]
pub struct Way {
    /// Its name on the site.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What it is, for the customer.
    pub what: Option<String>,
    /// Things of the site that it leaves out.
    pub without: Vec<String>,
    /// What it is built of.
    pub bill: Bill,
    /// Its tasks.
    pub labor: Vec<LaborLine>,
    /// What it costs; nothing while a fact is missing.
    pub costs: Option<Costs>,
    /// Its price, tax left out.
    pub price: Option<Price>,
    /// What is left of the price over the least one.
    pub spare: Option<Price>,
    /// What the price lacks to the least one.
    pub short: Option<Price>,
    /// Tax on the price.
    pub tax: Option<Price>,
    /// What the customer pays.
    pub total: Option<Price>,
    /// What is paid when; nothing while the shares do not make the whole.
    pub payments: Vec<Paid>,
}

/// A part of what the customer pays.
#[derive(Debug, Clone, Serialize)]
pub struct Paid {
    /// When it is paid.
    pub when: String,
    /// Its share.
    pub share: Percent,
    /// The sum.
    pub sum: Price,
}

/// Prices one way to do the job; gaps are what stops the offer.
pub(crate) fn way<'s>(
    site: &'s Site,
    offer: &'s Offer,
    option: &'s OfferOption,
) -> (Way, Vec<Gap<'s>>) {
    let book = book(site);
    let priced = billed(site, &option.without, &option.material);
    let mut gaps = priced.to_price;
    let labor = labor::lines(site, book, &mut gaps);
    let paid = costs::Paid::of(site, book, &mut gaps);
    let costs = paid.as_ref().and_then(|paid| {
        costs::costs(
            site,
            (offer, option),
            paid,
            (&priced.bill, &labor),
            &mut gaps,
        )
    });
    // A sum with a hole in it is no sum.
    let costs = costs.filter(|_| gaps.is_empty());
    let tax = option
        .price
        .zip(paid.as_ref())
        .and_then(|(price, paid)| paid.tax(Taxed::Price, price));
    let total = option
        .price
        .zip(tax)
        .and_then(|(price, tax)| price.plus(tax));
    let least = costs.as_ref().map(|costs| costs.least);
    let way = Way {
        id: option.id.to_string(),
        name: option.name.to_string(),
        what: option.what.as_ref().map(ToString::to_string),
        without: option.without.iter().map(ToString::to_string).collect(),
        bill: priced.bill,
        labor,
        costs,
        price: option.price,
        spare: option
            .price
            .zip(least)
            .and_then(|(price, least)| price.minus(least)),
        short: option
            .price
            .zip(least)
            .and_then(|(price, least)| least.minus(price))
            .filter(|short| short.hundredths() > 0),
        tax,
        total,
        payments: total
            .map(|total| payments(offer, total))
            .unwrap_or_default(),
    };
    (way, gaps)
}

/// The parts of a total; none while the shares do not make the whole.
fn payments(offer: &Offer, total: Price) -> Vec<Paid> {
    let shares: Option<Vec<Percent>> = offer.payment.iter().map(|payment| payment.share).collect();
    let Some(shares) = shares.filter(|shares| make_the_whole(shares)) else {
        return Vec::new();
    };
    let sums = total.shared(&shares).unwrap_or_default();
    let each = offer.payment.iter().zip(shares).zip(sums);
    each.map(|((payment, share), sum)| Paid {
        when: payment.when.to_string(),
        share,
        sum,
    })
    .collect()
}

/// Shares that add up to the whole.
pub(crate) fn make_the_whole(shares: &[Percent]) -> bool {
    let sum: u64 = shares
        .iter()
        .map(|share| u64::from(share.thousandths()))
        .sum();
    sum == u64::from(Percent::WHOLE.thousandths())
}
