//! The questions that apply to a site, and where each stands.

use serde::Serialize;

/// Where a question stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum QuestionState {
    /// Findings answer it.
    Answered,
    /// It waits for something to be measured.
    Unknown,
    /// This tool has no calculation for it yet; the tradesperson answers it.
    NotCovered,
}

/// One question.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct QuestionRow {
    /// Its id, never reused.
    pub id: String,
    /// The question, as the tradesperson would put it.
    pub ask: String,
    /// Where it stands.
    pub state: QuestionState,
    /// The answer in a few words, what to measure, or how to confirm it on site.
    pub note: String,
    /// What is at stake: `life`, `fire`, `damage`, `nuisance`, `cost`.
    pub severity: String,
}

/// The questions of one part of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct QuestionGroup {
    /// The part of the trade: `Power`.
    pub title: String,
    /// Its questions.
    pub rows: Vec<QuestionRow>,
}
