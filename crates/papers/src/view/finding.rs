//! One finding as it is printed.

use super::verdict::Verdict;
use super::working::Working;
use serde::Serialize;

/// Something to be measured before an unknown can be answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Measure {
    /// What to measure, and where: `Length of conduit 3, from pedestal to enclosure`.
    pub what: String,
    /// What to write into the site file afterwards: `length = "…"`; empty where nothing is to be written.
    pub write: String,
}

/// One answered question. Texts that do not apply are empty and leave no trace on the page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingView {
    /// The finding's id, never reused: `power-voltage-at-reader`.
    pub id: String,
    /// What it concerns: `Reader R1`.
    pub subject: String,
    /// The question, as the tradesperson would put it.
    pub question: String,
    /// The answer, as one sentence.
    pub sentence: String,
    /// The verdict, tolerances included.
    pub verdict: Verdict,
    /// Why the verdict is that one: `Holds by 0.7 V`, `Holds on paper; fails at the bad end of the tolerances`.
    pub because: String,
    /// What is at stake: `life`, `fire`, `damage`, `nuisance`, `cost`.
    pub severity: String,
    /// What is asked of the part, printed.
    pub demand: String,
    /// What the part can give, printed.
    pub capacity: String,
    /// Demand over capacity, printed: `0.94`.
    pub ratio: String,
    /// Verdict at the values as written: a word or a short phrase.
    pub nominal: String,
    /// Verdict at the bad end of every tolerance: a word or a short phrase.
    pub worst: String,
    /// The measurement whose tolerance can turn the verdict.
    pub deciding: String,
    /// The steps of the working, in order.
    pub working: Vec<Working>,
    /// Source of the rule with its clause.
    pub source: String,
    /// How that source is known: `seen in …`, `memory`, `common practice`, `physics`.
    pub known: String,
    /// What to measure to answer it, where it is unknown.
    pub measures: Vec<Measure>,
    /// How to confirm it on site.
    pub confirm: String,
    /// Place, in the list of findings, of the one whose working stands for this too, with other values; nothing where
    /// this one is set out in full.
    pub same_as: Option<usize>,
}
