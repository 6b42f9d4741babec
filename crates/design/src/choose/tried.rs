//! How a candidate does in the whole site: what fails with it, what it leaves open, what holds with the least in hand.

use crate::check::survey::deciding;
use crate::{Finding, Standing};
use serde::Serialize;
use site::Price;

/// How one part would do.
#[derive(Debug, Clone, Serialize)]
pub struct Candidate {
    /// Its entry in the parts files.
    pub part: String,
    /// What it costs; missing where the entry has no price.
    pub price: Option<String>,
    /// Findings that hang on the choice and fail with it, the worst first.
    pub failing: Vec<Finding>,
    /// Findings that hang on the choice and stay unknown or out of reach with it.
    pub open: Vec<Finding>,
    /// The finding that holds with the least in hand.
    pub tightest: Option<Finding>,
}

/// One part tried.
pub(super) struct Tried {
    pub(super) candidate: Candidate,
    /// How many findings hang on the choice.
    pub(super) hanging: usize,
    /// How many others are open.
    pub(super) open_anyway: usize,
    hundredths: Option<u64>,
    /// Greatest demand over capacity among the findings that hang on the choice.
    strain: f64,
}

impl Tried {
    pub(super) fn new(
        name: &str,
        price: Option<Price>,
        all: Vec<Finding>,
        bare: &[Finding],
    ) -> Self {
        let (hanging, others): (Vec<Finding>, Vec<Finding>) =
            all.into_iter().partition(|finding| hangs(finding, bare));
        let count = hanging.len();
        let greatest = hanging.iter().map(strain).fold(0.0, f64::max);
        let (failing, rest): (Vec<Finding>, Vec<Finding>) = hanging.into_iter().partition(fails);
        let (open, holding): (Vec<Finding>, Vec<Finding>) = rest.into_iter().partition(is_open);
        Self {
            hanging: count,
            open_anyway: others.iter().filter(|finding| is_open(finding)).count(),
            hundredths: price.map(Price::hundredths),
            strain: greatest,
            candidate: Candidate {
                part: name.to_owned(),
                price: price.map(|price| price.to_string()),
                failing,
                open,
                tightest: holding
                    .into_iter()
                    .filter(is_of_figures)
                    .max_by(|a, b| strain(a).total_cmp(&strain(b))),
            },
        }
    }

    /// Those that fail least first, then those that leave least open, then the cheapest, then the least strained.
    pub(super) fn in_order(a: &Self, b: &Self) -> std::cmp::Ordering {
        let price = |tried: &Self| tried.hundredths.unwrap_or(u64::MAX);
        a.candidate
            .failing
            .len()
            .cmp(&b.candidate.failing.len())
            .then(a.candidate.open.len().cmp(&b.candidate.open.len()))
            .then_with(|| {
                if a.candidate.failing.is_empty() {
                    price(a).cmp(&price(b))
                } else {
                    std::cmp::Ordering::Equal
                }
            })
            .then(a.strain.total_cmp(&b.strain))
    }
}

/// A finding hangs on the choice when taking the data sheet away changes it.
fn hangs(finding: &Finding, bare: &[Finding]) -> bool {
    let same = |other: &&Finding| {
        other.question == finding.question && other.subject.name == finding.subject.name
    };
    finding.question != deciding::QUESTION
        && bare.iter().find(same).is_none_or(|bare| {
            bare.standing != finding.standing
                || bare.sentence != finding.sentence
                || bare.missing != finding.missing
        })
}

/// It compares quantities, not counts of things.
fn is_of_figures(finding: &Finding) -> bool {
    let unit = |figure: &crate::Figure| !figure.unit.is_empty();
    finding.demand.as_ref().is_some_and(unit)
}

/// Demand over capacity with tolerances counted.
fn strain(finding: &Finding) -> f64 {
    let worst = finding.worst.as_ref().and_then(|corner| corner.ratio);
    worst.or(finding.ratio).unwrap_or(0.0)
}

fn fails(finding: &Finding) -> bool {
    matches!(
        finding.standing,
        Standing::Fails | Standing::TurnsWithinTolerance
    )
}

fn is_open(finding: &Finding) -> bool {
    !matches!(finding.standing, Standing::Holds | Standing::Figure)
}
