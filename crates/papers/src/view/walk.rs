//! The walk test of a gate: what was proved, what it rests on, and how far each value may go.

use super::verdict::Verdict;
use serde::Serialize;

/// How many walks end in one way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ShareRow {
    /// How they end.
    pub ends: String,
    /// Their share of all, printed.
    pub share: String,
    /// How far that may be off, printed.
    pub error: String,
}

/// How far one value may go.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct MarginRow {
    /// The value.
    pub what: String,
    /// As the site gives it, and how it is known; empty where it gives it in several places.
    pub written: String,
    /// As it was taken: at the bad end of its tolerance.
    pub taken: String,
    /// Up to where nobody is hit.
    pub holds: String,
    /// Where that is shown no longer.
    pub not_at: String,
}

/// A kind of walk that is not proved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OpenRow {
    /// Who walks, how, past what.
    pub family: String,
    /// That it is left open, or how it ends badly.
    pub how: String,
}

/// A finding that belongs to the walk test.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WalkFinding {
    /// Its verdict.
    pub verdict: Verdict,
    /// It in a sentence.
    pub sentence: String,
}

/// One thing that the walks rest on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct AssumedRow {
    /// What it is.
    pub what: String,
    /// As it was taken.
    pub value: String,
    /// How it is known, and where it comes from.
    pub known: String,
}

/// The walk test of one gate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WalkView {
    /// The gate.
    pub gate: String,
    /// The answer to whether anybody can be hit.
    pub answer: Option<WalkFinding>,
    /// Whether that is proved, only looked at, or out of date, and what to do.
    pub standing: String,
    /// How the walks end; empty where none were kept.
    pub shares: Vec<ShareRow>,
    /// How many families of walks are proved; empty where none were looked at.
    pub families: String,
    /// The families that are not proved, each with why.
    pub open: Vec<OpenRow>,
    /// The worst touch that may happen; empty where there is none.
    pub worst: String,
    /// How far each value may go.
    pub margins: Vec<MarginRow>,
    /// How the measured responses stand to those that were taken.
    pub responses: Vec<WalkFinding>,
    /// People: shapes and speeds.
    pub people: Vec<AssumedRow>,
    /// What this tool takes for granted besides.
    pub granted: Vec<AssumedRow>,
    /// Values of the site, each at the end of its tolerance that was taken.
    pub of_the_site: Vec<AssumedRow>,
    /// What none of this replaces.
    pub cautions: Vec<String>,
}
