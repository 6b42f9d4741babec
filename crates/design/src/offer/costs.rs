//! What one way to do the job costs, and the least price that covers it.

use super::labor::{LaborLine, minutes};
use crate::bill::{Bill, Gap, micrometers};
use quantity::Length;
use serde::Serialize;
use site::{Offer, OfferOption, Percent, Price, PriceBook, Rates, Site, Taxed};

/// Minutes in an hour.
const HOUR: u64 = 60;

/// What one way to do the job costs.
#[derive(Debug, Clone, Serialize)]
pub struct Costs {
    /// What is bought, or taken from the van.
    pub material: Price,
    /// Own hours, on the road left out.
    pub labor: Price,
    /// Hours of helpers.
    pub helper: Price,
    /// Hours on the road.
    pub road: Price,
    /// Driving.
    pub driving: Price,
    /// Hire of machines.
    pub hire: Price,
    /// What is paid to others.
    pub fees: Price,
    /// Tax on what is bought, where it is paid on that.
    pub tax_on_bought: Price,
    /// All of these together.
    pub direct: Price,
    /// Risk.
    pub risk: Price,
    /// Overhead.
    pub overhead: Price,
    /// All cost.
    pub cost: Price,
    /// Profit wanted.
    pub profit: Price,
    /// Least price that covers cost and profit.
    pub least: Price,
}

/// A sum that is lost once a summand is missing.
fn sum(prices: &[Price]) -> Option<Price> {
    let (first, rest) = prices.split_first()?;
    rest.iter().try_fold(*first, |sum, one| sum.plus(*one))
}

/// What the work is paid at.
pub(super) struct Paid<'s> {
    rates: &'s Rates,
    hour: Price,
    helper_hour: Price,
    driving: Price,
    driving_distance: Length,
    overhead: Percent,
    risk: Percent,
    markup: Percent,
}

impl<'s> Paid<'s> {
    /// The rates, when all are there.
    pub(super) fn of(
        site: &'s Site,
        book: Option<&'s PriceBook>,
        gaps: &mut Vec<Gap<'s>>,
    ) -> Option<Self> {
        let Some(rates) = book.and_then(|book| book.rates.as_ref()) else {
            gaps.push(Gap {
                origin: &site.site.origin,
                key: "price_book",
                write: "price_book = \"price-book.toml\", a file with [rates], [[item]], [[tool]] and [[worked]]",
                what: "the rates of the business".to_owned(),
            });
            return None;
        };
        let mut lack = |key, write, there: bool| {
            if !there {
                gaps.push(Gap {
                    origin: &rates.origin,
                    key,
                    write,
                    what: format!("the rate for {}", key.replace('_', " ")),
                });
            }
        };
        lack("hour", "hour = \"60.00 USD\"", rates.hour.is_some());
        lack(
            "helper_hour",
            "helper_hour = \"30.00 USD\"",
            rates.helper_hour.is_some(),
        );
        lack("driving", "driving = \"0.70 USD\"", rates.driving.is_some());
        lack(
            "driving_distance",
            "driving_distance = \"1 mi\"",
            rates.driving_distance.is_some(),
        );
        lack("overhead", "overhead = \"12 %\"", rates.overhead.is_some());
        lack("risk", "risk = \"4 %\"", rates.risk.is_some());
        lack("markup", "markup = \"18 %\"", rates.markup.is_some());
        lack("taxed", "taxed = \"the price\"", rates.taxed.is_some());
        let taxed = matches!(rates.taxed, None | Some(Taxed::Nothing));
        lack("tax", "tax = \"6.25 %\"", taxed || rates.tax.is_some());
        Some(Self {
            rates,
            hour: rates.hour?,
            helper_hour: rates.helper_hour?,
            driving: rates.driving?,
            driving_distance: rates.driving_distance?.nominal(),
            overhead: rates.overhead?,
            risk: rates.risk?,
            markup: rates.markup?,
        })
    }

    /// Tax that is paid on something, where it is.
    pub(super) fn tax(&self, on: Taxed, price: Price) -> Option<Price> {
        if self.rates.taxed? == on {
            price.percent(self.rates.tax?)
        } else {
            Some(price.of_hundredths(0))
        }
    }

    fn work(&self, minutes: u64) -> Option<Price> {
        self.hour.parts(minutes, HOUR)
    }
}

/// The costs of one way; a fact that is missing is a gap, and there are no costs then.
pub(super) fn costs<'s>(
    site: &'s Site,
    (offer, option): (&'s Offer, &'s OfferOption),
    paid: &Paid<'s>,
    (bill, labor): (&Bill, &[LaborLine]),
    gaps: &mut Vec<Gap<'s>>,
) -> Option<Costs> {
    let nothing = paid.hour.of_hundredths(0);
    let (Some(distance), Some(drive), Some(trips)) = (offer.distance, offer.drive, offer.trips)
    else {
        gaps.push(Gap {
            origin: &offer.origin,
            key: "trips",
            write: "distance = \"14 mi\", drive = \"25 min\", trips = 9",
            what: "the way to the site, its time, and how often it is driven".to_owned(),
        });
        return None;
    };
    let mut fees = vec![nothing];
    for fee in &offer.fee {
        if fee.price.is_none() {
            gaps.push(Gap {
                origin: &fee.origin,
                key: "price",
                write: "price = \"120.00 USD\"",
                what: format!("{}: what it costs", fee.what),
            });
        }
        fees.extend(fee.price);
    }
    let ways = u64::from(trips) * 2;
    let mut lines = vec![nothing];
    lines.extend(bill.lines.iter().filter_map(|line| line.cost));
    let material = sum(&lines)?;
    let own = labor.iter().map(|line| line.minutes).sum::<u64>();
    let own = own + option.more_hours.and_then(minutes).unwrap_or(0);
    let own = own.saturating_sub(option.fewer_hours.and_then(minutes).unwrap_or(0));
    let helper = labor.iter().map(|line| line.helper).sum::<u64>();
    let way = micrometers(distance.nominal())?.checked_mul(ways)?;
    let mut hire = vec![nothing];
    hire.extend(hired(site).flatten());
    let parts = Parts {
        material,
        labor: paid.work(own)?,
        helper: paid.helper_hour.parts(helper, HOUR)?,
        road: paid.work(minutes(drive)?.checked_mul(ways)?)?,
        driving: paid
            .driving
            .parts(way, micrometers(paid.driving_distance)?)?,
        hire: sum(&hire)?,
        fees: sum(&fees)?,
        tax_on_bought: paid.tax(Taxed::Bought, material)?,
    };
    parts.added_up(paid)
}

/// Hire of the machines that a task names.
fn hired(site: &Site) -> impl Iterator<Item = Option<Price>> {
    let tools = crate::bill::book(site).map_or(&[][..], |book| &book.tool[..]);
    tools.iter().filter_map(|tool| {
        let named = |task: &site::Task| {
            task.tools
                .iter()
                .any(|it| tool.id == *it.as_str() || tool.what == *it)
        };
        site.task.iter().any(named).then_some(tool.hire)
    })
}

/// The direct costs, one by one.
struct Parts {
    material: Price,
    labor: Price,
    helper: Price,
    road: Price,
    driving: Price,
    hire: Price,
    fees: Price,
    tax_on_bought: Price,
}

impl Parts {
    fn added_up(self, paid: &Paid<'_>) -> Option<Costs> {
        let direct = sum(&[
            self.material,
            self.labor,
            self.helper,
            self.road,
            self.driving,
            self.hire,
            self.fees,
            self.tax_on_bought,
        ])?;
        let risk = direct.percent(paid.risk)?;
        let overhead = direct.percent(paid.overhead)?;
        let cost = sum(&[direct, risk, overhead])?;
        let profit = cost.percent(paid.markup)?;
        Some(Costs {
            material: self.material,
            labor: self.labor,
            helper: self.helper,
            road: self.road,
            driving: self.driving,
            hire: self.hire,
            fees: self.fees,
            tax_on_bought: self.tax_on_bought,
            direct,
            risk,
            overhead,
            cost,
            profit,
            least: cost.plus(profit)?,
        })
    }
}
